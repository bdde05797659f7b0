package advice

import "math"

// ladder are the parts of the widest change at which the search looks first.
var ladder = [...]float64{1.0 / 32, 1.0 / 8, 1.0 / 3, 2.0 / 3, 1}

// halvings narrow a rung of the ladder to a thousandth of it.
const halvings = 9

// least is the smallest x in (0, most] for which good holds, as far as the ladder sees it, from above:
// the returned x is good. The plan as it is, x = 0, is not. What is not even likely is not good; likely
// is quick to ask, so it narrows the search first.
func least(likely, good func(x float64) bool, most float64) (x float64, ok bool) {
	from, ok := climb(likely, 0, most)
	if !ok {
		return 0, false
	}
	if good(from) {
		return from, true
	}
	return climb(good, from, most)
}

// climb looks for the smallest good x above a bad one.
func climb(good func(x float64) bool, bad, most float64) (x float64, ok bool) {
	from := bad
	for _, part := range ladder {
		if x = from + part*(most-from); good(x) {
			return narrow(good, bad, x), true
		}
		bad = x
	}
	return 0, false
}

// narrow halves the gap between a bad x and a good one.
func narrow(good func(x float64) bool, bad, x float64) float64 {
	for range halvings {
		mid := bad + (x-bad)/2
		if good(mid) {
			x = mid
		} else {
			bad = mid
		}
	}
	return x
}

// safe rounds a found value away from the plan's own, to a grain and from there on by single grains
// until it is good; found itself when rounding never is, for then only that very value will do.
func safe(good func(to float64) bool, from, found, grain float64) float64 {
	round, sign := math.Ceil, 1.0
	if found < from {
		round, sign = math.Floor, -1
	}
	to := round(found/grain-sign*1e-9) * grain
	for range 3 {
		to = tidy(to)
		if good(to) {
			return to
		}
		to += sign * grain
	}
	return found
}

// tidy takes the last digits off that a product of a grain leaves.
func tidy(x float64) float64 {
	const scale = 1e9
	if math.Abs(x) > 1e6 {
		return x
	}
	return math.Round(x*scale) / scale
}

// grainOf is one unit in the last of some significant figures of x.
func grainOf(x float64, figures int) float64 {
	if !(math.Abs(x) > 0) {
		return 1
	}
	return math.Pow(10, math.Floor(math.Log10(math.Abs(x))+1e-12)-float64(figures-1))
}
