package energy

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cohoist/core/momentum"
	"cohoist/core/share"
)

// Step is one line of working, as those of core/check: Expression is a Go expression over the symbols of earlier steps and numbers, and
// a test evaluates it again.
type Step struct {
	Symbol, Expression string
	Value              float64
	Unit, Source       string
}

// steps of a working.
type working []Step

// add writes one line; every %v of the expression takes one number, which reads back exactly.
func (w *working) add(symbol string, value float64, unit, source, expression string, numbers ...float64) float64 {
	args := make([]any, len(numbers))
	for i, x := range numbers {
		args[i] = literal(x)
	}
	*w = append(*w, Step{symbol, fmt.Sprintf(expression, args...), value, unit, source})
	return value
}

func literal(x float64) string {
	s := strconv.FormatFloat(x, 'g', -1, 64)
	if strings.HasPrefix(s, "-") {
		return "(" + s + ")"
	}
	return s
}

const given = "the plan"

// Working is how power and hold of vehicle i at a part come about.
func (s *Study) Working(i int, p share.Part) []Step {
	var w working
	v := s.Vehicles[i]
	if math.IsNaN(v.Power) {
		return nil
	}
	w.add("rho", s.Density, "kg/m³", "THEORY (3.3), (3.9)", "%v", s.Density)
	s.powerSteps(&w, i, p)
	if k := s.craft[i]; k.known {
		s.packSteps(&w, i, k.pack, p.Utilisation)
	}
	return w
}

// powerSteps work out the power.
func (s *Study) powerSteps(w *working, i int, p share.Part) {
	k, n := s.craft[i], float64(len(p.Rotor))
	w.add("P_a", k.avionics, "W", given, "%v", k.avionics)
	each, alike := s.rotorPowers(i, p)
	if k.rotor.table == nil {
		w.add("A", k.rotor.Area, "m²", given, "pi*%v*%v", s.radius(i), s.radius(i))
		w.add("FM", k.rotor.FigureOfMerit, "1", given, "%v", k.rotor.FigureOfMerit)
		w.add("eta", k.rotor.DriveEfficiency, "1", given, "%v", k.rotor.DriveEfficiency)
	}
	worst := 0
	for j, u := range p.Rotor {
		if u > p.Rotor[worst] {
			worst = j
		}
	}
	across, through := s.flow(i, worst, &p)
	u := w.add("u", math.Max(p.Rotor[worst], 0), "N", "the share, THEORY (5.4), (5.10): its hardest-working rotor", "%v", math.Max(p.Rotor[worst], 0))
	if r := ground(s.model, i); r != 1 {
		w.add("r_g", r, "1", "THEORY (22.1)", "%v", r)
		u = w.add("u", u/r, "N", "THEORY (22.1): far from the ground the same power gives", "u/r_g")
	}
	h := momentum.Hover(u, k.rotor.Area, s.Density)
	switch {
	case k.rotor.table != nil:
		w.add("P_r", each[worst], "W", "static test, THEORY (19.1), (18.6)", "%v", each[worst])
	case across == 0 && through == 0 || u == 0:
		w.add("v_h", h, "m/s", "THEORY (18.1)", "sqrt(u/(2*rho*A))")
		w.add("P_r", each[worst], "W", "THEORY (18.2), (18.3)", "u*v_h/(FM*eta)")
	default:
		w.add("v_h", h, "m/s", "THEORY (18.1)", "sqrt(u/(2*rho*A))")
		v, _ := momentum.Induced(h, across, through)
		w.add("v_t", across, "m/s", "wind along the disc", "%v", across)
		w.add("v_n", through, "m/s", "wind down through the disc", "%v", through)
		w.add("v", v, "m/s", "THEORY (18.4), put back into itself", "v_h*v_h/hypot(v_t, v_n + %v)", v)
		w.add("k", math.Min(momentum.InducedFactor, 1/k.rotor.FigureOfMerit), "1", "common practice, no source", "min(%v, 1/FM)", momentum.InducedFactor)
		w.add("P_r", each[worst], "W", "THEORY (18.5)", "u*(k*v + (1/FM - k)*v_h + v_n)/eta")
	}
	power := s.Vehicles[i].Power
	if alike {
		w.add("P", power, "W", "THEORY (18.3)", "%v*P_r + P_a", n)
		return
	}
	w.add("P", power, "W", "THEORY (18.3), rotor by rotor", strings.Repeat("%v + ", len(each))+"P_a", each...)
}

// radius is that of the rotors of vehicle i, m.
func (s *Study) radius(i int) float64 {
	return s.model.Plan.Vehicles[s.model.Craft[i].Class].RotorRadius
}

// rotorPowers is the power of each rotor of a part, W, and whether all are alike.
func (s *Study) rotorPowers(i int, p share.Part) (each []float64, alike bool) {
	alike = true
	for j, u := range p.Rotor {
		across, through := s.flow(i, j, &p)
		each = append(each, s.craft[i].rotor.Electric(math.Max(u, 0)/ground(s.model, i), s.Density, across, through))
		alike = alike && math.Abs(each[j]-each[0]) <= 1e-12*each[0]
	}
	return each, alike
}

