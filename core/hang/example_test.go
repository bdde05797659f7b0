package hang_test

import (
	"testing"

	"cohoist/core/example"
	"cohoist/core/hang"
	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// The shipped examples on cables, in still air: the planned state is a stable equilibrium with the planned pulls; when a
// vehicle rises, its line pulls no less; and a lost vehicle leaves the others with the weight.
func TestExamples(t *testing.T) {
	hung := 0
	for _, e := range example.All {
		doc, faults := example.Plan(e.Name)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		p, _ := plan.Assume(doc)
		payload, err := mass.Of(p.Payload)
		if err != nil {
			t.Fatal(err)
		}
		p.Site.Wind = 0
		m := share.New(p, payload, vec.V3{}, 1.225)
		a := m.Share(solve.NewSolver())
		rig, ok := hang.Of(m, a.Parts)
		if ok == m.Rigid {
			t.Errorf("%s: a rig %v, rigid holds %v", e.Name, ok, m.Rigid)
		}
		if !ok {
			continue
		}
		hung++
		s := rests(t, rig, hang.Level)
		weight := payload.Mass * hang.Gravity
		near(t, e.Name+": tilt", s.Tilt, 0, 1e-7)
		for i, part := range a.Parts {
			near(t, e.Name+": pull", s.Tension[i], part.Tension, 1e-5*weight) // the solver's own 1e-6 and the lines' stretch
		}
		for i := range rig.Lines {
			high := rests(t, rig.Displaced(i, vec.V3{0, 0, 0.05}), s.Pose)
			if high.Tension[i] < s.Tension[i]-1e-6*weight {
				t.Errorf("%s: line %d pulls with %g N when its vehicle rises, %g before", e.Name, i, high.Tension[i], s.Tension[i])
			}
			lost, up := rests(t, rig.Without(i), s.Pose), 0.0
			for j, l := range rig.Lines {
				up += lost.Tension[j] * l.Top.Sub(lost.Pose.Place(l.At)).Unit()[2]
			}
			near(t, e.Name+": weight after a loss", up, weight, 1e-7*weight)
			if !lost.Slack[i] {
				t.Errorf("%s: a lost line pulls", e.Name)
			}
		}
	}
	if hung < 5 {
		t.Errorf("%d examples hang, want at least 5", hung)
	}
}
