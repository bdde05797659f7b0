package study

import (
	"math"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/way"
	"cohoist/ui/format"
)

// wayCheck is a row of what was watched on a way.
type wayCheck struct{ ID, Name, Kept, Limit, Says, Class, Verdict string }

// watchedRows are what was watched: the distance between vehicles, and every opening.
func (j *journey) watchedRows() []wayCheck {
	var out []wayCheck
	w, least := j.watched, j.model.Plan.Limits.Separation
	if !math.IsInf(w.Least, 1) {
		row := wayCheck{ID: "apart", Name: "Vehicles apart", Kept: j.units.Small(w.Least), Limit: "at least " + j.units.Small(least),
			Says: capital(w.Who[0]) + " and " + w.Who[1] + " are nearest, at " + lasts(w.When) + ", watched all the way."}
		out = append(out, row.judged(w.Least, least))
	}
	for i, p := range w.Passes {
		out = append(out, j.opening(i, p))
	}
	return out
}

// judged compares a distance with what must be kept; thinly is less than a tenth above.
func (c wayCheck) judged(has, least float64) wayCheck {
	switch {
	case has < least*(1-1e-9):
		c.Class, c.Verdict = "ck-fail", "✕ not kept"
	case has < 1.1*least:
		c.Class, c.Verdict = "ck-thin", "✓ kept, thinly"
	default:
		c.Class, c.Verdict = "ck-ok", "✓ kept"
	}
	return c
}

// opening is the row of an opening.
func (j *journey) opening(i int, p way.Pass) wayCheck {
	o, u := j.route.Openings[i], j.units
	row := wayCheck{ID: "opening-" + digits(i+1), Name: "Opening " + digits(i+1), Limit: "at least " + u.Small(o.Clearance)}
	if p.From > p.To {
		row.Kept, row.Says = "–", "The team does not pass it."
		return row.judged(-1, 0)
	}
	what := "the payload"
	switch {
	case p.Cable:
		what = "the cable of " + p.What
	case p.What != "":
		what = "the rotors of " + p.What
	}
	row.Kept = u.Small(math.Max(p.Room, 0)) + " clear"
	row.Says = "Payload, cables and rotors take " + u.Bare(format.Length, p.Width()) + " of " + u.Show(format.Length, o.Width) + " across and " +
		u.Bare(format.Length, p.Height()) + " of " + u.Show(format.Length, o.Height) + " in height, from " + lasts(p.From) + " to " + lasts(p.To) + "; nearest to its " + p.Side + " side " + are(what) + " " + what + ", at " + lasts(p.When) + "."
	if p.Room < 0 {
		row.Kept = "hits, by " + u.Small(-p.Room)
	}
	return row.judged(p.Room, o.Clearance)
}

func are(what string) string {
	if strings.HasPrefix(what, "the rotors") {
		return "come"
	}
	return "comes"
}

// troubles are the flags of chapter 17 along the way, in sentences.
func (j *journey) troubles() []string {
	var out, blown []string
	from, to := math.Inf(1), math.Inf(-1)
	for _, f := range j.watched.Flags {
		if f.Kind == way.Blown {
			blown = append(blown, f.Upper)
			from, to = math.Min(from, f.From), math.Max(to, f.To)
			continue
		}
		out = append(out, f.Reason+" "+j.span(f.From, f.To))
	}
	if len(blown) > 0 {
		who := "The wakes of " + strings.Join(blown, ", ") + " blow"
		switch len(blown) {
		case 1:
			who = "The wake of " + blown[0] + " blows"
		case len(j.model.Craft):
			who = "The wakes of all vehicles blow"
		}
		out = append(out, who+" on the payload. "+j.span(from, to)+" What it presses down is not counted.")
	}
	if len(j.watched.Flags) == len(blown) {
		out = append([]string{"No vehicle flies above another or in its wake, and no cables cross or come near rotors, at any instant looked at."}, out...)
	}
	return out
}

// span is when something is so.
func (j *journey) span(from, to float64) string {
	if from <= 0 && to >= j.found.Duration()*(1-1e-9) {
		return "All the way."
	}
	return "From " + lasts(from) + " to " + lasts(to) + "."
}

// wayForm is a row of the table of formations.
type wayForm struct{ Name, Form, Apart, Wide, Used, Lean string }

// forms are the formations at the waypoints, those alike in one row.
func (j *journey) forms() []wayForm {
	var out []wayForm
	for k, f := range j.found.Formed {
		lean := 0.0
		for _, p := range f.Parts {
			lean = math.Max(lean, p.CableAngle)
		}
		name := f.Shape
		if name == "" {
			name = plan.AsPlanned
		}
		row := wayForm{digits(k + 1), name, j.units.Small(f.Spacing), j.units.Show(format.Length, f.Width), used(f.Utilisation), inDegrees(lean)}
		if n := len(out); n > 0 {
			if last := out[n-1]; last.Form == row.Form && last.Apart == row.Apart && last.Wide == row.Wide && last.Used == row.Used {
				out[n-1].Name = strings.SplitN(last.Name, "–", 2)[0] + "–" + row.Name
				continue
			}
		}
		out = append(out, row)
	}
	return out
}

// apartOf is the distance of the nearest two at an instant.
func apartOf(f way.Instant) float64 { return f.Separation }
