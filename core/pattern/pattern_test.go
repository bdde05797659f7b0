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

// By hand: a box of 2 × 1 m, kept 5 % from each side, half lengths 0.9 and 0.45.
func TestPlaces(t *testing.T) {
	for _, c := range []struct {
		name string
		k    int
		want [][2]float64
	}{
		{"ring", 4, [][2]float64{{0.9, 0}, {0, 0.45}, {-0.9, 0}, {0, -0.45}}},
		{"line", 3, [][2]float64{{0.9, 0}, {0, 0}, {-0.9, 0}}},
		{"line", 1, [][2]float64{{0, 0}}},
		{"corners", 2, [][2]float64{{0.9, -0.45}, {-0.9, 0.45}}},
		{"corners", 4, [][2]float64{{0.9, -0.45}, {-0.9, 0.45}, {0.9, 0.45}, {-0.9, -0.45}}},
		{"edges", 6, [][2]float64{{0.9, -0.45}, {0.9, 0.45}, {0, 0.45}, {-0.9, 0.45}, {-0.9, -0.45}, {0, -0.45}}},
	} {
		for i, m := range Arrange(c.name, team(c.k, plan.Cable)) {
			if math.Hypot(m.Attach[0]-c.want[i][0], m.Attach[1]-c.want[i][1]) > 1e-9 {
				t.Errorf("%s of %d: %s at %v, want %v", c.name, c.k, m.ID, m.Attach, c.want[i])
			}
		}
	}
}

// A pattern keeps what a vehicle is and how it holds, arranging again changes nothing, and a name
// that nobody knows changes nothing either.
func TestArrangeKeeps(t *testing.T) {
	for _, kind := range Kinds {
		p := team(5, plan.Rigid)
		p.Team[2].Yaw, p.Team[2].Hold.Lean = 30, [2]float64{1, 2}
		p.Team = Arrange(kind.Name, p)
		for i, m := range Arrange(kind.Name, p) {
			if m.Attach != p.Team[i].Attach || m.ID != p.Team[i].ID || m.Vehicle != "v" || m.Hold.Kind != plan.Rigid {
				t.Errorf("%s again: %+v, before %+v", kind.Name, m, p.Team[i])
			}
		}
		if p.Team[2].Yaw != 30 || p.Team[2].Hold.Lean != [2]float64{1, 2} {
			t.Errorf("%s turned a vehicle: %+v", kind.Name, p.Team[2])
		}
	}
	p := team(3, plan.Cable)
	p.Team[1].Attach = vec.V3{1, 2, 3}
	if got := Arrange("spiral", p); got[1].Attach != (vec.V3{1, 2, 3}) {
		t.Errorf("an unknown pattern moved a vehicle to %v", got[1].Attach)
	}
	if got := Arrange("ring", team(0, plan.Cable)); len(got) != 0 {
		t.Errorf("nobody stands at %v", got)
	}
}

// Payloads of any shape, also those without width or without any number yet, give finite places apart.
func TestAnyPayload(t *testing.T) {
	tetra := &plan.Mesh{Vertices: []vec.V3{{}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}
	for _, s := range []plan.Solid{
		{Shape: plan.Point}, {Shape: plan.Rod, Length: 6}, {Shape: plan.Tube, Length: 6, OuterRadius: 0.02},
		{Shape: plan.Cylinder, Length: 1, OuterRadius: 0.4}, {Shape: plan.Plate, Size: []float64{0.3, 0.3}},
		{Shape: plan.Plate, Size: []float64{0.3}}, {Shape: plan.MeshBody, Mesh: tetra}, {Shape: plan.MeshBody}, plan.BlankSolid(),
	} {
		for _, kind := range Kinds {
			p := team(7, plan.Cable)
			p.Payload.Solids = []plan.Solid{s}
			got := Arrange(kind.Name, p)
			for i, m := range got {
				for _, n := range got[:i] {
					if d := m.Attach.Sub(n.Attach).Norm(); !(d > 1e-3 && d < 100) {
						t.Errorf("%s on a %s: %s and %s are %g m apart", kind.Name, s.Shape, m.ID, n.ID, d)
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
