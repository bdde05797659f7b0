package study

import (
	"math"
	"strings"
	"time"

	"cohoist/core/plan"
	"cohoist/core/rehearse"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
	"cohoist/core/way"
	"cohoist/ui/format"
)

// planned is the name of a way as it is planned.
const planned = "way"

// journey is a way as it was asked for and what came of it.
type journey struct {
	name    string // of its pictures on the page
	failed  *rehearse.Failure
	score   *rehearse.Score // of a flight; nil: as planned
	lead    float64         // s of the score before the way begins
	of      plan.Plan
	units   format.Units
	model   *share.Model
	apart   *share.Apart
	route   way.Route
	limits  way.Limits
	fault   string
	stopped bool
	found   way.Found
	legs    []way.Leg
	peaks   []way.Instant // of each leg, where it comes closest to its limits
	frames  []way.Instant // evenly in time
	watched way.Watched
	worst   int // the frame that comes closest to its limits
	took    time.Duration
}

// mostFrames is how many pictures a small team has; a large one has fewer, as each takes more room.
const mostFrames, leastFrames = 120, 24

func (j *journey) count() int {
	return max(leastFrames, min(mostFrames, mostFrames*12/len(j.model.Craft)))
}

// settle finds the frame to begin with.
func (j *journey) settle() {
	j.worst = int(math.Round(j.found.At / j.found.Duration() * float64(len(j.frames)-1)))
}

// outcome is the answer in a sentence, and what was watched and is not kept in another.
func (j *journey) outcome() string {
	text := j.pace()
	for i, p := range j.watched.Passes {
		if o := j.route.Openings[i]; p.Room < 0 {
			text += " It does not pass opening " + digits(i+1) + ": it hits by " + j.units.Small(-p.Room) + "."
		} else if p.Room < o.Clearance*(1-1e-9) {
			text += " In opening " + digits(i+1) + " it keeps " + j.units.Small(p.Room) + " clear, not " + j.units.Small(o.Clearance) + "."
		} else if p.From <= p.To {
			text += " It passes opening " + digits(i+1) + " with " + j.units.Small(p.Room) + " to spare."
		}
	}
	if least := j.model.Plan.Limits.Separation; j.watched.Least < least*(1-1e-9) {
		text += " " + capital(j.watched.Who[0]) + " and " + j.watched.Who[1] + " come within " + j.units.Small(j.watched.Least) + "; " + j.units.Small(least) + " must be kept."
	}
	return text
}

// pace is how long it takes and what limits that.
func (j *journey) pace() string {
	if !j.found.Free {
		switch {
		case math.IsInf(j.found.Reach, 1):
			return "With the times given there is an instant that the team cannot hold."
		case j.found.Reach > 1+1e-6:
			return "With the times given it is too fast: leg " + digits(j.worstLeg()+1) + " is beyond " + j.limitOf(j.worstLeg()) + "."
		}
		return "In the " + lasts(j.found.Duration()) + " given it stays within every limit; closest on leg " + digits(j.worstLeg()+1) + ", to " + j.limitOf(j.worstLeg()) + "."
	}
	return "In " + lasts(j.found.Duration()) + " at the fastest; leg " + digits(j.worstLeg()+1) + " is limited by " + j.limitOf(j.worstLeg()) + "."
}

// lasts is a time of a way.
func lasts(x float64) string {
	if x < 120 {
		return seconds(x)
	}
	return format.Span(x)
}

// worstLeg is the leg that comes closest to its limits.
func (j *journey) worstLeg() int {
	best := 0
	for k, l := range j.legs {
		if l.Reach > j.legs[best].Reach*(1+1e-6) {
			best = k
		}
	}
	return best
}

// limitOf is what a leg comes closest to.
func (j *journey) limitOf(leg int) string {
	l := j.legs[leg]
	who := ""
	if n := len(l.Who); n > 0 && n < len(j.model.Craft) {
		who = " of " + strings.Join(l.Who[:min(n, 4)], ", ")
		if n > 4 {
			who += " and others"
		}
	} else if n > 1 {
		who = " of all"
	}
	switch l.Limit {
	case way.Utilisation:
		return "the utilisation" + who
	case way.Tilt:
		return "the tilt" + who
	case way.Cone:
		return "how far the cables" + who + " may lean"
	case way.WorkingLoad:
		return "the working load of the cables" + who
	case way.Separation:
		return "the distance between the vehicles" + who
	case way.Slack:
		return "the least pull of the cables" + who
	case way.Speed:
		return "the largest speed"
	case way.None:
		return "nothing: it needs no more than hover"
	}
	return "what the team can hold"
}

// wayLeg is a row of the table of legs.
type wayLeg struct{ Name, Long, Time, Fast, Accel, Peak, Closest, Limit string }

