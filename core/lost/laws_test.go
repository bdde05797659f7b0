package lost_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"cohoist/core/air"
	"cohoist/core/example"
	"cohoist/core/lost"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// read is an example with its model.
func read(t testing.TB, name string) (plan.Plan, *share.Model) {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p, _ = plan.Assume(p)
	return p, built(t, p)
}

func built(t testing.TB, p plan.Plan) *share.Model {
	t.Helper()
	body, err := mass.Of(p.Payload)
	rho, ok := air.Density(p.Site)
	if err != nil || !ok {
		t.Fatal(err, ok)
	}
	return share.New(p, body, air.Area(p.Payload), rho)
}

// written is the plan as one would write it with a vehicle dead: its mass a point of the payload where it holds,
// or gone. Nothing but its drag is left out.
func written(p plan.Plan, i int, gone bool) plan.Plan {
	dead := p.Team[i]
	p.Team = slices.Delete(slices.Clone(p.Team), i, i+1)
	if !gone {
		v := p.Vehicles[dead.Vehicle]
		p.Payload.Solids = append(slices.Clone(p.Payload.Solids),
			plan.Solid{Shape: plan.Point, Mass: v.Mass, At: dead.Attach, InnerRadius: math.NaN()})
	}
	return p
}

// Every loss of every example in still air is the share of the plan written without the vehicle, dead or cut away.
// The solver's bound and answer are within 1e-7 of each other, and so are two of its answers.
func TestWrittenWithout(t *testing.T) {
	s := solve.NewSolver()
	finite := 0
	for _, ex := range example.All {
		for _, rule := range []string{plan.DeadWeight, plan.CutAway} {
			p, _ := read(t, ex.Name)
			p.Site.Wind, p.Limits.Lost = 0, rule
			study := lost.Of(built(t, p), s, nil)
			for i, e := range study.Entries[:len(p.Team)] {
				cable := p.Team[i].Hold.Kind == plan.Cable
				r := s.Solve(built(t, written(p, i, cable && rule == plan.CutAway)).Even(0))
				want := r.T
				if r.Status == solve.Infeasible {
					want = math.Inf(1)
				} else {
					finite++
				}
				near(t, ex.Name+" "+rule+" without "+e.Lost[0], e.Utilisation, want, 2e-7)
			}
		}
	}
	if finite < 20 {
		t.Errorf("only %d losses are held", finite)
	}
}

// The law of no loss: without nobody, the model is the model, in wind too.
func TestNothingLost(t *testing.T) {
	s := solve.NewSolver()
	for _, ex := range example.All {
		p, _ := read(t, ex.Name)
		p.Site.Wind, p.Site.WindTo = 4, 30
		m := built(t, p)
		want := s.Solve(m.Even(0))
		whole := want.T
		got := s.Solve(m.Without().Even(0))
		if got.Status != want.Status || got.Status == solve.Optimal && math.Abs(got.T-whole) > 1e-12 {
			t.Errorf("%s: %v %.15g, whole %v %.15g", ex.Name, got.Status, got.T, want.Status, whole)
		}
	}
}

// A dead vehicle's drag: hung from a level payload in wind it pulls as it did flying, and held rigidly it
// leans with the rest. The wrench that is wanted is summed here part by part.
func TestDeadInWind(t *testing.T) {
	p, _ := read(t, "crate-ring")
	p.Site.Wind, p.Site.WindTo = 5, 40
	m := built(t, p)
	left := m.Without(2)
	dead := m.Craft[2]
	pull := vec.V3{0, 0, dead.Vehicle.Mass * share.Gravity}.Sub(dead.Drag)
	force, turn := m.Need.Add(pull), m.NeedTurn.Add(dead.At.Sub(m.Body.COM).Cross(pull))
	if d := left.Need.Sub(force).Norm() + left.NeedTurn.Sub(turn).Norm(); d > 1e-12 {
		t.Errorf("wanted %v %v, want %v %v", left.Need, left.NeedTurn, force, turn)
	}
	p, _ = read(t, "lattice-panel")
	p.Site.Wind, p.Site.WindTo = 5, 40
	m = built(t, p)
	left = m.Without(2)
	if d := left.Need.Sub(m.Need).Norm() + left.Lean.Sub(m.Lean).Norm(); d > 1e-12*m.Need.Norm() || m.Lean.Norm() < 0.01 {
		t.Errorf("lean %v, need %v; whole %v %v", left.Lean, left.Need, m.Lean, m.Need)
	}
}

// Rotors. A hex on a cable keeps four sixths of its thrust; a quad on one is lost. A rigid hold goes on
// with the rotors that are left, as if the lost one had hardly any thrust.
func TestRotors(t *testing.T) {
	s := solve.NewSolver()
	p, m := read(t, "mixed-team") // A and B hexes, C and D quads
	study := lost.Of(m, s, nil)
	rotors := study.Entries[len(study.Entries)-study.Rotors.Asked:]
	if study.Rotors.Asked != 4 || rotors[0].Grounded || !rotors[2].Grounded || rotors[2].Utilisation != study.Entries[2].Utilisation {
		t.Fatalf("%+v", rotors)
	}
	weaker := p.Vehicles["carrier-hex"]
	weaker.RotorThrustMax *= 4. / 6
	p.Vehicles["weaker"] = weaker
	p.Team[0].Vehicle = "weaker"
	near(t, "hex", rotors[0].Utilisation, s.Solve(built(t, p).Even(0)).T, 2e-7)

	p, m = read(t, "lattice-panel")
	study = lost.Of(m, s, nil)
	if study.Rotors.Asked != 16 {
		t.Fatalf("%d rotors", study.Rotors.Asked)
	}
	for i, e := range study.Entries[len(study.Entries)-16:] {
		program := m.Even(0)
		program.Lines[i].HiT = 0 // it gives nothing
		near(t, e.Lost[0], e.Utilisation, s.Solve(program).T, 2e-7)
	}
}

