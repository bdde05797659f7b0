package beam

import (
	"errors"
	"math"
	"testing"

	"cohoist/core/vec"
)

func rectangle(k float64, rise ...float64) []Leg {
	legs := []Leg{{At: vec.V3{1, 0.5, 0}}, {At: vec.V3{1, -0.5, 0}}, {At: vec.V3{-1, -0.5, 0}}, {At: vec.V3{-1, 0.5, 0}}}
	for i := range legs {
		legs[i].Stiffness = k
		if rise != nil {
			legs[i].Rise = rise[i]
		}
	}
	return legs
}

// What statics leaves open on four legs: the problem of L. Euler, 1773; see R. Garcia, M. Wood, F. Barrera-Mora,
// Reactions on Rigid Legs of Rectangular Tables, Applied Mathematics 6 (2015) 599–616. The numbers are exact
// mathematics: least squares by a pseudo-inverse, ranges by linear programs.
func TestLegsOnARectangle(t *testing.T) {
	for _, c := range []struct {
		name     string
		com      vec.V3
		oneSided bool
		want     [4]float64
	}{
		{"equal springs", vec.V3{0.3, 0.1, 0}, true, [4]float64{37.5, 27.5, 12.5, 22.5}},
		{"one would push", vec.V3{0.7, 0.3, 0}, false, [4]float64{57.5, 27.5, -7.5, 22.5}},
		{"and goes slack", vec.V3{0.7, 0.3, 0}, true, [4]float64{65, 20, 0, 15}},
		{"over one leg", vec.V3{1, 0.5, 0}, true, [4]float64{100, 0, 0, 0}},
	} {
		for _, k := range []float64{math.Inf(1), 1, 3e6} {
			r, err := Legs(100, c.com, rectangle(k), c.oneSided)
			if err != nil {
				t.Fatal(c.name, err)
			}
			for i := range r {
				near(t, c.name, r[i], c.want[i], 1e-9)
			}
		}
	}
	least, most, err := Ranges(100, vec.V3{0.3, 0.1, 0}, rectangle(1))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [4][2]float64{{25, 60}, {5, 40}, {0, 35}, {0, 35}} {
		near(t, "least", least[i], want[0], 1e-9)
		near(t, "most", most[i], want[1], 1e-9)
	}
	if _, err := Legs(100, vec.V3{1.1, 0, 0}, rectangle(1), true); !errors.Is(err, ErrTips) {
		t.Errorf("a centre of mass outside the legs: %v", err)
	}
	if _, _, err := Ranges(100, vec.V3{1.1, 0, 0}, rectangle(1)); !errors.Is(err, ErrTips) {
		t.Errorf("a centre of mass outside the legs: %v", err)
	}
	row := []Leg{{At: vec.V3{-1, 0, 0}}, {At: vec.V3{0, 0, 0}}, {At: vec.V3{1, 0, 0}}}
	least, most, err = Ranges(100, vec.V3{0.5, 0, 0}, row) // by hand: between 25, 0, 75 and 0, 50, 50
	for i, want := range [3][2]float64{{0, 25}, {0, 50}, {50, 75}} {
		near(t, "least in a row", least[i], want[0], 1e-9)
		near(t, "most in a row", most[i], want[1], 1e-9)
	}
	if err != nil {
		t.Error(err)
	}
	if _, _, err := Ranges(100, vec.V3{0.5, 0.1, 0}, row); !errors.Is(err, ErrTips) {
		t.Errorf("a load beside a row: %v", err)
	}
	line := []Leg{{At: vec.V3{0, 0, 0}, Stiffness: 1}, {At: vec.V3{1, 0, 0}, Stiffness: 1}}
	if _, err := Legs(100, vec.V3{0.5, 0.1, 0}, line, true); !errors.Is(err, ErrTips) {
		t.Errorf("a centre of mass beside the line of the legs: %v", err)
	}
}

// Measured: a stiff load on four nominally equal legs bore 348, 303, 23 and 18 kgf, 94.1 % on two diagonal legs,
// https://techcon.eng.br/en/artigos-tecnicos/4-leg-slings-how-many-legs-are-loaded-2-3-or-4.
// The model says what length error does it: one that moves 152.5 kgf from one diagonal to the other.
func TestTwoDiagonalLegsCarryNearlyAll(t *testing.T) {
	const k, all = 2e5, 692.
	e := 152.5 / k
	com := vec.V3{}
	for i, g := range rectangle(k) {
		com = com.Add(g.At.Scale([]float64{348, 23, 303, 18}[i] / all))
	}
	r, err := Legs(all, com, rectangle(k, e, -e, e, -e), true)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{348, 23, 303, 18} {
		near(t, "measured leg", r[i], want, 1e-6)
	}
	near(t, "part of the diagonal", (r[0]+r[2])/all, 0.941, 0.5e-3)
	// A little more and the other two are slack: then two legs carry everything.
	r, _ = Legs(all, vec.V3{}, rectangle(k, 2*e, -2*e, 2*e, -2*e), true)
	near(t, "slack", r[1]+r[3], 0, 1e-9)
	near(t, "all on two", r[0]+r[2], all, 1e-9)
}

