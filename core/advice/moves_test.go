package advice

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// generic is a plan without any symmetry: unlike vehicles, odd places, wind on the slant.
func generic(hold string) plan.Plan {
	p := plan.Blank()
	p.Title, p.Policy = "a plan without symmetry", plan.EvenEffort
	box := plan.BlankSolid()
	box.Shape, box.Size, box.Mass = plan.Box, []float64{2.1, 1.3, 0.4}, 9
	extra := plan.BlankSolid()
	extra.Shape, extra.Mass, extra.At = plan.Point, 1.7, vec.V3{0.31, -0.17, 0.09}
	p.Payload.Solids = []plan.Solid{box, extra}
	p.Vehicles = map[string]plan.Class{}
	places := []vec.V3{{1.9, 0.23, 0.2}, {0.12, 1.7, 0.23}, {-1.83, 0.31, 0.19}, {-0.27, -1.62, 0.21}, {1.2, -1.41, 0.17}}
	for i, at := range places {
		c := plan.BlankClass()
		c.Mass, c.Rotors, c.Arm, c.RotorRadius = 3+0.17*float64(i), 4, 0.33, 0.19
		c.RotorThrustMax, c.TorquePerThrust, c.DragArea = 17+0.9*float64(i*i%5), 0.016, 0.05+0.004*float64(i)
		name := "class " + string(rune('a'+i))
		p.Vehicles[name] = c
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Attach, m.Yaw = string(rune('A'+i)), name, at, 11*float64(i)
		m.Hold.Kind = hold
		if hold == plan.Cable {
			m.Hold.Length = 4
		} else {
			m.Hold.Lean = [2]float64{9 * math.Cos(2.2*float64(i)), 8 * math.Sin(2.2*float64(i))}
		}
		p.Team = append(p.Team, m)
	}
	p.Site.Wind, p.Site.WindTo, p.Site.Altitude = 4.3, 37, 210
	return p
}

// Derivatives against central differences of solving again, (11.1), to 1e-5; a rate that is a small
// difference of large terms only to 3e-6 of the largest, for the duals are no more accurate. Richardson's
// extrapolation of two steps, small enough that nobody else becomes the hardest-working.
func TestRates(t *testing.T) {
	mixed := generic(plan.Cable)
	mixed.Team[1].Hold, mixed.Team[3].Hold = generic(plan.Rigid).Team[1].Hold, generic(plan.Rigid).Team[3].Hold
	for name, p := range map[string]plan.Plan{"cables": generic(plan.Cable), "rigid": generic(plan.Rigid), "mixed": mixed} {
		l := newLift(p, always)
		m := l.model(l.plan, false)
		duals := solve.NewSolver()
		r := duals.Solve(m.Even(0))
		if r.Status != solve.Optimal {
			t.Fatalf("%s: %v", name, r.Status)
		}
		if x := solve.Lagrangian(m.Even(0), &r); math.Abs(x-r.T) > 1e-8 {
			t.Errorf("%s: the Lagrangian is %v at its own answer, t is %v", name, x, r.T)
		}
		again := func(k *knob, d float64) float64 {
			q := l.model(k.turned(l.plan, d), k.payload)
			return l.solver.Solve(q.Even(0)).T
		}
		largest := 0.0
		knobs := l.knobs()
		for i := range knobs {
			largest = math.Max(largest, math.Abs(l.rate(&knobs[i], &r)*knobs[i].step))
		}
		for i := range knobs {
			k := &knobs[i]
			central := func(h float64) float64 { return (again(k, h) - again(k, -h)) / (2 * h) }
			h := 0.02 * k.step
			want := (4*central(h/2) - central(h)) / 3
			got := l.rate(k, &r)
			if math.Abs(got-want) > 1e-5*math.Abs(want)+3e-6*largest/k.step {
				t.Errorf("%s, %s %s: rate %.9g, by solving again %.9g", name, k.id, k.who, got, want)
			}
		}
	}
}

// Two equal vehicles on a beam of 2 m between them, by hand: each carries m g/2 + its own weight, and
// a centre of mass δ off adds m g δ/2 m to the nearer one. Both ways cost the same; the derivative has a kink.
func TestKink(t *testing.T) {
	p, faults := example.Plan("beam-pair")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, v := range Moves(p) {
		switch {
		case v.ID == "payload.com_m.x":
			want := 4 * 9.80665 * 0.01 / 2 / 76
			near(t, "up", v.Up, want, 1e-7)
			near(t, "down", v.Down, want, 1e-7)
			if !v.Kink || !v.Verified {
				t.Errorf("centre of mass along x: %+v", v)
			}
		case v.ID == "payload.com_m.y":
			if !v.Lost {
				t.Errorf("across the line of the attachments the load tips: %+v", v)
			}
		case v.ID == "payload.com_m":
			if v.Toward != "A" && v.Toward != "B" || !strings.Contains(v.Sentence, "costs 0.258 % of thrust") {
				t.Errorf("%q", v.Sentence)
			}
		case v.ID == "payload.mass_kg":
			near(t, "payload", v.Rate, 9.80665/2/76, 1e-8)
			near(t, "payload by solving again", v.Up, 0.1*9.80665/2/76, 1e-7)
		}
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}
