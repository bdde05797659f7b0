package gust

import "math"

// stride is how far apart the speeds are that are tried from calm upwards, m/s, until one is not held.
const stride = 5

// leaning finds the wind that a rigid team holds: from calm up to the first speed tried that is not held, then
// between the two, (15.2).
func (q *question) leaning(to float64) Side {
	at := func(v float64) (float64, Side) { return q.excess(q.m.InWind(v, to)) }
	lo := 0.0
	flo, _ := q.excess(q.m)
	for hi := float64(stride); hi <= Cap; hi += stride {
		fhi, side := at(hi)
		if fhi > 0 {
			return narrow(at, lo, hi, flo, fhi, side)
		}
		lo, flo = hi, fhi
	}
	return Side{Speed: Cap}
}

// closeness is how near the two ends must come, m/s.
const closeness = 1e-9

// narrow finds where at changes sign between lo (held) and hi (not held, ended by side): by the secant through both
// in v², with which drag grows, the value of an end that stays put halved; by halves where one end is infinite.
func narrow(at func(float64) (float64, Side), lo, hi, flo, fhi float64, side Side) Side {
	stays := 0
	for range 100 {
		if hi-lo <= closeness {
			break
		}
		mid := lo + (hi-lo)/2
		if !math.IsInf(fhi, 1) {
			a, b := lo*lo, hi*hi
			mid = math.Sqrt(a + (b-a)*(-flo)/(fhi-flo))
			mid = math.Max(lo+closeness/4, math.Min(hi-closeness/4, mid))
		}
		f, s := at(mid)
		if f > 0 {
			hi, fhi, side = mid, f, s
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
	side.Speed = lo
	return side
}
