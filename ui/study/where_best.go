package study

import (
	"math"
	"strconv"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/place"
	"cohoist/core/report"
	"cohoist/core/unit"
	"cohoist/core/vec"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// show draws a search, running or done; nothing when there was none.
func (f *found) show(t *Turn, c *choices) {
	const piece = talk.Where + "-best"
	switch {
	case f == nil:
		t.Show(piece, &WhereBest{Lead: "Nothing was searched yet.", Off: true, Picture: c.board()})
	case !f.done:
		t.Show(piece, f.running(c))
	default:
		t.Show(piece, f.result(t))
	}
}

// running is a search as far as it is.
func (f *found) running(c *choices) *WhereBest {
	b := &WhereBest{Running: true, Off: true, Part: strconv.FormatFloat(f.soFar.Part, 'f', 3, 64), Picture: c.board()}
	b.Lead = "Searching: " + unit.Figures(float64(f.soFar.Evaluated), 9) + " placements solved."
	if f.soFar.Places != nil {
		b.Lead += " Best so far: " + goalName(f.goals[0]) + " " + f.show1(f.goals[0], f.soFar.Value) + "."
		places := append([]vec.V3(nil), f.soFar.Places...)
		nearest(f.of.Team, places, nil)
		b.Picture.best(places)
	}
	return b
}

// result is what came of a search.
func (f *found) result(t *Turn) *WhereBest {
	b := &WhereBest{Standing: f.standing(t), Lead: f.outcome(), Picture: f.kept.board(), Asked: f.kept.asked(), Off: !f.current(t)}
	if f.none() {
		b.Class, b.Mark = "is-fail", "✕"
		return b
	}
	b.Proof = f.reply.Proof.Words()
	if f.stopped && !strings.HasPrefix(b.Proof, "Stopped") {
		b.Proof = "Stopped early. " + b.Proof
	}
	if len(f.reply.Front) > 0 {
		b.Front = f.front(t)
		b.Picture = nil
		return b
	}
	a := f.reply.Answer
	b.Class, b.Mark = verdictClass(f.then.Verdict), marks[f.then.Verdict]
	b.Says = "With these places the sheet says: " + f.then.Sentence
	b.Picture.best(a.Places)
	b.Places, b.Cases = f.places(), f.cases()
	b.Fresh, b.Taken = f.fresh(t), f.taken(t)
	return b
}

// asked is what was asked, for a sheet on paper and for a result that outlives it.
func (c *choices) asked() string {
	text := "Asked: " + nameOf(whereGoals, c.word("goal", "0")) + "; " + c.said()
	if c.asks.Spacing > 0 {
		text += ", vehicles at least " + c.units.Show(format.Length, c.asks.Spacing) + " apart"
	}
	if len(c.zones) > 0 {
		text += ", " + strconv.Itoa(len(c.zones)) + " kept out"
	}
	for axis, on := range c.asks.Mirror {
		if on {
			text += ", mirrored about " + axisName(axis) + " = 0"
		}
	}
	text += "; in hover"
	if c.asks.Cases.Off > 0 {
		text += ", with the centre of mass off by " + c.units.Show(format.Length, c.asks.Cases.Off)
	}
	if c.asks.Cases.Winds > 0 {
		text += ", in wind of " + c.units.Show(format.Speed, c.plan.Site.Wind) + " from any side"
	}
	if c.asks.Cases.Lost {
		text += ", with any one vehicle lost"
	}
	return text + "."
}

// marks stand before a verdict, so that colour is never the only sign.
var marks = map[report.Verdict]string{report.Lifts: "✓", report.ThinLift: "≈", report.Fails: "✕", report.NeedsInput: "?", report.OutsideModel: "!", report.Unsolved: "…"}

// moved is a vehicle's place now and the one found.
type moved struct{ ID, Now, Best string }

func (f *found) places() []moved {
	var out []moved
	u := f.kept.units
	for i, m := range f.of.Team {
		r := moved{m.ID, spot(u, m.Attach), spot(u, f.reply.Answer.Places[i])}
		switch {
		case !f.asks.Free[i]:
			r.Best = "stays"
		case f.reply.Answer.Places[i].Sub(m.Attach).Norm() < 1e-6:
			r.Best += " (as now)"
		}
		out = append(out, r)
	}
	return out
}

// spot is a place seen from above, to a tenth of a millimetre.
func spot(u format.Units, p vec.V3) string {
	if math.IsNaN(p[0]) || math.IsNaN(p[1]) {
		return "not given"
	}
	x := func(v float64) string { return u.Text(format.Length, math.Round(v*1e4)/1e4) }
	return x(p[0]) + ", " + x(p[1]) + "\u202f" + u.Length
}

// held is a case with its utilisation now and at the best places.
type held struct {
	Name, Now, Best, Says, Class string
	now                          float64
	best                         place.Case
}

// cases are the cases in the table: of the same from many sides the worst.
func (f *found) cases() []held {
	var out []held
	for i, k := range f.reply.Answer.Cases {
		now := math.NaN()
		if i < len(f.wasCases) {
			now = f.wasCases[i].Utilisation
		}
		name := k.Name
		for side, whole := range map[string]string{" towards ": ", worst of all sides", "wind to ": "wind, worst of all sides"} {
			if before, _, many := strings.Cut(name, side); many {
				name = before + whole
			}
		}
		if n := len(out) - 1; n >= 0 && out[n].Name == name && !k.Lost {
			out[n].now = math.Max(out[n].now, now)
			out[n].best.Utilisation = math.Max(out[n].best.Utilisation, k.Utilisation)
			continue
		}
		out = append(out, held{Name: name, now: now, best: k})
	}
	for i := range out {
		h := &out[i]
		h.Now, h.Best = used(h.now), used(h.best.Utilisation)
		h.Says, h.Class = judged(h.best, f.asks.Plan.Limits.Utilisation)
	}
	return out
}

// judged says whether a case is held: within the crew's limit, or with one lost within full thrust.
func judged(k place.Case, limit float64) (says, class string) {
	if k.Lost {
		limit = 1
	}
	switch {
	case math.IsInf(k.Utilisation, 1):
		return "✕ does not hold", "is-fail"
	case k.Utilisation > limit*(1+1e-6):
		return "✕ over " + format.Share(limit), "is-fail"
	case k.Utilisation > 0.9*limit:
		return "≈ within " + format.Share(limit) + ", thin", "is-thin"
	}
	return "✓ within " + format.Share(limit), "is-ok"
}

// offPaper is the class of what is not printed: nothing was found, or it was for an earlier plan.
func offPaper(off bool) string {
	if off {
		return " wh-off"
	}
	return ""
}

// picture is the drawing as a component.
func (c *WhereBest) picture() vugu.Builder { return c.Picture }

// take is what its button says.
func (c *WhereBest) take() string {
	if c.Taken {
		return "These places are taken"
	}
	return "Take these places"
}

// nameOf is what a choice is called.
func nameOf(words []Word, value string) string {
	for _, w := range words {
		if w.Value == value {
			return w.Name
		}
	}
	return value
}
