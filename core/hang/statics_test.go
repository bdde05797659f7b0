package hang_test

import (
	"math"
	"testing"

	"cohoist/core/hang"
	"cohoist/core/vec"
)

var stiff = math.Inf(1)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.10g, want %.10g within %g", what, got, want, tol)
	}
}

func nearV(t *testing.T, what string, got, want vec.V3, tol float64) {
	t.Helper()
	if !(got.Sub(want).Norm() <= tol) {
		t.Errorf("%s = %.10g, want %.10g within %g", what, got, want, tol)
	}
}

// rests is the rest from a pose, balanced to what stiff lines leave of sixteen digits.
func rests(t *testing.T, r hang.Rig, from hang.Pose) hang.State {
	t.Helper()
	s, err := r.Rest(from)
	if err != nil {
		t.Fatalf("%v, residual %g", err, s.Residual)
	}
	if !(s.Residual < 1e-7) || !s.Stable {
		t.Fatalf("residual %g, stable %v", s.Residual, s.Stable)
	}
	return s
}

// ring is k points on a circle, the first at the angle turn (radians).
func ring(k int, radius, height, turn float64) []vec.V3 {
	out := make([]vec.V3, k)
	for i := range out {
		sin, cos := math.Sincos(turn + 2*math.Pi*float64(i)/float64(k))
		out[i] = vec.V3{radius * cos, radius * sin, height}
	}
	return out
}

// lines are stiff lines of one length.
func lines(tops, ats []vec.V3, length float64) []hang.Line {
	out := make([]hang.Line, len(tops))
	for i := range out {
		out[i] = hang.Line{Top: tops[i], At: ats[i], Length: length, Stiffness: stiff}
	}
	return out
}

// body is a load whose inertia does not matter for its rest.
func load(mass float64, com vec.V3) hang.Load {
	return hang.Load{Mass: mass, COM: com, Inertia: vec.Diag(vec.V3{0.1, 0.1, 0.1}.Scale(mass))}
}

// Cables to one point. Each row: where they go, from the point, and what they carry.
func TestPointOnCables(t *testing.T) {
	slope := func(deg, side float64) vec.V3 { // a cable of 1 m at an angle from the horizontal
		return vec.V3{side * math.Cos(deg*math.Pi/180), 0, math.Sin(deg * math.Pi / 180)}
	}
	const side = 150 * 4.4482216
	for _, c := range []struct {
		source string
		weight float64
		tops   []vec.V3
		want   []float64
		tol    float64
	}{
		// college physics text, figure 5.10a; printed in three digits
		{"assignmentexpert.com question-102636", 122, []vec.V3{slope(37, -1), slope(53, 1)}, []float64{73.4, 97.4}, 0.05},
		// the same, exact: T1 = W cos b / sin(a + b)
		{"formula", 122, []vec.V3{slope(37, -1), slope(53, 1)}, []float64{122 * math.Cos(53*math.Pi/180), 122 * math.Cos(37*math.Pi/180)}, 1e-4},
		// fig. 9-52; the printed digits are those of 294 N, g = 9.8
		{"cramster.com physics-answers-5-442504", 294, []vec.V3{slope(53, -1), slope(37, 1)}, []float64{234.79884, 176.9336}, 1e-4},
		// SUNY Broome physics module 3, example 1; matrix rounded to six digits there
		{"web.sunybroome.edu mod3_3Ex1", 784, []vec.V3{{0.2, -0.15, 0.8}, {-0.1, -0.15, 0.8}, {-0.1, 0.3, 0.8}}, []float64{273.7968, 267.8866, 281.0092}, 1e-3},
		// wizeprep.com engineering/22748: junction (0, 6, 0), W = 265 N where AD = 250 N; solved exactly
		{"wizeprep.com 2872761", 265, []vec.V3{{-3, -6, 2}, {2, -6, 3}, {0, 3, 4}}, []float64{70, 105, 250}, 1e-4},
		// Hibbeler, Statics, 14th ed., F3-11: one cable level; 2100/13, 3150/13 and 4500/13 lb. The level cable sags by the stretch
		// of the others, which makes 5e-6 of 1e-7
		{"Hibbeler F3-11", side, []vec.V3{{-6, 3, 2}, {-6, -2, 3}, {5, 0, 0}}, []float64{718.559, 1077.838, 1539.769}, 1e-2},
	} {
		var rig hang.Rig
		rig.Load = hang.Load{Mass: c.weight / hang.Gravity}
		for _, top := range c.tops {
			rig.Lines = append(rig.Lines, hang.Line{Top: top, Length: top.Norm(), Stiffness: stiff})
		}
		s := rests(t, rig, hang.Pose{Origin: vec.V3{0.1, 0.05, -0.2}, Attitude: vec.Identity})
		for i, want := range c.want {
			near(t, c.source, s.Tension[i], want, c.tol)
		}
		nearV(t, c.source+": place", s.Pose.Origin, vec.V3{}, 1e-5)
		if s.Neutral != 3 {
			t.Errorf("%s: %d neutral motions, want the 3 turns of a point", c.source, s.Neutral)
		}
	}
}

