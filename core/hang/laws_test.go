package hang_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/hang"
	"cohoist/core/vec"
)

// invent is a random rig of k lines, the payload half a metre and the lines two metres across, stretched by 1/100 to 1/10 000
// under an even share.
func invent(rng *rand.Rand, k int) hang.Rig {
	mass := 1 + 5*rng.Float64()
	size := vec.V3{0.2 + rng.Float64(), 0.2 + rng.Float64(), 0.1 + 0.3*rng.Float64()}
	turn := vec.Rot(vec.V3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()})
	inertia := turn.MulM(vec.Diag(vec.V3{size[1]*size[1] + size[2]*size[2], size[0]*size[0] + size[2]*size[2], size[0]*size[0] + size[1]*size[1]}.Scale(mass / 12))).MulM(turn.T())
	some := func(s float64) float64 { return s * (2*rng.Float64() - 1) }
	rig := hang.Rig{Load: hang.Load{Mass: mass, COM: vec.V3{some(0.1), some(0.1), -0.1 + some(0.1)}, Inertia: inertia,
		Force: vec.V3{some(0.2), some(0.2), 0}.Scale(mass * hang.Gravity)}}
	for _, a := range ring(k, 0.5, 0, 6*rng.Float64()) {
		at := a.Add(vec.V3{some(0.2), some(0.2), some(0.1)})
		top := a.Scale(1 + rng.Float64()).Add(vec.V3{some(0.2), some(0.2), 2 + some(0.3)})
		length := top.Sub(at).Norm() * (1 + some(0.02))
		strain := math.Pow(10, -2-2*rng.Float64())
		rig.Lines = append(rig.Lines, hang.Line{Top: top, At: at, Length: length, Stiffness: mass * hang.Gravity / float64(k) / (strain * length)})
	}
	return rig
}

// Renamed lines, and a rig turned about the vertical and shifted, hang the same.
func TestRenamedAndTurned(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	for range 20 {
		k := 2 + rng.IntN(7) // on one line it turns freely
		rig := invent(rng, k)
		s := rests(t, rig, hang.Level)
		w := rig.Load.Mass * hang.Gravity
		order := rng.Perm(k)
		other := hang.Rig{Load: rig.Load}
		turn, by := vec.Rot(vec.V3{0, 0, 2.1}), vec.V3{5, -3, 20}
		other.Load.Force = turn.Mul(rig.Load.Force)
		for _, i := range order {
			l := rig.Lines[i]
			l.Top = turn.Mul(l.Top).Add(by)
			other.Lines = append(other.Lines, l)
		}
		o := rests(t, other, hang.Pose{Origin: by, Attitude: turn})
		nearV(t, "origin", o.Pose.Origin, turn.Mul(s.Pose.Origin).Add(by), 1e-7) // along a weakly held motion 1e-12 of the force moves by more
		near(t, "tilt", o.Tilt, s.Tilt, 1e-7)
		for i, j := range order {
			near(t, "tension", o.Tension[i], s.Tension[j], 1e-6*w)
		}
		a, b := rig.Modes(s), other.Modes(o)
		if len(a) != len(b) {
			t.Fatalf("%d modes and %d", len(a), len(b))
		}
		for i := range a {
			near(t, "mode", b[i].Square/a[5].Square, a[i].Square/a[5].Square, 1e-9)
		}
	}
}

// From anywhere the payload ends at rest, in balance, with no more energy than it started with.
func TestAlwaysDown(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 2))
	for range 60 {
		rig := invent(rng, 1+rng.IntN(8))
		if rng.IntN(3) == 0 {
			for i := range rig.Lines {
				rig.Lines[i].Stiffness = stiff
			}
		}
		start := hang.Pose{Origin: vec.V3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}, Attitude: vec.Rot(vec.V3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}.Scale(2))}
		s := rests(t, rig, start)
		if e := energy(rig, start); s.Energy > e {
			t.Errorf("energy %g, from %g", s.Energy, e)
		}
		sum := rig.Load.Force.Sub(vec.V3{0, 0, rig.Load.Mass * hang.Gravity})
		for i, l := range rig.Lines {
			sum = sum.Add(l.Top.Sub(s.Pose.Place(l.At)).Unit().Scale(s.Tension[i]))
			if s.Tension[i] < 0 {
				t.Errorf("line %d pushes with %g N", i, -s.Tension[i])
			}
		}
		near(t, "sum of forces", sum.Norm(), 0, 1e-7*rig.Load.Mass*hang.Gravity)
	}
}

