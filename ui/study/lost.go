package study

import (
	"math"
	"strconv"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/lost"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/ui/chart"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// losses is what is left of a team when vehicles or rotors fail.
type losses struct {
	found lost.Study
	other lost.Study // of single vehicles, by the other rule for what becomes of one on a cable
}

func (l *losses) ask(m *share.Model, s *solve.Solver, goOn func() bool) bool {
	going := func() bool { return goOn == nil || goOn() }
	l.other = lost.Study{}
	l.found = lost.Of(m, s, func(int, int) bool { return going() })
	if l.found.Rule == "" || l.found.Stopped {
		return !l.found.Stopped
	}
	n := *m
	n.Plan.Limits.Lost = plan.CutAway
	if l.found.Rule == plan.CutAway {
		n.Plan.Limits.Lost = plan.DeadWeight
	}
	l.other = lost.Of(&n, s, func(done, _ int) bool { return done < len(m.Craft) && going() })
	return l.other.Vehicles.Asked == len(m.Craft)
}

func (*losses) form(t *Turn) {
	if f, _ := field("limits.lost"); !f.Applies(plan.Context{Plan: &t.Plan}) {
		t.Say(talk.Lost+"-form", "")
		return
	}
	entries := []Entry{{Path: "limits.lost", Words: []Word{{"", "dead weight (assumed)"}, {plan.DeadWeight, "dead weight"}, {plan.CutAway, "cut away"}}}}
	t.Show(talk.Lost+"-form", &Fields{Units: t.Units, Entries: entries})
	t.fill(entries)
}

func (l *losses) show(t *Turn) {
	t.Show(talk.Lost, &Lost{Study: l.found, Other: l.other, Units: t.Units})
}

func (l *losses) gist(*Turn) string { return survives(l.found) }

// survives is which single vehicles a team may lose, in a sentence.
func survives(s lost.Study) string {
	v := s.Vehicles
	switch {
	case v.Asked < 2:
		return "There is no other vehicle to carry on."
	case v.Unsolved > 0:
		return "Not all losses were solved."
	case v.Fallen == v.Asked:
		return "No vehicle may be lost: whichever it is, the rest do not hold the payload."
	case v.Fallen > 0:
		return strconv.Itoa(v.Asked-v.Fallen) + " of " + strconv.Itoa(v.Asked) + " vehicles may be lost, one at a time; without any of the others the payload is not held."
	}
	worst := s.Entries[v.Worst]
	text := "Any one vehicle may be lost: without " + worst.Lost[0] + ", the worst, the rest need " + format.Share(worst.Utilisation) + " of their thrust"
	if v.Strained > 0 {
		return text + ", above the limit of " + format.Share(s.Limit) + "."
	}
	return text + "."
}

// state is how a loss ends: its class, its mark, and in words.
type state struct{ class, mark, words string }

// states, from good to bad.
var (
	heldWithin = state{"lo-ok", "✓", "held, within the limit"}
	heldAbove  = state{"lo-thin", "!", "held, but above the limit"}
	notHeld    = state{"lo-fail", "✕", "not held"}
	noBalance  = state{"lo-fail", "✕", "not held: no thrust balances it"}
	notSolved  = state{"lo-none", "?", "not solved"}
)

func (c *Lost) state(e lost.Entry) state {
	switch {
	case math.IsNaN(e.Utilisation):
		return notSolved
	case math.IsInf(e.Utilisation, 1):
		return noBalance
	case !e.Holds():
		return notHeld
	case e.Within(c.Study.Limit):
		return heldWithin
	}
	return heldAbove
}

// need is the utilisation of an entry, short.
func need(e lost.Entry) string {
	if math.IsInf(e.Utilisation, 1) {
		return "never"
	}
	return format.Share(e.Utilisation)
}

// without is a row of the table: one vehicle lost.
type without struct {
	ID     string
	Entry  lost.Entry
	Says   string
	Second string // with which other one it is worst
	Rotor  string // the worst of its rotors
}

func (c *Lost) rows() []without {
	var list []without
	for _, e := range c.Study.Entries {
		if e.Kind == lost.Vehicle {
			list = append(list, without{ID: e.Lost[0], Entry: e, Says: c.state(e).words})
		}
	}
	for i := range list {
		r := &list[i]
		r.Second = c.second(r.ID)
		if p, ok := c.worst(lost.Rotor, r.ID); ok {
			r.Rotor = c.brief(p)
			if p.Grounded {
				r.Rotor += ", as the vehicle"
			} else if p.Rotor != lost.AnyRotor {
				r.Rotor += ", rotor " + strconv.Itoa(p.Rotor+1)
			}
		}
	}
	return list
}

// second is what a second loss does to what is left without a vehicle.
func (c *Lost) second(id string) string {
	held, all := 0, 0
	for _, e := range c.Study.Entries {
		if e.Kind == lost.Pair && (e.Lost[0] == id || e.Lost[1] == id) {
			all++
			if e.Holds() {
				held++
			}
		}
	}
	p, ok := c.worst(lost.Pair, id)
	switch {
	case !ok:
		return ""
	case held == 0:
		return "✕ held with none"
	case held == all:
		return c.brief(p) + " at worst, with " + other(p, id)
	}
	return "held with " + strconv.Itoa(held) + " of " + strconv.Itoa(all) + "; ✕ " + need(p) + " with " + other(p, id)
}

// other is who is lost with a vehicle.
func other(pair lost.Entry, id string) string {
	if pair.Lost[0] == id {
		return pair.Lost[1]
	}
	return pair.Lost[0]
}

// brief is an entry's mark and number.
func (c *Lost) brief(e lost.Entry) string { return c.state(e).mark + " " + need(e) }

// worst is the hardest loss of a kind that a vehicle has part in.
func (c *Lost) worst(k lost.Kind, id string) (worst lost.Entry, ok bool) {
	for _, e := range c.Study.Entries {
		if e.Kind != k || e.Lost[0] != id && (k != lost.Pair || e.Lost[1] != id) {
			continue
		}
		if !ok || e.Utilisation > worst.Utilisation*(1+1e-6) {
			worst, ok = e, true
		}
	}
	return worst, ok
}

func (c *Lost) meter(r without) vugu.Builder {
	return &chart.Meter{Label: "without " + r.ID, Value: r.Entry.Utilisation, Limit: c.Study.Limit}
}

// sentences are what the team survives.
func (c *Lost) sentences() []string {
	list := []string{c.Study.Vehicles.Sentence}
	if len(c.Study.Entries) > 1 && c.Study.Rule != "" {
		start := "Cut away instead: "
		if c.Study.Rule == plan.CutAway {
			start = "Left hanging instead: "
		}
		text := survives(c.Other)
		list = append(list, start+strings.ToLower(text[:1])+text[1:])
	}
	return append(list, c.Study.Pairs.Sentence, c.Study.Rotors.Sentence)
}
