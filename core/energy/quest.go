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
	held    []float64 // N: what each vehicle holds for the last time asked
	limit   float64   // of utilisation
	t       float64   // of the last solve
	solves  int
	one     share.Part // room of holdAt
}

// at is t for the caps of a time: for a vehicle on a cable as a whole, for each rotor when rigid; +Inf: no balance.
func (q *quest) at(tau float64) float64 {
	m := q.study.model
	line, pull := 0, 0
	for i := range m.Craft {
		c := &m.Craft[i]
		q.held[i] = math.NaN()
		for j := 0; j < i && m.Plan.Site.Wind == 0 && c.Near == nil; j++ { // those of a class are alike
			if m.Craft[j].Class == c.Class {
				q.held[i] = q.held[j]
				break
			}
		}
		if math.IsNaN(q.held[i]) {
			q.held[i] = q.thrustFor(i, tau)
		}
		most := math.Min(q.held[i], q.limit*c.Vehicle.ThrustMax)
		if !c.Rigid {
			q.program.Pulls[pull].Cones[0].T = most * c.Keep() // (22.3)
			pull++
			continue
		}
		for range c.Rotors {
			q.program.Lines[line].HiT = most / float64(len(c.Rotors))
			line++
		}
	}
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
	s, c := q.study, &q.study.model.Craft[i]
	q.one.Thrust, q.one.Rotor = q.parts[i].Thrust, q.one.Rotor[:0]
	for range c.Rotors {
		q.one.Rotor = append(q.one.Rotor, thrust/float64(len(c.Rotors)))
	}
	w := s.power(s.model, i, &q.one)
	if math.IsNaN(w) {
		return 0
	}
	k := &s.craft[i]
	return k.pack.Hold(w, thrust/c.Vehicle.ThrustMax, k.voltage, s.model.Plan.Limits.Reserve).Time
}

// thrustFor is the thrust that vehicle i holds for a time, N: holdAt turned over, (18.19). Time is nearly a power of thrust.
func (q *quest) thrustFor(i int, tau float64) float64 {
	late := func(x float64) float64 { return math.Log(tau / q.holdAt(i, x)) }
	most := q.study.model.Craft[i].Vehicle.ThrustMax * math.Max(1, 2*q.limit)
	lo := math.Min(math.Max(q.parts[i].Effort, 1e-3*most), most)
	y := late(lo)
	hi := math.Min(lo*math.Exp(-y), most) // holds shorter than τ, for time falls faster than thrust rises
	for n := 0; y > 0 && n < 40; n++ {
		hi, lo = lo, 0.8*lo
		y = late(lo)
	}
	return rising(late, lo, hi, y, late(hi), 1e-10)
}

// rising is the largest x from lo to hi at which a rising function is not above 0, by secants in the logarithm of x that keep it
// between them (Illinois), to a part of x or a value so near to 0; hi when it is nowhere above.
func rising(f func(float64) float64, lo, hi, flo, fhi, near float64) float64 {
	if !(fhi > 0) {
		return hi
	}
	stays := 0
	for range 60 {
		if flo > -near || hi-lo <= near*hi {
			break
		}
		mid := math.Sqrt(lo * hi)
		if !math.IsInf(fhi-flo, 0) {
			mid = lo * math.Exp(math.Log(hi/lo)*-flo/(fhi-flo)-near/4)
			mid = math.Min(math.Max(mid, lo*(1+near/4)), hi*(1-near/4))
		}
		y := f(mid)
		side := -1
		if y > 0 {
			hi, fhi = mid, y
			if stays == side {
				flo /= 2
			}
		} else {
			side = 1
			lo, flo = mid, y
			if stays == side {
				fhi /= 2
			}
		}
		stays = side
	}
	return lo
}
