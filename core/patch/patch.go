// Package patch finds where the payload's centre of mass may stand (THEORY chapter 14).
//
// Restriction: that of core/share; the payload keeps its mass, shape, drag and the height of its
// centre of mass. Vehicles do not lean apart to keep their separation.
// Geometry: plane of payload x and y, m.
// Calculation: (14.1) to (14.5). The wanted wrench is linear in the place of the centre of mass, also
// for a rigid team that leans in wind, for its lean asks for forces only. So the patch is convex, and
// every solve gives a point of its edge and a line that nothing of it is beyond.
// Verification: closed forms, feasibility on grids, and turned plans, in the tests.
// References: THEORY chapter 14.
package patch

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Most is how many points of the edge are asked for at most: with so many the edge of a round
// patch is known to about a thousandth of its radius.
const Most = 64

// Patch is where the centre of mass may stand: everything within Inner, nothing without Outer.
// Both are convex, anticlockwise; two corners are a segment, one is a point, none: nowhere.
type Patch struct {
	Status  solve.Status // Optimal: there is a patch; Infeasible: there is none; NotRun: the payload weighs nothing
	Inner   []XY         // corners found by solving: held, within the solver's 1e-9
	Outer   []XY         // corners of the lines that proofs give
	Gap     float64      // how far Outer reaches beyond Inner at most, m
	Best    XY           // where the team works least
	Least   float64      // utilisation there; +Inf: nothing balances anywhere
	Present XY           // where the plan has the centre of mass
	Edge    float64      // from Present to the edge of Inner, m; negative: Present is outside
	Toward  XY           // unit vector from Present to the nearest edge; zero when it is on it
	Solves  int
	Note    string // why the patch has no width, or is not there
}

// Of finds the patch of a team within the crew's limits.
func Of(m *share.Model, s *solve.Solver) Patch {
	q := newQuestion(m, s)
	out := Patch{Least: math.NaN(), Gap: math.NaN(), Edge: math.NaN(), Present: XY{m.Payload.COM[0], m.Payload.COM[1]}}
	switch {
	case !m.Settled:
		out.Status, out.Note = solve.Unsolved, "the body finds no steady lean in this wind"
		return out
	case m.Payload.Mass == 0:
		out.Note = "the payload weighs nothing"
		return out
	}
	q.best(&out)
	if out.Status == solve.Optimal {
		q.sweep(&out)
	}
	out.place()
	return out
}

// place shifts the polygons from the present centre of mass to the payload frame, and measures its way to the edge.
func (p *Patch) place() {
	for _, polygon := range [2][]XY{p.Inner, p.Outer} {
		for i := range polygon {
			polygon[i] = polygon[i].add(p.Present)
		}
	}
	p.Best = p.Best.add(p.Present)
	p.measure()
}

// measure finds the gap and the present centre of mass's way to the edge.
func (p *Patch) measure() {
	p.Gap, p.Edge, p.Toward = math.NaN(), math.NaN(), XY{}
	if len(p.Inner) == 0 {
		return
	}
	p.Gap = 0
	for _, v := range p.Outer {
		p.Gap = math.Max(p.Gap, beyond(p.Inner, v))
	}
	at, inside := nearest(p.Inner, p.Present)
	if len(p.Inner) == 2 { // along a segment its ends are its edge
		a, b := p.Inner[0], p.Inner[1]
		if inside = at.distance(p.Present) <= sliver*a.distance(b); inside {
			if at = a; p.Present.distance(b) < p.Present.distance(a) {
				at = b
			}
		}
	}
	p.Edge = at.distance(p.Present)
	if p.Edge > 0 {
		p.Toward = at.sub(p.Present).scale(1 / p.Edge)
	}
	if !inside {
		p.Edge = -p.Edge
	}
}

// sliver is the part of a patch's length up to which its width is rounding.
const sliver = 1e-7

// question is a patch in the making: places are relative to the present centre of mass.
type question struct {
	m    *share.Model
	s    *solve.Solver
	p    *solve.Program // of (14.3)
	want solve.Wrench   // at the present centre of mass
	pull vec.V3         // what holds up the payload at its centre of mass, N, body axes
	far  float64        // no place farther than this is held, m
}

func newQuestion(m *share.Model, s *solve.Solver) *question {
	q := &question{m: m, s: s, p: m.Within(m.Plan.Limits.Utilisation), want: m.Wrench()}
	q.pull = m.Up.Scale(m.Payload.Mass * share.Gravity).Sub(m.Drag)
	most := m.NeedTurn.Norm()
	for i := range q.p.Lines {
		l := &q.p.Lines[i]
		most += float64(l.Hi * vec.V3(l.Column[3:]).Norm())
	}
	for i := range q.p.Pulls {
		l := &q.p.Pulls[i]
		most += float64(l.At.Norm() * (l.Cones[0].C + l.Cones[0].B.Norm()))
	}
	q.far = most / math.Abs(q.pull[2]) // (14.2)
	return q
}

// shift is the wrench that the team must give more when the centre of mass stands d away, (14.1).
func (q *question) shift(d XY) solve.Wrench {
	turn := vec.V3{d[0], d[1], 0}.Cross(q.pull)
	return solve.Wrench{3: turn[0], 4: turn[1], 5: turn[2]}
}

// best finds where the team works least: two more forces of the program are the moments of the shift.
func (q *question) best(out *Patch) {
	p := q.m.Even(0)
	newton := q.pull.Norm()
	for _, d := range [2]XY{{1, 0}, {0, 1}} {
		w := q.shift(d.scale(-1 / newton))
		p.Lines = append(p.Lines, solve.Line{Column: w, Lo: -newton * q.far, Hi: newton * q.far})
	}
	r := q.s.Solve(p)
	out.Solves++
	out.Status, out.Least = r.Status, r.T
	switch n := len(p.Lines); {
	case r.Status == solve.Infeasible:
		out.Least, out.Note = math.Inf(1), "wherever the centre of mass stands, nothing balances it"
	case r.Status != solve.Optimal:
		out.Note = "where the team works least was not solved"
	default:
		out.Best = XY{r.U[n-2] / newton, r.U[n-1] / newton}
		if r.T > q.m.Plan.Limits.Utilisation {
			out.Status, out.Note = solve.Infeasible, "wherever the centre of mass stands, a vehicle is above its limit"
		}
	}
}
