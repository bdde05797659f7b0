package energy

import (
	"math"
	"strconv"

	"cohoist/core/share"
)

// Sentence says how long the team holds the lift and who ends first.
func (s *Study) Sentence() string {
	if len(s.Needs) > 0 {
		return "How long the lift is held needs " + share.List(s.Needs) + "."
	}
	if s.First < 0 {
		return "How long the lift is held is not known: the power of a vehicle is outside what the model or its static test covers."
	}
	v := s.Vehicles[s.First]
	if v.By == FromStart {
		return v.ID + " can't hold its part even from a full battery."
	}
	text := "The lift is held for " + span(s.Hold) + " at " + share.Short(s.Power) + " W. "
	if n := len(s.Together()); n > 1 && n == len(s.Vehicles) {
		return text + "All end together, each " + v.By.why() + "."
	}
	return text + v.ID + " ends first, " + v.By.why() + "."
}

// alike is how near two holds are the same to those who fly them.
const alike = 1e-3

// Together are the vehicles that end with the first; empty: not known.
func (s *Study) Together() []int {
	for n, i := range s.Order {
		if s.First < 0 || s.Vehicles[i].Time > s.Hold*(1+alike) {
			return s.Order[:n]
		}
	}
	return s.Order
}

// why is what ends a hold, as the end of a sentence.
func (e End) why() string {
	switch e {
	case Weak:
		return "when its voltage no longer gives the thrust it needs"
	case Collapse:
		return "when its battery can't give the power at any current"
	case FromStart:
		return "at once"
	}
	return "when only its reserve is left"
}

// least is a gain that is worth a word.
const least = 0.005

// Sentence says what sharing for equal endurance gains.
func (e *Even) Sentence() string {
	if e == nil {
		return "Nothing is said of sharing for equal endurance."
	}
	if !(e.Gain > 1+least) {
		return "Sharing the load by energy instead of thrust gains nothing."
	}
	return "Sharing the load by energy instead of thrust holds it for " + span(e.Hold) + ", " + e.longer() + "."
}

// longer is the gain in words.
func (e *Even) longer() string {
	if math.IsInf(e.Gain, 1) {
		return "longer"
	}
	return strconv.Itoa(int(math.Round(100*(e.Gain-1)))) + " % longer"
}

// Sentence says how far a route is flown and what it costs.
func (r Route) Sentence(s *Study) string {
	switch {
	case len(s.Needs) > 0:
		return "What the route takes needs " + share.List(s.Needs) + "."
	case r.Done:
		text := "The route of " + share.Short(r.Distance) + " m is flown in " + span(r.Time) + " with " + share.Short(r.Energy/3600) + " Wh: " +
			share.Short(r.PerLoad/3.6) + " Wh for each kilogram and kilometre"
		if math.IsNaN(r.Single) {
			return text + "."
		}
		return text + ", " + share.Short(r.PerLoad/r.Single) + " times that of one vehicle with the same mass and discs."
	case r.Ended < 0:
		return "The leg after " + share.Short(r.At) + " m can't be flown."
	}
	return s.Vehicles[r.Ended].ID + " ends the route after " + share.Short(r.At) + " m, " + r.By.why() + "."
}

// span writes a time: 42 s, 7 min 30 s, 25 min.
func span(s float64) string {
	whole := int(math.Floor(s))
	switch {
	case !(s < 1e6):
		return "days"
	case whole < 60:
		return strconv.Itoa(whole) + " s"
	case whole >= 600:
		return strconv.Itoa(whole/60) + " min"
	}
	return strconv.Itoa(whole/60) + " min " + strconv.Itoa(whole%60) + " s"
}