func (j *journey) rows() []wayLeg {
	var out []wayLeg
	for k, l := range j.legs {
		out = append(out, wayLeg{Name: digits(k + 1), Long: j.units.Show(format.Length, j.long(k)), Time: lasts(l.Duration), Fast: amount(l.Speed, "m/s"),
			Accel: amount(l.Acceleration, "m/s²"), Peak: j.peak(k), Closest: closeness(l.Reach), Limit: capital(j.limitOf(k)) + ", at " + lasts(l.At)})
	}
	return out
}

// closeness is how much of the way from hover to a limit is used up.
func closeness(reach float64) string {
	if math.IsInf(reach, 1) {
		return "beyond"
	}
	return format.Share(reach)
}

// long is the length of a leg, by chords.
func (j *journey) long(leg int) float64 {
	sum, from, took := 0.0, j.found.Start(leg), j.legs[leg].Duration
	last := j.found.Path.At(from).At
	for i := range 200 {
		at := j.found.Path.At(from + took*float64(i+1)/200).At
		sum += at.Sub(last).Norm()
		last = at
	}
	return sum
}

// peak is the largest utilisation seen on a leg.
func (j *journey) peak(leg int) string {
	most := math.NaN()
	for _, f := range append([]way.Instant{j.peaks[leg]}, j.frames...) {
		if f.Leg == leg && !(f.Utilisation <= most) && !math.IsNaN(f.Utilisation) {
			most = f.Utilisation
		}
	}
	if math.IsNaN(most) {
		return "no balance"
	}
	return used(most)
}

// evenly is within what part of one another vehicles work alike: ties of the share are broken within a thousandth.
const evenly = 2e-3

// hardest is the utilisation of the vehicle that works hardest at an instant, and which it is.
func (j *journey) hardest(f way.Instant) (float64, string) {
	most, least, who := math.Inf(-1), math.Inf(1), ""
	for i, p := range f.Parts {
		if i == j.lost(f.Time) {
			continue
		}
		least = math.Min(least, p.Utilisation)
		if p.Utilisation > most*(1+1e-6) {
			most, who = p.Utilisation, j.model.Craft[i].ID
		}
	}
	if len(f.Parts) > 1 && least > most*(1-evenly) {
		who = "all"
	}
	return f.Utilisation, who
}

// lean is how far the cables lean at an instant, and tilt how far the vehicles do, radians; NaN: there is none.
func (j *journey) lean(f way.Instant) float64 {
	most := math.NaN()
	for i, p := range f.Parts {
		if i != j.lost(f.Time) && !math.IsNaN(p.CableAngle) && !(p.CableAngle <= most) {
			most = p.CableAngle
		}
	}
	if most < 1e-6 { // nothing but the rounding of a solve
		return 0
	}
	return most
}

func (j *journey) tilt(f way.Instant) float64 {
	most := math.NaN()
	for i := range f.Parts {
		if i == j.lost(f.Time) {
			continue
		}
		if up := j.thrust(f, i); !(math.Acos(math.Min(up[2], 1)) <= most) {
			most = math.Acos(math.Min(up[2], 1))
		}
	}
	return most
}

// thrust is the direction in which a vehicle thrusts, level axes.
func (j *journey) thrust(f way.Instant, i int) vec.V3 {
	return f.Motion.Attitude.Mul(f.Parts[i].Thrust).Unit()
}

// when is the time of an instant in words.
func (j *journey) when(f way.Instant) string {
	switch end := j.found.Duration() + flightRest; {
	case f.Time < 0:
		return "Taking off, " + lasts(-f.Time) + " before the way begins"
	case j.lead > 0 && f.Time > end:
		return "Setting down for " + lasts(f.Time-end)
	}
	return "At " + lasts(f.Time) + ", leg " + digits(f.Leg+1)
}

// says is an instant in words.
func (j *journey) says(f way.Instant) string {
	text := j.when(f) + ": " + amount(f.State.Velocity.Norm(), "m/s") + ", heading " + degrees(math.Round(f.State.Heading*180/math.Pi))
	if f.Status != solve.Optimal {
		return text + "; no way to hold this was found."
	}
	u, who := j.hardest(f)
	if who == "all" {
		text += "; all work alike, " + used(u)
	} else {
		text += "; " + who + " works hardest, " + used(u)
	}
	if a := j.lean(f); !math.IsNaN(a) {
		text += "; cables lean up to " + inDegrees(a)
	}
	if j.name != planned {
		text += "; the payload is " + j.units.Small(j.off(f)) + " off its way"
	}
	return text + "; vehicles tilt up to " + inDegrees(j.tilt(f)) + "."
}

// moved is where a point of the payload is at an instant, level axes.
func (j *journey) moved(f way.Instant, p vec.V3) vec.V3 {
	return f.State.At.Add(f.Motion.Attitude.Mul(p.Sub(j.model.Body.COM)))
}
