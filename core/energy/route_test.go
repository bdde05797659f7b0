package energy_test

import (
	"math"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/momentum"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// flown is the route of a plan.
func flown(t *testing.T, p plan.Plan, legs ...energy.Leg) (energy.Study, energy.Route) {
	t.Helper()
	s, _, _ := of(t, p)
	return s, s.Route(solve.NewSolver(), legs)
}

// A rigid square without drag flies level: all the air goes along its discs, and by hand every rotor takes T (k v + (1/FM − k) v_h)/η with v of
// Glauert's equation. So does one vehicle with all discs.
func TestLegByHand(t *testing.T) {
	p := square(plan.Rigid, pack(40), pack(40))
	zero := [3]float64{}
	p.Payload.DragArea = (*vec.V3)(&zero)
	s, r := flown(t, p, energy.Leg{To: 30, Distance: 500, Speed: 10})
	thrust, area := 2*share.Gravity/4, math.Pi*0.127*0.127
	h := momentum.Hover(thrust, area, s.Density)
	v := math.Sqrt(math.Sqrt(2500+h*h*h*h) - 50) // v²(100 + v²) = h⁴
	want := thrust * (1.15*v + (1/0.6-1.15)*h) / 0.8
	near(t, "power", r.Legs[0].Power[2], 4*want, 1e-9)
	near(t, "energy", r.Energy, 16*want*50, 1e-9)
	near(t, "per kilogram and metre", r.PerLoad, 16*want*50/(4*500), 1e-9)
	near(t, "single", r.Single, r.PerLoad, 1e-9)
	if !r.Done || r.Ended != -1 || r.Distance != 500 || r.Time != 50 {
		t.Errorf("%+v", r)
	}
	left := 1 - 4*want*50/(40*3600)
	pk, _, _ := energy.NewPack("q", pack(40))
	near(t, "left", pk.Left(r.Legs[0].Charge[1]), left, 1e-9)
}

// With drag the body leans until its thrust holds weight and drag; the same formulas by hand.
func TestLegWithDrag(t *testing.T) {
	p := square(plan.Rigid, pack(40), pack(40))
	area := [3]float64{0.1, 0.1, 0.1}
	p.Payload.DragArea = (*vec.V3)(&area)
	s, r := flown(t, p, energy.Leg{Distance: 100, Speed: 8})
	drag, weight := s.Density/2*0.1*64, 8*share.Gravity
	whole := math.Hypot(drag, weight)
	in, through := 8*weight/whole, 8*drag/whole
	disc := math.Pi * 0.127 * 0.127
	h := momentum.Hover(whole/16, disc, s.Density)
	v, _ := momentum.Induced(h, in, through)
	want := whole / 16 * (1.15*v + (1/0.6-1.15)*h + through) / 0.8
	near(t, "power", r.Legs[0].Power[0], 4*want, 1e-9)
	near(t, "single", r.Single, r.PerLoad, 1e-9)
	near(t, "drag's own part is drag times speed", whole*through, drag*8, 1e-12)
}

// A pack ends on the way: with 20 Wh in A and C of the square the route ends where they hold 80 % of it, and the way on two legs is the way on one.
func TestEndsOnTheWay(t *testing.T) {
	p := square(plan.Cable, sagging(20), sagging(40))
	leg := energy.Leg{Distance: 3000, Speed: 6}
	s, one := flown(t, p, leg)
	half := leg
	half.Distance /= 2
	_, two := flown(t, p, half, half)
	if one.Done || one.Ended != 0 || two.Ended != 0 || len(one.Legs) != 1 {
		t.Fatalf("%+v", one)
	}
	near(t, "two legs", two.At, one.At, 1e-6)
	pk, _, _ := energy.NewPack("q", sagging(20))
	h := pk.Hold(one.Legs[0].Power[0], 0.5, math.NaN(), 0.2)
	near(t, "as far as a hold", one.At, 6*h.Time, 1e-6)
	if one.By != energy.Reserve || s.First != 0 {
		t.Errorf("%+v", one)
	}
	slow, _ := flown(t, p)
	if r := slow.Route(solve.NewSolver(), []energy.Leg{{Distance: 1, Speed: 0.001}}); !(math.Abs(r.Legs[0].Power[0]/slow.Vehicles[0].Power-1) < 1e-3) {
		t.Errorf("a leg at no speed takes %g W, hover %g W", r.Legs[0].Power[0], slow.Vehicles[0].Power)
	}
}

// Without batteries nothing is flown, and what is wanted is said.
func TestRouteNeeds(t *testing.T) {
	s, r := flown(t, square(plan.Cable, pack(40), plan.BlankClass().Battery), energy.Leg{Distance: 10, Speed: 1})
	if r.Done || r.Legs != nil || r.Sentence(&s) != "What the route takes needs vehicles.odd.battery.energy_wh." {
		t.Errorf("%+v %s", r, r.Sentence(&s))
	}
}

// Into the wind a leg takes longer and more; with it, at the wind's own speed, the air stands still.
func TestWind(t *testing.T) {
	p := square(plan.Cable, pack(40), pack(40))
	p.Site.Wind, p.Site.WindTo = 5, 90
	area := [3]float64{0.1, 0.1, 0.1}
	p.Payload.DragArea = (*vec.V3)(&area)
	_, with := flown(t, p, energy.Leg{To: 90, Distance: 100, Speed: 5})
	_, against := flown(t, p, energy.Leg{To: -90, Distance: 100, Speed: 5})
	if with.Legs[0].Air > 1e-12 || math.Abs(against.Legs[0].Air-10) > 1e-12 {
		t.Errorf("air %g and %g", with.Legs[0].Air, against.Legs[0].Air)
	}
	still, _, _ := of(t, square(plan.Cable, pack(40), pack(40)))
	near(t, "with the wind", with.Legs[0].Power[1], still.Vehicles[1].Power, 1e-9)
	if r := with.Energy / with.Time; math.Abs(r/still.Power-1) > 1e-9 {
		t.Errorf("team %g", r)
	}
	p.Limits.Cone = 1
	if _, r := flown(t, p, energy.Leg{To: -90, Distance: 100, Speed: 20}); r.Done || r.Legs[0].Status != solve.Infeasible || r.Ended != -1 {
		t.Errorf("%+v", r)
	}
}
