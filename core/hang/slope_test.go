package hang

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"cohoist/core/vec"
)

// some is a random rig made ready, and a spot where some lines are taut and some slack.
func some(rng *rand.Rand) (*body, spot) {
	v := func(s float64) vec.V3 {
		return vec.V3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}.Scale(s)
	}
	r := Rig{Load: Load{Mass: 2, COM: v(0.1), Inertia: vec.Diag(vec.V3{0.1, 0.2, 0.25}), Force: v(3)}}
	for range 6 {
		top, at := v(1).Add(vec.V3{0, 0, 3}), v(0.5)
		r.Lines = append(r.Lines, Line{Top: top, At: at, Length: top.Sub(at).Norm() * (1 + 0.2*rng.NormFloat64()), Stiffness: 10 + 40*rng.Float64()})
	}
	b, err := r.body()
	if err != nil {
		panic(err)
	}
	return b, spot{v(0.1), vec.Rot(v(1))}
}

// Gradient and Hessian against central differences of the energy and of the gradient. Steps of 1e-5 leave 1e-10 of the third
// derivatives, and of the energy 1e-16/1e-5 by rounding.
func TestSlope(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 1))
	for range 50 {
		b, x := some(rng)
		var g vec6
		var h mat6
		if e := b.slope(x, &g, &h); math.Abs(e-b.energy(x)) > 1e-12*math.Abs(e) {
			t.Errorf("energy %g and %g", e, b.energy(x))
		}
		const by = 1e-5
		var rate mat6 // of the gradient along each coordinate
		for i := range 6 {
			var step vec6
			step[i] = by
			back := step.scale(-1)
			up, down := b.move(x, &step), b.move(x, &back)
			if d := (b.energy(up) - b.energy(down)) / (2 * by); math.Abs(d-g[i]) > 1e-7*(1+g.norm()) {
				t.Errorf("gradient %d: %g, differences %g", i, g[i], d)
			}
			var ahead, behind vec6
			var unused mat6
			b.slope(up, &ahead, &unused)
			b.slope(down, &behind, &unused)
			for j := range 6 {
				rate[i][j] = (ahead[j] - behind[j]) / (2 * by)
			}
		}
		for i := range 6 {
			for j := range 6 { // the gradient turns with its coordinates, which adds a skew part away from rest
				if d := (rate[i][j] + rate[j][i]) / 2; math.Abs(d-h[i][j]) > 1e-7*(1+math.Abs(h[i][i])+math.Abs(h[j][j])) {
					t.Errorf("Hessian %d %d: %g, differences %g", i, j, h[i][j], d)
				}
			}
		}
	}
}

// Jacobi's rotations against gonum's EigenSym, entries over seven orders as with stiff lines.
func TestEigen(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 2))
	for range 200 {
		n := 1 + rng.IntN(6)
		var m mat6
		dense := mat.NewSymDense(n, nil)
		for k := range n {
			var v vec6
			for i := range n {
				v[i] = rng.NormFloat64()
			}
			size := math.Pow(10, 7*rng.Float64()) * float64(1-2*(k%2))
			for i := range n {
				for j := range n {
					m[i][j] += size * v[i] * v[j]
				}
			}
		}
		for i := range n {
			for j := range i + 1 {
				dense.SetSym(i, j, m[i][j])
			}
		}
		var want mat.EigenSym
		if !want.Factorize(dense, false) {
			t.Fatal("gonum found no eigenvalues")
		}
		values, vectors := m.eigen(n)
		largest := mat.Norm(dense, 2)
		for _, w := range want.Values(nil) {
			best := math.Inf(1)
			for i := range n {
				best = math.Min(best, math.Abs(values[i]-w))
			}
			if best > 1e-14*largest {
				t.Errorf("eigenvalue %g is %g off, of %g", w, best, largest)
			}
		}
		for i := range n {
			v := vectors.column(i)
			image := m.mul(&v)
			for j := range n {
				if math.Abs(image[j]-values[i]*v[j]) > 1e-13*largest {
					t.Errorf("vector %d of %d leaves %g", i, n, image[j]-values[i]*v[j])
				}
			}
		}
	}
}

// A Cholesky factor solves, and refuses what is not positive definite.
func TestFactor(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 3))
	for range 100 {
		var m, low mat6
		var x vec6
		for i := range m {
			x[i] = rng.NormFloat64()
			for j := range i + 1 {
				m[i][j] = rng.NormFloat64()
				m[j][i] = m[i][j]
			}
		}
		values, _ := m.eigen(6)
		least := math.Inf(1)
		for _, v := range values {
			least = math.Min(least, v)
		}
		if m.factor(-least-1e-6, &low) {
			t.Error("a matrix with a negative eigenvalue has a factor")
		}
		if !m.factor(-least+0.1, &low) {
			t.Fatal("a positive definite matrix has no factor")
		}
		image := m.mul(&x)
		for i := range image {
			image[i] += (-least + 0.1) * x[i]
		}
		got := low.solve(image)
		for i := range x {
			if math.Abs(got[i]-x[i]) > 1e-11 {
				t.Errorf("solution %g, want %g", got[i], x[i])
			}
		}
	}
}
