package patch_test

import (
	"math"
	"testing"

	"cohoist/core/air"
	"cohoist/core/example"
	"cohoist/core/mass"
	"cohoist/core/patch"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

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
	rho, ok := air.Density(p.Site)
	if err != nil || !ok {
		t.Fatal(err, ok)
	}
	return lift{p, body, air.Area(p.Payload), rho}
}

func (l lift) model() *share.Model { return share.New(l.Plan, l.body, l.area, l.rho) }

// at is the model with its centre of mass elsewhere in the plane.
func (l lift) at(c patch.XY) *share.Model {
	l.body.COM[0], l.body.COM[1] = c[0], c[1]
	return l.model()
}

// held tells by a share of its own whether a model is within its limit.
func held(s *solve.Solver, m *share.Model) bool {
	r := s.Solve(m.Even(0))
	return r.Status == solve.Optimal && r.T <= m.Plan.Limits.Utilisation
}

// depth is how far c is inside a convex polygon, m; negative: outside.
func depth(polygon []patch.XY, c patch.XY) float64 {
	if len(polygon) < 3 {
		return math.Inf(-1)
	}
	least := math.Inf(1)
	for i, b := range polygon {
		a := polygon[(i+len(polygon)-1)%len(polygon)]
		ex, ey := b[0]-a[0], b[1]-a[1]
		least = math.Min(least, (ex*(c[1]-a[1])-ey*(c[0]-a[0]))/math.Hypot(ex, ey))
	}
	return least
}

// edge is how near to the edge a grid's point may be to be left out, m: the solver's accuracy, 1e-9 of the utilisation,
// over the least slope of it.
const edge = 1e-6

// ask compares a patch with shares at points of a grid around it: everything inside Inner is held, nothing outside Outer.
func ask(t *testing.T, name string, p patch.Patch, holds func(patch.XY) bool) (in, out int) {
	t.Helper()
	lo, hi := patch.XY{math.Inf(1), math.Inf(1)}, patch.XY{math.Inf(-1), math.Inf(-1)}
	for _, c := range p.Outer {
		for k := range 2 {
			lo[k], hi[k] = math.Min(lo[k], c[k]), math.Max(hi[k], c[k])
		}
	}
	const n = 15
	for i := range n {
		for j := range n {
			c := patch.XY{lo[0] + (hi[0]-lo[0])*(1.2*float64(i)/(n-1)-0.1), lo[1] + (hi[1]-lo[1])*(1.2*float64(j)/(n-1)-0.1)}
			got := holds(c)
			if depth(p.Inner, c) > edge {
				in++
				if !got {
					t.Errorf("%s: %v is inside and not held", name, c)
				}
			}
			if depth(p.Outer, c) < -edge {
				out++
				if got {
					t.Errorf("%s: %v is outside and held", name, c)
				}
			}
		}
	}
	return in, out
}

// Every example, in still air and in wind, against shares on a grid.
func TestGrid(t *testing.T) {
	s := solve.NewSolver()
	wide := 0
	for _, ex := range example.All {
		for _, wind := range []float64{0, 5} {
			l := read(t, ex.Name)
			l.Site.Wind, l.Site.WindTo = wind, 50
			p := patch.Of(l.model(), s)
			if wind == 0 {
				t.Logf("%s: %s (%d solves, gap %.2g m)", ex.Name, p.Sentence(), p.Solves, p.Gap)
			}
			if len(p.Outer) < 3 {
				continue
			}
			wide++
			in, out := ask(t, ex.Name, p, func(c patch.XY) bool { return held(s, l.at(c)) })
			if in < 50 || out < 30 {
				t.Errorf("%s: %d points inside, %d outside", ex.Name, in, out)
			}
			if largest := math.Sqrt(p.Area()); !(p.Gap <= 0.01*largest) {
				t.Errorf("%s: gap %g m of %g m after %d solves", ex.Name, p.Gap, largest, p.Solves)
			}
		}
	}
	if wide < 8 {
		t.Errorf("only %d patches have a width", wide)
	}
}

// What is left after any one loss, on a grid: held with every vehicle out in turn.
func TestGridLost(t *testing.T) {
	s := solve.NewSolver()
	for _, name := range []string{"deck-of-eight", "crate-ring", "lattice-panel", "sensor-plate"} {
		for _, rule := range []string{plan.DeadWeight, plan.CutAway} {
			l := read(t, name)
			l.Limits.Lost, l.Limits.Utilisation = rule, 1
			left := patch.AnyLost(l.model(), s, nil)
			t.Logf("%s, %s: %s", name, rule, left.Sentence())
			if left.All.Status != solve.Optimal {
				continue
			}
			ask(t, name, left.All, func(c patch.XY) bool {
				m := l.at(c)
				for i := range m.Craft {
					if !held(s, m.Without(i)) {
						return false
					}
				}
				return true
			})
		}
	}
}

