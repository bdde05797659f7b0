package solve

import (
	"math"

	"cohoist/core/vec"
)

// Status says how a solve ended.
type Status uint8

// The ways a solve ends. The zero value is "not run".
const (
	NotRun Status = iota
	Optimal
	Infeasible
	Unbounded
	Unsolved
)

func (s Status) String() string {
	return [...]string{"not run", "optimal", "infeasible", "unbounded", "unsolved"}[s]
}

// Result is an answer with its evidence.
type Result struct {
	Status     Status
	Reason     string
	T          float64
	U          []float64
	F          []vec.V3
	Residual   float64
	Bound      float64
	Y          Wrench
	Iterations int
}

// missTolerance is the part of the wrench, relative, that may lie outside what the team can give.
const missTolerance = 1e-9

// Solve finds the smallest or largest t.
func (s *Solver) Solve(p *Program) Result {
	s.quad, s.fixt = 0, false
	if !s.load(p) {
		return Result{Status: Unsolved, Reason: "the program has a number that is not finite", T: math.NaN()}
	}
	if n := norm6(s.miss); n > missTolerance*math.Max(norm6(s.b), n) && n > missTolerance {
		r := Result{Status: Infeasible, T: math.NaN(), Bound: math.NaN()}
		r.Y = s.wrenchDual(s.miss, 1/n)
		return r
	}
	st, why := s.run()
	r := s.result(st, why)
	return r
}

// wrenchDual turns a dual of the scaled wrench into one of the wrench.
func (s *Solver) wrenchDual(y [6]float64, k float64) Wrench {
	return Wrench{y[0] * k, y[1] * k, y[2] * k, y[3] * k / s.l0, y[4] * k / s.l0, y[5] * k / s.l0}
}

func (s *Solver) unturn() [6]float64 {
	var o [6]float64
	for i := range s.r {
		for k := range 6 {
			o[k] += float64(s.y[i] * s.q[i][k])
		}
	}
	return o
}

func (s *Solver) result(st Status, why string) Result {
	r := Result{Status: st, Reason: why, T: math.NaN(), Bound: math.NaN(), Residual: math.NaN(), Iterations: s.iter}
	switch st {
	case Infeasible:
		y := s.unturn()
		r.Y = s.wrenchDual(y, 1/norm6(y))
	case Optimal:
		s.polish()
		k := s.f0 / s.tau
		s.u, s.f = resize(s.u, s.nl), resize(s.f, s.np)
		for j := range s.nl {
			s.u[j] = s.x[j] * k
		}
		for i := range s.np {
			v := s.pull(s.x, i)
			s.f[i] = vec.V3{v[0] * k, v[1] * k, v[2] * k}
		}
		r.U, r.F, r.T = s.u, s.f, s.t/s.tau*s.t0
		hz := 0.0
		for i := range s.half {
			hz += float64(s.half[i].h * s.half[i].z)
		}
		for i := range s.soc {
			hz += dot(&s.soc[i].h, &s.soc[i].z)
		}
		r.Bound = s.ct * (dot6(&s.b, &s.y) - hz) / s.tau * s.t0
		y := s.unturn()
		r.Y = s.wrenchDual(y, s.t0/s.tau/s.f0)
		r.Residual = s.residual(r.U, r.F, r.T)
	}
	return r
}

// polish moves the forces by the least amount, weighed by their room, that closes the balance.
func (s *Solver) polish() {
	for range 2 {
		var g [6]float64
		for i := range s.r {
			g[i] = float64(s.b[i]*s.tau) - float64(s.at[i]*s.t)
		}
		for j := range s.x {
			for i := range s.r {
				g[i] -= float64(s.a[j][i] * s.x[j])
			}
		}
		y := s.solveS(g)
		for j := range s.x {
			s.x2[j] = dot6(&s.a[j], &y)
		}
		s.inv(s.x2)
		for j := range s.x {
			s.x[j] += s.x2[j]
		}
	}
}

// residual is the largest imbalance relative to the program's own force and moment.
func (s *Solver) residual(u []float64, f []vec.V3, t float64) float64 {
	var w [6]float64
	for i := range 6 {
		w[i] = -s.p.Wrench[i] - float64(t*s.p.WrenchT[i])
		for j, l := range s.p.Lines {
			w[i] += float64(l.Column[i] * u[j])
		}
	}
	for j, p := range s.p.Pulls {
		m := p.At.Cross(f[j])
		for i := range 3 {
			w[i] += f[j][i]
			w[i+3] += m[i]
		}
	}
	worst := 0.0
	for i := range 3 {
		worst = math.Max(worst, math.Max(math.Abs(w[i]), math.Abs(w[i+3])/s.l0))
	}
	return worst / s.f0
}

// Settle finds the least ½Σu² + ½Σ|F|² with t held.
func (s *Solver) Settle(p *Program, t float64) Result {
	s.quad, s.fixt = 0, true
	if !s.load(p) {
		return Result{Status: Unsolved, T: math.NaN()}
	}
	s.quad = 1
	slack := 1e-8 * math.Max(math.Abs(t), 1e-9)
	s.t = (t + p.Goal*slack) / s.t0
	st, why := s.run()
	return s.result(st, why)
}

// LeastSquares is the least ½Σu² + ½Σ|F|² under the balance alone.
func LeastSquares(p *Program) Result {
	s := NewSolver()
	free := Program{Lines: append([]Line(nil), p.Lines...), Wrench: p.Wrench, Goal: 1}
	for i := range free.Lines {
		free.Lines[i].Lo, free.Lines[i].Hi, free.Lines[i].HiT = math.Inf(-1), math.Inf(1), 0
	}
	for _, q := range p.Pulls {
		free.Pulls = append(free.Pulls, Pull{At: q.At, MinZ: math.Inf(-1)})
	}
	s.quad, s.fixt = 0, true
	if !s.load(&free) {
		return Result{Status: Unsolved, T: math.NaN()}
	}
	s.quad, s.t = 1, 0
	st, why := s.run()
	r := s.result(st, why)
	if norm6(s.miss) > missTolerance {
		r.Status = Infeasible
	}
	return r
}
