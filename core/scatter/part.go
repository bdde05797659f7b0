package scatter

import (
	"math"
	"sort"
)

// Part is what the samples From to To − 1 gave. Its sums are whole numbers, so that
// they come out the same in whatever parts a study is run.
type Part struct {
	From, To int
	T        []float64 // smallest worst utilisation of every sample; +Inf: no balance
	Why      [causes]int
	Errors   []Sums // of every error, over the samples that balance
}

// Sums are an error's sums over samples: utilisations in units of 2⁻³², deviates of the error in standard
// deviations.
type Sums struct {
	TX, X, XX int64       // Σ t x, Σ x, Σ x²
	N, T      [bins]int64 // by bin of x, bins of equal chance: samples, Σ t
}

// bins is how many bins the correlation ratio sorts an error into.
const bins = 20

// unitOfSums is the whole number that stands for 1. A sum over Most samples of t x up to 100 stays
// within an int64; sums may be off by 1e-10 a sample.
const unitOfSums = 1 << 32

// hopeless is the utilisation above which a sample counts as this much in Sums.
const hopeless = 30

func whole(x float64) int64 { return int64(math.Round(x * unitOfSums)) }

// Run solves the samples from to to − 1. Parts may be run by several workers at once, in any order.
func (s *Study) Run(from, to int) Part {
	p := Part{From: from, To: to, T: make([]float64, 0, to-from), Errors: make([]Sums, len(s.Errors))}
	r := newRunner(s.model)
	stratum := make([]int, len(s.Errors))
	for i := from; i < to; i++ {
		for d, e := range s.Errors {
			stratum[d] = s.deals[d].at(i)
			r.x[e.at] = e.SD * s.strata[stratum[d]]
		}
		t, why := r.ask()
		p.T = append(p.T, t)
		p.Why[why]++
		if why == Balances {
			for d := range p.Errors {
				p.Errors[d].add(s, stratum[d], math.Min(t, hopeless))
			}
		}
	}
	return p
}

func (e *Sums) add(s *Study, stratum int, t float64) {
	x := s.strata[stratum]
	e.TX += whole(float64(t * x))
	e.X += whole(x)
	e.XX += whole(float64(x * x))
	b := stratum * bins / s.N
	e.N[b]++
	e.T[b] += whole(t)
}

// Merge joins parts that follow each other, whatever order they come in. It panics when samples lack or
// come twice.
func Merge(parts ...Part) Part {
	parts = append([]Part(nil), parts...)
	sort.Slice(parts, func(i, j int) bool { return parts[i].From < parts[j].From })
	out := Part{From: parts[0].From, To: parts[0].From, Errors: make([]Sums, len(parts[0].Errors))}
	for _, p := range parts {
		if p.From != out.To {
			panic("scatter: parts do not follow each other")
		}
		out.To = p.To
		out.T = append(out.T, p.T...)
		for c, n := range p.Why {
			out.Why[c] += n
		}
		for d := range p.Errors {
			out.Errors[d].merge(&p.Errors[d])
		}
	}
	return out
}

func (e *Sums) merge(o *Sums) {
	e.TX += o.TX
	e.X += o.X
	e.XX += o.XX
	for b := range bins {
		e.N[b] += o.N[b]
		e.T[b] += o.T[b]
	}
}
