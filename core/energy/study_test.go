package energy_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"cohoist/core/energy"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g of it", what, got, want, tol)
	}
}

// pack is a battery of an energy and nothing that is not constant power.
func pack(wh float64) plan.Battery {
	nan := math.NaN()
	return plan.Battery{Energy: wh, Charge: nan, Voltage: nan, Resistance: 0, Usable: 1, Peukert: 1}
}

// sagging is one of a usual make: six cells, internal resistance as 2 C of it takes 3 % (common practice, no source).
func sagging(wh float64) plan.Battery {
	return plan.Battery{Energy: wh, Charge: math.NaN(), Cells: 6, Voltage: math.NaN(), Resistance: 0.015 * 22.2 * 22.2 / wh, Usable: 0.95, Peukert: 1.03}
}

// feed gives a class what the study needs.
func feed(c plan.Class, b plan.Battery) plan.Class {
	c.FigureOfMerit, c.DriveEfficiency, c.Avionics, c.Battery = 0.6, 0.8, 0, b
	return c
}

// read is an example whose vehicles are fed: energy by mass, 45 Wh/kg of vehicle (common practice, no source).
func read(t testing.TB, name string) plan.Plan {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for name, c := range p.Vehicles {
		c = feed(c, sagging(45*c.Mass))
		c.Avionics = 3
		p.Vehicles[name] = c
	}
	return p
}

// of is the study of a plan.
func of(t testing.TB, p plan.Plan) (energy.Study, *share.Model, share.Answer) {
	t.Helper()
	m, err := share.Of(p)
	if err != nil {
		t.Fatal(err)
	}
	s := solve.NewSolver()
	a := m.Share(s)
	return energy.Of(m, s, a), m, a
}

// square is four vehicles of 1 kg, 40 N, on the corners of a square of 2 m, with 4 kg in the middle on cables or rigid holds; vehicle 0 and 2
// are fed one pack, 1 and 3 another.
func square(kind string, even, odd plan.Battery) plan.Plan {
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust = 1, 4, 0.2, 0.127, 10, 0.01
	p := plan.Blank()
	s := plan.BlankSolid()
	s.Shape, s.Mass = plan.Point, 4
	p.Payload.Solids = []plan.Solid{s}
	inertia := [6]float64{1, 1, 1, 0, 0, 0}
	p.Payload.Inertia = &inertia
	p.Vehicles = map[string]plan.Class{"even": feed(c, even), "odd": feed(c, odd)}
	for i, at := range []vec.V3{{1, 1, 0}, {-1, 1, 0}, {-1, -1, 0}, {1, -1, 0}} {
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Attach = string(rune('A'+i)), []string{"even", "odd"}[i%2], at
		m.Hold.Kind = kind
		if kind == plan.Cable {
			m.Hold.Length = 3
		}
		p.Team = append(p.Team, m)
	}
	return p
}

// By hand: every vehicle thrusts 2 g = 19.6133 N on four 10 inch discs: 43.580 × 2^1.5 W ideal (the printed rule of ideal power in SI), 256.79 W
// through 0.6 and 0.8; 80 % of 40 Wh hold 448.6 s.
func TestByHand(t *testing.T) {
	for _, kind := range []string{plan.Cable, plan.Rigid} {
		s, m, _ := of(t, square(kind, pack(40), pack(40)))
		for i, v := range s.Vehicles {
			near(t, "ideal", v.Ideal, 43.580*2*math.Sqrt2, 2e-5)
			near(t, "power", v.Power, v.Ideal/0.48, 1e-12)
			near(t, "hold", v.Time, 0.8*40*3600/v.Power, 1e-12)
			near(t, "thrust", v.ThrustLast, 40, 1e-7) // the atmosphere's own constants give 1.225 and 1.5e-8 of it
			if v.ID != m.Craft[i].ID || v.By != energy.Reserve {
				t.Errorf("%+v", v)
			}
		}
		near(t, "team", s.Power, 4*s.Vehicles[0].Power, 1e-12)
		near(t, "no gain", s.Even.Gain, 1, 1e-6)
		if len(s.Needs) > 0 || len(s.Assumed) != 2 || s.First < 0 {
			t.Errorf("%q %q %d", s.Needs, s.Assumed, s.First)
		}
	}
}

