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
	"cohoist/core/way"
)

// still is one share held from time 0, in instants of so many seconds.
func still(a share.Answer, wind vec.V3, times ...float64) []energy.Instant {
	out := make([]energy.Instant, len(times))
	for i, t := range times {
		out[i] = energy.Instant{Time: t, Parts: a.Parts, Wind: wind}
	}
	return out
}

// Hover for a time takes power times time, whatever the instants; its pack ends when the hold does. Both have
// the error of their rules, below 1e-7.
func TestHoverAsMotion(t *testing.T) {
	for _, kind := range []string{plan.Cable, plan.Rigid} {
		s, _, a := of(t, square(kind, sagging(20), pack(40)))
		half := s.Hold / 2
		for i, v := range s.Along(still(a, vec.V3{}, 0, half/3, half), nil) {
			near(t, "energy", v.Energy, s.Vehicles[i].Power*half, 1e-12)
			near(t, "peak", v.Peak, s.Vehicles[i].Power, 1e-12)
			if !math.IsInf(v.Ends, 1) || v.By != "" {
				t.Errorf("ends at %g by %q", v.Ends, v.By)
			}
			rest := s.Along(still(a, vec.V3{}, 0, half), []float64{v.Charge, v.Charge, v.Charge, v.Charge})[i]
			whole := s.Along(still(a, vec.V3{}, 0, 2*half), nil)[i]
			near(t, "half and half", rest.Charge, whole.Charge, 1e-9)
		}
		for i, v := range s.Along(still(a, vec.V3{}, 0, 4*s.Hold), nil) {
			h := s.Vehicles[i]
			near(t, "ends", v.Ends, h.Time, 1e-7)
			near(t, "charge", v.Charge, h.Charge, 1e-8)
			if v.By != h.By {
				t.Errorf("ends by %s, the hold by %s", v.By, h.By)
			}
		}
	}
}

// A level leg of (18.25), its share handed over as two instants, takes what the leg takes, energy and charge.
func TestLegAsMotion(t *testing.T) {
	for _, kind := range []string{plan.Cable, plan.Rigid} {
		p := square(kind, sagging(40), sagging(30))
		p.Payload.DragArea = &vec.V3{0.1, 0.1, 0.1}
		leg := energy.Leg{Distance: 900, Speed: 6}
		s, r := flown(t, p, leg)
		p.Site.Wind, p.Site.WindTo = 6, 180
		_, m, a := of(t, p)
		wind := m.Attitude.T().Mul(m.Wind)
		sum := 0.0
		for i, v := range s.Along(still(a, wind, 0, 150), nil) {
			sum += v.Energy
			near(t, kind+" charge", v.Charge, r.Legs[0].Charge[i], 1e-7)
		}
		near(t, kind+" energy", sum, r.Energy, 1e-9)
	}
}

// A way flown on cables: the energy of its instants is that of four times as many within what the square law leaves, and a long way out
// at a steady pace takes near its middle what (18.25) says.
func TestFlownWay(t *testing.T) {
	p := square(plan.Cable, sagging(40), sagging(40))
	p.Payload.DragArea = &vec.V3{0.05, 0.05, 0.05}
	s, m, a := of(t, p)
	nan := math.NaN()
	route := way.Route{Arm: 1, Points: []way.Point{{Heading: nan, Time: 0}, {At: vec.V3{60, 0, 0}, Heading: nan, Time: 15}, {At: vec.V3{120, 0, 0}, Heading: nan, Time: 30}}}
	path, err := route.Path([]float64{15, 15})
	if err != nil {
		t.Fatal(err)
	}
	fly := func(each int) []energy.Spent {
		var motion []energy.Instant
		for _, i := range way.Fly(m, a.Apart, path, each, solve.NewSolver()) {
			motion = append(motion, energy.Instant{Time: i.Time, Parts: i.Parts, Wind: i.Air(m)})
		}
		return s.Along(motion, nil)
	}
	coarse, fine := fly(16), fly(64)
	for i := range fine {
		near(t, "energy", coarse[i].Energy, fine[i].Energy, 2e-3)
		if !(fine[i].Charge < 1 && fine[i].Charge > 0.5) {
			t.Errorf("charge %g", fine[i].Charge)
		}
	}
	middle := way.InstantAt(m, a.Apart, path, 15, solve.NewSolver())
	steady := s.Route(solve.NewSolver(), []energy.Leg{{Distance: 1, Speed: middle.State.Velocity.Norm()}})
	v := s.Along([]energy.Instant{{Time: 0, Parts: middle.Parts, Wind: middle.Air(m)}}, nil)
	sum := 0.0
	for i := range v {
		sum += v[i].Peak
	}
	near(t, "pace", sum, steady.Legs[0].Energy/steady.Legs[0].Time, 1e-6) // no acceleration there
}

// A vehicle of 1 kg alone, 10 m/s: by hand with and without drag; at rest it takes what it takes to hover alone.
func TestAlone(t *testing.T) {
	p := square(plan.Cable, sagging(40), pack(40))
	c := p.Vehicles["odd"]
	c.DragArea = 0.05
	p.Vehicles["odd"] = c
	s, _, _ := of(t, p)
	disc := math.Pi * 0.127 * 0.127
	by := func(area float64) float64 {
		drag := s.Density / 2 * area * 100
		thrust := math.Hypot(share.Gravity, drag)
		h := momentum.Hover(thrust/4, disc, s.Density)
		v, _ := momentum.Induced(h, 10*share.Gravity/thrust, 10*drag/thrust)
		return thrust * (1.15*v + (1/0.6-1.15)*h + 10*drag/thrust) / 0.8
	}
	for i, area := range []float64{p.Vehicles["even"].DragArea, 0.05} {
		if math.IsNaN(area) {
			area = 0
		}
		spent, u := s.Alone(i, energy.Leg{To: 70, Distance: 200, Speed: 10}, 1)
		near(t, "energy", spent.Energy, 20*by(area), 1e-9)
		near(t, "utilisation", u, math.Hypot(share.Gravity, s.Density/2*area*100)/40, 1e-7)
	}
	pk, _, _ := energy.NewPack("q", pack(40))
	spent, _ := s.Alone(1, energy.Leg{Distance: 200, Speed: 10}, 0.7)
	near(t, "charge", pk.Left(spent.Charge), pk.Left(0.7)-20*by(0.05)/(40*3600), 1e-9)
	if long, _ := s.Alone(1, energy.Leg{Distance: 1e5, Speed: 10}, 0.7); long.By != energy.Reserve || math.Abs(long.Ends*by(0.05)/(40*3600*(pk.Left(0.7)-0.2))-1) > 1e-7 {
		t.Errorf("%+v", long)
	}
}

// What is not known is not made up.
func TestAlongNeeds(t *testing.T) {
	s, _, a := of(t, square(plan.Cable, pack(40), plan.BlankClass().Battery))
	v := s.Along(still(a, vec.V3{}, 0, 10), nil)
	if math.IsNaN(v[0].Charge) || !math.IsNaN(v[1].Charge) || !math.IsNaN(v[1].Ends) || math.IsNaN(v[1].Energy) {
		t.Errorf("%+v", v)
	}
}
