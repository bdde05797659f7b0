package study

import (
	"math"
	"strconv"

	"github.com/vugu/vugu"

	"cohoist/core/vec"
	"cohoist/ui/figure"
)

// bandsAll are the bands within the limit and the three beyond.
const bandsAll = within + 3

// costMap is the picture of the cost of a shift.
type costMap struct {
	s *shifted
	c *choices
}

// Build draws the cells in their colours, hatched beyond the limit, the limit as a line, and who stands where.
func (m *costMap) Build(*vugu.BuildIn) *vugu.BuildOut {
	s, c := m.s, m.c
	lo, hi := (&planView{c: c}).at()
	b := newBoard(lo, hi, 30, 34)
	pic := b.sheet("The cost of moving "+c.plan.Team[s.who].ID, s.words(c))
	pic.AppendChild(figure.SVG("defs", nil, hatch("wh-hatch-cost")))
	for k, d := range s.paths(b, c) {
		if d != "" {
			pic.AppendChild(figure.SVG("path", figure.Attrs{"class", "wh-cell wh-b" + strconv.Itoa(k), "d", d}))
			if k >= within {
				pic.AppendChild(figure.SVG("path", figure.Attrs{"class", "wh-over", "d", d}))
			}
		}
	}
	pic.AppendChild(figure.SVG("path", figure.Attrs{"class", "wh-contour", "d", s.contour(b)}))
	for i, k := range c.plan.Team {
		x, y := b.x(k.Attach[0]), b.y(k.Attach[1])
		if !figure.Finite(x) || !figure.Finite(y) {
			continue
		}
		if i == s.who {
			pic.AppendChild(disc("wh-mover", x, y, 6))
			pic.AppendChild(words("wh-t wh-mid wh-id", x, y-12, k.ID))
		} else {
			pic.AppendChild(disc("wh-other", x, y, 3.5))
			pic.AppendChild(words("wh-t wh-mid", x, y-9, k.ID))
		}
	}
	b.ends(pic, c)
	return &vugu.BuildOut{Out: []*vugu.VGNode{pic}}
}

// paths are the cells of each band as one path.
func (s *shifted) paths(b board, c *choices) [bandsAll]string {
	var d [bandsAll][]byte
	put := func(p []byte, x, y float64) []byte { return figure.Append(append(figure.Append(p, x), ' '), y) }
	for i, v := range s.values {
		p, k := s.at(i), s.band(v)
		x0, x1 := p[0]-s.side[0]/2, p[0]+s.side[0]/2
		y0, y1 := p[1]-s.side[1]/2, p[1]+s.side[1]/2
		if s.line { // the outermost cells end with the payload
			if s.axis == 0 {
				x0, x1 = math.Max(x0, c.lo[0]), math.Min(x1, c.hi[0])
			} else {
				y0, y1 = math.Max(y0, c.lo[1]), math.Min(y1, c.hi[1])
			}
		}
		d[k] = put(append(d[k], 'M'), b.x(x0), b.y(y0))
		d[k] = append(figure.Append(append(d[k], 'H'), b.x(x1)), 'V')
		d[k] = append(figure.Append(d[k], b.y(y1)), 'H')
		d[k] = append(figure.Append(d[k], b.x(x0)), 'Z')
	}
	var out [bandsAll]string
	for k := range d {
		out[k] = string(d[k])
	}
	return out
}

// contour is where the limit lies: marks across a bar, a line over a plate.
func (s *shifted) contour(b board) string {
	var d []byte
	segment := func(p, q vec.V3) {
		d = append(figure.Append(append(d, 'M'), b.x(p[0])), ' ')
		d = append(figure.Append(d, b.y(p[1])), 'L')
		d = append(figure.Append(d, b.x(q[0])), ' ')
		d = figure.Append(d, b.y(q[1]))
	}
	if s.line {
		ends := [2]float64{s.at(0)[s.axis], s.at(len(s.values) - 1)[s.axis]}
		for _, p := range s.spans() {
			for k, x := range [2]float64{p.from, p.to} {
				if math.Abs(x-ends[k]) > 1e-9 {
					a := s.from
					a[s.axis] = x
					across := vec.V3{}
					across[1-s.axis] = 0.8 * s.side[1-s.axis]
					segment(a.Sub(across), a.Add(across))
				}
			}
		}
		return string(d)
	}
	for j := range s.ny - 1 {
		for i := range s.nx - 1 {
			s.squares(j*s.nx+i, segment)
		}
	}
	return string(d)
}

// squares draws the limit through four neighbouring cells, by proportion along the sides it crosses.
func (s *shifted) squares(i int, segment func(p, q vec.V3)) {
	corners := [4]int{i, i + 1, i + s.nx + 1, i + s.nx}
	var cross []vec.V3
	for k, a := range corners {
		b := corners[(k+1)%4]
		u, v := s.height(a), s.height(b)
		if u <= 0 != (v <= 0) {
			cross = append(cross, s.at(a).Add(s.at(b).Sub(s.at(a)).Scale(u/(u-v))))
		}
	}
	for k := 0; k+1 < len(cross); k += 2 {
		segment(cross[k], cross[k+1])
	}
}

// height is how far a cell is above the limit; where nothing holds, as far as the limit itself.
func (s *shifted) height(i int) float64 {
	return math.Min(s.values[i], 2*s.limit) - s.limit*(1+1e-6)
}
