package report

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/air"
	"cohoist/core/check"
	"cohoist/core/energy"
	"cohoist/core/plan"
)

// rank orders what a check can say by how much it weighs on the verdict.
var rank = map[check.Status]int{
	check.OK: 1, check.Thin: 2, check.OutsideModel: 3, check.Fail: 5, check.Unsolved: 6,
}

// judge makes the verdict: the worst check; of equals the one with the highest utilisation. A plan
// that lacks a number for its balance needs input unless something already fails.
func (r *Report) judge(f check.Facts, massError error) {
	worst := -1
	for i, row := range r.Checks {
		if rank[row.Status] == 0 || row.ID == "balance" && row.Status == check.OK {
			continue
		}
		if worst < 0 || heavier(row, r.Checks[worst]) {
			worst = i
		}
	}
	if f.Outside != "" && massError == nil && len(r.Missing) == 0 {
		r.Verdict, r.Governing, r.Sentence = OutsideModel, "balance", f.Outside
		return
	}
	if massError != nil || f.Model == nil {
		r.Verdict, r.Governing = NeedsInput, "balance"
		r.Sentence = "The plan does not say enough to answer: " + lacks(r.Missing, massError) + "."
		if massError == nil && len(r.Missing) == len(energy.Lacking(f.Plan)) {
			r.Sentence += " Only sharing for equal endurance needs that: say what feeds the vehicles, or share another way."
		}
		return
	}
	if worst < 0 {
		r.Verdict, r.Governing, r.Sentence = Unsolved, "balance", "Nothing could be checked."
		return
	}
	row := r.Checks[worst]
	r.Governing = row.ID
	r.Verdict = map[check.Status]Verdict{check.OK: Lifts, check.Thin: ThinLift, check.OutsideModel: OutsideModel,
		check.Fail: Fails, check.Unsolved: Unsolved}[row.Status]
	r.Sentence = sentence(r, f, row)
}

// noAir says why a site's air has no density.
func noAir(s plan.Site) string {
	s.Humidity = math.NaN()
	if _, ok := air.Density(s); ok {
		return "Outside the model: the density of moist air is known up to 60 °C."
	}
	return "Outside the model: the standard atmosphere gives no density at this altitude and temperature (−500 m to 11 000 m, ISO 2533)."
}

func heavier(a, b check.Row) bool {
	if rank[a.Status] != rank[b.Status] {
		return rank[a.Status] > rank[b.Status]
	}
	return a.Utilisation > b.Utilisation*(1+1e-6) // NaN never; equals: the first
}

// sentence is the verdict in words: who lifts what, what is left, what governs.
func sentence(r *Report, f check.Facts, row check.Row) string {
	who, load := crew(f.Plan), kilograms(r.Payload.Mass)
	governs := "the " + strings.ToLower(row.Title[:1]) + row.Title[1:]
	if row.Where != "" {
		governs += " of " + whose(row.Where, f.Plan)
	}
	spare := strconv.Itoa(int(math.Floor(100*(1-r.Team.Utilisation)+1e-9))) + " %"
	switch r.Verdict {
	case Lifts:
		return who + " lift" + s(f) + " " + load + " with " + spare + " of " + their(f) + " thrust to spare; " + governs + " governs."
	case ThinLift:
		return who + " only just lift" + s(f) + " " + load + ": " + row.Sentence
	case OutsideModel:
		return "This calculation does not reach this lift. " + row.Sentence
	case Unsolved:
		return "The calculation did not come to an answer. " + row.Sentence
	}
	return who + " should not lift " + load + " like this. " + row.Sentence
}

// whose names a vehicle, or a pair of them: "A and B".
func whose(where string, p plan.Plan) string {
	for _, a := range p.Team {
		for _, b := range p.Team {
			if where == a.ID+" "+b.ID {
				return a.ID + " and " + b.ID
			}
		}
	}
	return where
}

func s(f check.Facts) string {
	if len(f.Plan.Team) == 1 {
		return "s"
	}
	return ""
}

func their(f check.Facts) string {
	if len(f.Plan.Team) == 1 {
		return "its"
	}
	return "their"
}

var words = []string{"No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve"}

// crew names the team: "Four field-quads", "Two field-quads and one heavy-hex".
func crew(p plan.Plan) string {
	count, order := map[string]int{}, []string{}
	for _, m := range p.Team {
		if count[m.Vehicle] == 0 {
			order = append(order, m.Vehicle)
		}
		count[m.Vehicle]++
	}
	parts := make([]string, len(order))
	for i, class := range order {
		n := count[class]
		word := strconv.Itoa(n)
		if n < len(words) {
			word = words[n]
		}
		if i > 0 {
			word = strings.ToLower(word)
		}
		parts[i] = word + " " + class
		if n != 1 {
			parts[i] = plural(parts[i])
		}
	}
	if len(parts) > 1 {
		last := len(parts) - 1
		return strings.Join(parts[:last], ", ") + " and " + parts[last]
	}
	if len(parts) == 0 {
		return "no vehicles"
	}
	return parts[0]
}

func plural(word string) string {
	for _, hiss := range []string{"s", "x", "z", "ch", "sh"} {
		if strings.HasSuffix(word, hiss) {
			return word + "es"
		}
	}
	return word + "s"
}

// kilograms writes a mass for a sentence, three figures, in grams below one kilogram.
func kilograms(m float64) string {
	if m < 1 {
		return figures(1000*m) + " g"
	}
	return figures(m) + " kg"
}

func figures(x float64) string {
	if x <= 0 {
		return "0"
	}
	step := math.Pow(10, math.Max(0, 2-math.Floor(math.Log10(x))))
	return strconv.FormatFloat(math.Round(x*step)/step, 'f', -1, 64)
}

// lacks names what is missing.
func lacks(missing []string, massError error) string {
	switch {
	case len(missing) == 1:
		return missing[0] + " is missing"
	case len(missing) > 1:
		return strings.Join(missing[:len(missing)-1], ", ") + " and " + missing[len(missing)-1] + " are missing"
	}
	return massError.Error()
}
