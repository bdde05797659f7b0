package gust_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/air"
	"cohoist/core/example"
	"cohoist/core/gust"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

const rho = 1.225

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.12g, want %.12g within %g", what, got, want, tol)
	}
}

// lift is a plan with what its balance needs.
type lift struct {
	plan.Plan
	body mass.Properties
	area vec.V3
	rho  float64
}

func read(t testing.TB, name string) lift {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p, _ = plan.Assume(p)
	body, err := mass.Of(p.Payload)
	density, ok := air.Density(p.Site)
	if err != nil || !ok {
		t.Fatal(err, ok)
	}
	return lift{p, body, air.Area(p.Payload), density}
}

func (l lift) model() *share.Model { return share.New(l.Plan, l.body, l.area, l.rho) }

// alone is one vehicle of 2 kg with 60 N and drag area 0.05 m², and a payload of 1 kg and 0.2 m² at its hold.
func alone(kind string, thrust, tilt, cone float64) lift {
	c := plan.Class{Mass: 2, Rotors: 4, Layout: plan.Cross, Arm: 0.2, RotorRadius: 0.1, RotorThrustMax: thrust / 4,
		TorquePerThrust: 0.01, DragArea: 0.05, TiltMax: tilt}
	p := plan.Plan{Vehicles: map[string]plan.Class{"v": c}, Policy: plan.EvenEffort,
		Team:   []plan.Member{{ID: "A", Vehicle: "v", Hold: plan.Hold{Kind: kind, Length: 3, WorkingLoad: math.NaN()}}},
		Limits: plan.Limits{Utilisation: 0.8, Cone: cone}}
	return lift{p, mass.Properties{Mass: 1}, vec.V3{0.2, 0.2, 0.2}, rho}
}

// One vehicle, by hand, with drag D = ½ ρ A v² = k v² on each. On a cable F = W ẑ − D_p, f = F + m g ẑ − D_v: the
// thrust ends it at (D_p + D_v)² + (W + m g)² = (U T)², the tilt at D_p + D_v = tan θ (W + m g), the cone at
// D_p = tan γ W. Rigid, the body leans as f does, whatever its attitude, for its areas are the same all round.
// Speeds to 1e-7: those of the program are √t with t to 1e-9, the bracketed ones are within 1e-9.
func TestAlone(t *testing.T) {
	const w, all = share.Gravity, 3 * share.Gravity
	kp, k := rho/2*0.2, rho/2*0.25
	tan := func(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }
	for _, r := range []struct {
		what               string
		kind               string
		thrust, tilt, cone float64
		speed              float64
		by                 gust.Limit
	}{
		{"cable, thrust", plan.Cable, 40, 60, 80, math.Sqrt(math.Sqrt(32*32-all*all) / k), gust.Utilisation},
		{"cable, tilt", plan.Cable, 90, 20, 80, math.Sqrt(tan(20) * all / k), gust.Tilt},
		{"cable, cone", plan.Cable, 90, 60, 30, math.Sqrt(tan(30) * w / kp), gust.Cone},
		{"rigid, thrust", plan.Rigid, 40, 60, 30, math.Sqrt(math.Sqrt(32*32-all*all) / k), gust.Utilisation},
		{"rigid, tilt", plan.Rigid, 90, 20, 30, math.Sqrt(tan(20) * all / k), gust.Tilt},
		{"rigid, lean", plan.Rigid, 90, 45, 30, math.Sqrt(tan(30) * all / k), gust.Lean},
	} {
		l := alone(r.kind, r.thrust, r.tilt, r.cone)
		l.Site = plan.Site{Wind: 5, WindTo: 30, GustFactor: 1.4}
		rose := gust.Of(l.model(), solve.NewSolver(), nil)
		for _, s := range append(rose.Sides, rose.Site) {
			near(t, r.what, s.Speed, r.speed, 1e-7)
			if s.EndedBy != r.by || r.by != gust.Lean && (len(s.Who) != 1 || s.Who[0] != "A") {
				t.Errorf("%s: ended by %+v", r.what, s)
			}
		}
		near(t, "gust", rose.Gust, 7, 1e-12)
		if rose.Holds != (r.speed >= 7) {
			t.Errorf("%s: %+v", r.what, rose.Holds)
		}
	}
}