// packSteps work out the hold.
func (s *Study) packSteps(w *working, i int, p Pack, effort float64) {
	v := s.Vehicles[i]
	b := s.model.Plan.Vehicles[s.model.Craft[i].Class].Battery
	switch {
	case math.IsNaN(p.Voltage):
	case !math.IsNaN(b.Voltage):
		w.add("V_n", p.Voltage, "V", given, "%v", p.Voltage)
	case b.Cells > 0:
		w.add("V_n", p.Voltage, "V", "THEORY (18.9)", "%v*%v", cellNominal, float64(b.Cells))
	default:
		w.add("V_n", p.Voltage, "V", "THEORY (18.9)", "%v/%v", b.Energy, b.Charge)
	}
	if b.Energy > 0 {
		w.add("E", p.Energy, "J", given, "%v*3600", b.Energy)
	} else {
		w.add("E", p.Energy, "J", "THEORY (18.9)", "%v*V_n*3600", b.Charge)
	}
	reserve := s.model.Plan.Limits.Reserve
	left := w.add("L", 1-p.Usable*(1-reserve), "1", "THEORY (18.15): the energy that is left at the reserve", "1 - %v*(1 - %v)", p.Usable, reserve)
	w.add("q_r", p.ChargeAt(left), "1", "THEORY (18.11)", "2*%v*L/(%v + sqrt(%v*%v + 2*%v*L))", cellNominal, cellEmpty, cellEmpty, cellEmpty, cellNominal)
	if math.IsNaN(p.Voltage) {
		w.add("tau", v.Time, "s", "THEORY (18.17)", "E*(1 - L)/P")
		return
	}
	w.add("R", p.Resistance, "Ω", given, "%v", p.Resistance)
	w.add("V_o", p.Open(1), "V", "THEORY (18.10)", "V_n*%v/%v", cellFull, cellNominal)
	if math.IsNaN(v.VoltageFull) {
		return
	}
	w.add("V", v.VoltageFull, "V", "THEORY (18.12)", "(V_o + sqrt(V_o*V_o - 4*R*P))/2")
	reference := v.VoltageFull
	if k := s.craft[i]; !math.IsNaN(k.voltage) {
		reference = w.add("V_ref", k.voltage, "V", "its static test's last row", "%v", k.voltage)
		w.add("T", v.ThrustFull, "N", "THEORY (18.16)", "%v*(V/V_ref)*(V/V_ref)", v.ThrustFull/v.Given)
	} else {
		w.add("T", v.ThrustFull, "N", "THEORY (4.3), (18.16): given for a full pack under this load", "%v", v.ThrustFull)
	}
	most := s.model.Craft[i].Vehicle.ThrustMax
	w.add("s", v.SpareFull, "1", "THEORY (18.33): spare from full, at its hardest-working rotor", "1 - %v*%v/T", effort, most)
	s.endSteps(w, v, p, effort, reference)
}

// endSteps work out where the hold ends.
func (s *Study) endSteps(w *working, v Vehicle, p Pack, effort, reference float64) {
	switch v.By {
	case FromStart:
		return
	case Weak:
		w.add("V_e", reference*math.Sqrt(effort), "V", "THEORY (18.16): there the thrust available is the thrust needed", "%v*sqrt(%v)", reference, effort)
		w.add("q", v.Charge, "1", "THEORY (18.10), (18.12)", "((V_e + R*P/V_e)*%v/V_n - %v)/(%v - %v)", cellNominal, cellEmpty, cellFull, cellEmpty)
		w.add("T_e", v.ThrustLast, "N", "THEORY (18.16)", "T*(V_e/%v)*(V_e/%v)", v.VoltageFull, v.VoltageFull)
	case Collapse:
		w.add("q", v.Charge, "1", "THEORY (18.12): no current gives more", "(2*sqrt(R*P)/V_n*%v - %v)/(%v - %v)", cellNominal, cellEmpty, cellFull, cellEmpty)
	default:
		w.add("q", v.Charge, "1", "THEORY (18.15): the reserve comes first", "q_r")
		open := p.Open(v.Charge)
		w.add("V_oe", open, "V", "THEORY (18.10)", "V_n*(%v + (%v - %v)*q)/%v", cellEmpty, cellFull, cellEmpty, cellNominal)
		w.add("V_e", v.VoltageLast, "V", "THEORY (18.12)", "(V_oe + sqrt(V_oe*V_oe - 4*R*P))/2")
		w.add("T_e", v.ThrustLast, "N", "THEORY (18.16)", "T*(V_e/V)*(V_e/V)")
	}
	if v.By != Collapse {
		w.add("s_e", v.SpareLast, "1", "THEORY (18.33): spare at the end", "1 - (1 - s)*T/T_e")
	}
	w.add("L_e", p.Left(v.Charge), "1", "THEORY (18.11)", "q*(%v + (%v - %v)/2*q)/%v", cellEmpty, cellFull, cellEmpty, cellNominal)
	if p.simple() {
		w.add("tau", v.Time, "s", "THEORY (18.17)", "E*(1 - L_e)/P")
		return
	}
	w.add("tau_0", p.Energy*(p.Left(1)-p.Left(v.Charge))/v.Power, "s", "THEORY (18.17): without losses in the pack", "E*(1 - L_e)/P")
	w.add("tau", v.Time, "s", "THEORY (18.14), (18.18), summed from 1 to q; error below "+share.Short(math.Max(v.Error, 0.001))+" s", "%v", v.Time)
}
