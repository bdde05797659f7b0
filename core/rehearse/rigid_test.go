package rehearse

import (
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// ring is a rigid team of n field quads about a payload of 1 kg each, or of what is said.
func ring(t testing.TB, n int, kg float64, change func(*plan.Plan)) (*share.Model, share.Answer) {
	t.Helper()
	p, faults := example.Plan("lattice-panel")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	one := p.Team[0]
	p.Team = nil
	box := p.Payload.Solids[0]
	box.Shape, box.Size, box.Mass, box.At = "box", []float64{1.6, 1.6, 0.1}, kg, vec.V3{}
	p.Payload = plan.Payload{Solids: []plan.Solid{box}, COM: p.Payload.COM, Inertia: p.Payload.Inertia, DragArea: p.Payload.DragArea}
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		m := one
		m.ID, m.Attach = string(rune('A'+i)), vec.V3{cos * 1.2, sin * 1.2, 0.1}
		p.Team = append(p.Team, m)
	}
	if change != nil {
		change(&p)
	}
	return modelOf(t, p)
}

// In calm air a rigid team stays where it is.
func TestRigidHoverStays(t *testing.T) {
	for _, name := range []string{"lattice-panel", "sensor-plate"} {
		m, a := liftOf(t, name)
		f := rehearsal(t, m, Hover(m, a.Parts, 5), Options{}).Fly()
		t.Logf("%+v", f.Peaks)
		if p := f.Peaks; !(p.Off <= 1e-9 && p.Sink <= 1e-9 && p.Swing <= 1e-9 && math.IsNaN(p.Crash)) {
			t.Errorf("%s moves: %+v", name, p)
		}
	}
}
