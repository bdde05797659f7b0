package study

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/unit"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// The texts in which a way is typed: a line for each waypoint, x y z, heading, time, and where the team stands otherwise than
// planned its formation, spacing, width and direction, and the word stop where it rests; a line for each box, its leg and what it spans along x, y and z; a line for
// each opening, its middle, direction, width, height and clearance. A dash stands for what is left out.

// formWord is where the formation stands in the line of a waypoint.
const formWord = 5

// blankMark stands for a number that is left out.
const blankMark = "-"

// lines are the lines of a text that hold something, each cut into words. A comma or semicolon with a space after it
// parts words; a comma within a number is its decimal mark.
func lines(text string) [][]string {
	var out [][]string
	for _, l := range strings.Split(text, "\n") {
		words := strings.FieldsFunc(strings.NewReplacer(", ", " ", ";", " ").Replace(l+" "), func(r rune) bool { return r == ' ' || r == '\t' || r == '\r' || r == '\u00a0' })
		if len(words) > 0 {
			out = append(out, words)
		}
	}
	return out
}

// left tells that a word stands for nothing.
func left(word string) bool { return word == blankMark || word == "–" || word == "−" }

// readPoints reads waypoints.
func readPoints(text string, u format.Units) ([]plan.Waypoint, error) {
	var out []plan.Waypoint
	units := pointUnits(u)
	for i, words := range lines(text) {
		name := "Waypoint " + strconv.Itoa(i+1)
		form, pass := "", ""
		if k := slices.Index(words, plan.Stop); k >= 0 {
			words, pass = slices.Delete(words, k, k+1), plan.Stop
		}
		if len(words) > formWord {
			if !left(words[formWord]) {
				form = words[formWord]
			}
			words = append(append([]string(nil), words[:formWord]...), words[formWord+1:]...)
		}
		x, err := readLine(name, words, units, 3)
		switch {
		case err != nil:
			return nil, err
		case math.IsNaN(x[0] + x[1] + x[2]):
			return nil, errors.New(name + " needs its x, y and z.")
		case form != "" && !slices.Contains(formations, form):
			return nil, errors.New(name + ": “" + form + "” is no formation; write " + strings.Join(formations, ", ") + ", or a dash.")
		}
		if form == plan.AsPlanned {
			form = ""
		}
		out = append(out, plan.Waypoint{At: vec.V3(x[:3]), Heading: x[3], Time: x[4], Pass: pass, Formation: form, Spacing: x[5], Width: x[6], Along: x[7]})
	}
	return out, nil
}

// formations are the words for them.
var formations = []string{plan.AsPlanned, plan.Gather, plan.Spread, plan.InLine, plan.Stacked}

// openingNeeds is what an opening cannot do without.
const openingNeeds = " needs its middle, direction, width and height."

// readOpenings reads openings.
func readOpenings(text string, u format.Units) ([]plan.Opening, error) {
	var out []plan.Opening
	for i, words := range lines(text) {
		name := "Opening " + strconv.Itoa(i+1)
		x, err := readLine(name, words, openingUnits(u), 6)
		switch {
		case err != nil:
			return nil, err
		case math.IsNaN(x[0] + x[1] + x[2] + x[3] + x[4] + x[5]):
			return nil, errors.New(name + openingNeeds)
		}
		out = append(out, plan.Opening{At: vec.V3(x[:3]), Normal: x[3], Width: x[4], Height: x[5], Clearance: x[6]})
	}
	return out, nil
}

func openingUnits(u format.Units) []string {
	return []string{u.Length, u.Length, u.Length, "°", u.Length, u.Length, u.Length}
}

func pointUnits(u format.Units) []string {
	return []string{u.Length, u.Length, u.Length, "°", "s", u.Length, u.Length, "°"}
}

// readBoxes reads boxes.
func readBoxes(text string, u format.Units) ([]plan.Corridor, error) {
	var out []plan.Corridor
	units := []string{"", u.Length, u.Length, u.Length, u.Length, u.Length, u.Length}
	for i, words := range lines(text) {
		name := "Box " + strconv.Itoa(i+1)
		x, err := readLine(name, words, units, 3)
		switch {
		case err != nil:
			return nil, err
		case !(x[0] >= 1) || x[0] != math.Trunc(x[0]) || x[0] > 1e6:
			return nil, errors.New(name + " begins with its leg: 1 is from the first waypoint to the second.")
		}
		b := plan.Corridor{Leg: int(x[0]), Min: vec.V3{x[1], x[3], x[5]}, Max: vec.V3{x[2], x[4], x[6]}}
		for a := range 3 {
			if b.Min[a] > b.Max[a] {
				return nil, errors.New(name + " ends along " + "xyz"[a:a+1] + " before it begins.")
			}
		}
		out = append(out, b)
	}
	return out, nil
}

// readLine reads the numbers of a line; those it does not have are left out.
func readLine(name string, words, units []string, least int) ([]float64, error) {
	if len(words) < least || len(words) > len(units) {
		return nil, errors.New(name + " is to be " + strconv.Itoa(least) + " to " + strconv.Itoa(len(units)) + " numbers with spaces between them.")
	}
	out := make([]float64, len(units))
	for i := range out {
		out[i] = math.NaN()
		if i >= len(words) || left(words[i]) {
			continue
		}
		v, err := unit.Parse(words[i], units[i])
		if err != nil {
			return nil, errors.New(name + ": " + err.Error())
		}
		out[i] = v
	}
	return out, nil
}

// writePoints is the text of waypoints.
func writePoints(list []plan.Waypoint, u format.Units) string {
	units := pointUnits(u)
	text := ""
	for _, p := range list {
		x := []float64{p.At[0], p.At[1], p.At[2], p.Heading, p.Time}
		words := wordsOf(x[:given(x)], units)
		if p.Formation != "" {
			form := []float64{p.Spacing, p.Width, p.Along}
			words = append(append(wordsOf(x, units), p.Formation), wordsOf(form[:given(form)], units[formWord:])...)
		}
		if p.Pass == plan.Stop {
			words = append(words, plan.Stop)
		}
		text += strings.Join(words, "  ") + "\n"
	}
	return text
}

// writeOpenings is the text of openings.
func writeOpenings(list []plan.Opening, u format.Units) string {
	text := ""
	for _, o := range list {
		text += writeLine([]float64{o.At[0], o.At[1], o.At[2], o.Normal, o.Width, o.Height, o.Clearance}, openingUnits(u))
	}
	return text
}

// writeBoxes is the text of boxes.
func writeBoxes(list []plan.Corridor, u format.Units) string {
	units := []string{"", u.Length, u.Length, u.Length, u.Length, u.Length, u.Length}
	text := ""
	for _, b := range list {
		text += writeLine([]float64{float64(b.Leg), b.Min[0], b.Max[0], b.Min[1], b.Max[1], b.Min[2], b.Max[2]}, units)
	}
	return text
}

// writeLine writes numbers with two spaces between them, those left out at the end not at all.
func writeLine(x []float64, units []string) string {
	return strings.Join(wordsOf(x[:given(x)], units), "  ") + "\n"
}

// given is how many numbers there are without those left out at the end.
func given(x []float64) int {
	last := len(x)
	for last > 0 && math.IsNaN(x[last-1]) {
		last--
	}
	return last
}

// wordsOf are numbers in their units, a dash for each left out.
func wordsOf(x []float64, units []string) []string {
	words := make([]string, len(x))
	for i := range words {
		words[i] = blankMark
		if !math.IsNaN(x[i]) {
			words[i] = unit.Figures(x[i]/unit.Scale(units[i]), 9)
		}
	}
	return words
}
