package energy_test

import (
	"strings"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/plan"
	"cohoist/core/solve"
)

// The sentences say what the numbers say.
func TestWords(t *testing.T) {
	s, _, _ := of(t, square(plan.Cable, pack(20), pack(40)))
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
}