// A load off the middle of two upright legs, 10 000 at 8 and 2 from them: 2 000 and 8 000,
// certifiedslings.com/load-limits/center-of-gravity-and-sling-loading.
func TestTwoUprightLegs(t *testing.T) {
	at := []vec.V3{{-8, 0, 0}, {2, 0, 0}}
	rig := hang.Rig{Load: load(10000/hang.Gravity, vec.V3{0, 0, -1}), Lines: lines([]vec.V3{{-8, 0, 3}, {2, 0, 3}}, at, 3)}
	s := rests(t, rig, hang.Level)
	near(t, "far leg", s.Tension[0], 2000, 0.01)
	near(t, "near leg", s.Tension[1], 8000, 0.01)
}

// Three upright cables share by barycentric coordinates: exact for this level pose, by the lever rule
// about each side of the triangle.
func TestThreeUprightCables(t *testing.T) {
	at := ring(3, 0.5, 0, 0)
	rig := hang.Rig{Load: load(3, vec.V3{0.1, 0.05, 0}), Lines: lines(ring(3, 0.5, 2, 0), at, 2)}
	s := rests(t, rig, hang.Level)
	for i, want := range []float64{13.729310, 9.543882, 6.146758} {
		near(t, "tension", s.Tension[i], want, 1e-5)
	}
}

// Vehicles on a circle of 1 m at 3 m, attachments on 0.5 m, cables of 2 m, 3 kg. The centred load by
// hand: h = √(4 − 1/4), T = m g L/(3 h). The others by two routes: nine equations by a hybrid Newton
// method, and the lowest centre of gravity within the lengths by sequential quadratic programming; they agree
// to 1.2e-8 and are printed to 1e-6.
func TestThreeCables(t *testing.T) {
	for _, c := range []struct {
		com     vec.V3
		origin  vec.V3
		turn    vec.V3 // rotation vector, degrees
		tension [3]float64
		tilt    float64
	}{
		{vec.V3{}, vec.V3{0, 0, 3 - 1.936492}, vec.V3{}, [3]float64{10.128265, 10.128265, 10.128265}, 0},
		{vec.V3{0.1, 0, -0.05}, vec.V3{0.091011, 0, 1.065790}, vec.V3{0, 2.683665, 0}, [3]float64{13.797307, 8.278264, 8.278264}, 2.683665},
		{vec.V3{0.1, 0.05, -0.05}, vec.V3{0.091397, 0.047050, 1.066422}, vec.V3{-1.4147, 2.7011, 0.0086}, [3]float64{13.807357, 9.915473, 6.622056}, 3.049146},
	} {
		rig := hang.Rig{Load: load(3, c.com), Lines: lines(ring(3, 1, 3, 0), ring(3, 0.5, 0, 0), 2)}
		s := rests(t, rig, hang.Pose{Origin: vec.V3{0.1, 0.2, 0.9}, Attitude: vec.Rot(vec.V3{0.1, -0.2, 0.15})})
		nearV(t, "origin", s.Pose.Origin, c.origin, 2e-6)
		for i, want := range c.tension {
			near(t, "tension", s.Tension[i], want, 4e-6) // stretch of 1e-7, printed to 5e-7
		}
		near(t, "tilt", s.Tilt*180/math.Pi, c.tilt, 1e-5)
		want := vec.Rot(c.turn.Scale(math.Pi / 180))
		for i := range 3 {
			nearV(t, "attitude", s.Pose.Attitude[i], want[i], 2e-6) // printed to 1e-4 degrees
		}
	}
}