// reach is the support of a polygon: how far it goes in a direction.
func reach(polygon []patch.XY, angle float64) float64 {
	sin, cos := math.Sincos(angle)
	most := math.Inf(-1)
	for _, c := range polygon {
		most = math.Max(most, cos*c[0]+sin*c[1])
	}
	return most
}

// same tells that two patches are, within their gaps.
func same(t *testing.T, what string, a, b patch.Patch, turn float64) {
	t.Helper()
	if (len(a.Inner) > 0) != (len(b.Inner) > 0) {
		t.Fatalf("%s: %+v, %+v", what, a, b)
	}
	if len(a.Inner) == 0 {
		return
	}
	for i := range 32 {
		angle := 2 * math.Pi * float64(i) / 32
		near(t, what, reach(b.Inner, angle+turn), reach(a.Inner, angle), a.Gap+b.Gap+edge)
	}
}

// Laws: the patch stays where it is when the plan's centre of mass moves, and turns with the plan about the vertical.
func TestLaws(t *testing.T) {
	s := solve.NewSolver()
	for _, ex := range example.All {
		l := read(t, ex.Name)
		l.Site.Wind, l.Site.WindTo = 4, 20
		if ex.Name == "beam-pair" || ex.Name == "handrail-beam" { // in one line: held level in still air only
			l.Site.Wind = 0
		}
		p := patch.Of(l.model(), s)
		same(t, ex.Name+" moved", p, patch.Of(l.at(patch.XY{l.body.COM[0] + 0.05, l.body.COM[1] - 0.02}), s), 0)

		const turn = 0.7
		r := vec.Rot(vec.V3{0, 0, turn})
		turned := l
		turned.Team = append([]plan.Member(nil), l.Team...)
		for i := range turned.Team {
			turned.Team[i].Attach = r.Mul(l.Team[i].Attach)
			turned.Team[i].Yaw += turn * 180 / math.Pi
		}
		turned.Payload.Solids = append([]plan.Solid(nil), l.Payload.Solids...)
		for i := range turned.Payload.Solids { // what the wakes meet
			solid := &turned.Payload.Solids[i]
			solid.At, solid.Turn[2] = r.Mul(solid.At), solid.Turn[2]+turn*180/math.Pi
		}
		turned.body.COM = r.Mul(l.body.COM)
		turned.area = vec.V3{l.area[0], l.area[0], l.area[2]} // the same from all sides, for areas do not turn
		l.area = turned.area
		p = patch.Of(l.model(), s)
		turned.Site.WindTo += turn * 180 / math.Pi
		same(t, ex.Name+" turned", p, patch.Of(turned.model(), s), turn)
	}
}

// One more vehicle that can carry its own weight never makes the patch smaller: its cable may hang slack.
func TestOneMore(t *testing.T) {
	s := solve.NewSolver()
	l := read(t, "crate-ring")
	l.Site.Wind, l.Limits.TensionMin = 0, 0
	before := patch.Of(l.model(), s)
	more := l.Team[0]
	more.ID, more.Attach = "more", vec.V3{0.1, 0.2, 0.4}
	l.Team = append(append([]plan.Member(nil), l.Team...), more)
	after := patch.Of(l.model(), s)
	for _, c := range before.Inner {
		if depth(after.Outer, c) < -edge {
			t.Errorf("%v was held by one less", c)
		}
	}
}

// BenchmarkEight is the patch of eight vehicles, and of all their losses.
func BenchmarkEight(b *testing.B) {
	calm := read(b, "deck-of-eight")
	calm.Limits.Utilisation, calm.Limits.Lost = 1, plan.CutAway // so that every loss leaves a patch
	deck, breeze := calm.model(), calm
	breeze.Site.Wind = 5
	windy := breeze.model()
	grip := breeze
	grip.Team = append([]plan.Member(nil), breeze.Team...)
	for i := range grip.Team {
		grip.Team[i].Hold = plan.Hold{Kind: plan.Rigid}
	}
	s := solve.NewSolver()
	for _, c := range []struct {
		name string
		m    *share.Model
	}{{"still", deck}, {"wind", windy}, {"rigid in wind", grip.model()}} {
		b.Run(c.name, func(b *testing.B) {
			solves := 0
			for range b.N {
				solves += patch.Of(c.m, s).Solves
			}
			b.ReportMetric(float64(solves)/float64(b.N), "solves/op")
		})
		b.Run(c.name+" lost", func(b *testing.B) {
			for range b.N {
				patch.AnyLost(c.m, s, nil)
			}
		})
	}
}
