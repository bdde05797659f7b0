package energy

import (
	"math"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/momentum"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// One vehicle on a cable of 3 m, its payload a point 1 m above the ground: rotors of 0.127 m are 4 m up, by hand 1/(1 − (0.127/16)²) = 1.0000630; its
// power is that of the same thrust over this, to the power 1.5.
func TestGrounded(t *testing.T) {
	far, up := oneUp(t, false), oneUp(t, true)
	ratio := 1 / (1 - (0.127/16)*(0.127/16))
	near(t, "power", up-far, far*(math.Pow(ratio, -1.5)-1), 1e-6)
	area := math.Pi * 0.127 * 0.127
	near(t, "ideal", far, 4*momentum.Ideal((0.5+1)*share.Gravity/4, area, 1.225)/(0.6*0.8), 1e-7)
}

func oneUp(t *testing.T, counted bool) float64 {
	t.Helper()
	c := class()
	c.Bench = nil
	p := plan.Blank()
	s := plan.BlankSolid()
	s.Shape, s.Mass, s.At = plan.Point, 0.5, vec.V3{}
	p.Payload.Solids = []plan.Solid{s}
	p.Vehicles = map[string]plan.Class{"one": c}
	m := plan.BlankMember()
	m.ID, m.Vehicle, m.Attach, m.Hold.Kind, m.Hold.Length = "A", "one", vec.V3{}, plan.Cable, 3
	p.Team = []plan.Member{m}
	if counted {
		p.Near.Ground, p.Near.Clearance = plan.Counted, 1
	}
	p, _ = plan.Assume(p)
	body, err := mass.Of(p.Payload)
	if err != nil {
		t.Fatal(err)
	}
	model := share.New(p, body, vec.V3{}, 1.225)
	return At(model, model.Share(solve.NewSolver())).Vehicles[0].Power
}

// Nobody holds nothing.
func TestNobody(t *testing.T) {
	p, _ := plan.Assume(plan.Blank())
	m := share.New(p, mass.Properties{}, vec.V3{}, 1.225)
	if s := At(m, share.Answer{}); s.First >= 0 || !math.IsNaN(s.Hold) || len(s.Together()) > 0 {
		t.Errorf("%d ends after %g s", s.First, s.Hold)
	}
}
