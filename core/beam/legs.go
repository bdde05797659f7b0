package beam

import (
	"math"

	"cohoist/core/vec"
)

// Leg is an upright spring under (or a vehicle that holds its place above) a payload that does not bend.
type Leg struct {
	At        vec.V3  // m; x and y count
	Stiffness float64 // N/m; +Inf on all: they share as equal springs do
	Rise      float64 // m, how far its place stands above the common level: a length error
}

// Legs solves who carries a payload that does not bend, of weight W (N) at the place com (m), (9.11).
// One-sided legs cannot push. It fails with ErrTips.
func Legs(weight float64, com vec.V3, legs []Leg, oneSided bool) ([]float64, error) {
	n := len(legs)
	length, soft := 0.0, 0.0
	for _, g := range legs {
		length = math.Max(length, math.Hypot(g.At[0]-com[0], g.At[1]-com[1]))
		soft = math.Max(soft, 1/g.Stiffness)
	}
	if length == 0 {
		length = 1
	}
	q := program{oneSided: oneSided, K: make([][]float64, n), c: make([]float64, n), b: []float64{1, 0, 0},
		A: [][]float64{make([]float64, n), make([]float64, n), make([]float64, n)}}
	for i, g := range legs {
		q.K[i] = make([]float64, n)
		q.K[i][i] = 1
		if soft > 0 {
			q.K[i][i] = 1 / g.Stiffness / soft
			q.c[i] = g.Rise / (weight * soft)
		}
		q.A[0][i], q.A[1][i], q.A[2][i] = 1, (g.At[0]-com[0])/length, (g.At[1]-com[1])/length
	}
	r, err := q.solve()
	for i := range r {
		r[i] *= weight
	}
	return r, err
}

// Ranges gives the least and the largest force (N) that each leg can carry while none pushes and the
// payload is in balance, whatever the length errors, (9.12). The extremes are balances on three legs,
// or on two when all stand in line; all such are tried, so the work grows with the cube of the
// number of legs. It fails with ErrTips when there is none.
func Ranges(weight float64, com vec.V3, legs []Leg) (least, most []float64, err error) {
	n := len(legs)
	least, most = make([]float64, n), make([]float64, n)
	x, y := make([]float64, n), make([]float64, n)
	size := 0.0
	for i, g := range legs {
		least[i] = math.Inf(1)
		x[i], y[i] = g.At[0]-com[0], g.At[1]-com[1]
		size = math.Max(size, math.Hypot(x[i], y[i]))
	}
	area := func(i, j int) float64 { return float64(x[i]*y[j]) - float64(x[j]*y[i]) } // twice, of com, i and j
	parts, found := make([]float64, n), false
	take := func(at []int, share ...float64) {
		for _, s := range share {
			if s < -tiny {
				return
			}
		}
		for k, i := range at {
			parts[i] = math.Max(0, share[k])
		}
		for i, p := range parts {
			least[i], most[i] = math.Min(least[i], p*weight), math.Max(most[i], p*weight)
			parts[i] = 0
		}
		found = true
	}
	flat, near := true, 1e-9*math.Max(size*size, math.SmallestNonzeroFloat64)
	for i := range n {
		for j := range i {
			for k := range j {
				a, b, c := area(j, k), area(k, i), area(i, j)
				if all := a + b + c; math.Abs(all) > near {
					flat = false
					take([]int{i, j, k}, a/all, b/all, c/all)
				}
			}
		}
	}
	for i := 0; flat && i < n; i++ {
		if math.Hypot(x[i], y[i]) <= 1e-9*size {
			take([]int{i}, 1)
		}
		for j := range i {
			dx, dy := x[j]-x[i], y[j]-y[i]
			d2 := float64(dx*dx) + float64(dy*dy)
			if d2 > near && math.Abs(area(i, j)) <= near { // the load hangs in line with the two
				t := -(float64(x[i]*dx) + float64(y[i]*dy)) / d2
				take([]int{i, j}, 1-t, t)
			}
		}
	}
	if !found {
		err = ErrTips
	}
	return least, most, err
}

// Settle finds the upright forces (N) with the least sum of squares that balance a weight W (N) at com,
// each between least and most (N): how an even effort settles its ties, (5.10). It fails with ErrTips.
func Settle(weight float64, com vec.V3, at []vec.V3, least, most []float64) ([]float64, error) {
	n := len(at)
	length := 0.0
	for _, a := range at {
		length = math.Max(length, math.Hypot(a[0]-com[0], a[1]-com[1]))
	}
	if length == 0 {
		length = 1
	}
	q := program{oneSided: true, K: make([][]float64, n), c: make([]float64, n), most: make([]float64, n), b: []float64{1, 0, 0},
		A: [][]float64{make([]float64, n), make([]float64, n), make([]float64, n)}}
	for i, a := range at {
		q.K[i] = make([]float64, n)
		q.K[i][i] = 1
		x, y := (a[0]-com[0])/length, (a[1]-com[1])/length
		q.A[0][i], q.A[1][i], q.A[2][i] = 1, x, y
		low := least[i] / weight
		q.c[i], q.most[i] = -low, (most[i]-least[i])/weight
		q.b[0], q.b[1], q.b[2] = q.b[0]-low, q.b[1]-float64(low*x), q.b[2]-float64(low*y)
	}
	r, err := q.solve()
	for i := range r {
		r[i] = float64(r[i]*weight) + least[i]
	}
	return r, err
}
