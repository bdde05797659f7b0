package way

import (
	"errors"
	"math"

	"cohoist/core/vec"
)

// Path is a way with its durations. Make one with Route.Path.
type Path struct {
	Durations []float64 // of the legs, s
	Cost      float64   // integral of |snap|² + Arm² (d⁴ψ/dt⁴)², m²/s⁷, (20.4)
	Change    []float64 // of Cost by every duration, m²/s⁸, (20.5)
	Held      int       // control points that stand on a side of their box
	starts    []float64
	legs      [][4][8]float64 // coefficients by s of x, y, z and ψ
	held      *held           // the change of formation; nil: there is none
}

// Reasons why there is no path.
var (
	ErrPoints   = errors.New("a way needs at least two points that are not the same")
	ErrDuration = errors.New("every leg needs a duration above zero")
	ErrOutside  = errors.New("a point lies outside a box of its leg")
	ErrLeg      = errors.New("a box stands on a leg that the way has not")
	ErrTimes    = errors.New("the times of the points must grow from zero")
	ErrHover    = errors.New("the team does not stay within its limits on this way, however slowly")
	ErrTimed    = errors.New("the team does not stay within its limits with the times given, however slow the rest is")
	ErrStopped  = errors.New("the search was stopped")
	ErrRigid    = errors.New("a formation needs every vehicle on a cable")
	ErrMany     = errors.New("formations are found for teams of up to 24 vehicles")
	ErrNumbers  = errors.New("the numbers are beyond what can be solved")
)

// Path is the way through the points with the least snap for the durations of its legs, (20.4).
func (r Route) Path(durations []float64) (*Path, error) {
	if err := r.check(durations); err != nil {
		return nil, err
	}
	p := &Path{Durations: append([]float64(nil), durations...), Change: make([]float64, len(durations)),
		starts: make([]float64, len(durations)+1), legs: make([][4][8]float64, len(durations)), held: r.held}
	for k, T := range durations {
		p.starts[k+1] = p.starts[k] + T
	}
	for a := range 4 {
		x := r.axis(a, p.Durations)
		nodes, ok := x.solve()
		if !ok {
			return nil, ErrNumbers
		}
		weight := 1.0
		if a == 3 {
			weight = r.Arm * r.Arm
		}
		p.Cost += weight * x.cost(nodes, weight, p.Change)
		p.Held += len(x.active)
		for k, T := range durations {
			e := scaled(nodes, k, T)
			p.legs[k][a] = e.poly()
		}
	}
	return p, nil
}

func (r Route) check(durations []float64) error {
	if len(r.Points) < 2 {
		return ErrPoints
	}
	if len(durations) != len(r.Points)-1 {
		return ErrDuration
	}
	for _, T := range durations {
		if !(T > 0) || math.IsInf(T, 1) {
			return ErrDuration
		}
	}
	for _, p := range r.Points {
		if n := p.At.Norm(); math.IsNaN(n) || math.IsInf(n, 0) || math.IsInf(p.Heading, 0) {
			return ErrNumbers
		}
	}
	for _, b := range r.Boxes {
		if b.Leg < 0 || b.Leg >= len(durations) {
			return ErrLeg
		}
		for _, p := range r.Points[b.Leg : b.Leg+2] {
			for a := range 3 {
				if !(p.At[a] >= b.Min[a] && p.At[a] <= b.Max[a]) {
					return ErrOutside
				}
			}
		}
	}
	return nil
}

// ends are the headings of the first and the last point: 0, and that of the last point which has one, when they are free.
func (r Route) ends() (first, last float64) {
	if h := r.Points[0].Heading; !math.IsNaN(h) {
		first = h
	}
	last = first
	for _, p := range r.Points {
		if !math.IsNaN(p.Heading) {
			last = p.Heading
		}
	}
	return first, last
}

// rests tells that the payload is at rest at a point: at both ends, and where it stops.
func (r Route) rests(point int) bool {
	return point == 0 || point == len(r.Points)-1 || r.Points[point].Stop
}

// axis is the program of axis a: 0 to 2 the place, 3 the heading.
func (r Route) axis(a int, durations []float64) *axis {
	x := &axis{durations: durations, from: make([]node, len(r.Points))}
	free := math.NaN()
	for i, p := range r.Points {
		x.from[i] = node{p.Heading, free, free, free}
		if a < 3 {
			x.from[i][0] = p.At[a]
		}
		if r.rests(i) {
			x.from[i] = node{x.from[i][0]} // at rest
		}
	}
	if last := len(r.Points) - 1; a == 3 {
		x.from[0][0], x.from[last][0] = r.ends()
	}
	if a == 3 {
		return x
	}
	for _, b := range r.Boxes {
		if math.IsInf(b.Min[a], -1) && math.IsInf(b.Max[a], 1) {
			continue
		}
		for point := 1; point <= 6; point++ {
			end := b.Leg
			if point > 3 {
				end++
			}
			if !r.rests(end) { // at rest all control points stand at the point itself
				x.bounds = append(x.bounds, bound{b.Leg, point, b.Min[a], b.Max[a]})
			}
		}
	}
	return x
}

// Duration is how long the way takes, s.
func (p *Path) Duration() float64 { return p.starts[len(p.starts)-1] }

// Start is when a leg begins, s; of the one after the last, when the way ends.
func (p *Path) Start(leg int) float64 { return p.starts[leg] }

// Leg is the leg that is flown at a time; before the start the first, after the end the last.
func (p *Path) Leg(t float64) int {
	k := 0
	for k < len(p.legs)-1 && t >= p.starts[k+1] {
		k++
	}
	return k
}

// At is the motion at a time, s from the start; at rest before and after.
func (p *Path) At(t float64) State {
	t = math.Min(math.Max(t, 0), p.Duration())
	k := p.Leg(t)
	return p.on(k, (t-p.starts[k])/p.Durations[k])
}

// on is the motion on a leg at s from 0 to 1.
func (p *Path) on(leg int, s float64) State {
	T := p.Durations[leg]
	var d [5][4]float64
	for a := range 4 {
		for k := range 5 {
			d[k][a] = derivative(&p.legs[leg][a], k, s) * pow(T, -k)
		}
	}
	three := func(k int) vec.V3 { return vec.V3(d[k][:3]) }
	return State{At: three(0), Velocity: three(1), Acceleration: three(2), Jerk: three(3), Snap: three(4),
		Heading: d[0][3], Turn: d[1][3], TurnRate: d[2][3]}
}
