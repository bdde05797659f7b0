package pattern

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

func team(k int, kind string) plan.Plan {
	p := plan.Blank()
	s := plan.BlankSolid()
	s.Shape, s.Size, s.Mass = plan.Box, []float64{2, 1, 0.2}, 5
	p.Payload.Solids = []plan.Solid{s}
	p.Vehicles = map[string]plan.Class{"v": {Arm: 0.3, RotorRadius: 0.2}}
	for i := range k {
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Hold.Kind = ID(i), "v", kind
		p.Team = append(p.Team, m)
	}
	return p
}

// Every pattern keeps cables on the payload, every place apart, rigid vehicles clear of each other,
// and never changes the plan it is given.
func TestArrange(t *testing.T) {
	for _, kind := range Kinds {
		for k := 1; k <= 12; k++ {
			for _, hold := range []string{plan.Cable, plan.Rigid} {
				p := team(k, hold)
				got := Arrange(kind.Name, p)
				for i, m := range got {
					if p.Team[i].Attach != plan.BlankMember().Attach && !math.IsNaN(p.Team[i].Attach[0]) {
						t.Fatal("the plan was changed")
					}
					if hold == plan.Cable && (math.Abs(m.Attach[0]) > 1 || math.Abs(m.Attach[1]) > 0.5) {
						t.Errorf("%s of %d: %v is off the payload", kind.Name, k, m.Attach)
					}
					if m.Attach[2] != 0.1 {
						t.Errorf("%s of %d: %v is not on top", kind.Name, k, m.Attach)
					}
					for _, n := range got[:i] {
						d := m.Attach.Sub(n.Attach).Norm()
						if least := map[string]float64{plan.Cable: 0.01, plan.Rigid: 1}[hold]; d < least {
							t.Errorf("%s of %d, %s: %s and %s are %.3f m apart", kind.Name, k, hold, m.ID, n.ID, d)
						}
					}
				}
			}
		}
	}
}

func TestExtent(t *testing.T) {
	s := plan.Solid{Shape: plan.Rod, Length: 4, Turn: vec.V3{0, 0, 90}, At: vec.V3{1, 0, 0}}
	lo, hi := Extent(plan.Payload{Solids: []plan.Solid{s}})
	want := [2]vec.V3{{0.8, -2, 0}, {1.2, 2, 0}} // by hand: along y, a tenth of its length wide
	if lo.Sub(want[0]).Norm() > 1e-12 || hi.Sub(want[1]).Norm() > 1e-12 {
		t.Errorf("extent %v to %v, want %v", lo, hi, want)
	}
}

func TestID(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA"} {
		if got := ID(i); got != want {
			t.Errorf("ID(%d) = %s, want %s", i, got, want)
		}
	}
}
