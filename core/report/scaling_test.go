package report_test

import (
	"fmt"
	"math"
	"testing"

	"cohoist/core/beam"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// scaled is the plan with lengths times l, masses and forces times q, in still air. Every solid's
// inertia follows; a measured inertia does by hand.
func scaled(p plan.Plan, l, q float64) plan.Plan {
	out := p.Clone()
	out.Site.Wind = 0
	for i := range out.Payload.Solids {
		s := &out.Payload.Solids[i]
		for j := range s.Size {
			s.Size[j] *= l
		}
		s.Length, s.OuterRadius, s.InnerRadius, s.Mass, s.At = s.Length*l, s.OuterRadius*l, s.InnerRadius*l, s.Mass*q, s.At.Scale(l)
		if s.Mesh != nil {
			for j := range s.Mesh.Vertices {
				s.Mesh.Vertices[j] = s.Mesh.Vertices[j].Scale(l)
			}
		}
	}
	if c := out.Payload.COM; c != nil {
		*c = c.Scale(l)
	}
	if j := out.Payload.Inertia; j != nil {
		for i := range j {
			j[i] *= l * l * q
		}
	}
	if b := &out.Payload.Beam; b.Given() { // moment q l over section modulus l³, and δ/L alike
		row, _ := beam.MaterialOf(b.Material)
		b.Youngs, b.Strength = row.Youngs*q/(l*l), row.Strength*q/(l*l)
	}
	for name, c := range out.Vehicles {
		c.Mass, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust = c.Mass*q, c.Arm*l, c.RotorRadius*l, c.RotorThrustMax*q, c.TorquePerThrust*l
		if c.Inertia != nil {
			*c.Inertia = c.Inertia.Scale(l * l * q)
		}
		out.Vehicles[name] = c
	}
	for i := range out.Team {
		m := &out.Team[i]
		m.Attach = m.Attach.Scale(l)
		m.Hold.Length, m.Hold.WorkingLoad = m.Hold.Length*l, m.Hold.WorkingLoad*q
		m.Hold.GripForceMax, m.Hold.GripMomentMax = m.Hold.GripForceMax*q, m.Hold.GripMomentMax*q*l
	}
	out.Limits.TensionMin, out.Limits.Separation, out.Limits.COMError = out.Limits.TensionMin*q, out.Limits.Separation*l, out.Limits.COMError*l
	return out
}

// given writes the defaults that carry a length or a force into the plan, so that they scale too.
func given(p plan.Plan) plan.Plan {
	p = p.Clone()
	filled, _ := plan.Assume(p)
	p.Limits = filled.Limits
	return p
}

// Heavier by q and stronger by q: every utilisation and acceleration stays.
func TestMassScaling(t *testing.T) {
	each(t, func(t *testing.T, p plan.Plan) {
		p = given(p)
		for _, q := range []float64{0.01, 100} {
			a, b := report.Build(scaled(p, 1, 1)), report.Build(scaled(p, 1, q))
			b.Team.LargestPayload /= q
			same(t, a, b)
		}
	})
}

// Larger by L in everything: masses and thrusts L³, inertia L⁵, angular acceleration 1/L, (7.10).
// Common practice, no source.
func TestSizeScaling(t *testing.T) {
	each(t, func(t *testing.T, p plan.Plan) {
		p = given(p)
		one := report.Build(scaled(p, 1, 1))
		for _, l := range []float64{0.5, 2} {
			b := report.Build(scaled(p, l, l*l*l))
			if !close(one.Team.Utilisation, b.Team.Utilisation) {
				t.Errorf("size %g: utilisation %g and %g", l, one.Team.Utilisation, b.Team.Utilisation)
			}
			for i := range 3 {
				if x, y := one.Team.Inertia[i]*math.Pow(l, 5), b.Team.Inertia[i]; math.Abs(x-y) > 1e-9*x {
					t.Errorf("size %g: inertia %g, want %g", l, y, x)
				}
			}
			for i := range 2 {
				for what, x := range map[string][2]float64{
					"roll":  {one.Agility.Team.RollAcc[i], b.Agility.Team.RollAcc[i]},
					"pitch": {one.Agility.Team.PitchAcc[i], b.Agility.Team.PitchAcc[i]},
					"yaw":   {one.Agility.Team.YawAcc[i], b.Agility.Team.YawAcc[i]},
				} {
					if !close(x[0]/l, x[1]) {
						t.Errorf("size %g: %s %g rad/s², want %g", l, what, x[1], x[0]/l)
					}
				}
			}
		}
	})
}

// More payload never needs less thrust, and never leaves room for a larger one.
func TestMonotoneInMass(t *testing.T) {
	each(t, func(t *testing.T, p plan.Plan) {
		last, most := 0.0, report.Build(p).Team.LargestPayload
		for _, q := range []float64{0.25, 0.5, 1, 1.5, 2} {
			heavier := p.Clone()
			heavier.Site.Wind = 0
			for i := range heavier.Payload.Solids {
				heavier.Payload.Solids[i].Mass *= q
			}
			r := report.Build(heavier)
			if r.Team.Utilisation < last-law {
				t.Errorf("mass times %g: utilisation falls from %g to %g", q, last, r.Team.Utilisation)
			}
			if !math.IsNaN(r.Team.Utilisation) {
				last = r.Team.Utilisation
			}
			if p.Site.Wind == 0 && !close(most, r.Team.LargestPayload) {
				t.Errorf("mass times %g: largest payload %g became %g", q, most, r.Team.LargestPayload)
			}
		}
	})
}

// One more vehicle that holds itself up never lowers the largest payload. Cables may go slack here:
// a vehicle that must keep its cable taut is more than one that holds itself up, and one whose wake presses on the payload does more harm.
func TestOneMoreVehicle(t *testing.T) {
	each(t, func(t *testing.T, p plan.Plan) {
		p = given(p)
		p.Site.Wind, p.Limits.TensionMin, p.Near = 0, 0, plan.Near{Clearance: math.NaN()}
		before := report.Build(p).Team.LargestPayload
		more := p.Clone()
		extra := more.Team[0]
		extra.ID = "one more"
		extra.Attach = extra.Attach.Scale(0.7).Add(vec.V3{0.05, 0.1, 0})
		extra.Hold.Lean = [2]float64{}
		more.Team = append(more.Team, extra)
		if after := report.Build(more).Team.LargestPayload; after < before*(1-law) {
			t.Errorf("largest payload falls from %g to %g kg", before, after)
		}
	})
}

// ring is k equal vehicles around the centre of a round payload.
func ring(k int, hold string) plan.Plan {
	text := `{"format": "liftplan/1", "payload": {"solids": [{"shape": "cylinder", "length_m": 0.1, "outer_radius_m": 1, "mass_kg": 4}]},
	 "vehicles": {"quad": {"mass_kg": 2, "rotors": 4, "arm_m": 0.25, "rotor_radius_m": 0.12, "rotor_thrust_max_n": 11, "torque_per_thrust_m": 0.015}},
	 "limits": {"separation_m": 0.1}, "team": [`
	for i := range k {
		if i > 0 {
			text += ","
		}
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(k))
		r := 0.8
		if k == 1 {
			r = 0
		}
		text += fmt.Sprintf(`{"id": "V%d", "vehicle": "quad", "attach_m": [%v, %v, 0], "hold": {"kind": "%s"`, i, r*cos, r*sin, hold)
		if hold == plan.Cable {
			text += `, "length_m": 2`
		}
		text += "}}"
	}
	p, faults := plan.Decode([]byte(text + "]}"))
	if len(faults) > 0 {
		panic(faults[0].Wrong)
	}
	return p
}

// k equal vehicles lift k times what one does. Rigid: net of themselves, by hand
// k (U Σ u_max − m g)/g with U = 0.8: (35.2 N × ρ/ρ0 − 19.6133 N)/g, 1.5894 kg each.
func TestKTimesOne(t *testing.T) {
	for _, hold := range []string{plan.Cable, plan.Rigid} {
		for _, k := range []int{1, 3, 4, 5, 6, 8} {
			r := report.Build(ring(k, hold))
			got := r.Team.LargestPayload
			if want := float64(k) * (35.2*r.Team.Density/1.225/9.80665 - 2); math.Abs(got-want) > 1e-7*want {
				t.Errorf("%d on %s holds: largest payload %.9g kg, want %.9g", k, hold, got, want)
			}
		}
	}
}
