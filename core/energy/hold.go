package energy

import "math"

// End says what ends a hold.
type End string

// The ends.
const (
	Reserve   End = "reserve"   // only the energy that is to be kept is left
	Weak      End = "thrust"    // the voltage no longer gives the thrust that is needed
	Collapse  End = "collapse"  // the pack can't give the power at any current
	FromStart End = "from full" // not even a full pack gives it
)

// Hold is how long a pack gives a power.
type Hold struct {
	Time        float64 // s
	By          End
	Error       float64 // of Time, s, by halving the step; 0 in closed form
	Given       float64 // thrust available from full over what the plan says
	VoltageFull float64 // V, under the load; NaN: no voltage is known
	VoltageLast float64 // V, under the load at the end
	Charge      float64 // left at the end
}

// steps is how many steps of the rule lie between start and end.
const steps = 8

// Hold is how long the pack, from full, gives a power (W) until a reserve (of the usable energy) is left. effort is the thrust needed
// over that available at a voltage (V; NaN: that of the full pack under this load), which falls with the square of the
// voltage, (18.16).
func (p *Pack) Hold(power, effort, voltage, reserve float64) Hold {
	h := Hold{Given: 1, VoltageFull: p.Loaded(power, 1)}
	if !math.IsNaN(voltage) && !math.IsNaN(h.VoltageFull) {
		h.Given = (h.VoltageFull / voltage) * (h.VoltageFull / voltage) // (18.16)
	}
	h.Charge, h.By = p.end(power, effort, voltage, reserve)
	if h.Charge >= 1 {
		h.By, h.Charge, h.VoltageLast = FromStart, 1, h.VoltageFull
		return h
	}
	h.VoltageLast = p.Loaded(power, h.Charge)
	h.Time, h.Error = p.Time(power, 1, h.Charge)
	return h
}

// end is the charge at which a hold as in Hold ends, and by what.
func (p *Pack) end(power, effort, voltage, reserve float64) (charge float64, by End) {
	charge, by = p.ChargeAt(1-p.Usable*(1-reserve)), Reserve // (18.15)
	if math.IsNaN(p.Voltage) {
		if !(effort <= 1) {
			return 1, Weak
		}
		return charge, by
	}
	if dry := p.collapse(power); dry > charge {
		charge, by = dry, Collapse
	}
	if math.IsNaN(voltage) {
		voltage = p.Loaded(power, 1)
	}
	if weak := p.chargeFor(power, voltage*math.Sqrt(effort)); weak > charge {
		charge, by = weak, Weak
	}
	return charge, by
}

// chargeFor is the charge at which the voltage under a load is v: V = v + R P/v, (18.12).
func (p *Pack) chargeFor(power, v float64) float64 {
	if v < math.Sqrt(p.Resistance*power) { // below, the voltage only falls further: Collapse comes first
		return math.Inf(-1)
	}
	return ((v+p.Resistance*power/v)*cellNominal/p.Voltage - cellEmpty) / (cellFull - cellEmpty)
}

// Time is how long a constant power takes the charge from one value to a lower one, s, with its error. Without a
// resistance it is closed, (18.18); else dt/dq is summed by the classical Runge–Kutta rule of fixed step, which is Simpson's
// where nothing depends on t, and once more with half the step. Near a collapse dt/dq has a root; the steps are even in that root.
func (p *Pack) Time(power, from, to float64) (s, err float64) {
	if p.simple() {
		return p.Energy * (p.Left(from) - p.Left(to)) / power, 0 // (18.17)
	}
	if p.Resistance == 0 {
		n := p.Peukert
		a, b := p.Open(from), p.Open(to)
		capacity := p.Energy / p.Voltage
		rated := math.Pow(perHour*capacity/3600, n-1)
		slope := p.Open(1) - p.Open(0)
		return capacity * rated / math.Pow(power, n) * (math.Pow(a, n+1) - math.Pow(b, n+1)) / ((n + 1) * slope), 0 // (18.18)
	}
	dry := p.collapse(power)
	f := func(x float64) float64 { return 2 * x / p.rate(power, dry+x*x) } // q = dry + x²
	lo, hi := math.Sqrt(math.Max(to-dry, 0)), math.Sqrt(from-dry)
	return simpson(f, lo, hi)
}

// simpson sums f from lo to hi, and says by how much the sum may be wrong: a fifteenth of what it changes from half as many steps.
func simpson(f func(float64) float64, lo, hi float64) (sum, err float64) {
	const n = 2 * steps
	h := (hi - lo) / n
	var y [n + 1]float64
	for i := range y {
		y[i] = f(lo + float64(float64(i)*h))
	}
	coarse := 0.0
	for i := 0; i < n; i += 2 {
		sum += (y[i] + 4*y[i+1] + y[i+2]) * h / 3
	}
	for i := 0; i < n; i += 4 {
		coarse += (y[i] + 4*y[i+2] + y[i+4]) * 2 * h / 3
	}
	return sum, math.Abs(sum-coarse) / 15
}

// simple tells that the pack is energy alone.
func (p *Pack) simple() bool { return p.Resistance == 0 && p.Peukert == 1 }

// After is the charge left of one after a time (s) at a power (W), with its error, by the classical Runge–Kutta rule of fixed
// step and once more with half the step. NaN: it does not last so long.
func (p *Pack) After(power, from, time float64) (charge, err float64) {
	if p.simple() {
		left := p.Left(from) - power*time/p.Energy
		if left < 0 {
			return math.NaN(), 0
		}
		return p.ChargeAt(left), 0 // (18.17)
	}
	coarse, fine := p.walk(power, from, time, 2*steps), p.walk(power, from, time, 4*steps)
	return fine, math.Abs(fine-coarse) / 15
}

// walk takes n steps of dq/dt, (18.14).
func (p *Pack) walk(power, q, time float64, n int) float64 {
	h := time / float64(n)
	for range n {
		a := p.rate(power, q)
		b := p.rate(power, q-h/2*a)
		c := p.rate(power, q-h/2*b)
		d := p.rate(power, q-h*c)
		q -= h / 6 * (a + 2*b + 2*c + d)
	}
	if q < 0 {
		return math.NaN()
	}
	return q
}
