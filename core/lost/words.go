package lost

import (
	"math"
	"strconv"

	"cohoist/core/plan"
	"cohoist/core/share"
)

// Summary says of one kind of loss what the team survives. Its numbers add up to Asked.
type Summary struct {
	Of       int // how many losses of the kind there are to ask
	Asked    int
	Within   int // held within the crew's limit
	Strained int // held, but above it
	Fallen   int // not held: more than all thrust, or no balance at all
	Unsolved int
	Worst    int // the entry with the largest utilisation, by its place in Entries; −1: none
	Sentence string
}

// Survives tells that every loss of the kind was asked, answered, and is held with the thrust there is.
func (s Summary) Survives() bool {
	return s.Asked > 0 && s.Asked == s.Of && s.Within+s.Strained == s.Asked
}

// Holds tells that what is left holds the payload with the thrust there is.
func (e Entry) Holds() bool { return e.Utilisation <= 1+rounding }

// Within tells that it does so within the crew's limit.
func (e Entry) Within(limit float64) bool { return e.Utilisation <= limit*(1+rounding) }

// nouns of the kinds, and what the loss of any one is called.
var nouns = [...]string{"vehicle", "pair of vehicles", "rotor"}

// summarise writes the sentences of a study of n vehicles that was to ask all of each kind.
func (s *Study) summarise(all [3]int, n int) {
	for k, to := range [...]*Summary{&s.Vehicles, &s.Pairs, &s.Rotors} {
		*to = s.count(Kind(k))
		to.Of = all[k]
		to.Sentence = s.sentence(*to, Kind(k), n)
	}
	switch s.Rule {
	case plan.DeadWeight:
		s.Vehicles.Sentence += " A vehicle lost on a cable hangs from it as dead weight."
	case plan.CutAway:
		s.Vehicles.Sentence += " A vehicle lost on a cable is cut away."
	}
	s.Taut = s.taut()
}

// count sorts the entries of a kind.
func (s *Study) count(k Kind) Summary {
	sum := Summary{Worst: -1}
	for i, e := range s.Entries {
		if e.Kind != k {
			continue
		}
		sum.Asked++
		switch {
		case math.IsNaN(e.Utilisation):
			sum.Unsolved++
			continue
		case e.Within(s.Limit):
			sum.Within++
		case e.Holds():
			sum.Strained++
		default:
			sum.Fallen++
		}
		if sum.Worst < 0 || e.Utilisation > s.Entries[sum.Worst].Utilisation*(1+rounding) {
			sum.Worst = i
		}
	}
	return sum
}

// sentence says what the team survives of a kind.
func (s *Study) sentence(sum Summary, k Kind, n int) string {
	noun := nouns[k]
	switch {
	case sum.Asked == 0 && k == Pair && n > mostPairs:
		return "Pairs are asked up to " + strconv.Itoa(mostPairs) + " vehicles."
	case sum.Asked == 0 && k == Rotor && n > singleRotors:
		return "Single rotors of rigid holds are asked up to " + strconv.Itoa(singleRotors) + " vehicles."
	case sum.Asked < sum.Of:
		return "Stopped: " + strconv.Itoa(sum.Asked) + " of " + strconv.Itoa(sum.Of) + " losses of a " + noun + " were asked, so nothing is said of all."
	case sum.Asked == 0:
		return "There is no " + noun + " to lose."
	case sum.Unsolved > 0:
		return strconv.Itoa(sum.Unsolved) + " of " + strconv.Itoa(sum.Asked) + " losses of a " + noun + " were not solved, so nothing is said of all."
	}
	worst := s.Entries[sum.Worst]
	switch {
	case sum.Fallen == sum.Asked:
		return "Whichever " + noun + " is lost, the rest do not hold the payload: " + worst.fall() + "."
	case sum.Fallen > 0:
		return "In " + strconv.Itoa(sum.Fallen) + " of " + strconv.Itoa(sum.Asked) + " losses of a " + noun + " the rest do not hold the payload: " +
			share.List(s.fallen(k)) + ". In the worst, " + worst.fall() + "."
	case sum.Strained > 0:
		return "The rest hold the payload whichever " + noun + " is lost, but above the limit of " + share.Short(s.Limit) + ": " +
			worst.without() + " they need " + share.Short(worst.Utilisation) + " of their thrust."
	}
	return "The rest hold the payload whichever " + noun + " is lost, within the limit of " + share.Short(s.Limit) + ": " +
		worst.without() + ", the worst, they need " + share.Short(worst.Utilisation) + " of their thrust."
}

// fall says why a loss is not held.
func (e Entry) fall() string {
	if math.IsInf(e.Utilisation, 1) {
		return e.without() + " no thrust balances it"
	}
	return e.without() + " they would need " + share.Short(e.Utilisation) + " times their thrust"
}

// fallen lists the losses of a kind that are not held.
func (s *Study) fallen(k Kind) []string {
	var out []string
	for _, e := range s.Entries {
		if e.Kind == k && !e.Holds() {
			out = append(out, e.name())
		}
	}
	return out
}

// without says what is lost in a sentence of its own.
func (e Entry) without() string {
	if e.Kind == Pair {
		return "without " + share.List(e.Lost)
	}
	return "without " + e.name()
}

// name says what is lost, in a list.
func (e Entry) name() string {
	switch {
	case e.Kind == Pair:
		return e.Lost[0] + " with " + e.Lost[1]
	case e.Kind == Rotor && e.Rotor == AnyRotor:
		return "a rotor of " + e.Lost[0]
	case e.Kind == Rotor:
		return "rotor " + strconv.Itoa(e.Rotor+1) + " of " + e.Lost[0]
	}
	return e.Lost[0]
}

// taut names the cable that bears most when a vehicle is lost: beside its working load, or in newtons
// where there is none.
func (s *Study) taut() string {
	most, where := -1.0, ""
	for _, e := range s.Entries {
		for _, l := range e.Lines {
			part := l.Peak / l.WorkingLoad
			if math.IsNaN(part) {
				part = 1e-12 * l.Peak // only where no line has a working load
			}
			if part <= most*(1+rounding) {
				continue
			}
			most = part
			where = "When " + e.name() + " is lost, the line of " + l.ID + " goes from " + share.Short(l.Before) + " N to " + share.Short(l.After) +
				" N and bears " + share.Short(l.Peak) + " N in the first swing"
			if l.WorkingLoad > 0 {
				where += ", " + share.Short(100*part) + " % of its working load"
			}
			where += ": a load put on at once stretches an undamped line twice as far."
		}
	}
	return where
}
