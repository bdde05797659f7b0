package hang_test

import (
	"math"
	"testing"

	"cohoist/core/hang"
	"cohoist/core/vec"
)

// find is the mode of a word.
func find(t *testing.T, modes []hang.Mode, word string) hang.Mode {
	t.Helper()
	var words []string
	for _, m := range modes {
		if m.Word == word {
			return m
		}
		words = append(words, m.Word)
	}
	t.Fatalf("no mode %q among %q", word, words)
	return hang.Mode{}
}

// tightly is what lines that stand in for such as do not stretch change of a period, (12.3): 1e-7 of it, printed to 5e-7 s.
const tightly = 2e-6

// Two equal parallel strings of 1 m: the beam sways along their plane with the string's own period, not that of the
// depth of its centre of mass; madsci.org/posts/archives/2005-04/1113517983.Ph.r.html.
func TestParallelStrings(t *testing.T) {
	for _, length := range []struct{ l, period float64 }{{1, 2.006409}, {0.993621, 2.000000}} {
		at := []vec.V3{{-1, 0, 0.1}, {1, 0, 0.1}}
		tops := []vec.V3{{-1, 0, 0.1 + length.l}, {1, 0, 0.1 + length.l}}
		rig := hang.Rig{Load: hang.Load{Mass: 5, COM: vec.V3{0, 0, -0.2}, Inertia: vec.Diag(vec.V3{0.1, 1.2, 1.3})}, Lines: lines(tops, at, length.l)}
		m := find(t, rig.Modes(rests(t, rig, hang.Level)), "sway along x")
		near(t, "period", m.Period, length.period, tightly)
		near(t, "frequency × period", m.Hertz*m.Period, 1, 1e-12)
	}
}

// tripod holds a payload at its origin.
func tripod() []hang.Line {
	return lines(ring(3, 2, 1, 0.3), make([]vec.V3, 3), math.Sqrt(5))
}

// A rod about its end and a rectangle about a corner, 1 m long or across: both 2π √(2 l/(3 g)); The Physics Teacher
// 61(7), 572, "Rectangular compound pendulums". Three taut lines make the pivot.
func TestCompoundPendulum(t *testing.T) {
	rod := hang.Rig{Load: hang.Load{Mass: 1.5, COM: vec.V3{0, 0, -0.5}, Inertia: vec.Diag(vec.V3{1.5 / 12, 1.5 / 12, 0})}, Lines: tripod()}
	modes := rod.Modes(rests(t, rod, hang.Pose{Attitude: vec.Rot(vec.V3{0.1, 0.2, 0})}))
	if len(modes) != 2 {
		t.Errorf("%d modes of a rod about its end, want 2", len(modes))
	}
	near(t, "rod", find(t, modes, "sway along x").Period, 1.638226, tightly)
	near(t, "rod", find(t, modes, "sway along y").Period, 1.638226, tightly)
	for _, a := range []float64{0.6, 0.3} { // sides a and b, in the plane of x and z
		b := math.Sqrt(1 - a*a)
		plate := hang.Rig{Load: hang.Load{Mass: 2, COM: vec.V3{a / 2, 0, -b / 2}, Inertia: vec.Diag(vec.V3{b * b / 6, 1.0 / 6, a * a / 6})}, Lines: tripod()}
		s := rests(t, plate, hang.Level)
		nearV(t, "centre of mass", s.Pose.Place(plate.Load.COM), vec.V3{0, 0, -0.5}, 1e-5)
		// its plane may have turned about the vertical meanwhile: the mode across the plate's own y
		across := vec.V3{s.Pose.Attitude[0][1], s.Pose.Attitude[1][1], s.Pose.Attitude[2][1]}
		found := false
		for _, m := range plate.Modes(s) {
			turn := vec.V3{m.Shape[3], m.Shape[4], m.Shape[5]}
			if turn.Norm() > 0 && turn.Unit().Cross(across).Norm() < 1e-3 {
				near(t, "plate", m.Period, 1.638226, tightly)
				found = true
			}
		}
		if !found {
			t.Error("no mode about the plate's y")
		}
	}
}

