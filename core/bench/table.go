// Package bench reads static tests of one rotor with its drive: throttle, thrust, power, speed, voltage (THEORY
// chapter 19).
//
// Restriction: static tests in one density of air; nothing is told outside the data. Geometry: none; thrust along the
// rotor's axis. Calculation: a monotone curve through the rows (19.1), coefficients (19.3) to (19.5), a file's columns by their
// names. Verification: rows of open propeller data and of one small vehicle in the tests.
// References: THEORY chapter 19.
package bench

import (
	"errors"
	"math"
	"slices"
	"strconv"

	"cohoist/core/plan"
)

// Table is a static test as curves over thrust.
type Table struct {
	Rows                                   []plan.Bench // by thrust, each thrust once
	power, speed, voltage, throttle, reach *curve
}

// New lays curves through the rows of a static test. It says what keeps them from being one: fewer than two rows
// with thrust and power, or a power that falls while thrust rises.
func New(rows []plan.Bench) (*Table, error) {
	t := &Table{}
	for _, r := range rows {
		if r.Thrust >= 0 && r.Power >= 0 {
			t.Rows = append(t.Rows, r)
		}
	}
	slices.SortStableFunc(t.Rows, func(a, b plan.Bench) int {
		switch {
		case a.Thrust < b.Thrust:
			return -1
		case a.Thrust > b.Thrust:
			return 1
		}
		return 0
	})
	t.Rows = merged(t.Rows, func(r plan.Bench) float64 { return r.Thrust })
	if len(t.Rows) < 2 {
		return nil, errors.New("A static test needs at least two rows with thrust and power; there are " + strconv.Itoa(len(t.Rows)) + ".")
	}
	for i, r := range t.Rows[1:] {
		if r.Power < t.Rows[i].Power {
			return nil, errors.New("Power falls from " + number(t.Rows[i].Power) + " W to " + number(r.Power) + " W while thrust rises from " +
				number(t.Rows[i].Thrust) + " N to " + number(r.Thrust) + " N. Check these rows.")
		}
	}
	thrust := func(r plan.Bench) float64 { return r.Thrust }
	t.power = through(t.Rows, thrust, func(r plan.Bench) float64 { return r.Power })
	t.speed = through(t.Rows, thrust, func(r plan.Bench) float64 { return r.Speed })
	t.voltage = through(t.Rows, thrust, func(r plan.Bench) float64 { return r.Voltage })
	t.throttle = through(t.Rows, thrust, func(r plan.Bench) float64 { return r.Throttle })
	t.reach = through(t.Rows, func(r plan.Bench) float64 { return r.Throttle }, thrust)
	return t, nil
}

// Span is the least and the most thrust of the rows, N.
func (t *Table) Span() (least, most float64) {
	return t.Rows[0].Thrust, t.Rows[len(t.Rows)-1].Thrust
}

// Power is the electric power at a thrust, W, (19.1). ok is false, and the value NaN, outside the rows.
func (t *Table) Power(thrust float64) (w float64, ok bool) { return t.power.at(thrust) }

// Speed is the rotor's speed at a thrust, rad/s; Voltage that at the controller, V; Throttle what is asked of it.
func (t *Table) Speed(thrust float64) (radS float64, ok bool) { return t.speed.at(thrust) }

// Voltage is the voltage at the controller at a thrust, V.
func (t *Table) Voltage(thrust float64) (v float64, ok bool) { return t.voltage.at(thrust) }

// Throttle is the throttle at a thrust.
func (t *Table) Throttle(thrust float64) (ratio float64, ok bool) { return t.throttle.at(thrust) }

// Thrust is the thrust at a throttle, N.
func (t *Table) Thrust(throttle float64) (n float64, ok bool) { return t.reach.at(throttle) }

// merged joins rows in a row with the same key into their mean.
func merged(rows []plan.Bench, key func(plan.Bench) float64) []plan.Bench {
	var out []plan.Bench
	for i := 0; i < len(rows); {
		j := i + 1
		for j < len(rows) && key(rows[j]) == key(rows[i]) {
			j++
		}
		out = append(out, mean(rows[i:j]))
		i = j
	}
	return out
}

// mean is the mean of rows, over those that have the number.
func mean(rows []plan.Bench) plan.Bench {
	of := func(get func(plan.Bench) float64) float64 {
		sum, n := 0.0, 0.0
		for _, r := range rows {
			if x := get(r); !math.IsNaN(x) {
				sum, n = sum+x, n+1
			}
		}
		return sum / n // NaN without any
	}
	return plan.Bench{
		Throttle: of(func(r plan.Bench) float64 { return r.Throttle }), Thrust: of(func(r plan.Bench) float64 { return r.Thrust }),
		Power: of(func(r plan.Bench) float64 { return r.Power }), Speed: of(func(r plan.Bench) float64 { return r.Speed }),
		Voltage: of(func(r plan.Bench) float64 { return r.Voltage }),
	}
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) }
