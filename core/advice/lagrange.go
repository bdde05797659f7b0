package advice

import (
	"math"

	"cohoist/core/solve"
)

// rate is dt/dx of a parameter of the plan, per its unit, (11.1): the data of the program are
// differenced, the answer stays. NaN when the changed plan has no program.
func (l *lift) rate(k *knob, r *solve.Result) float64 {
	h := 1e-3 * k.step // rounding and curvature both below 1e-8 of the rate
	up, down := l.model(k.turned(l.plan, h), k.payload), l.model(k.turned(l.plan, -h), k.payload)
	if up == nil || down == nil {
		return math.NaN()
	}
	return (solve.Lagrangian(up.Even(0), r) - solve.Lagrangian(down.Even(0), r)) / (2 * h)
}
