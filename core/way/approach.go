package way

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// What an approach to an opening leaves (common practice, no source).
const (
	astray   = 0.05  // m: how far off the middle across the opening the centre of mass may be
	risen    = 0.1   // m: the same upwards
	beforeIt = 0.3   // m between the wall and the team that is formed before it
	roomy    = 1.125 // times the separation: the spacing in an opening, so that the team can move in it
)

// Approach are waypoints before, in and behind an opening, (20.25), for a payload that comes from a place with a heading: it is turned so
// that it is narrow and held so that the team is in the middle of the opening's height, in line where that is needed to keep the
// clearance. The box is where the centre of mass must stay on the two legs between them. A FormError tells why the team cannot
// pass, Point then being the one in the opening of the three.
func (r Route) Approach(o Opening, from vec.V3, heading float64, m *share.Model, apart *share.Apart, form [][]vec.V3, limits Limits, s *solve.Solver) (points [3]Point, box Box, err error) {
	normal := vec.V3{math.Cos(o.Normal), math.Sin(o.Normal), 0}
	if o.depth(from) > 0 {
		normal = normal.Scale(-1)
	}
	lo, hi := extent(form, m.Body.COM)
	turned := hi[0]-lo[0] < hi[1]-lo[1] // its y axis goes through first
	toward := o.Normal
	if turned {
		toward += math.Pi / 2
	}
	toward = heading + math.Remainder(toward-heading, math.Pi)
	p := Point{At: o.At, Heading: toward, Time: math.NaN()}
	f, err := r.fits(o, p, m, apart, limits, s)
	if err != nil {
		return points, box, err
	}
	p.Formation = f.Formation
	if !f.planned() {
		p.Formation.Along = o.Normal
	}
	far, top := math.Max(hi[0], -lo[0]), hi[2]
	if turned {
		far = math.Max(hi[1], -lo[1])
	}
	axis := vec.V3{math.Cos(toward - o.Normal), -math.Sin(toward - o.Normal), 0} // of the normal, body axes
	for i, part := range f.Parts {
		q, reach := part.Position.Sub(m.Body.COM), m.Craft[i].Vehicle.Reach
		far = math.Max(far, math.Abs(axis.Dot(q))+reach)
		top = math.Max(top, q[2])
	}
	p.At[2] -= (top + lo[2]) / 2
	for k := range points {
		points[k] = p
		points[k].At = p.At.Add(normal.Scale(float64(k-1) * (far + beforeIt)))
	}
	return points, o.corridor(points), nil
}

// fits is the formation in an opening: as planned where that is narrow enough, else in line.
func (r Route) fits(o Opening, p Point, m *share.Model, apart *share.Apart, limits Limits, s *solve.Solver) (Formed, error) {
	width := o.Width - 2*o.Clearance - 2*astray
	calm := m.InWind(0, 0)
	own, ok := rest(calm, apart, limits.Utilisation, s)
	if !ok {
		return own, ErrHover
	}
	across := o.across()
	down := vec.Rot(vec.V3{0, 0, p.Heading}).T()
	wide := 0.0
	for i, part := range own.Parts {
		wide = math.Max(wide, math.Abs(down.Mul(across).Dot(part.Position.Sub(m.Body.COM)))+m.Craft[i].Vehicle.Reach)
	}
	if 2*wide <= width {
		return own, nil
	}
	var err error
	for _, spacing := range []float64{roomy * m.Plan.Limits.Separation, math.NaN()} {
		p.Formation = Formation{Shape: plan.InLine, Spacing: spacing, Width: width, Along: o.Normal}
		one := r
		one.Points = []Point{{}, p}
		var list []Formed
		if list, err = one.forms(m, apart, limits, s); err == nil {
			return list[1], nil
		}
	}
	return own, err
}

// corridor is the box around the way through an opening, open along it as far as level axes allow.
func (o Opening) corridor(points [3]Point) Box {
	b := Box{Min: points[0].At, Max: points[0].At}
	along := [2]float64{math.Abs(math.Cos(o.Normal)), math.Abs(math.Sin(o.Normal))}
	for _, p := range points {
		for a := range 3 {
			b.Min[a], b.Max[a] = math.Min(b.Min[a], p.At[a]), math.Max(b.Max[a], p.At[a])
		}
	}
	for a := range 2 {
		room := astray + beforeIt*along[a]
		b.Min[a], b.Max[a] = b.Min[a]-room, b.Max[a]+room
	}
	b.Min[2], b.Max[2] = b.Min[2]-risen, b.Max[2]+risen
	return b
}

// extent is what bodies take up from a point, payload frame.
func extent(form [][]vec.V3, from vec.V3) (lo, hi vec.V3) {
	for _, body := range form {
		for _, p := range body {
			for a, x := range p.Sub(from) {
				lo[a], hi[a] = math.Min(lo[a], x), math.Max(hi[a], x)
			}
		}
	}
	return lo, hi
}
