package advice

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/check"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

func open(t testing.TB, name string) plan.Plan {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return edit(p)
}

// ill are plans that fail each in its own way, and examples that are thin.
func ill(t testing.TB) map[string]plan.Plan {
	list := map[string]plan.Plan{}
	for _, name := range []string{"lens-too-heavy", "deck-of-eight", "handrail-beam"} {
		list[name] = open(t, name)
	}
	vary := func(name, from string, change func(*plan.Plan)) {
		p := open(t, from)
		change(&p)
		list[name] = p
	}
	vary("weak rigid team", "lattice-panel", func(p *plan.Plan) { p.Payload.Solids[0].Mass = 9 })
	vary("centre far outside", "crate-ring", func(p *plan.Plan) { p.Payload.COM = &vec.V3{1.5, 0.9, 0} })
	vary("centre beside the line", "beam-pair", func(p *plan.Plan) { p.Payload.COM = &vec.V3{0.1, 0.15, 0} })
	vary("weak lines", "crate-ring", func(p *plan.Plan) {
		for i := range p.Team {
			p.Team[i].Hold.WorkingLoad = 10
		}
	})
	vary("much wind", "crate-ring", func(p *plan.Plan) { p.Site.Wind = 11 })
	vary("far apart", "beam-pair", func(p *plan.Plan) { p.Limits.Separation = 4.5 })
	return list
}

// Every remedy's plan is one that the reader accepts, its own report says what the remedy says, the
// checks that it is for hold, and a fiftieth less of the change would not have done.
func TestRemediesHold(t *testing.T) {
	for name, p := range ill(t) {
		before := report.Build(p)
		list := Remedies(p)
		if len(list) == 0 {
			t.Errorf("%s: %s, and nothing would do", name, before.Verdict)
		}
		for _, r := range list {
			q, faults := plan.Read(plan.Encode(r.Plan))
			if len(faults) > 0 {
				t.Errorf("%s, %s: %v", name, r.Kind, faults)
				continue
			}
			after := report.Build(q)
			if after.Verdict != r.Verdict {
				t.Errorf("%s, %s: the plan's report says %s, the remedy %s", name, r.Kind, after.Verdict, r.Verdict)
			}
			if len(r.Cures) == 0 {
				t.Errorf("%s, %s cures nothing", name, r.Kind)
			}
			for _, row := range after.Checks {
				if held(r.Cures, row.ID) && row.Status == check.Fail {
					t.Errorf("%s, %s: %s fails still", name, r.Kind, row.ID)
				}
				if (row.Status == check.Fail) != held(r.Still, row.ID) {
					t.Errorf("%s, %s: %s is %s, which the remedy does not say", name, r.Kind, row.ID, row.Status)
				}
			}
			if len(r.Still) > 0 && !strings.Contains(r.Sentence, "Even then this fails") {
				t.Errorf("%s: %q does not say what still fails", name, r.Sentence)
			}
			if r.Kind == Payload {
				less := edit(p)
				scaleMass(&less, (r.To+0.02*(r.From-r.To)+grainOf(r.To, 3))/r.From)
				if stillHeld(report.Build(less), r, before.Verdict) {
					t.Errorf("%s: a little more than %v kg would do, too", name, r.To)
				}
			}
		}
	}
}

// stillHeld tells that a report reaches what a remedy was for.
func stillHeld(after report.Report, r Remedy, before report.Verdict) bool {
	if len(r.Still) == 0 && after.Verdict == report.Fails { // a cure must not break something else either
		return false
	}
	for _, row := range after.Checks {
		if held(r.Cures, row.ID) && (row.Status == check.Fail || before == report.ThinLift && row.Status == check.Thin) {
			return false
		}
	}
	return true
}

// Two equal vehicles on a beam, nothing kept free but thrust, by hand with g = 9.80665: they hold
// 2 (0.8 · 76 N/g − 3.4 kg) = 5.5997 kg, rounded down to 5.59; for 40 kg each must give (20 + 3.4) g = 229.48 N,
// which is 3.774 times 0.8 · 76 N, rounded up to 3.78.
func TestByHand(t *testing.T) {
	p := open(t, "beam-pair")
	p.Payload.Solids[0].Mass = 40
	p.Limits.COMError, p.Limits.TurnReserve = 0, 0
	for kind, want := range map[string]float64{Payload: 5.59, AllStronger: 3.78} {
		near(t, kind, remedy(t, p, kind).To, want, 1e-9)
	}
}

// A centre of mass 15 cm beside the line of two attachments must come back by just that; one 0.5 m too
// far along it comes back until the nearer vehicle is at its limit: with the share 1/2 + x/2 m of 5 kg,
// 5 (1/2 + x/2) g + 3.4 g = 60.8 N at x = 0.11991 m, so by 0.38009 m, in whole millimetres 0.381.
func TestCentre(t *testing.T) {
	p := open(t, "beam-pair")
	p.Payload.COM = &vec.V3{0.1, 0.15, 0}
	r := remedy(t, p, Balance)
	near(t, "back onto the line", r.To, 0.15, 1e-12)
	if !strings.Contains(r.Sentence, "15 cm along −y, to (0.1, 0, 0) m") {
		t.Errorf("%q", r.Sentence)
	}
	p = open(t, "beam-pair")
	p.Payload.Solids[0].Mass, p.Limits.COMError, p.Limits.TurnReserve = 5, 0, 0
	p.Payload.COM = &vec.V3{0.5, 0, 0}
	x := 2*((60.8/9.80665-3.4)/5) - 1
	near(t, "along the line", remedy(t, p, Balance).To, math.Ceil(1000*(0.5-x))/1000, 1e-12)
}

// A plan that lifts asks for nothing; one that lacks a number cannot be advised on.
func TestNothingToDo(t *testing.T) {
	p := open(t, "beam-pair")
	if a, _ := Of(p, nil); len(a.Why) > 0 || len(a.Remedies) > 0 || len(a.Moves) == 0 {
		t.Errorf("advice on a plan that lifts: %d reasons, %d remedies, %d moves", len(a.Why), len(a.Remedies), len(a.Moves))
	}
	p.Payload.Solids[0].Mass = math.NaN()
	if a, _ := Of(p, nil); len(a.Why) != 1 || len(a.Remedies) > 0 || len(a.Moves) > 0 {
		t.Errorf("advice on a plan without a mass: %+v", a)
	}
}

func remedy(t *testing.T, p plan.Plan, kind string) Remedy {
	t.Helper()
	for _, r := range Remedies(p) {
		if r.Kind == kind {
			return r
		}
	}
	t.Fatalf("no remedy of kind %s", kind)
	return Remedy{}
}

// BenchmarkOf is all advice on eight vehicles that only just lift; with Moves alone beside it.
func BenchmarkOf(b *testing.B) {
	p := open(b, "deck-of-eight")
	b.Run("all", func(b *testing.B) {
		for range b.N {
			Of(p, nil)
		}
	})
	b.Run("moves", func(b *testing.B) {
		for range b.N {
			Moves(p)
		}
	})
}

// Advice that is told to stop does so at once, and says that it is not whole.
func TestAdviceStops(t *testing.T) {
	p, _ := example.Plan("lens-too-heavy")
	asked := 0
	if _, whole := Of(p, func() bool { asked++; return asked < 20 }); whole || asked != 20 {
		t.Errorf("whole %v after it was asked %d times, want 20", whole, asked)
	}
}
