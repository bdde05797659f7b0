package energy_test

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// The sentences say what the numbers say.
func TestWords(t *testing.T) {
	s, _, a := of(t, square(plan.Cable, pack(20), pack(40)))
	if got, want := s.Sentence(), "The lift is held for 3 min 44 s at 1027 W. A ends first, when only its reserve is left."; got != want { // 16 Wh at 256.8 W
		t.Errorf("%s, want %s", got, want)
	}
	if got, want := s.Even.Sentence(), "Sharing the load by energy instead of thrust holds it for 5 min 30 s, 47 % longer."; got != want { // ((1 + 2^(2/3))/2)^1.5
		t.Errorf("%s, want %s", got, want)
	}
	even, _, _ := of(t, square(plan.Cable, pack(40), pack(40)))
	if got := even.Even.Sentence(); got != "Sharing the load by energy instead of thrust gains nothing." {
		t.Error(got)
	}
	lacking, _, _ := of(t, square(plan.Cable, pack(40), plan.BlankClass().Battery))
	if got := lacking.Sentence(); got != "How long the lift is held needs vehicles.odd.battery.energy_wh." {
		t.Error(got)
	}
	if got := lacking.Even.Sentence(); got != "Nothing is said of sharing for equal endurance." {
		t.Error(got)
	}
	solver := solve.NewSolver()
	done := s.Route(solver, []energy.Leg{{Distance: 100, Speed: 5}})
	if got := done.Sentence(&s); !strings.HasPrefix(got, "The route of 100 m is flown in 20 s with ") || !strings.HasSuffix(got, " Wh for each kilogram and kilometre, 1 times that of one vehicle with the same mass and discs.") {
		t.Error(got)
	}
	short := s.Route(solver, []energy.Leg{{Distance: 1e5, Speed: 5}})
	if got := short.Sentence(&s); !strings.HasPrefix(got, "A ends the route after ") {
		t.Error(got)
	}
	for _, n := range s.Wakes(a.Parts) {
		if got := n.Sentence(); n.Download != 0 || got != "The wake of "+n.ID+" misses the payload." { // a point has no outline
			t.Error(got)
		}
	}
}

// A plate of 1.2 m by 0.4 m below one vehicle on a cable of 1 m: all four contracted wakes but what passes its sides. By hand: rotors at ±0.141 m are
// within 0.2 m of the middle, their wakes of 0.0898 m reach 0.231 m, so that a strip of each passes. Longer cables: one jet.
func TestWakes(t *testing.T) {
	p := square(plan.Cable, pack(40), pack(40))
	plate := plan.BlankSolid()
	plate.Shape, plate.Size, plate.Mass, plate.At = plan.Plate, []float64{1.2, 0.4}, 1, vec.V3{0, 0, -0.2}
	p.Payload.Solids = []plan.Solid{plate}
	p.Payload.Inertia = nil
	p.Team = p.Team[:1]
	p.Team[0].Attach, p.Team[0].Hold.Length = vec.V3{}, 1
	s, _, a := of(t, p)
	n := s.Wakes(a.Parts)[0]
	r, d := 0.127/math.Sqrt2, 0.2-0.2*math.Sqrt(0.5) // the edge is d from each middle
	cap := r*r*math.Acos(d/r) - d*math.Sqrt(r*r-d*d)
	near(t, "blocked", n.Blocked, 4*(math.Pi*r*r-cap), 1e-9)
	near(t, "depth", n.Depth, 1.2, 1e-9)
	loading := 2 * 9.80665 / 4 / (math.Pi * 0.127 * 0.127)
	near(t, "download", n.Download, loading*1.17*n.Blocked, 1e-6)
	if n.Outside != energy.DownloadRange.Of || !math.IsNaN(n.Ratio) { // nearly half of the discs
		t.Errorf("%+v", n)
	}
	p.Team[0].Hold.Length = 1.5 // 2.5 diameters of 0.654 m are 1.635 m; the plate is 0.2 m lower still
	s, _, a = of(t, p)
	if n = s.Wakes(a.Parts)[0]; n.Outside != energy.PressureRange.Of || !math.IsNaN(n.Download) {
		t.Errorf("%+v", n)
	}
	p.Payload.Solids[0].Size[1] = 0.02 // between the rotors: each one's wake passes it, the jet they become does not
	s, _, a = of(t, p)
	if n = s.Wakes(a.Parts)[0]; n.Blocked > 0 || n.Outside != energy.PressureRange.Of {
		t.Errorf("%+v", n)
	}
}
