package check_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/check"
	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// With everything near counted, the working of every check and vehicle of every plan is evaluated again; the check's row is what the vehicles'
// own workings give, and it stands beyond its range exactly when the model is said not to reach.
func TestWorkingOfNear(t *testing.T) {
	steps, states := 0, map[check.Status]int{}
	for name, p := range plans(t) {
		for _, clearance := range []float64{0.02, 1} {
			p := p.Clone()
			p.Near = plan.Near{Ground: plan.Counted, Download: plan.Counted, Wakes: plan.Counted, Clearance: clearance}
			_, m, a := hold(p)
			if m == nil || a.Parts == nil {
				continue
			}
			for _, row := range report.Build(p).Checks {
				list := make([]energy.Step, len(row.Steps))
				for i, s := range row.Steps {
					list[i] = energy.Step(s)
				}
				steps += evaluated(t, name+" "+row.ID, list)
				if row.ID != "near" || len(row.Steps) == 0 { // none: its policy lacks a number
					continue
				}
				states[row.Status]++
				lastIs(t, name, row, row.Steps[len(row.Steps)-1].Value)
				if beyond := row.Utilisation > 1+check.Edge; beyond != (row.Status == check.OutsideModel) {
					t.Errorf("%s: %s at %g", name, row.Status, row.Utilisation)
				}
			}
			f := check.Facts{Plan: m.Plan, Model: m, Answer: a}
			for i := range m.Craft {
				w := check.NearWorking(f, i)
				list := make([]energy.Step, len(w))
				for k, s := range w {
					list[k] = energy.Step(s)
				}
				steps += evaluated(t, name+" "+m.Craft[i].ID, list)
			}
		}
	}
	if steps < 800 || states[check.OK] == 0 || states[check.OutsideModel] == 0 {
		t.Errorf("%d steps were evaluated; %v", steps, states)
	}
}

// What is beyond its range says what, where, and what would help. A plate under the rotors of one vehicle takes C_d/2 of its thrust, by hand 58.5 %; a
// vehicle that grips the payload on the ground is below half a radius.
func TestNearSays(t *testing.T) {
	p := plans(t)["boathouse-panel"].Clone()
	p.Near = plan.Near{Download: plan.Counted, Clearance: math.NaN()}
	row := of(t, p, "near")
	if row.Status != check.OutsideModel || !strings.Contains(row.Sentence, "presses on the payload with") || !strings.Contains(row.Sentence, "farther out") {
		t.Errorf("%+v", row)
	}
	p = plans(t)["sensor-plate"].Clone()
	p.Near = plan.Near{Ground: plan.Counted, Clearance: 0}
	row = of(t, p, "near")
	if row.Status != check.OutsideModel || !strings.Contains(row.Sentence, "Lift higher") || row.Unit != "m" {
		t.Errorf("%+v", row)
	}
	p.Near = plan.Near{Ground: plan.LeftOut, Clearance: math.NaN()}
	if row = of(t, p, "near"); row.Status != check.NotApplicable {
		t.Errorf("%+v", row)
	}
}

func of(t *testing.T, p plan.Plan, id string) check.Row {
	t.Helper()
	for _, row := range report.Build(p).Checks {
		if row.ID == id {
			return row
		}
	}
	t.Fatal(id)
	return check.Row{}
}