// Half the energy in A and C. Thrusts of one diagonal may fall and of the other rise by the same, and powers are as T^1.5: equal endurance has
// (T+d)/(T−d) = 2^(2/3), and gains (T/(T−d))^1.5 = ((1 + 2^(2/3))/2)^1.5.
func TestEvenByHand(t *testing.T) {
	for _, kind := range []string{plan.Cable, plan.Rigid} {
		s, _, _ := of(t, square(kind, pack(20), pack(40)))
		if s.Even == nil {
			t.Fatal(kind, s.Needs)
		}
		r := math.Cbrt(4)
		near(t, kind+" gain", s.Even.Gain, math.Pow((1+r)/2, 1.5), 1e-6)
		for i, v := range s.Even.Vehicles {
			near(t, "equal", v.Time, s.Even.Hold, 1e-6)
			want := 2 * share.Gravity * 2 / (1 + r)
			if i%2 == 1 {
				want *= r
			}
			if kind == plan.Rigid {
				near(t, "thrust", s.Even.Parts[i].Effort, want, 1e-6)
			} else {
				near(t, "thrust", s.Even.Parts[i].Thrust[2], want, 1e-6)
			}
		}
		if s.First != 0 || !reflect.DeepEqual(s.Order, []int{0, 2, 1, 3}) {
			t.Errorf("first %d, order %v", s.First, s.Order)
		}
		if s.Even.Solves > 15 {
			t.Errorf("%d programs", s.Even.Solves)
		}
	}
}

// Every example: the share for equal endurance balances, keeps its limits, never ends sooner than the plan's, and no share holds a
// thousandth longer: with thrusts capped at what is held that long there is none, by the program's own proof.
func TestExamples(t *testing.T) {
	gains := 0
	for _, e := range example.All {
		p := read(t, e.Name)
		half := 0
		for name, c := range p.Vehicles { // some packs are half as large, so that there is something to gain
			if half++; half%2 == 0 {
				c.Battery = sagging(c.Battery.Energy / 2)
				p.Vehicles[name] = c
			}
		}
		for i := range p.Team { // and so is that of the first vehicle
			if i == 0 {
				c := p.Vehicles[p.Team[0].Vehicle]
				c.Battery = sagging(c.Battery.Energy / 2)
				p.Vehicles["first"] = c
				p.Team[0].Vehicle = "first"
			}
		}
		s, m, a := of(t, p)
		if a.Status != solve.Optimal || a.T > 1 {
			continue
		}
		if s.Even == nil {
			t.Errorf("%s: no share for equal endurance; needs %q", e.Name, s.Needs)
			continue
		}
		t.Logf("%s: %.0f W, %.0f s by %s, first %s; even %.0f s in %d programs", e.Name, s.Power, s.Hold, s.Vehicles[s.First].By, s.Vehicles[s.First].ID, s.Even.Hold, s.Even.Solves)
		if s.Even.Gain > 1.001 {
			gains++
		}
		force, turn := m.Need.Scale(-1), m.NeedTurn.Scale(-1)
		for i, part := range s.Even.Parts {
			f, c := part.Force, m.Craft[i]
			if c.Rigid {
				f, turn = part.Thrust, turn.Add(part.Moment)
			}
			force = force.Add(f)
			turn = turn.Add(c.At.Sub(m.Body.COM).Cross(f))
			if part.Utilisation > math.Max(a.T, m.Plan.Limits.Utilisation)*(1+1e-6) {
				t.Errorf("%s: utilisation %g", e.Name, part.Utilisation)
			}
		}
		if force.Norm() > 1e-6*m.Weight() || turn.Norm() > 1e-6*m.Weight() {
			t.Errorf("%s: left unbalanced %v, %v", e.Name, force, turn)
		}
		if s.Even.Gain < 1 || s.Even.Hold < s.Hold {
			t.Errorf("%s: gain %g", e.Name, s.Even.Gain)
		}
	}
	if gains < 2 {
		t.Errorf("only %d examples gain", gains)
	}
}

// What is left out is asked for by its path, once for a class, and nothing is guessed.
func TestNeeds(t *testing.T) {
	p := square(plan.Cable, pack(40), plan.BlankClass().Battery)
	c := p.Vehicles["even"]
	c.FigureOfMerit = math.NaN()
	p.Vehicles["even"] = c
	s, _, _ := of(t, p)
	want := []string{"vehicles.even.figure_of_merit", "vehicles.odd.battery.energy_wh"}
	if !reflect.DeepEqual(s.Needs, want) || s.First != -1 || s.Even != nil || !math.IsNaN(s.Hold) {
		t.Errorf("%q %+v", s.Needs, s)
	}
	if !math.IsNaN(s.Vehicles[0].Power) || math.IsNaN(s.Vehicles[1].Power) || math.IsNaN(s.Vehicles[0].Ideal) {
		t.Errorf("%+v", s.Vehicles)
	}
	if len(s.Assumed) != 4 || s.Assumed[1] != "Usable energy of odd left out: taken as all that is printed." {
		t.Errorf("%q", s.Assumed)
	}
}

