package way

// ends are place, velocity, acceleration and jerk at both ends of a segment, each times the power of the duration that
// makes it a length: p₀ v₀T a₀T² j₀T³ p₁ v₁T a₁T² j₁T³.
type ends [8]float64

// rise are the coefficients of s⁴ to s⁷, by rows, from what the ends leave of place, velocity, acceleration and jerk
// at s = 1, (20.2). The first column is the move from rest to rest, 35 −84 70 −20.
var rise = [4][4]float64{
	{35, -15, 2.5, -1.0 / 6},
	{-84, 39, -7, 0.5},
	{70, -34, 6.5, -0.5},
	{-20, 10, -2, 1.0 / 6},
}

// poly are the coefficients of the segment's polynomial in s = t/T.
func (e ends) poly() [8]float64 {
	c := [8]float64{e[0], e[1], e[2] / 2, e[3] / 6}
	left := [4]float64{
		e[4] - (c[0] + c[1] + c[2] + c[3]),
		e[5] - (e[1] + e[2] + e[3]/2),
		e[6] - (e[2] + e[3]),
		e[7] - e[3],
	}
	for i, row := range rise {
		for k, x := range row {
			c[4+i] += float64(x * left[k]) // (20.2)
		}
	}
	return c
}

// falling is n (n−1) … (n−k+1): the factor that k derivatives put before the power n.
func falling(n, k int) float64 {
	f := 1.0
	for i := range k {
		f *= float64(n - i)
	}
	return f
}

// derivative is the k-th derivative by s of a polynomial.
func derivative(c *[8]float64, k int, s float64) float64 {
	sum := 0.0
	for n := 7; n >= k; n-- {
		sum = float64(sum*s) + float64(falling(n, k)*c[n])
	}
	return sum
}

// snap is the quadratic form of (20.3): ∫₀¹ (d⁴p/ds⁴)² ds = eᵀ snap e.
var snap = func() (q [8][8]float64) {
	var top [8][4]float64 // coefficients of s⁴ to s⁷ of every unit end
	for i := range 8 {
		var e ends
		e[i] = 1
		c := e.poly()
		copy(top[i][:], c[4:])
	}
	for i := range 8 {
		for j := range 8 {
			for a := range 4 {
				for b := range 4 {
					q[i][j] += top[i][a] * top[j][b] * falling(4+a, 4) * falling(4+b, 4) / float64(a+b+1)
				}
			}
		}
	}
	return q
}()

// pow is x to a small whole power, negative ones too.
func pow(x float64, n int) float64 {
	if n < 0 {
		return 1 / pow(x, -n)
	}
	p := 1.0
	for range n {
		p *= x
	}
	return p
}

// control are the control points 0 to 3 of a segment in Bernstein form, as factors of p vT aT² jT³ at its start; those
// at its end are the same with the signs of v and j turned, (20.6).
var control = [4][4]float64{
	{1, 0, 0, 0},
	{1, 1.0 / 7, 0, 0},
	{1, 2.0 / 7, 1.0 / 42, 0},
	{1, 3.0 / 7, 3.0 / 42, 1.0 / 210},
}