// Lines that bear no more end it, too; a working load of 12 N: D_p² + W² = 12².
func TestWorkingLoad(t *testing.T) {
	l := alone(plan.Cable, 90, 60, 80)
	l.Team[0].Hold.WorkingLoad = 12
	s := gust.Of(l.model(), solve.NewSolver(), nil).Sides[7]
	near(t, "speed", s.Speed, math.Sqrt(math.Sqrt(144-share.Gravity*share.Gravity)/(rho/2*0.2)), 1e-7)
	if s.EndedBy != gust.WorkingLoad {
		t.Errorf("%+v", s)
	}
}

// holds tells by a share of its own whether the plan is within all limits in a wind.
func (l lift) holds(s *solve.Solver, v, to float64) bool {
	l.Site.Wind, l.Site.WindTo = v, to
	m := l.model()
	r := s.Solve(m.Even(0))
	if !m.Settled || r.Status != solve.Optimal || r.T > l.Limits.Utilisation+1e-8 || m.Lean.Norm() > math.Pi/6 {
		return false
	}
	for i := range m.Craft {
		if m.Craft[i].Rigid && m.Tilt(&m.Craft[i]) > m.Craft[i].Vehicle.TiltMax+1e-8 {
			return false
		}
	}
	return true
}

// Every example from all sides: held a millionth below, not a millionth above, by a share of the plan in that wind. A
// millionth, for utilisation grows with at least a hundredth of the speed and is known to 1e-8.
func TestEdge(t *testing.T) {
	s := solve.NewSolver()
	ends := map[gust.Limit]int{}
	for _, ex := range example.All {
		l := read(t, ex.Name)
		rose := gust.Of(l.model(), s, nil)
		t.Logf("%s: %s", ex.Name, rose.Sentence())
		for _, side := range append(rose.Sides, rose.Site) {
			ends[side.EndedBy]++
			if side.Speed > 0 && !l.holds(s, side.Speed*(1-1e-6), side.To) {
				t.Errorf("%s: %+v is not held", ex.Name, side)
			}
			if more := math.Max(side.Speed*(1+1e-6), breath); side.Speed < gust.Cap && l.holds(s, more, side.To) {
				t.Errorf("%s: more than %+v is held", ex.Name, side)
			}
		}
	}
	t.Log(ends)
	if len(ends) < 3 {
		t.Errorf("ended by %v only", ends)
	}
}

// breath is a wind whose drag counts, m/s: the drag of less than a millimetre a second is rounding.
const breath = 0.1

// Letting out the limit that is named lets more wind in. Tilts are made smaller than the lean that the model goes to.
func TestNamedLimit(t *testing.T) {
	s := solve.NewSolver()
	for _, ex := range example.All {
		l := read(t, ex.Name)
		l.Vehicles = tilting(l.Vehicles, 0.8)
		for _, side := range gust.Of(l.model(), s, nil).Sides {
			if int(side.To)%40 != 0 || side.Speed == 0 {
				continue
			}
			eased := l
			switch side.EndedBy {
			case gust.Utilisation:
				eased.Limits.Utilisation *= 1.01
			case gust.Cone:
				eased.Limits.Cone *= 1.01
			case gust.Slack:
				eased.Limits.TensionMin *= 0.9
			case gust.Tilt:
				eased.Vehicles = tilting(l.Vehicles, 1.01)
			default:
				continue
			}
			if !eased.holds(s, side.Speed*(1+1e-5), side.To) {
				t.Errorf("%s: %+v is not what ends it", ex.Name, side)
			}
		}
	}
}

// tilting is vehicles that may tilt k times as far.
func tilting(vehicles map[string]plan.Class, k float64) map[string]plan.Class {
	out := map[string]plan.Class{}
	for name, c := range vehicles {
		c.TiltMax *= k
		out[name] = c
	}
	return out
}

