package way

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Limits are what a way keeps. Infinite: no limit.
type Limits struct {
	Utilisation float64
	Speed       float64 // of the payload's centre of mass, m/s
}

// judge tells how close to its limits a way comes. Proofs of instants solved before screen the others, so that few
// have to be solved.
type judge struct {
	*question
	s      *solve.Solver
	limits Limits
	cuts   []cut
	solved int
	goOn   func(solved int) bool
	ended  bool // goOn said so: what is not solved yet counts as out of reach
}

// instant is one instant that a judge looks at.
type instant struct {
	leg    int
	s      float64 // from 0 to 1 along the leg
	motion share.Motion
	load   load
	plain  float64 // reach of what needs no program: the square of the speed, and the lean of a rigid team
	reach  float64 // the most of its limits that it is known to need, (20.10); 1 is at a limit
	by     int     // the cut that says so; −1: plain
	exact  bool    // it needs no more

	at   *moment // of a held team
	most tightest
}

// steps are the instants looked at on every leg; peaks between them are found afterwards.
const steps = 16

// look prepares an instant, bounded by the cuts so far; that of a held team is known at once.
func (j *judge) look(p *Path, leg int, s float64) instant {
	if p.held != nil {
		return j.lookHeld(p, leg, s)
	}
	v, x := motion(j.m, p, leg, s)
	i := instant{leg: leg, s: s, motion: v, load: j.load(v), plain: j.plain(v, x)}
	i.reach, i.by = i.plain, -1
	j.bound(&i, 0)
	return i
}

// lookHeld is an instant of a team that changes its formation, (20.22).
func (j *judge) lookHeld(p *Path, leg int, s float64) instant {
	m := p.held.moment(p, leg, s)
	i := instant{leg: leg, s: s, motion: m.motion, plain: j.plain(m.motion, m.state), by: -1, exact: true}
	i.at, i.most = &m, p.held.hardest(&m, j.limits)
	i.reach = math.Max(i.plain, i.most.reach)
	if j.solved++; j.solved%steps == 0 && j.stopped() {
		i.reach = math.Inf(1)
	}
	return i
}

// plain is the reach of what needs no program.
func (j *judge) plain(v share.Motion, x State) float64 {
	speed := x.Velocity.Norm() / j.limits.Speed
	if j.m.Cables {
		return float64(speed * speed)
	}
	return math.Max(float64(speed*speed), lean(j.m, v))
}

// lean is the reach of a rigid team's tilt: the tangent of the vehicles' lean over that of their limit.
func lean(m *share.Model, v share.Motion) float64 {
	most := 0.0
	for k := range m.Craft {
		most = math.Max(most, leanOf(m, v, k))
	}
	return most
}

func leanOf(m *share.Model, v share.Motion, k int) float64 {
	c := &m.Craft[k]
	up := v.Attitude.Mul(c.Axes.Mul(vec.V3{0, 0, 1}))
	if up[2] <= 0 {
		return math.Inf(1)
	}
	return math.Hypot(up[0], up[1]) / up[2] / math.Tan(c.Vehicle.TiltMax)
}

// bound raises what is known of an instant by the cuts from one on.
func (j *judge) bound(i *instant, from int) {
	for k := from; k < len(j.cuts); k++ {
		if v := dot(j.cuts[k], i.load); v > i.reach {
			i.reach, i.by = v, k
		}
	}
}

// worth is by what part a proof must raise a bound to be kept. Bounds are only for the search: no answer counts before
// all of its instants have been solved.
const worth = 1e-3

// stopped asks whether to go on; once told not to, it does not ask again.
func (j *judge) stopped() bool {
	j.ended = j.ended || j.goOn != nil && !j.goOn(j.solved)
	return j.ended
}

// settle solves an instant and keeps the proof when it says more than those before. An instant that nobody can
// answer counts as out of reach.
func (j *judge) settle(i *instant) {
	if i.exact {
		return
	}
	if j.stopped() {
		i.reach = math.Inf(1)
		return
	}
	r := j.s.Solve(j.ask(i.load))
	j.solved++
	i.exact = true
	before := i.reach
	switch {
	case r.Status == solve.Unbounded: // the load takes nothing away
	case r.Status == solve.Optimal && r.Bound > 0:
		i.reach = math.Max(i.plain, 1/r.Bound)
		if i.reach > before*(1+worth) {
			j.cuts = append(j.cuts, j.cut(r))
		}
	default:
		i.reach = math.Inf(1)
	}
}

// survey looks at all instants of a way.
func (j *judge) survey(p *Path) []instant { return j.every(p, steps) }

// coarse is how many instants of a leg are enough in the first looks at a way.
func coarse(p *Path) int {
	if p.held != nil {
		return steps / 2
	}
	return steps
}

// thorough is how many are looked at before a way counts as within its limits.
func thorough(p *Path) int {
	if p.held != nil {
		return closely
	}
	return steps
}

// every looks at so many instants of each leg.
func (j *judge) every(p *Path, each int) []instant {
	all := make([]instant, 0, len(p.Durations)*each+1)
	for leg := range p.Durations {
		for k := range each {
			all = append(all, j.look(p, leg, float64(k)/float64(each)))
		}
	}
	return append(all, j.look(p, len(p.Durations)-1, 1))
}

// worst solves the instant of the largest bound, again and again, until that is one that has been solved.
func (j *judge) worst(all []instant) instant {
	for {
		most := &all[0]
		for k := range all {
			if all[k].reach > most.reach {
				most = &all[k]
			}
		}
		if most.exact || math.IsInf(most.reach, 1) {
			return *most
		}
		cuts := len(j.cuts)
		j.settle(most)
		for k := range all {
			if !all[k].exact {
				j.bound(&all[k], cuts)
			}
		}
	}
}

// all solves every instant.
func (j *judge) all(list []instant) instant {
	worst := &list[0]
	for k := range list {
		if i := &list[k]; !i.exact {
			j.settle(i)
		}
		if list[k].reach > worst.reach {
			worst = &list[k]
		}
	}
	return *worst
}
