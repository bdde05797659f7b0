package solve_test

import (
	"encoding/binary"
	"math"
	"testing"
	"time"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// dough makes numbers out of bytes: most of them plain, some at the ends of what a float64 holds.
type dough struct{ b []byte }

func (d *dough) byte() byte {
	if len(d.b) == 0 {
		return 0
	}
	v := d.b[0]
	d.b = d.b[1:]
	return v
}

func (d *dough) number() float64 {
	switch k := d.byte(); {
	case k < 200:
		return float64(int8(d.byte())) / 16
	case k < 230:
		return math.Ldexp(float64(int8(d.byte())), int(int8(d.byte()))/4)
	case k < 250:
		return 0
	case k < 252:
		return math.Inf(1)
	case k < 254:
		return math.Inf(-1)
	default:
		var w [8]byte
		for i := range w {
			w[i] = d.byte()
		}
		return math.Float64frombits(binary.LittleEndian.Uint64(w[:]))
	}
}

func (d *dough) vec() vec.V3 { return vec.V3{d.number(), d.number(), d.number()} }

func (d *dough) wrench() (w solve.Wrench) {
	for i := range w {
		w[i] = d.number()
	}
	return w
}

func (d *dough) program() *solve.Program {
	p := &solve.Program{Goal: 1, Wrench: d.wrench()}
	k := d.byte()
	if k&1 != 0 {
		p.Goal = -1
	}
	if k&2 != 0 {
		p.WrenchT = d.wrench()
	}
	for range k >> 2 & 7 {
		p.Lines = append(p.Lines, solve.Line{Column: d.wrench(), Lo: d.number(), Hi: d.number(), HiT: d.number()})
	}
	for range k >> 5 & 3 {
		q := solve.Pull{At: d.vec(), MinZ: d.number()}
		for range d.byte() & 3 {
			q.Cones = append(q.Cones, solve.Cone{Flat: d.byte()&1 != 0, B: d.vec(), D: d.vec(), Z: d.number(), T: d.number(), C: d.number()})
		}
		p.Pulls = append(p.Pulls, q)
	}
	return p
}

// FuzzSolve: whatever the program, the solver ends, soon, and what it calls an answer multiplies out.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789abcdefghijklmnopqrstuvwxyz"))
	f.Fuzz(func(t *testing.T, b []byte) {
		p := (&dough{b}).program()
		s := solve.NewSolver()
		from := time.Now()
		r := s.Solve(p)
		sound(t, p, r)
		if r.Status == solve.Optimal {
			q := s.Settle(p, r.T)
			for _, u := range q.U {
				if math.IsNaN(u) {
					t.Errorf("settle: NaN: %#v", p)
				}
			}
			for _, f := range q.F {
				if math.IsNaN(f.Norm()) {
					t.Errorf("settle: NaN: %#v", p)
				}
			}
		}
		solve.LeastSquares(p)
		if d := time.Since(from); d > 2*time.Second {
			t.Errorf("took %v: %#v", d, p)
		}
	})
}

// sound fails the test when an answer is not proven; it has no opinion on Unsolved and Unbounded.
func sound(t *testing.T, p *solve.Program, r solve.Result) {
	t.Helper()
	switch r.Status {
	case solve.Optimal, solve.Infeasible:
		if !tame(p) {
			return
		}
		proven(t, "fuzz", p, r, 1000)
		if t.Failed() {
			t.Logf("%#v", p)
		}
	case solve.Unsolved:
		if r.Reason == "" {
			t.Error("unsolved without a reason")
		}
	case solve.NotRun:
		t.Error("not run")
	}
}

// tame tells that every number is one that a plan could hold, from a thousandth to 1e5 or nothing, and
// that every force of a pull is bounded, so that tolerances have a meaning.
func tame(p *solve.Program) bool {
	ok := true
	see := func(v ...float64) {
		for _, x := range v {
			x = math.Abs(x)
			ok = ok && (x == 0 || x >= 1e-3 && x <= 1e5 || math.IsInf(x, 0))
		}
	}
	see(p.Wrench[:]...)
	see(p.WrenchT[:]...)
	for _, l := range p.Lines {
		for _, v := range l.Column {
			ok = ok && math.Abs(v) <= 100
		}
		see(l.Column[:]...)
		see(l.Lo, l.Hi, l.HiT)
	}
	for _, q := range p.Pulls {
		see(q.At[:]...)
		bounded := false
		for _, c := range q.Cones {
			bounded = bounded || !c.Flat && c.Z == 0 && !math.IsInf(c.C, 0)
		}
		ok = ok && bounded && q.At.Norm() <= 1e3
		see(q.MinZ)
		for _, c := range q.Cones {
			see(c.B[:]...)
			see(c.D[:]...)
			see(c.Z, c.T, c.C)
		}
	}
	return ok
}
