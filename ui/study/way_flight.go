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
	"cohoist/ui/format"
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

func groundChoice(u format.Units) Choice {
	return Choice{Name: "ground", Label: "Take-off and set-down on ground at z", Until: "none", Unit: u.Length, Low: -1e4, High: 1e4}
}

func flightChoices(t *Turn) []Choice {
	return []Choice{lostChoice(t.Plan), lostAtChoice(), groundChoice(t.Units)}
}

// flightForm gives the inputs of the flight their values.
func flightForm(t *Turn) {
	for _, c := range flightChoices(t) {
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
	ground, fine := t.number(groundChoice(t.Units), math.NaN())
	if !ok || !fine {
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
	w.flight = f
	score, ok := rehearse.Along(j.model, j.apart, j.found.Path, flightRest, solve.NewSolver())
	if !ok {
		f.refused = "It cannot be flown: at some instant the team has no balance."
		return
	}
	f.score = score
	if !math.IsNaN(ground) {
		if f.refused = f.stand(ground, &options); f.refused != "" {
			return
		}
	}
	if fail := options.Fail; fail != nil {
		f.failed = &rehearse.Failure{Vehicle: fail.Vehicle, Time: at, Cut: fail.Cut}
		fail.Time = at + f.lead
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

// least is how high above the ground a payload must be at both ends of its way for a take-off there, m (common practice, no source).
const least = 0.2

// stand puts a take-off before the score and a set-down after it, or says why there can be none.
func (f *flight) stand(ground float64, o *rehearse.Options) string {
	body := f.model.Body.COM
	o.Feet = rehearse.Feet(f.model.Plan.Payload)
	low := body[2] - o.Feet[0][2]
	first, last := f.found.Path.At(0).At[2], f.found.Path.At(f.found.Duration()).At[2]
	if rise := min(first, last) - low - ground; !(rise >= least) {
		return "From this ground it cannot be flown: both ends of the way must lie at z = " + f.units.Show(format.Length, ground+low+least) + " or higher, so that the payload stands clear below them."
	}
	f.score.FromGround(first-low-ground, low)
	f.score.ToGround(last-low-ground, low)
	f.lead = rehearse.TakeOff
	f.said += ", from the ground and back to it"
	return ""
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
	t := s.Time - f.lead
	i := way.Instant{Time: t, Leg: f.found.Path.Leg(t), Status: solve.Optimal, Places: s.Places}
	i.State.At, i.State.Velocity = s.Payload.At, s.Payload.Velocity
	i.State.Heading = math.Atan2(turn[1][0], turn[0][0])
	i.Motion.Attitude = turn
	for k := range s.Places {
		part := share.Part{Thrust: turn.T().Mul(s.Ups[k]), Utilisation: s.Used[k], Tension: s.Tension[k], CableAngle: math.NaN()}
		if !f.model.Craft[k].Rigid {
			part.CableAngle = math.Acos(s.Places[k].Sub(f.moved(i, f.model.Craft[k].At)).Unit()[2])
		}
		i.Parts = append(i.Parts, part)
		if k != f.lost(t) {
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
	if j.score != nil {
		return f.State.At.Sub(j.score.At(f.Time + j.lead)).Norm()
	}
	return f.State.At.Sub(j.found.Path.At(f.Time).At).Norm()
}

// at is a time of the flight in words.
func (f *flight) at(t float64) string {
	if t < 0 {
		return lasts(-t) + " before the way begins"
	}
	return "after " + lasts(t)
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
	case p.End != rehearse.Flown:
		why := map[rehearse.End]string{rehearse.Lost: "when the payload is lost, far off its way", rehearse.Turned: "when the team turns over",
			rehearse.Down: "when the payload or a vehicle is on the ground"}[p.End]
		return f.said + ": it fails " + f.at(p.Crash-f.lead) + ", " + why + "."
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
