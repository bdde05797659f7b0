package way

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// load is what an instant asks of the team beyond hover in calm air: the wrench, then for every cable the thrust that
// its vehicle needs besides the pull, then by how much pulls grow. The reach is a convex function of it, and twice
// the load has twice the reach.
type load []float64

// question asks how far towards the team's limits an instant goes, (20.10).
type question struct {
	m      *share.Model
	apart  *share.Apart
	limit  float64
	calm   *share.Model
	rest   load
	moving share.Model // room
	p      *solve.Program
	fixed  []int     // cones of every cable that are no discs
	tan    []float64 // of every cable's tilt limit
	cables []int     // of the team
}

func newQuestion(m *share.Model, apart *share.Apart, limit float64) *question {
	m = m.Aloft()
	q := &question{m: m, apart: apart, limit: limit, calm: m.InWind(0, 0)}
	q.p = q.calm.Within(limit)
	for i, c := range m.Craft {
		if !c.Rigid {
			q.fixed = append(q.fixed, len(q.p.Pulls[len(q.cables)].Cones))
			q.cables = append(q.cables, i)
			q.tan = append(q.tan, math.Tan(c.Vehicle.TiltMax))
		}
	}
	m.Spread(q.p, apart, 1)
	q.rest = q.whole(q.calm, 0)
	return q
}

// whole is what an instant asks of the team in all.
func (q *question) whole(at *share.Model, up float64) load {
	w := at.Wrench()
	out := append(make(load, 0, 7+3*len(q.cables)), w[:]...)
	for _, i := range q.cables {
		c := &at.Craft[i]
		own := c.Own()
		out = append(out, own[:]...)
	}
	return append(out, up/share.Gravity)
}

// load is that of a motion.
func (q *question) load(v share.Motion) load {
	q.m.MoveTo(&q.moving, v)
	x := q.whole(&q.moving, v.Attitude.T().Mul(v.Acceleration)[2])
	for i := range x {
		x[i] -= q.rest[i]
	}
	return x
}

// ask makes the program ask for the largest t with hover plus t times a load, (20.10).
func (q *question) ask(x load) *solve.Program {
	copy(q.p.WrenchT[:], x)
	grow := x[len(x)-1]
	for i := range q.p.Pulls {
		own := vec.V3(x[6+3*i : 9+3*i])
		cones := q.p.Pulls[i].Cones
		cones[0].D, cones[1].D, cones[1].T = own, own, float64(q.tan[i]*own[2])
		for k := q.fixed[i]; k < len(cones); k++ {
			cones[k].D, cones[k].T = cones[k].B.Scale(grow), float64(cones[k].C*grow)
		}
	}
	return q.p
}

// cut is a proof read as a plane below the reach of every instant: reach ≥ cut · load, (20.11).
type cut []float64

// cut reads the proof of an answer of ask: γ(load) t ≥ value with γ linear in the load, so 1/t ≥ γ(load)/value.
func (q *question) cut(r solve.Result) cut {
	c := append(make(cut, 0, 7+3*len(q.cables)), r.Y[:]...)
	for i := range 6 {
		c[i] = -c[i]
	}
	n, discs := 0, 0.0
	for i := range q.p.Pulls {
		cones := q.p.Pulls[i].Cones
		thrust, tilt := r.Cones[n], r.Cones[n+1]
		c = append(c, thrust.V[0]+tilt.V[0], thrust.V[1]+tilt.V[1], thrust.V[2]+float64(q.tan[i]*tilt.A))
		for k := q.fixed[i]; k < len(cones); k++ {
			discs += float64(cones[k].C*r.Cones[n+k].A) + cones[k].B.Dot(r.Cones[n+k].V)
		}
		n += len(cones)
	}
	c = append(c, discs)
	for i := range c {
		c[i] /= -r.Bound // γ = −1 at the answer, and then value = −Bound
	}
	return c
}
