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
func (p Pack) Hold(power, effort, voltage, reserve float64) Hold {
	h := Hold{Given: 1, VoltageFull: math.NaN(), VoltageLast: math.NaN()}
	end := p.ChargeAt(1 - p.Usable*(1-reserve)) // (18.15)
	h.By = Reserve
	if math.IsNaN(p.Voltage) {
		if !(effort <= 1) {
			end, h.By = 1, FromStart
		}
		h.Time, h.Charge = p.Energy*(1-p.Left(end))/power, end // (18.17)
		return h
	}
	h.VoltageFull = p.Loaded(power, 1)
	if math.IsNaN(voltage) {
		voltage = h.VoltageFull
	}
	h.Given = (h.VoltageFull / voltage) * (h.VoltageFull / voltage)
	if weak := p.chargeFor(power, voltage*math.Sqrt(effort)); weak > end {
		end, h.By = weak, Weak
	}
	if dry := p.collapse(power); dry > end {
		end, h.By = dry, Collapse
	}
	if !(end < 1) || math.IsNaN(h.VoltageFull) {
		h.By, h.Time, h.Charge, h.VoltageLast = FromStart, 0, 1, h.VoltageFull
		return h
	}
	h.Charge, h.VoltageLast = end, p.Loaded(power, end)
	h.Time, h.Error = p.Time(power, 1, end)
	return h
}

// chargeFor is the charge at which the voltage under a load is v: V = v + R P/v, (18.12).
func (p Pack) chargeFor(power, v float64) float64 {
	if v < math.Sqrt(p.Resistance*power) { // below, the voltage only falls further: Collapse comes first
		return math.Inf(-1)
	}
	return ((v+p.Resistance*power/v)*cellNominal/p.Voltage - cellEmpty) / (cellFull - cellEmpty)
}

// Time is how long a constant power takes the charge from one value to a lower one, s, with its error. Without a
// resistance it is closed, (18.18); else dt/dq is summed by the classical Runge–Kutta rule of fixed step, which is Simpson's
// where nothing depends on t, and once more with half the step. Near a collapse dt/dq has a root; the steps are even in that root.
func (p Pack) Time(power, from, to float64) (s, err float64) {
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
