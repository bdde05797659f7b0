package scatter

import (
	"math"
	"slices"
)

// Influence is how much of the utilisation's variance comes from one error alone, (16.6). NaN when
// the utilisation does not vary.
type Influence struct {
	Error
	Rate     float64 // dt/dx as planned, per unit of SD; NaN when not asked
	Gradient float64 // (rate × standard deviation)² over the variance; a kink shows one of its slopes
	Linear   float64 // square of the correlation over the samples: a straight line's part
	Ratio    float64 // correlation ratio over the samples, freed of bias: any curve's part
}

// KindMatter is how much comes from all errors of a kind, each by itself.
type KindMatter struct {
	Kind  string
	Ratio float64 // the sum of their correlation ratios
}

// matters sorts the errors by their correlation ratios.
func (s *Study) matters(p Part, mean, sd float64) []Influence {
	rates := s.rates()
	out := make([]Influence, len(s.Errors))
	for d, e := range s.Errors {
		f := Influence{Error: e, Rate: rates[d], Gradient: math.NaN(), Linear: math.NaN(), Ratio: math.NaN()}
		if sd > 1e-9*mean {
			g := rates[d] * e.SD / sd
			f.Gradient = float64(g*g) * Variance
			f.Linear, f.Ratio = p.Errors[d].parts(mean, sd)
		}
		out[d] = f
	}
	slices.SortStableFunc(out, func(a, b Influence) int {
		switch {
		case a.Ratio > b.Ratio:
			return -1
		case a.Ratio < b.Ratio:
			return 1
		}
		return 0
	})
	return out
}

// parts are the squared correlation and the correlation ratio, (16.6).
func (e *Sums) parts(mean, sd float64) (linear, ratio float64) {
	n := 0.0
	for _, k := range e.N {
		n += float64(k)
	}
	per := n * unitOfSums
	x, tx, xx := float64(e.X)/per, float64(e.TX)/per, float64(e.XX)/per
	c := (tx - float64(x*mean)) / (math.Sqrt(xx-float64(x*x)) * sd)
	between := 0.0
	for b, k := range e.N {
		if k > 0 {
			d := float64(e.T[b])/unitOfSums/float64(k) - mean
			between += float64(k) * float64(d*d)
		}
	}
	ratio = between / (n * sd * sd)
	chance := (bins - 1) / (n - 1) // what bins of chance alone would give
	return float64(c * c), math.Max(0, (ratio-chance)/(1-chance))
}

// kinds adds up by kind, the most important first.
func kinds(list []Influence) []KindMatter {
	var out []KindMatter
	for _, f := range list {
		i := slices.IndexFunc(out, func(k KindMatter) bool { return k.Kind == f.Kind })
		if i < 0 {
			i, out = len(out), append(out, KindMatter{Kind: f.Kind})
		}
		out[i].Ratio += f.Ratio
	}
	slices.SortStableFunc(out, func(a, b KindMatter) int {
		switch {
		case a.Ratio > b.Ratio:
			return -1
		case a.Ratio < b.Ratio:
			return 1
		}
		return 0
	})
	return out
}
