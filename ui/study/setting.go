package study

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"cohoist/core/unit"
)

// Choice is a setting of a study in a form. What is typed is kept with the unit that was on the screen, so
// that it stays the same length when another unit is chosen.
type Choice struct {
	Name, Label, Until string // Until stands in the empty input
	Help               string
	Unit               string
	Low, High          float64 // in the base unit: what a number may be
	Words              []Word  // for a choice among words
}

// number is what was typed into a setting, in the base unit, or until. What is no number, or out of range, is
// said beside the input, and false is returned.
func (t *Turn) number(c Choice, until float64) (float64, bool) {
	fault := "fault " + t.id + "." + c.Name
	x, err := c.read(t.Setting(c.Name, ""), until)
	if err != nil {
		t.Say(fault, err.Error())
		return until, false
	}
	t.Say(fault, "")
	return x, true
}

// read reads a setting; nothing typed is until.
func (c Choice) read(text string, until float64) (float64, error) {
	if strings.TrimSpace(text) == "" {
		return until, nil
	}
	x, err := unit.Parse(text, c.Unit)
	if err == nil && !(x >= c.Low && x <= c.High) {
		err = errors.New("It must lie between " + unit.Format(c.Low, c.Unit, 3) + " and " + unit.Format(c.High, c.Unit, 3) + ".")
	}
	return x, err
}

// form shows the settings of a study with what was chosen, and fields of the plan below.
func (t *Turn) form(name string, list []Choice, groups ...Group) {
	t.Show(t.id+"-form", &QuestionForm{Study: t.id, Name: name, Units: t.Units, List: list, Groups: groups})
	for _, c := range list {
		t.Value(settingID(t.id, c.Name), c.shown(t.Setting(c.Name, "")))
	}
	for _, g := range groups {
		t.fill(g.Entries)
	}
}

// shown is what stands in the input of a setting: what was typed, in the unit of the form.
func (c Choice) shown(text string) string {
	if c.Words != nil {
		for _, w := range c.Words {
			if w.Value == text {
				return text
			}
		}
		return c.Words[0].Value
	}
	if x, err := c.read(text, math.NaN()); err == nil {
		if math.IsNaN(x) {
			return ""
		}
		return unit.Figures(x/unit.Scale(c.Unit), 6)
	}
	return text
}

// word is the choice among words that was made, the first until then.
func (t *Turn) word(c Choice) string { return c.shown(t.Setting(c.Name, "")) }

func settingID(study, name string) string { return "set-" + study + "-" + name }

// several writes a number of things: "1 line", "3 lines".
func several(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + more
}
