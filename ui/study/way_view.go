package study

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/vec"
	"cohoist/core/way"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// stage is the picture of a way: seen from the side above, from above below, to one scale and under one another.
type stage struct {
	*journey
	high, top sight
	sideways  bool // y lies to the right, as the way leads along it
	height    float64
	lo, hi    vec.V3 // what is drawn, level axes
}

// Size of the picture.
const stageWide, stageTall, stageEdge, stageGap = 680.0, 560.0, 18.0, 34.0

func (c *WayShow) stage() vugu.Builder { return node{newStage(c.Journey).draw()} }

func newStage(j *journey) *stage {
	s := &stage{journey: j, high: fromSide, top: fromTop}
	s.lo, s.hi = vec.V3{math.Inf(1), math.Inf(1), math.Inf(1)}, vec.V3{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	body := formOf(j.model.Plan.Payload)
	for _, f := range j.frames {
		s.reach(f.State.At, 0)
		body.each(func(p vec.V3) { s.reach(j.moved(f, p), 0) })
		for k, p := range f.Places {
			if !j.gone(f, k) {
				s.reach(p, j.model.Craft[k].Vehicle.Reach)
			}
		}
	}
	if j.score != nil && !math.IsInf(j.score.Ground, 0) {
		s.lo[2] = math.Min(s.lo[2], j.score.Ground)
	}
	for _, o := range j.route.Openings {
		for _, c := range corners4(o, 0) {
			s.reach(c, 0.1)
		}
	}
	if s.hi[1]-s.lo[1] > s.hi[0]-s.lo[0] {
		s.sideways = true
		s.high, s.top = fromEnd, sight{right: vec.V3{0, 1, 0}, up: vec.V3{-1, 0, 0}}
	}
	if room := s.hi[2] - s.lo[2]; s.lo[2] > 0 && s.lo[2] < room/4 {
		s.lo[2] = 0
	}
	across, deep := s.span(s.high.right), s.span(s.top.up)
	scale := math.Min((stageWide-2*stageEdge)/across, (stageTall-2*stageEdge-stageGap)/(deep+s.span(upright)))
	mid := s.lo.Add(s.hi).Scale(0.5)
	s.high.scale, s.top.scale = scale, scale
	s.high.x = stageWide/2 - scale*s.high.right.Dot(mid)
	s.top.x = s.high.x
	s.high.y = stageEdge + scale*s.hi[2]
	under := stageEdge + scale*s.span(upright) + stageGap
	s.top.y = under + scale*(deep/2+s.top.up.Dot(mid))
	s.height = under + scale*deep + stageEdge + 22
	return s
}

func (s *stage) reach(p vec.V3, r float64) {
	for a := range 3 {
		s.lo[a], s.hi[a] = math.Min(s.lo[a], p[a]-r), math.Max(s.hi[a], p[a]+r)
	}
}

// span is how much is drawn along an axis.
func (s *stage) span(axis vec.V3) float64 {
	return math.Max(math.Abs(axis.Dot(s.hi.Sub(s.lo))), 0.5)
}

func (s *stage) draw() *vugu.VGNode {
	pic := image("wy-svg", s.words(), stageWide, s.height)
	if s.score != nil && !math.IsInf(s.score.Ground, 0) {
		y := s.high.at(vec.V3{0, 0, s.score.Ground})[1]
		line(pic, "wy-ground", stageEdge/2, y, stageWide-stageEdge/2, y)
		text(pic, "wy-quiet", stageEdge/2, y+12, "ground")
	} else if y := s.high.y; s.lo[2] <= 0 && s.hi[2] >= 0 {
		line(pic, "wy-floor", stageEdge/2, y, stageWide-stageEdge/2, y)
		text(pic, "wy-quiet", stageEdge/2, y+12, "z = 0")
	}
	s.boxes(pic)
	s.openings(pic)
	for _, v := range []sight{s.high, s.top} {
		s.track(pic, v)
	}
	s.points(pic)
	frames := figure.SVG("g", figure.Attrs{"data-frames", s.name})
	for i, f := range s.frames {
		frames.AppendChild(s.frame(f, i == s.worst))
	}
	pic.AppendChild(frames)
	s.ruler(pic)
	return pic
}

// boxes draws what legs stay in; open sides end where the picture does.
func (s *stage) boxes(pic *vugu.VGNode) {
	for _, b := range s.route.Boxes {
		lo, hi := b.Min, b.Max
		for a := range 3 {
			lo[a], hi[a] = math.Max(lo[a], s.lo[a]), math.Min(hi[a], s.hi[a])
		}
		for _, v := range []sight{s.high, s.top} {
			p, q := v.at(lo), v.at(hi)
			rect(pic, "wy-box", math.Min(p[0], q[0]), math.Min(p[1], q[1]), math.Abs(p[0]-q[0]), math.Abs(p[1]-q[1]))
		}
	}
}

// trackPoints is how many chords a leg is drawn with.
const trackPoints = 24

func (s *stage) track(pic *vugu.VGNode, v sight) {
	d := ""
	for k, l := range s.legs {
		for i := range trackPoints {
			d += s.step(v, s.found.Start(k)+l.Duration*float64(i)/trackPoints, d == "")
		}
	}
	path(pic, "wy-track", d+s.step(v, s.found.Duration(), false))
}

func (s *stage) step(v sight, t float64, first bool) string {
	p, letter := v.at(s.found.Path.At(t).At), "L"
	if first {
		letter = "M"
	}
	return letter + figure.Num(p[0]) + " " + figure.Num(p[1])
}

// points draws the waypoints with the payload's outline there.
func (s *stage) points(pic *vugu.VGNode) {
	body := formOf(s.model.Plan.Payload)
	for i, p := range s.route.Points {
		x := s.found.Path.At(s.found.Start(i))
		turn := s.model.Upright(x.Heading, vec.V3{0, 0, 1})
		move := func(q vec.V3) vec.V3 { return p.At.Add(turn.Mul(q.Sub(s.model.Body.COM))) }
		for _, v := range []sight{s.high, s.top} {
			path(pic, "wy-ghost", v.shape(body, move))
			circle(pic, "wy-point", v.at(p.At), 3.5)
		}
		at := s.top.at(p.At)
		text(pic, "wy-number", at[0]+6, at[1]-6, digits(i+1))
		at = s.high.at(p.At)
		text(pic, "wy-number", at[0]+6, at[1]-6, digits(i+1))
	}
}

// frame is the team at an instant.
func (s *stage) frame(f way.Instant, on bool) *vugu.VGNode {
	g := figure.SVG("g", nil)
	if on {
		g.Attr = append(g.Attr, vugu.VGAttribute{Key: "data-on", Val: ""})
	}
	body := formOf(s.model.Plan.Payload)
	for _, v := range []sight{s.high, s.top} {
		path(g, "wy-load", v.shape(body, func(p vec.V3) vec.V3 { return s.moved(f, p) }))
		cables, discs := "", ""
		for i, p := range f.Places {
			c := s.model.Craft[i]
			if s.gone(f, i) {
				continue
			}
			if !c.Rigid {
				cables += stroke(v.at(s.moved(f, c.At)), v.at(p))
			}
			discs += s.rotors(v, f, i)
		}
		path(g, "wy-cables", cables)
		path(g, "wy-discs", discs)
	}
	for i, p := range f.Places {
		if len(f.Places) <= usual && !s.gone(f, i) {
			at := s.top.at(p)
			id := s.model.Craft[i].ID
			if s.lost(f.Time) == i {
				id += " ✕"
			}
			text(g, "wy-id", at[0], at[1]+4, id)
		}
	}
	return g
}

func stroke(a, b dot) string {
	return "M" + figure.Num(a[0]) + " " + figure.Num(a[1]) + "L" + figure.Num(b[0]) + " " + figure.Num(b[1])
}

// rotors draws the reach of a vehicle's rotors: a circle from above, its edge from the side.
func (s *stage) rotors(v sight, f way.Instant, i int) string {
	r, at := s.model.Craft[i].Vehicle.Reach, f.Places[i]
	if v.up != upright {
		p, n := v.at(at), figure.Num(r*v.scale)
		wide := figure.Num(2 * r * v.scale)
		return "M" + figure.Num(p[0]-r*v.scale) + " " + figure.Num(p[1]) + "a" + n + " " + n + " 0 1 0 " + wide + " 0a" + n + " " + n + " 0 1 0 -" + wide + " 0"
	}
	up := s.thrust(f, i)
	along := v.right.Sub(up.Scale(up.Dot(v.right))).Unit().Scale(r)
	return stroke(v.at(at.Sub(along)), v.at(at.Add(along)))
}

// ruler draws a round length, and says where the axes are.
func (s *stage) ruler(pic *vugu.VGNode) {
	long, y := figure.Round125(140/s.top.scale), s.height-12
	path(pic, "sl-axis", stroke(dot{stageEdge, y}, dot{stageEdge + long*s.top.scale, y})+
		stroke(dot{stageEdge, y - 4}, dot{stageEdge, y + 4})+stroke(dot{stageEdge + long*s.top.scale, y - 4}, dot{stageEdge + long*s.top.scale, y + 4}))
	axes := "x to the right, y up"
	if s.sideways {
		axes = "y to the right, x down"
	}
	text(pic, "wy-quiet", stageEdge+long*s.top.scale+10, y+4, s.units.Show(format.Length, long)+"; from above: "+axes)
}

// words are the picture for those who do not see it.
func (s *stage) words() string {
	return "The way from the side and from above, through " + several(len(s.route.Points), "waypoint", "waypoints") + ", with the team at one instant."
}

func (c *WayShow) caption() string {
	return "From the side, and below it from above, to scale. The numbered points are the waypoints, with the payload’s outline there; dashed boxes are where the centre of mass stays; thick strokes are walls, with the opening between them and its clearance dotted; circles and strokes are the rotors’ reach."
}
