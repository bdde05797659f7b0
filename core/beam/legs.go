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
// payload is in balance, whatever the length errors, (9.12). The extremes are balances on at most
// three legs; all such are tried, so the work grows with the cube of the number of legs.
// It fails with ErrTips when there is none.
func Ranges(weight float64, com vec.V3, legs []Leg) (least, most []float64, err error) {
	n := len(legs)
	least, most = make([]float64, n), make([]float64, n)
	for i := range least {
		least[i] = math.Inf(1)
	}
	found := false
	some := func(at ...int) {
		group := make([]Leg, len(at))
		for k, i := range at {
			group[k] = legs[i]
			group[k].Stiffness = math.Inf(1)
		}
		r, err := Legs(weight, com, group, false)
		if err != nil {
			return
		}
		for _, x := range r {
			if x < -tiny*weight {
				return
			}
		}
		found = true
		full := make([]float64, n)
		for k, i := range at {
			full[i] = math.Max(0, r[k])
		}
		for i, x := range full {
			least[i], most[i] = math.Min(least[i], x), math.Max(most[i], x)
		}
	}
	for i := range n {
		some(i)
		for j := range i {
			some(i, j)
			for k := range j {
				some(i, j, k)
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
