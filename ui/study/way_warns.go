package study

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/vec"
)

// swing is how far the way leaves the box around its waypoints, m, and when, s.
func (j *journey) swing() (far, when float64) {
	lo, hi := j.route.Points[0].At, j.route.Points[0].At
	for _, p := range j.route.Points {
		for a := range 3 {
			lo[a], hi[a] = math.Min(lo[a], p.At[a]), math.Max(hi[a], p.At[a])
		}
	}
	for _, f := range j.frames {
		out := vec.V3{}
		for a := range 3 {
			out[a] = math.Max(0, math.Max(lo[a]-f.State.At[a], f.State.At[a]-hi[a]))
		}
		if d := out.Norm(); d > far {
			far, when = d, f.Time
		}
	}
	return far, when
}

// warns says what of the way may surprise.
func (j *journey) warns() []string {
	var list []string
	if far, when := j.swing(); far > 0.1 {
		list = append(list, "Between waypoints it swings out of the box around them all, by up to "+j.units.Small(far)+" at "+lasts(when)+". A stop at a waypoint, a box on that leg, or another waypoint holds it in.")
	}
	low, when := math.Inf(1), 0.0
	for _, f := range j.frames {
		if f.State.At[2] < low {
			low, when = f.State.At[2], f.Time
		}
	}
	if low < -1e-3 && j.of.Way.Points[0].At[2] >= 0 {
		list = append(list, "At "+lasts(when)+" the centre of mass is below z = 0, by "+j.units.Small(-low)+".")
	}
	if most := j.beyond(); j.model.Cables && j.found.Formed == nil && most > minded {
		list = append(list, "A cable leans with the acceleration, so that its vehicle accelerates by up to about "+amount(most, "m/s²")+" more than its attachment where the acceleration changes. That is left out of a way without formations.")
	}
	return list
}

// minded is an acceleration that is worth a word, m/s² (common practice, no source).
const minded = 0.5

// beyond is about the most that a vehicle on a cable accelerates beyond its attachment, L |d⁴p/dt⁴|/g, (20.21), m/s².
func (j *journey) beyond() float64 {
	most := 0.0
	for _, c := range j.model.Craft {
		for _, f := range j.frames {
			if !c.Rigid {
				most = math.Max(most, c.Length*f.State.Snap.Norm()/share.Gravity)
			}
		}
	}
	return most
}
