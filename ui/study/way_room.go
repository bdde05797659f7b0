package study

import (
	"math"

	"cohoist/core/vec"
	"cohoist/core/way"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// extent is what something takes up along x, y and z, m, level axes.
type extent struct{ lo, hi vec.V3 }

func noExtent() extent {
	far := vec.V3{math.Inf(1), math.Inf(1), math.Inf(1)}
	return extent{far, far.Scale(-1)}
}

func (e *extent) put(p, half vec.V3) {
	for a := range 3 {
		e.lo[a], e.hi[a] = math.Min(e.lo[a], p[a]-half[a]), math.Max(e.hi[a], p[a]+half[a])
	}
}

// disc is half of what a vehicle's reach spans along x, y and z.
func (j *journey) disc(f way.Instant, k int) (half vec.V3) {
	r, up := j.model.Craft[k].Vehicle.Reach, j.thrust(f, k)
	for a := range 3 {
		half[a] = r * math.Sqrt(math.Max(0, 1-float64(up[a]*up[a])))
	}
	return half
}

// room is what the team takes up on a leg with payload and rotors.
func (j *journey) room(leg int) string {
	e := noExtent()
	body := formOf(j.model.Plan.Payload)
	for i, f := range j.frames {
		if f.Leg != leg && !(i > 0 && j.frames[i-1].Leg == leg) {
			continue
		}
		body.each(func(p vec.V3) { e.put(j.moved(f, p), vec.V3{}) })
		for k, p := range f.Places {
			e.put(p, j.disc(f, k))
		}
	}
	return j.along(e, 0) + "; " + j.along(e, 1) + "; " + j.along(e, 2)
}

// along is what is taken up along an axis.
func (j *journey) along(e extent, axis int) string {
	return "xyz"[axis:axis+1] + " " + j.units.Bare(format.Length, e.lo[axis]) + " to " + j.units.Show(format.Length, e.hi[axis])
}

// A wall is an upright plane, x or y = at, in which the team needs an opening.
type wall struct {
	axis int
	at   float64
}

func wallChoices(u format.Units) []Choice {
	return []Choice{{Name: "wall", Label: "A wall with a door stands at", Words: []Word{{"", "no place"}, {"x", "x ="}, {"y", "y ="}}},
		{Name: "wall-at", Label: "that is", Until: "0", Unit: u.Length, Low: -1e5, High: 1e5}}
}

// wall is the one that was chosen, and whether one was.
func (t *Turn) wall() (wall, bool) {
	c := wallChoices(t.Units)
	at, ok := t.number(c[1], 0)
	axis := t.word(c[0])
	w := wall{at: at}
	if axis == "y" {
		w.axis = 1
	}
	return w, ok && axis != ""
}

// through is the opening that the team needs in a wall, by the frames that cross it, and when it does, s.
func (j *journey) through(w wall) (e extent, from, to float64) {
	e, from, to = noExtent(), math.Inf(1), math.Inf(-1)
	body := formOf(j.model.Plan.Payload)
	for _, f := range j.frames {
		one := noExtent()
		for _, solid := range body {
			var at []vec.V3
			for _, p := range solid {
				at = append(at, j.moved(f, p))
			}
			w.cut(at, &one)
		}
		for k, p := range f.Places {
			if half := j.disc(f, k); math.Abs(p[w.axis]-w.at) <= half[w.axis] {
				one.put(p, half)
			}
			if !j.model.Craft[k].Rigid {
				w.cut([]vec.V3{p, j.moved(f, j.model.Craft[k].At)}, &one)
			}
		}
		if one.lo[2] <= one.hi[2] {
			from, to = math.Min(from, f.Time), math.Max(to, f.Time)
			e.put(one.lo, vec.V3{})
			e.put(one.hi, vec.V3{})
		}
	}
	return e, from, to
}

// cut adds where the hull of points meets the wall: on the lines between points on either side.
func (w wall) cut(points []vec.V3, e *extent) {
	for i, p := range points {
		for _, q := range points[:i] {
			a, b := p[w.axis]-w.at, q[w.axis]-w.at
			if a*b > 0 || a == b {
				continue
			}
			e.put(p.Add(q.Sub(p).Scale(a/(a-b))), vec.V3{})
		}
	}
}

// showWall says what opening the team needs.
func (w *ways) showWall(t *Turn) {
	for _, c := range wallChoices(t.Units) {
		t.Value(settingID(talk.Way, c.Name), c.shown(t.Setting(c.Name, "")))
	}
	j := w.journey
	place, ok := t.wall()
	if !ok {
		t.Say("way-wall", "")
		return
	}
	name := "xy"[place.axis:place.axis+1] + " = " + t.Units.Show(format.Length, place.at)
	e, from, to := j.through(place)
	if from > to {
		t.Say("way-wall", "The team does not pass "+name+".")
		return
	}
	t.Say("way-wall", "Where it passes "+name+", from "+lasts(from)+" to "+lasts(to)+", payload, cables and rotors take "+j.along(e, 1-place.axis)+" and "+j.along(e, 2)+
		": an opening "+t.Units.Show(format.Length, e.hi[1-place.axis]-e.lo[1-place.axis])+" wide and "+t.Units.Show(format.Length, e.hi[2]-e.lo[2])+" high, plus what the crew keeps clear.")
}