// Threads at half distances d1, d2 and height h: twist 2π √(I h/(m g d1 d2)); University of Hyderabad, lab manual,
// sop.uohyd.ac.in/faculty/manoj/S1/E8/THE.html.
func TestTwistOnThreads(t *testing.T) {
	rod := hang.Rig{Load: hang.Load{Mass: 1, Inertia: vec.Diag(vec.V3{0, 1. / 12, 1. / 12})},
		Lines: lines([]vec.V3{{-0.4, 0, 1.5}, {0.4, 0, 1.5}}, []vec.V3{{-0.4, 0, 0}, {0.4, 0, 0}}, 1.5)}
	s := rests(t, rod, hang.Level)
	modes := rod.Modes(s)
	near(t, "rod, twist", find(t, modes, "twist").Period, 1.773432, tightly)
	near(t, "rod, sway", find(t, modes, "sway along y").Period, 2*math.Pi*math.Sqrt(1.5/hang.Gravity), tightly)
	if len(modes) != 3 || s.Neutral != 1 {
		t.Errorf("%d modes and %d neutral motions of a rod hung by its axis, want 3 and 1", len(modes), s.Neutral)
	}
	disc := hang.Rig{Load: hang.Load{Mass: 2, Inertia: vec.Diag(vec.V3{0.02, 0.02, 0.04})}, Lines: lines(ring(3, 0.15, 1, 0), ring(3, 0.15, 0, 0), 1)}
	near(t, "disc", find(t, disc.Modes(rests(t, disc, hang.Level)), "twist").Period, 1.891661, tightly)
	// inclined: d1 d2 becomes R r; h = √(4 − 1/4)
	cone := hang.Rig{Load: hang.Load{Mass: 3, Inertia: vec.Diag(vec.V3{0.05, 0.05, 0.09})}, Lines: lines(ring(3, 1, 3, 0), ring(3, 0.5, 0, 0), 2)}
	near(t, "inclined", find(t, cone.Modes(rests(t, cone, hang.Level)), "twist").Period, 0.683916, tightly)
}

// A weight M where the line ends and m a length l below it, one stiff body: the double pendulum. w⁴ − (M+m)/M (g/L + g/l)
// w² + (M+m)/M g²/(L l) = 0, Kibble and Berkshire, Classical Mechanics, eq. 11.21.
func TestDoublePendulum(t *testing.T) {
	for _, c := range []struct{ upper, lower, line, rod, slow, fast float64 }{
		{1, 1, 1, 1, 2.621500, 1.085861},
		{1.5, 0.5, 1, 0.5, 2.182299, 1.129641},
	} {
		total := c.upper + c.lower
		inertia := c.upper * c.lower / total * c.rod * c.rod
		rig := hang.Rig{Load: hang.Load{Mass: total, COM: vec.V3{0, 0, -c.rod * c.lower / total}, Inertia: vec.Diag(vec.V3{inertia, inertia, 0})},
			Lines: lines([]vec.V3{{0, 0, c.line}}, make([]vec.V3, 1), c.line)}
		modes := rig.Modes(rests(t, rig, hang.Pose{Origin: vec.V3{0.1, 0, 0}, Attitude: vec.Rot(vec.V3{0.2, 0.1, 0})}))
		if len(modes) != 4 {
			t.Fatalf("%d modes, want 4", len(modes))
		}
		for i, want := range []float64{c.slow, c.slow, c.fast, c.fast} {
			near(t, "period", modes[i].Period, want, tightly)
		}
	}
}

// A load on one elastic line bounces with 2π √(m/k) and twists freely: closed.
func TestBounce(t *testing.T) {
	rig := hang.Rig{Load: load(2, vec.V3{0, 0, -0.3}), Lines: []hang.Line{{Top: vec.V3{0, 0, 2}, Length: 2, Stiffness: 800}}}
	s := rests(t, rig, hang.Level)
	modes := rig.Modes(s)
	m := find(t, modes, "bounce")
	near(t, "bounce", m.Period, 2*math.Pi*math.Sqrt(2.0/800), 1e-10)
	near(t, "stretch", m.Stretch, 1, 1e-10)
	near(t, "loop", m.LoopRatio(hang.LoopRate), math.Sqrt(800.0/2)/(2*math.Pi)/100, 1e-12)
	free := find(t, modes, "free twist")
	if !math.IsInf(free.Period, 1) || s.Neutral != 1 || len(modes) != 6 {
		t.Errorf("twist %+v, %d neutral, %d modes", free, s.Neutral, len(modes))
	}
}
