package place

import (
	"math"
	"runtime"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// panel is an invented lattice panel of 8 kg with a box on one corner, and k field quads on cables.
func panel(k int) plan.Plan {
	p := plan.Blank()
	s := plan.BlankSolid()
	s.Shape, s.Size, s.Mass = plan.Box, []float64{2.4, 1.6, 0.1}, 8
	box := plan.BlankSolid()
	box.Shape, box.Mass, box.At = plan.Point, 1.5, vec.V3{0.8, -0.4, 0.1}
	p.Payload.Solids = []plan.Solid{s, box}
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust, c.DragArea = 3.4, 4, 0.33, 0.19, 19, 0.016, 0.06
	p.Vehicles = map[string]plan.Class{"field-quad": c}
	for i := range k {
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Attach = string(rune('A'+i)), "field-quad", vec.V3{0, 0, 0.05}
		m.Hold.Kind, m.Hold.Length = plan.Cable, 3
		p.Team = append(p.Team, m)
	}
	q, _ := plan.Assume(p)
	return q
}

// forty is a pattern of 5 × 8 holes.
func forty() []vec.V3 {
	var out []vec.V3
	for i := range 8 {
		for j := range 5 {
			out = append(out, vec.V3{-1.12 + 0.32*float64(i), -0.7 + 0.35*float64(j), 0.05})
		}
	}
	return out
}

// brute tries every placement of k like vehicles.
func brute(t testing.TB, q Question, holes []vec.V3) (float64, int) {
	b, err := newBench(q, holes)
	if err != nil {
		t.Fatal(err)
	}
	best, n := q.Goal.worst(), 0
	k := len(b.groups[0].members)
	posts := append([]vec.V3(nil), b.posts...)
	var walk func(i, from int)
	walk = func(i, from int) {
		if i == k {
			n++
			if v, _, _ := b.value(posts, q.Goal.worst()); q.Goal.better(v, best) {
				best = v
			}
			return
		}
	next:
		for h := from; h < len(holes); h++ {
			for _, p := range append(append([]vec.V3(nil), posts[:i]...), posts[k:]...) {
				if p.Sub(holes[h]).Norm() < q.Spacing-1e-9 {
					continue next
				}
			}
			posts[i] = holes[h]
			walk(i+1, h+1)
		}
	}
	walk(0, 0)
	return best, n
}

func TestFourOfForty(t *testing.T) {
	for _, c := range []struct {
		name string
		q    Question
	}{
		{"hover", Question{Plan: panel(4)}},
		{"off", Question{Plan: panel(4), Cases: Cases{Off: 0.05}}},
		{"lost: no three of four hold it", Question{Plan: panel(4), Cases: Cases{Lost: true}}},
		{"off, spaced", Question{Plan: panel(4), Cases: Cases{Off: 0.05}, Spacing: 0.9}},
	} {
		a, err := OnHoles(c.q, forty(), nil)
		if err != nil {
			t.Fatal(err)
		}
		if runtime.GOOS == "js" && c.q.Spacing == 0 { // brute force is for fast machines
			continue
		}
		want, _ := brute(t, c.q, forty())
		if math.Abs(a.Value-want) > 1e-8*want && a.Value != want || !a.Proof.Proved || a.Proof.Candidates != 91390 || a.Proof.Evaluated > 9139 {
			t.Errorf("%s: %+v, want %g", c.name, a, want)
		}
	}
}
