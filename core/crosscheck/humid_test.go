package crosscheck

import (
	"math"
	"testing"

	"cohoist/core/advice"
	"cohoist/core/air"
	"cohoist/core/example"
	"cohoist/core/handover"
	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/scatter"
	"cohoist/core/vec"
)

// steamy is a site near the end of the moist range: 41 °C, saturated, in which air is 2.8 % lighter than dry.
func steamy(p plan.Plan) (moist, dry plan.Plan, ratio float64) {
	moist, _ = plan.Assume(p)
	moist.Site.Altitude, moist.Site.TemperatureOffset, moist.Site.Humidity = 0, 26, 1
	dry = moist
	dry.Site.Humidity = math.NaN()
	a, _ := air.Density(moist.Site)
	b, _ := air.Density(dry.Site)
	ratio = a / b
	dry.Vehicles = map[string]plan.Class{}
	for name, c := range moist.Vehicles {
		c.RotorThrustMax *= ratio
		c.DragArea *= ratio
		dry.Vehicles[name] = c
	}
	area := air.Area(moist.Payload).Scale(ratio)
	dry.Payload.DragArea = &area
	return moist, dry, ratio
}

// Moist air counts wherever a plan is asked: every question has the answer of dry air in which thrusts and drag areas are as much
// smaller, to the solver's own accuracy. So no part of the program takes another density.
func TestMoistAirCountsEverywhere(t *testing.T) {
	near := func(name, what string, got, want float64) {
		t.Helper()
		if math.IsNaN(got) != math.IsNaN(want) || math.Abs(got-want) > 2e-6*math.Max(1, math.Abs(want)) {
			t.Errorf("%s, %s: %.9g in moist air, %.9g by smaller thrusts", name, what, got, want)
		}
	}
	for _, e := range example.All {
		p, _ := example.Plan(e.Name)
		moist, dry, ratio := steamy(p)
		if ratio > 0.975 || ratio < 0.968 {
			t.Fatalf("moist air is %g of dry", ratio)
		}
		a, b := report.Build(moist), report.Build(dry)
		near(e.Name, "utilisation", a.Team.Utilisation, b.Team.Utilisation)
		near(e.Name, "largest payload", a.Team.LargestPayload, b.Team.LargestPayload)
		near(e.Name, "climb", a.Agility.Team.Climb, b.Agility.Team.Climb)
		for i := range a.Vehicles {
			near(e.Name, "thrust available", a.Vehicles[i].ThrustMax, b.Vehicles[i].ThrustMax)
			near(e.Name, "thrust", a.Vehicles[i].Thrust, b.Vehicles[i].Thrust)
		}
		s, why := scatter.New(moist, 8)
		s2, _ := scatter.New(dry, 8)
		if (s == nil) != (s2 == nil) {
			t.Fatalf("%s: %s", e.Name, why)
		}
		if s != nil {
			near(e.Name, "errors", s.Nominal, s2.Nominal)
		}
		v, _, _ := place.Value(place.Question{Plan: moist})
		v2, _, _ := place.Value(place.Question{Plan: dry})
		near(e.Name, "placement", v, v2)
		var moves [2]map[string]float64
		for k, p := range []plan.Plan{moist, dry} {
			moves[k] = map[string]float64{}
			for _, m := range advice.Moves(p) {
				moves[k][m.ID+m.Who+m.Toward] = m.Rate
			}
		}
		for id, rate := range moves[0] {
			if id == "payload.mass_kg" {
				near(e.Name, "advice", rate, moves[1][id])
			}
		}
		x, err := handover.Of(moist)
		y, err2 := handover.Of(dry)
		if err != nil || err2 != nil {
			continue
		}
		near(e.Name, "handover", x.Model.Drag.Norm(), y.Model.Drag.Norm())
		if x.Model.Density > 1.12 || x.Model.Wind == (vec.V3{}) && x.Model.Drag.Norm() > 0 {
			t.Errorf("%s: %g kg/m³", e.Name, x.Model.Density)
		}
	}
}
