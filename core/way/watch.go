package way

import (
	"fmt"
	"math"

	"cohoist/core/formation"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Watched is what comes near to what on a way, and when, (20.23).
type Watched struct {
	Least  float64 // m: distance of the nearest two vehicles that are not both rigid; +Inf: there are none
	When   float64 // s
	Who    [2]string
	Flags  []Sighting
	Passes []Pass // of the openings, in their order
}

// Sighting is a flag of chapter 17 where it is worst, and from when to when it is up.
type Sighting struct {
	formation.Flag
	From, To float64 // s, by the instants looked at
}

// Blown marks a vehicle whose wake meets the payload.
const Blown = "payload"

// watch looks at a way.
type watch struct {
	m     *share.Model
	form  [][]vec.V3
	at    func(t float64) (Instant, bool)
	times []float64
	seen  []Instant
	out   *Watched
}

// closely is how many instants of a leg are looked at: those of a held team need no program.
const closely = 64

// Watch looks at a way's instants, and between them where vehicles or an opening are near. The form is of convex bodies, each
// by its corners, payload frame. False: goOn ended it.
func (r Route) Watch(m *share.Model, apart *share.Apart, p *Path, form [][]vec.V3, s *solve.Solver, goOn func() bool) (Watched, bool) {
	w := &watch{m: m, form: form, out: &Watched{Least: math.Inf(1), When: math.NaN()}}
	w.at = func(t float64) (Instant, bool) {
		i := InstantAt(m, apart, p, t, s)
		return i, i.Status == solve.Optimal
	}
	each := steps
	if p.held != nil {
		each = closely
	}
	for leg, T := range p.Durations {
		for k := range each {
			w.times = append(w.times, p.starts[leg]+float64(T*float64(k)/float64(each)))
		}
	}
	w.times = append(w.times, p.Duration())
	for _, t := range w.times {
		i, ok := w.at(t)
		if !ok {
			i.Places = nil
		} else {
			w.flags(i)
		}
		w.seen = append(w.seen, i)
		if goOn != nil && !goOn() {
			return *w.out, false
		}
	}
	w.separation()
	for _, o := range r.Openings {
		w.out.Passes = append(w.out.Passes, w.pass(o))
	}
	return *w.out, true
}

// flags notes what troubles what at an instant.
func (w *watch) flags(i Instant) {
	w.out.Flags = note(w.out.Flags, i.Time, formation.Flags(i.Parts, w.m.Craft))
	w.out.Flags = note(w.out.Flags, i.Time, formation.Cables(i.Parts, w.m.Craft))
	w.out.Flags = note(w.out.Flags, i.Time, w.blown(i))
}

// blown are the vehicles whose wake meets the payload: the box around one of its bodies, seen from above, (17.6).
func (w *watch) blown(i Instant) (out []formation.Flag) {
	for k, part := range i.Parts {
		c := &w.m.Craft[k]
		if c.Rigid {
			continue
		}
		for _, body := range w.form {
			lo, hi := body[0], body[0]
			for _, p := range body {
				for a := range 3 {
					lo[a], hi[a] = math.Min(lo[a], p[a]), math.Max(hi[a], p[a])
				}
			}
			below := part.Position[2] - hi[2]
			wide := formation.Clear(c, c, below) - c.Vehicle.Reach
			x := math.Max(0, math.Max(lo[0]-part.Position[0], part.Position[0]-hi[0]))
			y := math.Max(0, math.Max(lo[1]-part.Position[1], part.Position[1]-hi[1]))
			if across := math.Hypot(x, y); across < wide {
				out = append(out, formation.Flag{Kind: Blown, Upper: c.ID, Across: across, Below: below, Limit: wide,
					Reason: fmt.Sprintf("The wake of %s blows on the payload, %.2f m below it.", c.ID, below)})
				break
			}
		}
	}
	return out
}

// note adds flags of a time to those seen before.
func note(list []Sighting, t float64, flags []formation.Flag) []Sighting {
next:
	for _, f := range flags {
		for k := range list {
			if old := &list[k]; old.Kind == f.Kind && old.Upper == f.Upper && old.Lower == f.Lower {
				old.To = t
				if f.Across < old.Across || f.Kind == formation.Crossing && f.Below < old.Below {
					old.Flag = f
				}
				continue next
			}
		}
		list = append(list, Sighting{f, t, t})
	}
	return list
}

// separation finds the least distance, between instants by golden section wherever a pair could come nearer than the nearest
// so far, judged by how its distance changes from instant to instant.
func (w *watch) separation() {
	for pass := range 2 {
		for i := range w.m.Craft {
			for j := range i {
				if w.m.Craft[i].Rigid && w.m.Craft[j].Rigid {
					continue
				}
				for k := range w.seen {
					if pass == 0 {
						w.nearest(w.seen[k], i, j)
					} else if w.could(k, i, j) {
						w.search(k, i, j)
					}
				}
			}
		}
	}
}

// nearest keeps a pair's distance at an instant when it is the least so far.
func (w *watch) nearest(at Instant, i, j int) float64 {
	if at.Places == nil {
		return math.Inf(1)
	}
	d := at.Places[i].Sub(at.Places[j]).Norm()
	if d < w.out.Least {
		w.out.Least, w.out.When, w.out.Who = d, at.Time, [2]string{w.m.Craft[j].ID, w.m.Craft[i].ID}
	}
	return d
}

// could tells that a pair is nearest at an instant of those beside it, and may be the nearest of all between them.
func (w *watch) could(k, i, j int) bool {
	d := w.nearest(w.seen[k], i, j)
	most := 0.0
	for _, n := range [2]int{k - 1, k + 1} {
		if n < 0 || n >= len(w.seen) {
			continue
		}
		e := w.nearest(w.seen[n], i, j)
		if e < d {
			return false
		}
		most = math.Max(most, e-d)
	}
	return d-most < w.out.Least
}

// search looks between the instants beside one.
func (w *watch) search(k, i, j int) {
	section(w.times[max(k-1, 0)], w.times[min(k+1, len(w.times)-1)], 16, func(t float64) float64 {
		at, ok := w.at(t)
		if !ok {
			return math.Inf(1)
		}
		return w.nearest(at, i, j)
	})
}
