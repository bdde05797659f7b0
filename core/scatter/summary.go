package scatter

import (
	"math"
	"slices"
)

// Chance is how often something happened, with where its chance lies with 95 % confidence, (16.5).
type Chance struct {
	What     string
	Times    int
	P        float64 // Times over the number of samples
	Low, Top float64
}

// Histogram counts samples by their worst utilisation.
type Histogram struct {
	Width float64 // of a bin; bin i holds i Width ≤ t < (i + 1) Width
	Bins  []int
	Above int // beyond the last bin
	None  int // no balance
}

// Bins of the histogram.
const (
	binWidth  = 0.005
	binNumber = 400
)

// Summary is the picture that samples give.
type Summary struct {
	N         int
	Limits    []Chance
	Histogram Histogram
	Mean, SD  float64      // of the utilisation, over the samples that balance
	Quantiles [7]float64   // of Levels, over all samples; +Inf where there is no balance
	Matters   []Influence  // which error matters, the most important first
	Kinds     []KindMatter // the same by kind
}

// Levels are the quantiles that a Summary gives.
var Levels = [7]float64{0.001, 0.01, 0.05, 0.5, 0.95, 0.99, 0.999}

// over is by how much a limit may be exceeded and still be kept: the solver's own accuracy.
const over = 1e-9

// Summary draws the picture of a part, or of the whole study.
func (s *Study) Summary(p Part) Summary {
	n := len(p.T)
	sum := Summary{N: n, Histogram: histogram(p.T)}
	sorted := slices.Clone(p.T)
	slices.Sort(sorted)
	count := func(limit float64) int {
		i, _ := slices.BinarySearch(sorted, limit+over)
		return n - i
	}
	balanced := p.Why[Balances]
	add := func(what string, times int) { sum.Limits = append(sum.Limits, Wilson(what, times, n)) }
	add("utilisation limit", count(s.Plan.Limits.Utilisation))
	add("full thrust", count(1))
	add("no balance", n-balanced)
	for c := Slack; c < NoBalance; c++ {
		if s.model.Cables {
			add(c.String(), p.Why[c])
		}
	}
	if p.Why[Unsolved] > 0 {
		add(Unsolved.String(), p.Why[Unsolved])
	}
	sum.Mean, sum.SD = moments(p.T)
	for i, q := range Levels {
		sum.Quantiles[i] = quantile(sorted, q)
	}
	sum.Matters = s.matters(p, sum.Mean, sum.SD)
	sum.Kinds = kinds(sum.Matters)
	return sum
}

// z95 is the standard normal deviate that 2.5 % lie above.
const z95 = 1.959963984540054

// Wilson is the interval of a chance seen times out of n, of Wilson's score test, (16.5). Strata make it
// rather too wide than too narrow.
func Wilson(what string, times, n int) Chance {
	p, m := float64(times)/float64(n), float64(n)
	zz := z95 * z95
	mid := (p + zz/(2*m)) / (1 + zz/m)
	half := z95 / (1 + zz/m) * math.Sqrt(p*(1-p)/m+zz/(4*m*m)) // (16.5)
	return Chance{what, times, p, math.Max(0, mid-half), math.Min(1, mid+half)}
}

func histogram(ts []float64) Histogram {
	h := Histogram{Width: binWidth, Bins: make([]int, binNumber)}
	for _, t := range ts {
		switch b := t / binWidth; {
		case math.IsInf(t, 1):
			h.None++
		case b >= binNumber:
			h.Above++
		default:
			h.Bins[int(math.Max(0, b))]++
		}
	}
	return h
}

// moments are the mean and the standard deviation of what is finite.
func moments(ts []float64) (mean, sd float64) {
	n, sum := 0.0, 0.0
	for _, t := range ts {
		if !math.IsInf(t, 1) {
			n++
			sum += t
		}
	}
	mean = sum / n
	square := 0.0
	for _, t := range ts {
		if !math.IsInf(t, 1) {
			square += float64((t - mean) * (t - mean))
		}
	}
	return mean, math.Sqrt(square / n)
}

// quantile is the value that a part q of the sorted ones lies below, linear between their
// middles.
func quantile(sorted []float64, q float64) float64 {
	at := q*float64(len(sorted)) - 0.5
	i := int(math.Floor(at))
	switch {
	case i < 0:
		return sorted[0]
	case i >= len(sorted)-1:
		return sorted[len(sorted)-1]
	case math.IsInf(sorted[i+1], 1):
		return sorted[i+1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