// A beam of 2 kg under two vehicles at x = ∓1, z = 2 on cables of 1.8 m from ∓0.6: planar, by solving the
// four equations; the cables' lines and the vertical through the centre of mass meet in one point.
func TestBeamUnderTwo(t *testing.T) {
	for _, c := range []struct {
		com, middle vec.V3
		tilt        float64 // degrees about y, positive: right end down
		left, right float64
	}{
		{vec.V3{0, 0, 0}, vec.V3{0, 0, 0.245007}, 0, 10.058143, 10.058143},
		{vec.V3{0.2, 0, 0}, vec.V3{0.123813, 0, 0.249763}, 2.70763, 6.934212, 13.136295},
		{vec.V3{0.2, 0, -0.1}, vec.V3{0.120904, 0, 0.249541}, 2.64343, 7.007570, 13.065065},
	} {
		rig := hang.Rig{Load: load(2, c.com), Lines: lines([]vec.V3{{-1, 0, 2}, {1, 0, 2}}, []vec.V3{{-0.6, 0, 0}, {0.6, 0, 0}}, 1.8)}
		s := rests(t, rig, hang.Level)
		nearV(t, "middle", s.Pose.Origin, c.middle, 2e-6)
		near(t, "tilt", math.Atan2(s.Pose.Attitude[0][2], s.Pose.Attitude[0][0])*180/math.Pi, c.tilt, 1e-5)
		near(t, "left", s.Tension[0], c.left, 4e-6)
		near(t, "right", s.Tension[1], c.right, 4e-6)
		if wantFree := map[bool]int{true: 1}[c.com[2] == 0]; s.Neutral != wantFree {
			t.Errorf("centre of mass %v: %d neutral motions, want %d", c.com, s.Neutral, wantFree)
		}
		meet(t, s, rig)
	}
}

// meet tells that the two lines meet above the centre of mass.
func meet(t *testing.T, s hang.State, rig hang.Rig) {
	t.Helper()
	x := s.Pose.Place(rig.Load.COM)[0]
	var z [2]float64
	for i, l := range rig.Lines {
		a := s.Pose.Place(l.At)
		z[i] = a[2] + (x-a[0])*(l.Top[2]-a[2])/(l.Top[0]-a[0])
	}
	near(t, "height where the lines meet", z[0], z[1], 1e-5)
}

// Constant force: a point on one line hangs along weight plus force. Closed: tan = F/W, T = √(W² + F²).
func TestForceLeans(t *testing.T) {
	rig := hang.Rig{Load: load(2, vec.V3{}), Lines: lines([]vec.V3{{0, 0, 3}}, []vec.V3{{}}, 3)}
	rig.Load.Force = vec.V3{3, 4, 0}
	s := rests(t, rig, hang.Level)
	w := 2 * hang.Gravity
	near(t, "tension", s.Tension[0], math.Hypot(5, w), 1e-6)
	nearV(t, "place", s.Pose.Origin, vec.V3{0, 0, 3}.Add(vec.V3{3, 4, -w}.Unit().Scale(3)), 1e-6)
}
