package energy

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/momentum"
)

// Working is how a route's figures come about, leg by leg.
func (r Route) Working(s *Study) []Step {
	var w working
	sum, legs, alone := 0.0, []string{}, []string{}
	for n, f := range r.Legs {
		if math.IsNaN(f.Energy) {
			break
		}
		k := strconv.Itoa(n + 1)
		sin, cos := math.Sincos(f.To * math.Pi / 180)
		w.add("v_"+k, f.Air, "m/s", "THEORY (18.25)", "hypot(%v - %v*%v, %v - %v*%v)", s.model.Wind[0], f.Speed, cos, s.model.Wind[1], f.Speed, sin)
		w.add("t_"+k, f.Time, "s", "distance over speed", "%v/%v", f.Distance, f.Speed)
		power := f.Energy / f.Time
		each := make([]string, len(f.Power))
		for i := range f.Power {
			each[i] = "P_" + k + "_" + strconv.Itoa(i+1)
			s.legSteps(&w, each[i], f, i)
		}
		w.add("P_"+k, power, "W", "every vehicle's", strings.Join(each, " + "))
		w.add("E_"+k, f.Energy, "J", "power over time", "P_"+k+"*t_"+k)
		sum += f.Energy
		legs, alone = append(legs, "E_"+k), append(alone, "S_"+k+"*t_"+k)
	}
	if !r.Done || len(legs) == 0 {
		return w
	}
	w.add("E", sum, "J", "the legs", strings.Join(legs, " + "))
	w.add("e", r.PerLoad, "J/(kg m)", "THEORY (18.27)", "E/(%v*%v)", s.model.Payload.Mass, r.Distance)
	if math.IsNaN(r.Single) {
		return w
	}
	r.singleSteps(&w, s)
	w.add("e_1", r.Single, "J/(kg m)", "THEORY (18.26): one vehicle with their mass, drag and discs", "("+strings.Join(alone, " + ")+")/(%v*%v)", s.model.Payload.Mass, r.Distance)
	w.add("ratio", r.PerLoad/r.Single, "1", "the two compared", "e/e_1")
	return w
}

// legSteps work out the power of vehicle i on a leg, rotor by rotor where they differ.
func (s *Study) legSteps(w *working, symbol string, f Flown, i int) {
	k, id := s.craft[i], s.model.Craft[i].ID
	wind := f.model.Attitude.T().Mul(f.model.Wind)
	rotors := f.parts[i].Rotor
	alike := true
	for _, u := range rotors {
		alike = alike && math.Abs(u-rotors[0]) <= 1e-12*math.Abs(rotors[0])
	}
	if alike && len(rotors) > 0 {
		rotors = rotors[:1]
	}
	terms, numbers := []string{}, []float64{}
	for j, u := range rotors {
		across, through := flow(f.model, i, j, &f.parts[i], wind)
		u = math.Max(u, 0)
		h := momentum.Hover(u, k.rotor.Area, s.Density)
		v, fits := momentum.Induced(h, across, through)
		if k.rotor.table != nil || !fits || u == 0 {
			terms, numbers = append(terms, "%v"), append(numbers, k.rotor.Electric(u, s.Density, across, through))
			continue
		}
		most := math.Min(momentum.InducedFactor, 1/k.rotor.FigureOfMerit)
		terms = append(terms, "%v*(%v*%v + (1/%v - %v)*%v + %v)/%v")
		numbers = append(numbers, u, most, v, k.rotor.FigureOfMerit, most, h, through, k.rotor.DriveEfficiency)
	}
	text := strings.Join(terms, " + ")
	if alike {
		text = strconv.Itoa(len(f.parts[i].Rotor)) + "*(" + text + ")"
	}
	source := id + ", THEORY (18.5): u*(k*v + (1/FM - k)*v_h + v_n)/eta"
	if k.rotor.table != nil {
		source = id + ", static test, THEORY (19.1), (18.6)"
	}
	w.add(symbol, f.Power[i], "W", source, text+" + %v", append(numbers, k.avionics)...)
}

// singleSteps work out the power of the one vehicle on every leg.
func (r Route) singleSteps(w *working, s *Study) {
	one := r.Legs[0].single
	w.add("A", one.Area, "m²", "THEORY (18.26): all discs", "%v", one.Area)
	w.add("FM", one.FigureOfMerit, "1", "THEORY (18.26): by disc area", "%v", one.FigureOfMerit)
	w.add("eta", one.DriveEfficiency, "1", "THEORY (18.26): by disc area", "%v", one.DriveEfficiency)
	w.add("k", math.Min(momentum.InducedFactor, 1/one.FigureOfMerit), "1", "common practice, no source", "min(%v, 1/FM)", momentum.InducedFactor)
	w.add("W", one.Weight, "N", "payload and team", "%v", one.Weight)
	for n, f := range r.Legs {
		one, k := f.single, strconv.Itoa(n+1)
		thrust, across, through := one.flow()
		h := momentum.Hover(thrust, one.Area, s.Density)
		v, _ := momentum.Induced(h, across, through)
		w.add("D_"+k, one.Drag, "N", "THEORY (3.4): payload and vehicles", "%v", one.Drag)
		w.add("T_"+k, thrust, "N", "holds weight and drag", "hypot(W, D_"+k+")")
		w.add("h_"+k, h, "m/s", "THEORY (18.1)", "sqrt(T_"+k+"/(2*%v*A))", s.Density)
		w.add("i_"+k, v, "m/s", "THEORY (18.4), put back into itself", "h_"+k+"*h_"+k+"/hypot(v_"+k+"*W/T_"+k+", v_"+k+"*D_"+k+"/T_"+k+" + %v)", v)
		w.add("S_"+k, one.Power, "W", "THEORY (18.5), (18.26)", "T_"+k+"*(k*i_"+k+" + (1/FM - k)*h_"+k+" + v_"+k+"*D_"+k+"/T_"+k+")/eta + %v", one.Avionics)
	}
}
