package energy

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
)

// matched is how near t of the caps must come to 1.
const matched = 1e-7

// quest is the search for τ.
type quest struct {
	study   *Study
	solver  *solve.Solver
	program *solve.Program
	parts   []share.Part
	caps    []float64 // N: of a vehicle on a cable, of a rotor when rigid
	limit   float64   // of utilisation
	t       float64   // of the last solve
	solves  int
	rotors  []float64 // room of holdAt
}

// at is t for the caps of a time; +Inf: no balance.
func (q *quest) at(tau float64) float64 {
	known := map[string]float64{} // by class, where no wind makes vehicles differ
	for i := range q.caps {
		c := &q.study.model.Craft[i]
		whole, ok := known[c.Class]
		if !ok {
			whole = q.thrustFor(i, tau)
			if q.study.model.Plan.Site.Wind == 0 {
				known[c.Class] = whole
			}
		}
		q.caps[i] = math.Min(whole, q.limit*c.Vehicle.ThrustMax)
		if c.Rigid {
			q.caps[i] /= float64(max(len(c.Rotors), 1))
		}
	}
	q.study.model.SetCaps(q.program, q.caps)
	q.solves++
	q.t = math.Inf(1)
	if r := q.solver.Solve(q.program); r.Status == solve.Optimal {
		q.t = r.T
	}
	return q.t
}

// holdAt is how long vehicle i holds a thrust that its rotors share evenly, s. Outside a static test it is that of the
// nearest row.
func (q *quest) holdAt(i int, thrust float64) float64 {
	c, k := &q.study.model.Craft[i], &q.study.craft[i]
	p := q.parts[i]
	q.rotors = q.rotors[:0]
	for range c.Rotors {
		q.rotors = append(q.rotors, thrust/float64(len(c.Rotors)))
	}
	p.Rotor = q.rotors
	w := q.study.power(q.study.model, i, p)
	if math.IsNaN(w) {
		return 0
	}
	return k.pack.Hold(w, thrust/c.Vehicle.ThrustMax, k.voltage, q.study.model.Plan.Limits.Reserve).Time
}

// thrustFor is the thrust that vehicle i holds for a time, N: holdAt turned over by the secant in logarithms, for time is nearly a
// power of thrust, (18.19), bracketed.
func (q *quest) thrustFor(i int, tau float64) float64 {
	lo, hi := 0.0, q.study.model.Craft[i].Vehicle.ThrustMax*math.Max(1, 2*q.limit)
	x := math.Min(math.Max(q.parts[i].Effort, 1e-3*hi), hi)
	slope := -1.5
	px, py := math.NaN(), math.NaN()
	for range 60 {
		y := math.Log(q.holdAt(i, x) / tau)
		if math.Abs(y) < 1e-10 {
			return x
		}
		if y > 0 {
			lo = x
		} else {
			hi = x
		}
		if hi-lo <= 1e-10*hi {
			break
		}
		if d := math.Log(x / px); !math.IsNaN(py) && !math.IsInf(y, 0) && !math.IsInf(py, 0) && (y-py)/d < 0 {
			slope = (y - py) / d
		}
		px, py = x, y
		x *= math.Exp(-y / slope)
		if !(x > lo && x < hi) {
			x = lo + (hi-lo)/2
		}
	}
	return lo
}

// bracket finds τ with t = 1: from the plan's own hold up to the longest that its caps, scaled by t, would give, beyond which
// there is no share, then by the secant in logarithms (Illinois). It returns the last τ that has a share.
func (q *quest) bracket(start float64) (tau float64, ok bool) {
	lo := start
	flo := math.Log(q.at(lo))
	for n := 0; flo > 0; n++ { // rigid: caps are each rotor's
		hi, fhi := lo, flo
		lo *= 0.7
		if flo = math.Log(q.at(lo)); flo <= 0 {
			return q.narrow(lo, hi, flo, fhi), true
		}
		if n == 12 {
			return 0, false
		}
	}
	for n := 0; flo < -matched && n < 40; n++ {
		hi := math.Max(q.longest()*(1+1e-9), 1.0001*lo)
		fhi := math.Log(q.at(hi))
		if fhi > 0 {
			return q.narrow(lo, hi, flo, fhi), true
		}
		lo, flo = hi, fhi
	}
	return lo, true
}

// longest is the longest that a vehicle holds t times its cap.
func (q *quest) longest() float64 {
	most := 0.0
	for i := range q.caps {
		whole := q.t * q.caps[i]
		if c := &q.study.model.Craft[i]; c.Rigid {
			whole *= float64(len(c.Rotors))
		}
		most = math.Max(most, q.holdAt(i, whole))
	}
	return most
}

// narrow closes in on t = 1 between lo (t ≤ 1) and hi (t > 1).
func (q *quest) narrow(lo, hi, flo, fhi float64) float64 {
	stays := 0
	for range 60 {
		if flo > -matched || hi-lo <= matched*hi {
			break
		}
		mid := math.Sqrt(lo * hi)
		if !math.IsInf(fhi, 0) && !math.IsInf(flo, 0) {
			a, b := math.Log(lo), math.Log(hi)
			mid = math.Exp(a + (b-a)*(-flo)/(fhi-flo) - matched/4)
			mid = math.Min(math.Max(mid, lo*(1+matched/4)), hi*(1-matched/4))
		}
		f := math.Log(q.at(mid))
		if f > 0 {
			hi, fhi = mid, f
			if stays < 0 {
				flo /= 2
			}
			stays = -1
		} else {
			lo, flo = mid, f
			if stays > 0 {
				fhi /= 2
			}
			stays = 1
		}
	}
	return lo
}