// The law of turning: a plan turned by 40° about the vertical has the rose turned by four places.
func TestTurned(t *testing.T) {
	s := solve.NewSolver()
	for _, ex := range example.All {
		l := read(t, ex.Name)
		l.area[1] = l.area[0] // areas do not turn
		before := gust.Of(l.model(), s, nil)
		r := vec.Rot(vec.V3{0, 0, 40 * math.Pi / 180})
		l.Team = append([]plan.Member(nil), l.Team...)
		for i := range l.Team {
			l.Team[i].Attach = r.Mul(l.Team[i].Attach)
			l.Team[i].Yaw += 40
		}
		l.body.COM = r.Mul(l.body.COM)
		after := gust.Of(l.model(), s, nil)
		for i, side := range before.Sides {
			near(t, ex.Name, after.Sides[(i+4)%gust.Sides].Speed, side.Speed, 1e-6)
		}
	}
}

// What is not held in calm is held in no wind; what has no drag feels none; two cables hold a beam that is high below them
// level along their line only.
func TestEnds(t *testing.T) {
	s := solve.NewSolver()
	heavy := gust.Of(read(t, "lens-too-heavy").model(), s, nil)
	if heavy.Sides[3].Speed != 0 || heavy.Sides[3].EndedBy != gust.Utilisation || !strings.Contains(heavy.Sentence(), "no wind from any side") {
		t.Errorf("%+v %s", heavy.Sides[3], heavy.Sentence())
	}
	for _, kind := range []string{plan.Cable, plan.Rigid} {
		l := alone(kind, 90, 60, 30)
		l.area = vec.V3{}
		l.Vehicles = map[string]plan.Class{"v": l.Vehicles["v"]}
		c := l.Vehicles["v"]
		c.DragArea = 0
		l.Vehicles["v"] = c
		if r := gust.Of(l.model(), s, nil); r.Sides[5].Speed != gust.Cap || r.Sides[5].EndedBy != gust.None {
			t.Errorf("%s: %+v", kind, r.Sides[5])
		}
	}
	beam := gust.Of(read(t, "beam-pair").model(), s, nil)
	if across := beam.Sides[9]; across.Speed > 1e-4 || across.EndedBy != gust.NoBalance || !(beam.Sides[0].Speed > 1) {
		t.Errorf("along %+v, across %+v", beam.Sides[0], across)
	}
	stopped := gust.Of(read(t, "crate-ring").model(), s, func(done, all int) bool { return done < 3 })
	if !stopped.Stopped || len(stopped.Sides) != 3 || !strings.HasPrefix(stopped.Sentence(), "Stopped") {
		t.Errorf("%+v", stopped)
	}
}

// BenchmarkEight is the rose of eight vehicles.
func BenchmarkEight(b *testing.B) {
	deck := read(b, "deck-of-eight")
	rigid := deck
	rigid.Team = append([]plan.Member(nil), deck.Team...)
	for i := range rigid.Team {
		rigid.Team[i].Hold = plan.Hold{Kind: plan.Rigid}
	}
	for _, c := range []struct {
		name string
		m    *share.Model
	}{{"cables", deck.model()}, {"rigid", rigid.model()}} {
		b.Run(c.name, func(b *testing.B) {
			s := solve.NewSolver()
			for range b.N {
				gust.Of(c.m, s, nil)
			}
		})
	}
}

// With everything near counted the wind found is that at which a share of its own, with the wakes of hover, is at the limit: held a millionth below,
// not a millionth above.
func TestEdgeWithWakes(t *testing.T) {
	s := solve.NewSolver()
	asked := 0
	for _, name := range []string{"crate-ring", "beam-pair", "mixed-team", "sensor-plate"} {
		l := read(t, name)
		l.Near = plan.Near{Ground: plan.Counted, Download: plan.Counted, Wakes: plan.Counted, Clearance: 0.3}
		m := l.model()
		for _, side := range gust.Of(m, s, nil).Sides {
			if !(side.Speed > 0) || side.EndedBy != gust.Utilisation {
				continue
			}
			asked++
			for _, x := range []float64{1 - 1e-6, 1 + 1e-6} {
				r := s.Solve(m.Aloft().InWind(side.Speed*x, side.To).Even(0))
				if holds := r.Status == solve.Optimal && r.T <= l.Limits.Utilisation+1e-9; holds != (x < 1) {
					t.Errorf("%s to %g°: %g m/s held %v at %g", name, side.To, side.Speed*x, holds, r.T)
				}
			}
		}
	}
	if asked < 20 {
		t.Errorf("only %d sides were asked", asked)
	}
}
