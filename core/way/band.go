package way

import "math"

// band is a symmetric positive definite matrix with nothing further than width from its diagonal: entry (i, j), j ≤ i,
// stands at i (width+1) + j − i + width.
type band struct {
	n, width int
	a        []float64
}

func newBand(n, width int) *band {
	return &band{n, width, make([]float64, n*(width+1))}
}

func (b *band) at(i, j int) *float64 { return &b.a[i*(b.width+1)+j-i+b.width] }

// factor replaces the matrix by its Cholesky factor; false when it is not positive definite.
func (b *band) factor() bool {
	for i := range b.n {
		for j := max(0, i-b.width); j <= i; j++ {
			sum := *b.at(i, j)
			for k := max(0, i-b.width, j-b.width); k < j; k++ {
				sum -= float64(*b.at(i, k) * *b.at(j, k))
			}
			if j < i {
				*b.at(i, j) = sum / *b.at(j, j)
				continue
			}
			if !(sum > 0) {
				return false
			}
			*b.at(i, i) = math.Sqrt(sum)
		}
	}
	return true
}

// solve replaces x by the solution for it, of a factored matrix.
func (b *band) solve(x []float64) {
	for i := range b.n {
		for k := max(0, i-b.width); k < i; k++ {
			x[i] -= float64(*b.at(i, k) * x[k])
		}
		x[i] /= *b.at(i, i)
	}
	for i := b.n - 1; i >= 0; i-- {
		x[i] /= *b.at(i, i)
		for k := max(0, i-b.width); k < i; k++ {
			x[k] -= float64(*b.at(i, k) * x[i])
		}
	}
}