// A static test goes before figure of merit and drive: the power of the rows at the thrust, at another density that of the same
// coefficients; the voltage of its last row is that of the thrusts. Outside its rows, and with one that is none, nothing is guessed.
func TestBench(t *testing.T) {
	fed := func(rows ...plan.Bench) plan.Plan {
		p := square(plan.Cable, sagging(40), sagging(40))
		for name, c := range p.Vehicles {
			c.FigureOfMerit, c.DriveEfficiency, c.Bench = math.NaN(), math.NaN(), rows
			p.Vehicles[name] = c
		}
		return p
	}
	rows := []plan.Bench{{Thrust: 1, Power: 8, Voltage: 24}, {Thrust: 2 * share.Gravity / 4, Power: 70, Voltage: 23}, {Thrust: 10, Power: 210, Voltage: 22}}
	s, _, _ := of(t, fed(rows...))
	near(t, "power", s.Vehicles[0].Power, 4*70, 1e-6) // the day's density is 1.5e-8 off the standard's
	v := s.Vehicles[0]
	near(t, "thrust from full", v.ThrustFull, 40*(v.VoltageFull/22)*(v.VoltageFull/22), 1e-7)
	near(t, "thrust at the end", v.ThrustLast, 40*(v.VoltageLast/22)*(v.VoltageLast/22), 1e-7)
	p := fed(rows...)
	p.Site.TemperatureOffset = 15
	warm, _, _ := of(t, p)
	if r := warm.Power / s.Power; r < 1.01 || r > 1.05 { // T^1.5: 1.0257
		t.Errorf("warm air takes %g", r)
	}
	if out, _, _ := of(t, fed(rows[0], plan.Bench{Thrust: 4, Power: 60, Voltage: 23})); !math.IsNaN(out.Power) || out.First != -1 || out.Even != nil {
		t.Errorf("outside its rows: %+v", out)
	}
	if none, _, _ := of(t, fed(rows[0])); len(none.Needs) != 2 || none.Needs[0] != "vehicles.even.bench" || !strings.HasPrefix(none.Assumed[0], "Static test of even not used. A static test needs") {
		t.Errorf("%q %q", none.Needs, none.Assumed)
	}
}

// Other names and another order of the team give the same; thin air takes more power by ρ^−0.5, and moist air is thin.
func TestLaws(t *testing.T) {
	one, _, _ := of(t, square(plan.Cable, sagging(20), sagging(40)))
	p := square(plan.Cable, sagging(20), sagging(40))
	p.Team[0].ID, p.Team[1].ID = "x", "y"
	p.Team[0], p.Team[3] = p.Team[3], p.Team[0]
	two, _, _ := of(t, p)
	near(t, "hold", two.Hold, one.Hold, 1e-7)
	near(t, "even", two.Even.Hold, one.Even.Hold, 1e-6)
	near(t, "power", two.Power, one.Power, 1e-9)
	p = square(plan.Cable, sagging(20), sagging(40))
	p.Site.Altitude, p.Site.Humidity = 2000, 0
	high, _, _ := of(t, p)
	near(t, "thin air", high.Power/one.Power, math.Sqrt(1.225/1.006490), 1e-6) // density of the standard at 2 000 m
	p.Site.Humidity = 1
	moist, _, _ := of(t, p)
	if r := moist.Power / high.Power; r < 1.001 || r > 1.01 {
		t.Errorf("moist air takes %g", r)
	}
}

// BenchmarkEight is the whole study of eight vehicles, their share with it.
func BenchmarkEight(b *testing.B) {
	p := read(b, "deck-of-eight")
	c := p.Vehicles[p.Team[0].Vehicle]
	c.Battery = sagging(0.7 * c.Battery.Energy)
	p.Vehicles["tired"] = c
	p.Team[2].Vehicle = "tired"
	rigid := p
	rigid.Team = append([]plan.Member(nil), p.Team...)
	for i := range rigid.Team {
		rigid.Team[i].Hold = plan.Hold{Kind: plan.Rigid}
	}
	for name, p := range map[string]plan.Plan{"cables": p, "rigid": rigid} {
		b.Run(name, func(b *testing.B) {
			_, m, a := of(b, p)
			s := solve.NewSolver()
			b.ResetTimer()
			for range b.N {
				energy.Of(m, s, a)
			}
		})
	}
}