// energy is written out again: −(weight and force) · centre of mass + Σ ½ k (stretch)².
func energy(r hang.Rig, p hang.Pose) float64 {
	c := p.Place(r.Load.COM)
	e := r.Load.Mass*hang.Gravity*c[2] - r.Load.Force.Dot(c)
	w := r.Load.Force.Sub(vec.V3{0, 0, r.Load.Mass * hang.Gravity}).Norm()
	for _, l := range r.Lines {
		k := l.Stiffness
		if math.IsInf(k, 1) {
			k = w / (1e-7 * l.Length)
		}
		if long := l.Top.Sub(p.Place(l.At)).Norm() - l.Length; long > 0 {
			e += k * long * long / 2
		}
	}
	return e
}

// Scaled: lengths by s and masses by s³ leave the attitude, and periods grow by √s.
func TestScaling(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	rig := invent(rng, 4)
	s := rests(t, rig, hang.Level)
	const scale = 0.1
	small := hang.Rig{Load: hang.Load{Mass: rig.Load.Mass * 1e-3, COM: rig.Load.COM.Scale(scale), Force: rig.Load.Force.Scale(1e-3)}}
	for i := range 3 {
		small.Load.Inertia[i] = rig.Load.Inertia[i].Scale(1e-5)
	}
	for _, l := range rig.Lines {
		small.Lines = append(small.Lines, hang.Line{Top: l.Top.Scale(scale), At: l.At.Scale(scale), Length: l.Length * scale, Stiffness: l.Stiffness * 1e-2})
	}
	o := rests(t, small, hang.Level)
	near(t, "tilt", o.Tilt, s.Tilt, 1e-9)
	a, b := rig.Modes(s), small.Modes(o)
	for i := range a {
		near(t, "period", b[i].Period/a[i].Period, math.Sqrt(scale), 1e-8)
	}
}

// What cannot hang says so.
func TestCannotHang(t *testing.T) {
	whole := hang.Rig{Load: load(1, vec.V3{}), Lines: lines(ring(2, 1, 2, 0), ring(2, 1, 0, 0), 2)}
	none, nan, nothing := whole.Without(0).Without(1), whole.Short(0, math.NaN()), whole
	nothing.Load.Mass = 0
	for _, c := range []struct {
		rig  hang.Rig
		want error
	}{{none, hang.ErrNoLine}, {nan, hang.ErrNumber}, {nothing, hang.ErrNothing}} {
		if _, err := c.rig.Rest(hang.Level); err != c.want {
			t.Errorf("got %v, want %v", err, c.want)
		}
		if c.rig.Equilibria(1) != nil || c.rig.Modes(hang.State{Pose: hang.Level}) != nil {
			t.Error("equilibria or modes of a rig that cannot hang")
		}
	}
	if _, err := whole.Rest(hang.Pose{Origin: vec.V3{math.NaN(), 0, 0}, Attitude: vec.Identity}); err != hang.ErrNumber {
		t.Errorf("a start that is no number: %v", err)
	}
}

// BenchmarkRest is one rest of eight lines after a vehicle moved 5 cm.
func BenchmarkRest(b *testing.B) {
	rng := rand.New(rand.NewPCG(3, 4))
	for _, kind := range []string{"elastic", "inextensible"} {
		rig := invent(rng, 8)
		if kind == "inextensible" {
			for i := range rig.Lines {
				rig.Lines[i].Stiffness = stiff
			}
		}
		s, err := rig.Rest(hang.Level)
		if err != nil {
			b.Fatal(err)
		}
		moved := rig.Displaced(2, vec.V3{0.03, 0.03, 0.03})
		b.Run(kind, func(b *testing.B) {
			for b.Loop() {
				if _, err := moved.Rest(s.Pose); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(kind+"-far", func(b *testing.B) {
			far := hang.Pose{Origin: vec.V3{0, 0, 0.5}, Attitude: vec.Rot(vec.V3{1, 0.5, 0.2})}
			for b.Loop() {
				if _, err := rig.Rest(far); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