// What is proved of every entry of every example: balance to 1e-11 and a bound within 1e-7.
func TestEvidence(t *testing.T) {
	for _, ex := range example.All {
		_, m := read(t, ex.Name)
		study := lost.Of(m, solve.NewSolver(), nil)
		n := len(m.Craft)
		if study.Vehicles.Asked != n || study.Pairs.Asked != n*(n-1)/2 || study.Rotors.Asked < n {
			t.Errorf("%s: asked %+v", ex.Name, study)
		}
		for _, e := range study.Entries {
			switch e.Status {
			case solve.Optimal:
				if e.Residual > 1e-11 || math.Abs(e.Utilisation-e.Bound) > 1e-7*(1+e.Bound) {
					t.Errorf("%s %v: %+v", ex.Name, e.Lost, e)
				}
			case solve.Infeasible:
				if !math.IsInf(e.Utilisation, 1) {
					t.Errorf("%s %v: %+v", ex.Name, e.Lost, e)
				}
			default:
				t.Errorf("%s %v: %v", ex.Name, e.Lost, e.Status)
			}
		}
		t.Logf("%s:\n  %s\n  %s\n  %s\n  %s", ex.Name, study.Vehicles.Sentence, study.Pairs.Sentence, study.Rotors.Sentence, study.Taut)
	}
}

// What the sheet says of the crate when a lost vehicle is cut away: any one may be, and the lines bear it.
func TestWords(t *testing.T) {
	p, _ := read(t, "crate-ring")
	p.Site.Wind, p.Limits.TensionMin, p.Limits.Lost = 0, 0, plan.CutAway
	study := lost.Of(built(t, p), solve.NewSolver(), nil)
	// by hand: without one of six, four of the rest carry a quarter of 9 kg each and the opposite one idles
	// (drop-out of a ring, factor 1.5): (9/4 + 3.4) g/76 N = 0.729; from 9 g/6 = 14.7 N to 22.1 N, and once as far beyond: 29.4 N
	want := "The rest hold the payload whichever vehicle is lost, within the limit of 0.8: without A, the worst, they need 0.729 of their thrust. A vehicle lost on a cable is cut away."
	if study.Vehicles.Sentence != want {
		t.Errorf("%s", study.Vehicles.Sentence)
	}
	if !strings.Contains(study.Taut, "goes from 14.7 N to 22.1 N and bears 29.4 N in the first swing, 7.35 % of its working load") {
		t.Errorf("%s", study.Taut)
	}
}

// A study that is stopped says so and claims nothing of what it did not ask.
func TestStopped(t *testing.T) {
	_, m := read(t, "deck-of-eight")
	study := lost.Of(m, solve.NewSolver(), func(done, all int) bool { return done < 10 })
	if !study.Stopped || len(study.Entries) != 10 || study.Pairs.Survives() {
		t.Errorf("%+v", study)
	}
	if !strings.Contains(study.Pairs.Sentence, "2 of 28") || !strings.Contains(study.Rotors.Sentence, "0 of 8") {
		t.Errorf("%q, %q", study.Pairs.Sentence, study.Rotors.Sentence)
	}
}

// Alone, a vehicle cannot be lost; beyond forty, pairs are not asked.
func TestFewAndMany(t *testing.T) {
	one := study(team(class(1, 100, 4, 0.1, 0), on(plan.Cable, 0, 0)), weighing(10))
	if !math.IsInf(one.Entries[0].Utilisation, 1) || one.Pairs.Sentence != "There is no pair of vehicles to lose." {
		t.Errorf("%+v", one)
	}
	many := study(ring(class(light, 1, 4, 0, 0), plan.Rigid, 41), weighing(1))
	if many.Pairs.Asked != 0 || many.Pairs.Sentence != "Pairs are asked up to 40 vehicles." || !many.Vehicles.Survives() {
		t.Errorf("%+v %+v", many.Vehicles, many.Pairs)
	}
}

// BenchmarkEight is singles, pairs and rotors of eight vehicles.
func BenchmarkEight(b *testing.B) {
	_, deck := read(b, "deck-of-eight")
	rigid := model(ring(class(2, 60, 4, 0.2, 0.01), plan.Rigid, 8), weighing(100))
	for _, c := range []struct {
		name string
		m    *share.Model
	}{{"cables", deck}, {"rigid", rigid}} {
		b.Run(c.name, func(b *testing.B) {
			s := solve.NewSolver()
			for range b.N {
				lost.Of(c.m, s, nil)
			}
		})
	}
}
