package study

import (
	"math"
	"time"

	"cohoist/core/plan"
	"cohoist/core/rehearse"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/unit"
	"cohoist/core/way"
	"cohoist/ui/talk"
)

// flight is a way flown in time, with elastic lines and vehicles that know only their own part.
type flight struct {
	journey
	said    string // under what it was flown
	result  *rehearse.Flight
	refused string
}

// flightRest is how long a flight goes on at the end of its way, s.
const flightRest = 3

func lostChoice(p plan.Plan) Choice {
	c := Choice{Name: "lost", Label: "A vehicle lost on the way", Words: []Word{{"", "none"}}}
	for _, m := range p.Team {
		c.Words = append(c.Words, Word{m.ID, m.ID})
	}
	return c
}

func lostAtChoice() Choice {
	return Choice{Name: "lost-at", Label: "Lost after", Until: "half the way", Unit: "s", High: 1e5}
}

// flightForm gives the inputs of the flight their values.
func flightForm(t *Turn) {
	for _, c := range []Choice{lostChoice(t.Plan), lostAtChoice()} {
		t.Value(settingID(talk.Way, c.Name), c.shown(t.Setting(c.Name, "")))
	}
}

// breath is how long a flight is worked on before messages are let in.
const breath = 50 * time.Millisecond

// fly flies the way that was found.
func (w *ways) fly(t *Turn) {
	j := w.journey
	if j == nil || j.fault != "" || j.stopped || !same(j.of, t.Plan) {
		return
	}
	f := &flight{journey: *j}
	f.name = "flight"
	w.flight = nil
	at, ok := t.number(lostAtChoice(), j.found.Duration()/2)
	if !ok {
		return
	}
	options := rehearse.Options{Gusts: j.model.Plan.Site.GustFactor > 1}
	f.said = "In the plan’s wind"
	if !(j.model.Plan.Site.Wind > 0) {
		f.said = "In still air"
	}
	if options.Gusts {
		f.said += " with gusts"
	}
	for i, m := range j.of.Team {
		if m.ID == t.word(lostChoice(t.Plan)) {
			options.Fail = &rehearse.Failure{Vehicle: i, Time: at, Cut: j.model.Plan.Limits.Lost == plan.CutAway}
			f.said += ", " + m.ID + " lost after " + lasts(at)
			if j.model.Craft[i].Rigid {
				f.said += " and carried along"
			} else if options.Fail.Cut {
				f.said += " and let go"
			} else {
				f.said += " and hanging from its line"
			}
		}
	}
	f.failed = options.Fail
	w.flight = f
	score, ok := rehearse.Along(j.model, j.apart, j.found.Path, flightRest, solve.NewSolver())
	if !ok {
		f.refused = "It cannot be flown: at some instant the team has no balance."
		return
	}
	r, err := rehearse.New(j.model, score, options)
	if err != nil {
		f.refused = sentence(err)
		return
	}
	start := time.Now()
	for last := start; !r.Run(0.1); {
		if time.Since(last) < breath {
			continue
		}
		if !t.GoOn() {
			w.flight = nil
			return
		}
		last = time.Now()
	}
	f.result, f.took = r.Flight(), time.Since(start)
	f.take()
	t.Value("flight-at", digits(f.worst))
}

// take makes frames of the samples, and begins with the one that is farthest off.
func (f *flight) take() {
	all, n := f.result.Samples, f.count()
	f.frames = nil
	most := 0.0
	for k := range n + 1 {
		i := f.instant(all[k*(len(all)-1)/n])
		f.frames = append(f.frames, i)
		if d := f.off(i); d > most {
			most, f.worst = d, k
		}
	}
}

// instant is a sample as an instant of the way.
func (f *flight) instant(s rehearse.Sample) way.Instant {
	turn := rehearse.Matrix(s.Payload.Attitude)
	i := way.Instant{Time: s.Time, Leg: f.found.Path.Leg(s.Time), Status: solve.Optimal, Places: s.Places}
	i.State.At, i.State.Velocity = s.Payload.At, s.Payload.Velocity
	i.State.Heading = math.Atan2(turn[1][0], turn[0][0])
	i.Motion.Attitude = turn
	for k := range s.Places {
		part := share.Part{Thrust: turn.T().Mul(s.Ups[k]), Utilisation: s.Used[k], Tension: s.Tension[k], CableAngle: math.NaN()}
		if !f.model.Craft[k].Rigid {
			part.CableAngle = math.Acos(s.Places[k].Sub(f.moved(i, f.model.Craft[k].At)).Unit()[2])
		}
		i.Parts = append(i.Parts, part)
		if k != f.lost(s.Time) {
			i.Utilisation = math.Max(i.Utilisation, s.Used[k])
		}
	}
	return i
}

// lost is the vehicle that is lost by a time, −1: none.
func (j *journey) lost(t float64) int {
	if j.failed == nil || t < j.failed.Time {
		return -1
	}
	return j.failed.Vehicle
}

// gone tells that a vehicle has been let go and is not drawn any more.
func (j *journey) gone(f way.Instant, i int) bool {
	return j.lost(f.Time) == i && j.failed.Cut
}

// off is how far the payload is off its way.
func (j *journey) off(f way.Instant) float64 {
	return f.State.At.Sub(j.found.Path.At(f.Time).At).Norm()
}

// pace says how much faster than it happens the flight was worked out.
func (f *flight) pace() string {
	all := f.result.Samples
	return "Worked out " + unit.Figures(all[len(all)-1].Time/max(f.took.Seconds(), 1e-3), 2) + " times as fast as it happens."
}

// astray is how far off its way a payload no longer keeps it, m (common practice, no source).
const astray = 0.5

// outcome is the flight in a sentence.
func (f *flight) outcome() string {
	p := f.result.Peaks
	switch {
	case !math.IsNaN(p.Crash) && f.model.Rigid && p.Swing >= math.Pi/2:
		return f.said + ": it fails after " + lasts(p.Crash) + ", when the team turns over."
	case !math.IsNaN(p.Crash):
		return f.said + ": it fails after " + lasts(p.Crash) + ", when the payload is lost, far off its way."
	case math.Hypot(p.Off, p.Sink) > astray:
		return f.said + ": it does not keep its way."
	}
	return f.said + ": flown to its end."
}

// showFlight puts the flight on the page.
func (w *ways) showFlight(t *Turn) {
	const piece = talk.Way + "-flight"
	flightForm(t)
	switch f := w.flight; {
	case f == nil:
		t.Say(piece, "")
	case f.refused != "":
		t.Show(piece, &WayFlight{Says: f.refused, Fresh: same(f.of, t.Plan)})
	default:
		f.units = t.Units
		says := ""
		if !same(f.of, t.Plan) {
			says = "Of an earlier plan:"
		}
		t.Show(piece, &WayFlight{Flight: f, Says: says, Fresh: same(f.of, t.Plan)})
	}
}