// Laws of the share on springs, on a bar of three supports.
func TestStiffAndSoftLimits(t *testing.T) {
	b, l := uniform(2, 1)
	at := func(k float64) []float64 {
		s := stiff(0, 1, 2)
		for i := range s {
			s[i].Stiffness = k
		}
		return carry(t, b, l, s, true).Reactions
	}
	for _, c := range []struct {
		k      float64
		middle float64 // 10/8 of one span's load when stiff, a third of both when soft
		tol    float64
	}{{1e9, 1.25, 1e-7}, {math.Inf(1), 1.25, 1e-12}, {1e-7, 2. / 3, 1e-7}} {
		near(t, "middle", at(c.k)[1], c.middle, c.tol)
	}
	last := 0.0
	for k := 1e-4; k < 1e6; k *= 3 { // the stiffer the springs, the more the middle carries
		if m := at(k)[1]; m <= last {
			t.Errorf("k = %g: the middle carries %g, less than %g", k, m, last)
		} else {
			last = m
		}
	}
	rigid := Bar{Right: 2, Youngs: math.Inf(1), Section: Section{Second: [2]float64{1, 1}}}
	for _, k := range []float64{1, math.Inf(1)} {
		s := stiff(0, 1, 2)
		for i := range s {
			s[i].Stiffness = k
		}
		c := carry(t, rigid, l, s, true)
		for _, r := range c.Reactions {
			near(t, "a bar that does not bend on equal springs", r, 2./3, 1e-12)
		}
	}
	s := stiff(0.5, 1.5, 1.5)
	two := carry(t, b, l, s, true).Reactions
	near(t, "two supports at one place share", two[1], two[2], 1e-6)
	if _, err := b.Carry(l, stiff(1.1, 1.5), true); !errors.Is(err, ErrTips) {
		t.Errorf("both supports right of the middle: %v", err)
	}
	if _, err := b.Carry(l, nil, true); !errors.Is(err, ErrTips) {
		t.Errorf("no support: %v", err)
	}
	one := carry(t, b, l, stiff(1), true)
	near(t, "one in the middle", one.Reactions[0], 2, 1e-12)
}

// Even effort of four upright cables (thrust 1, no own weight) at the smallest worst utilisation 32.5 of
// the rectangle above: the share with the least sum of squares, by hand: the largest leg at its
// bound, the others on balance.
func TestSettle(t *testing.T) {
	at := make([]vec.V3, 4)
	for i, g := range rectangle(1) {
		at[i] = g.At
	}
	lo, hi := make([]float64, 4), []float64{32.5, 32.5, 32.5, 32.5}
	r, err := Settle(100, vec.V3{0.3, 0.1, 0}, at, lo, hi)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{32.5, 32.5, 7.5, 27.5} {
		near(t, "settled", r[i], want, 1e-9)
	}
	free, _ := Settle(100, vec.V3{0.3, 0.1, 0}, at, lo, []float64{1e3, 1e3, 1e3, 1e3})
	for i, want := range []float64{37.5, 27.5, 12.5, 22.5} {
		near(t, "without bounds: equal springs", free[i], want, 1e-9)
	}
	tight, _ := Settle(100, vec.V3{0.3, 0.1, 0}, at, []float64{0, 0, 15, 0}, []float64{1e3, 1e3, 1e3, 21})
	sum := vec.V3{}
	for i, f := range tight {
		sum = sum.Add(vec.V3{f, f * at[i][0], f * at[i][1]})
	}
	near(t, "balance", sum.Sub(vec.V3{100, 30, 10}).Norm(), 0, 1e-9)
	near(t, "least", math.Min(tight[2], 15), 15, 1e-9)
	near(t, "most", math.Max(tight[3], 21), 21, 1e-9)
	if _, err := Settle(100, vec.V3{0.3, 0.1, 0}, at, lo, []float64{32, 32, 32, 32}); !errors.Is(err, ErrTips) {
		t.Errorf("less than the smallest largest leg: %v", err)
	}
}
