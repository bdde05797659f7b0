package energy

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Voltages of a lithium cell, open circuit.
const (
	cellNominal = 3.7 // V; study texts for remote pilots, open-exam-prep.com, battery performance
	cellFull    = 4.2 // V; common practice, no source
	cellEmpty   = 3.2 // V: what makes a straight line's mean the nominal voltage
	perHour     = 0.2 // of the capacity: the current at which it is rated (IEC 61960, from memory)
)

// Pack is a battery, SI. A full one has charge 1, an empty one 0.
type Pack struct {
	Energy     float64 // J, nominal
	Voltage    float64 // V, nominal; NaN: not known, then nothing depends on it
	Resistance float64 // Ω
	Usable     float64 // part of Energy that can be taken out at all
	Peukert    float64 // exponent n
}

// NewPack reads the battery of a class of vehicle. needs are the keys of what is wanted, assumed says what was taken for what may be
// left out, a sentence each.
func NewPack(class string, b plan.Battery) (p Pack, needs, assumed []string) {
	p = Pack{Energy: b.Energy * 3600, Voltage: b.Voltage, Resistance: b.Resistance, Usable: b.Usable, Peukert: b.Peukert}
	if math.IsNaN(p.Voltage) && b.Cells > 0 {
		p.Voltage = cellNominal * float64(b.Cells)
	}
	if math.IsNaN(p.Voltage) {
		p.Voltage = b.Energy / b.Charge
	}
	if math.IsNaN(p.Energy) {
		p.Energy = b.Charge * p.Voltage * 3600 // (18.9)
	}
	take := func(x *float64, value float64, title, taken string) {
		if math.IsNaN(*x) {
			*x = value
			assumed = append(assumed, title+" of "+class+" left out: "+taken+".")
		}
	}
	take(&p.Usable, 1, "Usable energy", "taken as all that is printed")
	take(&p.Resistance, 0, "Internal resistance", "the voltage is taken not to sag under load")
	take(&p.Peukert, 1, "Peukert exponent", "taken as 1")
	unknown := math.IsNaN(p.Voltage)
	switch {
	case !b.Given():
		needs = append(needs, "energy_wh")
	case math.IsNaN(p.Energy), unknown && (p.Resistance > 0 || p.Peukert > 1):
		needs = append(needs, "voltage_v")
	case unknown:
		assumed = append(assumed, "Nominal voltage of "+class+" left out: its thrust is taken not to fall with the charge.")
	}
	if printed := b.Charge * p.Voltage; math.Abs(printed-b.Energy) > printedTol*b.Energy {
		assumed = append(assumed, "Energy of "+class+" is "+share.Short(b.Energy)+" Wh, capacity times voltage "+share.Short(printed)+" Wh: the first is taken.")
	}
	return p, needs, assumed
}

// printedTol is how far the numbers printed on a pack may be apart, being rounded.
const printedTol = 0.03

// Open is the open-circuit voltage at a charge, V: straight from full to empty, (18.10).
func (p *Pack) Open(charge float64) float64 {
	return p.Voltage * (cellEmpty + float64((cellFull-cellEmpty)*charge)) / cellNominal // (18.10)
}

// Left is the part of the energy that is left at a charge, (18.11).
func (p *Pack) Left(charge float64) float64 {
	return charge * (cellEmpty + float64((cellFull-cellEmpty)/2*charge)) / cellNominal // (18.11)
}

// ChargeAt is the charge at which a part of the energy is left, Left turned over.
func (p *Pack) ChargeAt(left float64) float64 {
	const rise = cellFull - cellEmpty
	c := 2 * cellNominal * left / rise
	const half = cellEmpty / rise
	return c / (half + math.Sqrt(half*half+c)) // (18.11)
}

// Current is the current for a power at a charge, A: the smaller root of P = V I − R I², (18.12). NaN: more than the pack
// can give.
func (p *Pack) Current(power, charge float64) float64 {
	return power / p.Loaded(power, charge) // (18.12)
}

// Loaded is the voltage at the terminals for a power at a charge, V, the larger root of V² − V_o V + R P, (18.12). NaN: more
// power than the pack can give.
func (p *Pack) Loaded(power, charge float64) float64 {
	v := p.Open(charge)
	d := float64(v*v) - 4*p.Resistance*power
	if d < 0 && d > -1e-12*v*v { // at the collapse itself
		d = 0
	}
	return (v + math.Sqrt(d)) / 2 // (18.12)
}

// collapse is the charge below which the pack cannot give a power.
func (p *Pack) collapse(power float64) float64 {
	return (2*math.Sqrt(p.Resistance*power)/p.Voltage*cellNominal - cellEmpty) / (cellFull - cellEmpty)
}

// Peukert is how much of a capacity (Ah), rated at a discharge in a number of hours, a current (A) leaves, Ah:
// C (C/(H I))^(n−1), (18.13). With H = C the rated current is 1 A, and the time C/Iⁿ.
func Peukert(capacity, hours, current, exponent float64) float64 {
	return capacity * math.Pow(capacity/(hours*current), exponent-1) // (18.13)
}

// rate is dq/dt of the charge at a power, 1/s, as a positive number, (18.14).
func (p *Pack) rate(power, charge float64) float64 {
	i := p.Current(power, charge)
	capacity := p.Energy / p.Voltage // A s
	r := i / capacity
	if p.Peukert != 1 {
		r *= math.Pow(i/(perHour*capacity/3600), p.Peukert-1) // (18.14)
	}
	return r
}
