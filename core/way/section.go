package way

// section asks a function of one number between two ends where it is least, by golden section: two places, and one more each round.
// What is found is for the function itself to keep.
func section(lo, hi float64, rounds int, f func(float64) float64) {
	const golden = 0.6180339887498949
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	u, v := f(a), f(b)
	for range rounds {
		if u <= v {
			hi, b, v = b, a, u
			a = hi - golden*(hi-lo)
			u = f(a)
		} else {
			lo, a, u = a, b, v
			b = lo + golden*(hi-lo)
			v = f(b)
		}
	}
}
