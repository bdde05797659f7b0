package study

import (
	"math"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/scatter"
	"cohoist/core/share"
	"cohoist/core/unit"
	"cohoist/ui/format"
)

// worstShort is the worst case in a few words.
func worstShort(s *scatter.Study, w scatter.Worst) string {
	if math.IsInf(w.T, 1) {
		return causeWords(w.Why)
	}
	text := "the hardest-working vehicle gives " + format.Share(w.T) + " of its thrust"
	switch limit := s.Plan.Limits.Utilisation; {
	case over(w.T, 1):
		return text + ", which it does not have"
	case over(w.T, limit):
		return text + ", above the limit of " + format.Share(limit)
	default:
		return text + ", within the limit of " + format.Share(limit)
	}
}

// causeWords says why there is no balance.
func causeWords(c scatter.Cause) string {
	switch c {
	case scatter.Slack:
		return "a cable goes slack"
	case scatter.WorkingLoad:
		return "a cable is loaded above its working load"
	case scatter.CableAngle:
		return "a cable leans out of its cone"
	case scatter.Tilt:
		return "a vehicle tilts too far"
	case scatter.Unsolved:
		return "the solver does not know"
	}
	return "nothing balances the load"
}

// worstWords is the worst case with what is off in it.
func worstWords(t *Turn, s *scatter.Study, w scatter.Worst) string {
	text := "As planned, the hardest-working vehicle gives " + format.Share(s.Nominal) + " of its thrust, at the best share. The worst case found within three standard deviations: " + worstShort(s, w) + ", with " + listed(slipsAt(t, s, w)) + "."
	if inner := shortOf(s, w); inner != "" {
		text += " All of these stand at their bounds but " + inner + "."
	} else {
		text += " All of these stand at their bounds."
	}
	text += " What does not move the answer stands at either end."
	switch {
	case math.IsNaN(w.Bound):
		text += " It was searched for, not proved: a body that leans in the wind may find worse."
	case over(w.Bound, w.T):
		text += " Whatever the errors within these bounds, attachments apart, it is never more than " + format.Share(w.Bound) + "."
	default:
		text += " With the attachments where they are planned, nothing within these bounds is worse than " + format.Share(w.Bound) + "."
	}
	return text
}

// slipsAt names what is off, and by how much.
func slipsAt(t *Turn, s *scatter.Study, w scatter.Worst) []string {
	var mass, air, com, blow []string
	weaker, stronger := map[string]bool{}, map[string]bool{}
	thrust, attach := 0.0, 0.0
	for d, e := range s.Errors {
		x := w.Offsets[d]
		if x == 0 {
			continue
		}
		switch e.Kind {
		case scatter.PayloadMass:
			mass = []string{"the payload " + part100(x) + either(x, " heavier", " lighter")}
		case scatter.COM:
			way := map[string][2]string{"x": {"towards x", "towards −x"}, "y": {"towards y", "towards −y"}, "z": {"upwards", "downwards"}}[e.Axis]
			com = append(com, t.Units.Small(math.Abs(x))+" "+either(x, way[0], way[1]))
		case scatter.Density:
			air = []string{"the air " + part100(x) + either(x, " denser", " thinner")}
		case scatter.Wind:
			blow = []string{"a wind of " + t.Units.Show(format.Speed, math.Max(0, s.Plan.Site.Wind+x))}
		case scatter.WindTo:
			if len(blow) > 0 {
				blow[0] += " towards " + degrees(plain(s.Plan.Site.WindTo+x))
			}
		case scatter.Thrust:
			thrust = math.Abs(x)
			weaker[e.Who], stronger[e.Who] = x < 0, x > 0
		case scatter.Attach:
			attach = math.Max(attach, math.Abs(x))
		}
	}
	list := append(strength(s.Plan, weaker, thrust, "weaker"), strength(s.Plan, stronger, thrust, "stronger")...)
	list = append(append(list, mass...), air...)
	if len(com) > 0 {
		list = append(list, "the centre of mass off by "+strings.Join(com, ", "))
	}
	if attach > 0 {
		list = append(list, "the attachments off by "+t.Units.Small(attach)+" along each axis that counts")
	}
	if list = append(list, blow...); len(list) == 0 {
		return []string{"nothing off"}
	}
	return list
}

// listed joins parts of a sentence, however many.
func listed(parts []string) string {
	if len(parts) == 1 {
		return parts[0]
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " and " + parts[len(parts)-1]
}

// strength names the vehicles whose thrust is off.
func strength(p plan.Plan, who map[string]bool, by float64, word string) []string {
	var ids []string
	for _, m := range p.Team {
		if who[m.ID] {
			ids = append(ids, m.ID)
		}
	}
	switch len(ids) {
	case 0:
		return nil
	case len(p.Team):
		return []string{"every vehicle " + part100(by) + " " + word}
	}
	return []string{share.List(ids) + " " + part100(by) + " " + word}
}

// shortOf names what stands off, but not at its bound.
func shortOf(s *scatter.Study, w scatter.Worst) string {
	var kinds []string
	seen := map[string]bool{}
	for d, e := range s.Errors {
		if x := math.Abs(w.Offsets[d]); x > 0 && x < scatter.Cut*e.SD*(1-1e-9) && !seen[e.Kind] {
			seen[e.Kind] = true
			kinds = append(kinds, "the "+e.Kind)
		}
	}
	if len(kinds) == 0 {
		return ""
	}
	return listed(kinds)
}

func either(x float64, up, down string) string {
	if x > 0 {
		return up
	}
	return down
}

func part100(x float64) string { return unit.Figures(100*math.Abs(x), 3) + "\u202f%" }

// plain is an angle between −180° and 180°.
func plain(x float64) float64 {
	if x = math.Mod(x, 360); x > 180 {
		return x - 360
	} else if x < -180 {
		return x + 360
	}
	return x
}
