package hang_test

import (
	"math"
	"testing"

	"cohoist/core/hang"
	"cohoist/core/vec"
)

// A payload on one line hangs with its centre of mass below the attachment, or balances above it: two equilibria, by hand,
// m g (d + L) and so on apart. Both turn freely about the vertical.
func TestPendulumHasTwo(t *testing.T) {
	rig := hang.Rig{Load: load(2, vec.V3{0, 0, -0.3}), Lines: []hang.Line{{Top: vec.V3{0, 0, 2}, Length: 1.5, Stiffness: 2000}}}
	all := rig.Equilibria(1)
	if len(all) != 2 {
		t.Fatalf("%d equilibria, want 2", len(all))
	}
	low, high := all[0], all[1]
	if !low.Stable || high.Stable || low.Neutral != 1 || high.Neutral != 1 {
		t.Errorf("stable %v and %v, neutral %d and %d", low.Stable, high.Stable, low.Neutral, high.Neutral)
	}
	near(t, "energy between", high.Energy-low.Energy, 2*hang.Gravity*0.6, 1e-8)
	near(t, "run away", float64(runs(rig.Modes(high))), 2, 0) // it topples about x and about y
}

func runs(modes []hang.Mode) int {
	n := 0
	for _, m := range modes {
		if m.Square < 0 && m.Hertz != m.Hertz {
			n++
		}
	}
	return n
}

// Equilibria are balanced, told apart, sorted, the same for the same seed, and none lies below the lowest; a rest from any of the
// stable ones stays.
func TestEquilibria(t *testing.T) {
	for _, com := range []vec.V3{{0, 0, 0}, {0.1, 0.05, -0.05}, {0.05, 0, 0.3}} {
		for _, k := range []int{2, 3, 4} {
			rig := hang.Rig{Load: load(3, com), Lines: lines(ring(k, 1, 3, 0), ring(k, 0.5, 0, 0), 2)}
			for i := range rig.Lines {
				rig.Lines[i].Stiffness = 3000
			}
			all, again := rig.Equilibria(5), rig.Equilibria(5)
			if len(all) < 2 || !all[0].Stable || len(again) != len(all) {
				t.Fatalf("%d lines, centre of mass %v: %d and %d equilibria, the lowest stable: %v", k, com, len(all), len(again), all[0].Stable)
			}
			stable := 0
			for i, s := range all {
				if !(s.Residual < 1e-8) || i > 0 && s.Energy < all[i-1].Energy {
					t.Errorf("equilibrium %d: residual %g, energy %g", i, s.Residual, s.Energy)
				}
				if s.Stable {
					stable++
					near(t, "stays", rests(t, rig, s.Pose).Energy, s.Energy, 1e-9)
				} else if r, err := rig.Rest(s.Pose); err != nil || !(r.Energy < s.Energy) {
					t.Errorf("let go at an unstable equilibrium: %v, energy %g from %g", err, r.Energy, s.Energy)
				}
			}
			t.Logf("%d lines, centre of mass %v: %d equilibria, %d stable", k, com, len(all), stable)
		}
	}
}

// Vehicles 2 m apart on lines of 1 m that do not stretch, and a payload 0.4 m long between them: no equilibrium that is reported
// needs a pull beyond 1 000 times the weight.
func TestNoOverlongLines(t *testing.T) {
	rig := hang.Rig{Load: load(3, vec.V3{0, 0, -0.1}), Lines: lines(ring(2, 1, 0, 0), ring(2, 0.2, 0, 0), 1)}
	all := rig.Equilibria(1)
	if len(all) == 0 {
		t.Error("no equilibrium")
	}
	for _, s := range all {
		for i, f := range s.Tension {
			if l := rig.Lines[i]; l.Top.Sub(s.Pose.Place(l.At)).Norm() > 1+1.0001e-4 {
				t.Errorf("line %d pulls with %g N, %g of its length too long", i, f, l.Top.Sub(s.Pose.Place(l.At)).Norm()-1)
			}
		}
	}
}

// On upright lines from three points the attachments stay level, so that a centre of mass above them does no harm; on two the
// payload turns over about their line, by hand (the potential m g d cos φ has no minimum upright).
func TestCentreAboveAttachments(t *testing.T) {
	for k, stable := range map[int]bool{2: false, 3: true} {
		rig := hang.Rig{Load: load(3, vec.V3{0, 0, 0.3}), Lines: lines(ring(k, 0.5, 2, 0), ring(k, 0.5, 0, 0), 2)}
		upright := 0
		for _, s := range rig.Equilibria(1) {
			if s.Tilt < 1e-6 && s.Pose.Attitude[0][0] > 0.999 {
				upright++
				if s.Stable != stable {
					t.Errorf("upright on %d lines: stable %v", k, s.Stable)
				}
			}
		}
		if upright != 1 {
			t.Errorf("%d upright equilibria on %d lines, want 1", upright, k)
		}
		near(t, "tilt where it ends", rests(t, rig, hang.Level).Tilt, map[bool]float64{true: 0, false: math.Pi}[stable], 1e-6)
	}
}
