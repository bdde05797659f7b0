package way

import (
	"fmt"
	"math"

	"cohoist/core/formation"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// former looks for the formation of a waypoint: the convex program of (17.2), repeated from several starts, with what the
// formation is to be least in as its scalar, (20.18).
type former struct {
	m      *share.Model // calm, its limits those that a formation may use
	s      *solve.Solver
	ask    Formation // body axes, nothing left out that it needs
	limit  float64   // utilisation
	across vec.V3
	at     []vec.V3 // places of the round before, seen from above
	high   []float64
	pulls  []float64
	first  Formed   // as planned, where it is looked for from
	before []vec.V3 // pulls at the waypoint before
}

// newFormer asks for the formation of a point, or says why it cannot be meant.
func newFormer(calm *share.Model, p Point, own Formed, limits Limits, s *solve.Solver) (*former, string) {
	f := &former{m: calm, s: s, ask: p.Formation, first: own, before: own.Pulls, limit: (own.Utilisation + limits.Utilisation) / 2}
	least := calm.Plan.Limits.Separation
	switch {
	case f.ask.Spacing > 0 && f.ask.Spacing <= least:
		return nil, fmt.Sprintf("its spacing of %.4g m is not above the separation of %.4g m, and moving takes some", f.ask.Spacing, least)
	case f.ask.Shape == plan.Spread && !(f.ask.Spacing > 0):
		return nil, "to spread needs a spacing"
	case !(f.ask.Spacing > 0):
		f.ask.Spacing = farther * least
	}
	if f.ask.Shape != plan.InLine {
		f.ask.Width, f.ask.Along = math.NaN(), math.NaN()
		f.across = vec.V3{0, 1, 0}
		return f, ""
	}
	if !(f.ask.Width > 0) {
		f.ask.Width = math.NaN()
	}
	if math.IsNaN(f.ask.Along) {
		f.ask.Along = 0
	} else if math.IsNaN(p.Heading) {
		return nil, "a direction of the line needs the payload's heading, too"
	} else {
		f.ask.Along = math.Remainder(f.ask.Along-p.Heading, math.Pi) // a line has no front
	}
	f.across = vec.V3{-math.Sin(f.ask.Along), math.Cos(f.ask.Along), 0}
	return f, ""
}

// find is the best formation, or why there is none.
func (f *former) find() (Formed, string) {
	room := *f
	room.m = within(f.m, leaves)
	if best, ok := room.best(); ok {
		return best, ""
	}
	for _, try := range []struct {
		says   string
		change func(*share.Model)
	}{
		{"the cables would lean beyond their cone, %s", func(m *share.Model) { m.Plan.Limits.Cone = 75 }},
		{"vehicles would work beyond what hover leaves for motion, %s", func(*share.Model) { room.limit = 10 }},
		{"cables would pull more than their working load, %s", func(m *share.Model) {
			for i := range m.Craft {
				m.Craft[i].WorkingLoad = math.NaN()
			}
		}},
		{"a cable would go slack, %s", func(m *share.Model) { m.Plan.Limits.TensionMin = 0 }},
	} {
		room.m, room.limit = within(f.m, leaves), f.limit
		try.change(room.m)
		if _, ok := room.best(); ok {
			return Formed{}, fmt.Sprintf(try.says, "when a part of each limit is kept for motion")
		}
	}
	return Formed{}, "no places for the vehicles were found that are far enough apart, and narrow enough"
}

// within is a model with a part of the tangents of its cone and of its vehicles' tilt.
func within(m *share.Model, part float64) *share.Model {
	n := *m
	n.Craft = append([]share.Craft(nil), m.Craft...)
	n.Plan.Limits.Cone = math.Atan(part*math.Tan(m.Plan.Limits.Cone*math.Pi/180)) * 180 / math.Pi
	for i := range n.Craft {
		v := &n.Craft[i].Vehicle
		v.TiltMax = math.Atan(part * math.Tan(v.TiltMax))
	}
	return &n
}

// best is the least of all starts; but one that the team can change to from the waypoint before
// without coming too near comes before one that it cannot.
func (f *former) best() (Formed, bool) {
	best, least, smooth, found := Formed{}, math.Inf(1), false, false
	for _, start := range f.starts() {
		got, value, ok := f.improve(start, least)
		if !ok {
			continue
		}
		can := closest(f.m, f.before, got.Pulls).Distance >= f.m.Plan.Limits.Separation
		if !found || can && !smooth || can == smooth && value < least*(1-1e-3) {
			best, least, smooth, found = got, value, can, true
		}
	}
	return best, found
}

// turnsMost is how often the program is solved from one start, still the change of its value over it that ends it, and hope
// the part of it that a round may still bring, falling with its square.
const (
	turnsMost = 20
	still     = 3e-4
	hope      = 1.0
)

// improve repeats the program between the planes of the places before, like (17.2); what does not come near least is given up.
func (f *former) improve(start []vec.V3, least float64) (best Formed, value float64, found bool) {
	k := len(start)
	f.at, f.high, f.pulls = append([]vec.V3(nil), start...), make([]float64, k), make([]float64, k)
	for i, p := range f.first.Parts {
		f.high[i], f.pulls[i] = p.Position[2], p.Tension
	}
	value, ease := math.Inf(1), 1.0
	for n := range turnsMost {
		p := f.program(ease)
		r := f.s.Solve(p)
		if r.Status != solve.Optimal {
			if ease -= 0.2; found || ease < 0.3 {
				break
			}
			continue
		}
		t := r.T
		if even := f.s.Settle(p, t*(1+1e-4)); even.Status == solve.Optimal {
			r = even
		} else {
			r = f.s.Solve(p)
		}
		got := formed(f.m, f.ask, r)
		for i, part := range got.Parts {
			f.at[i], f.high[i], f.pulls[i] = flat(part.Position), part.Position[2], part.Tension
		}
		whole := ease == 1
		ease = math.Min(1, ease+0.1)
		if !whole || !f.keeps(got) {
			continue
		}
		ended := value-t <= still*t
		if t < value {
			best, value, found = got, t, true
		}
		if ended || t > least*(1+hope/float64((n+1)*(n+1))) {
			break
		}
	}
	return best, value, found
}

// keeps tells that a formation is what was asked for, but for the rounding of its discs.
func (f *former) keeps(got Formed) bool {
	for i := range f.at {
		for j := range i {
			if f.at[i].Sub(f.at[j]).Norm() < f.need(i, j)*(1-1e-6) {
				return false
			}
		}
	}
	return got.Utilisation <= f.limit*(1+1e-3) && !(got.Width > f.ask.Width*(1+1e-4))
}

// need is how far apart two vehicles must be, seen from above: the spacing; stacked what their heights leave of it, but out of
// each other's wake, (17.6).
func (f *former) need(i, j int) float64 {
	d := f.ask.Spacing
	if f.ask.Shape != plan.Stacked {
		return d
	}
	if f.high[i] < f.high[j] {
		i, j = j, i
	}
	z := f.high[i] - f.high[j]
	return math.Max(math.Sqrt(math.Max(0, float64(d*d)-float64(z*z))), formation.Clear(&f.m.Craft[i], &f.m.Craft[j], z))
}

func flat(v vec.V3) vec.V3 { return vec.V3{v[0], v[1], 0} }
