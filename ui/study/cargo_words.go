package study

import (
	"math"
	"strings"

	"cohoist/core/cargo"
	"cohoist/core/energy"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

func newCargo(s *cargo.Study, t *Turn) *Cargo {
	c := &Cargo{Study: s, Units: t.Units, at: map[int]int{}, ends: map[int]float64{}}
	if s.Found {
		c.spans = s.Spans(s.Best.Stops)
		for k, stop := range s.Best.Stops {
			c.at[stop.Item] = k + 1
		}
		for _, x := range c.spans {
			if x.Kind != cargo.Flying && x.Kind != cargo.Changing {
				c.ends[x.Item] = x.Start + x.Time
			}
		}
	}
	c.chosen = t.word(c.itemChoice())
	return c
}

// clock is a time of a list, to the second.
func clock(s float64) string {
	if s = math.Round(s); s < 60 || s >= 3600 {
		return format.Span(s)
	}
	text := digits(int(s/60)) + "\u202fmin"
	if rest := int(math.Mod(s, 60)); rest > 0 {
		text += " " + digits(rest) + "\u202fs"
	}
	return text
}

// lifts is how many items the team lifts.
func (c *Cargo) lifts() (n int) {
	for i := range c.Study.Items {
		if c.Study.Items[i].Lifts() {
			n++
		}
	}
	return n
}

// gist is the answer in a sentence.
func (c *Cargo) gist() string {
	s, n := c.Study, len(c.Study.Items)
	text := several(n, "item", "items") + ", " + digits(c.lifts()) + " of which the team lifts"
	switch {
	case c.lifts() == n && n == 1:
		text = "1 item, which the team lifts"
	case c.lifts() == n:
		text = several(n, "item", "items") + ", all of which the team lifts"
	case c.lifts() == 0:
		text = several(n, "item", "items") + ", none of which the team lifts"
	}
	switch {
	case len(s.Needs) > 0:
		return text + "; say " + wanted(s.Needs) + "."
	case !s.Found:
		return text + ", but the packs do not suffice for any order."
	case len(s.Best.Stops) == 0:
		return text + "; nothing can be set."
	case len(s.Best.Stops) < n:
		text += "; " + digits(len(s.Best.Stops)) + " can be set"
	}
	return text + ", in " + clock(s.Best.Time) + c.withPacks(s.Best) + "."
}

func (c *Cargo) withPacks(o cargo.Order) string {
	if c.Study.Left == nil {
		return ""
	}
	return " with " + several(o.Packs, "pack", "packs") + " for each vehicle"
}

// wanted says which fields are needed.
func wanted(paths []string) string {
	var list []string
	for _, path := range paths {
		words := map[string]string{"cargo.home_m": "where home is", "cargo.hook_s": "how long hooking up takes", "cargo.swap_s": "how long changing packs takes"}[path]
		list = append(list, words)
	}
	return strings.Join(list, " and ")
}

// says is what there is to say of the whole.
func (c *Cargo) says() []string {
	s := c.Study
	var list []string
	if s.Found && len(s.Best.Stops) > 0 {
		list = append(list, c.spent(), c.proof(), c.crew())
		if s.Left != nil {
			list = append(list, c.lowest())
		}
	}
	if len(s.Wants) > 0 && c.lifts() > 0 {
		list = append(list, "Packs and energy are left out, as the plan does not say "+strings.Join(s.Wants, ", ")+".")
	}
	var kept []string
	for _, text := range append(list, s.Cautions...) {
		if text != "" {
			kept = append(kept, text)
		}
	}
	return kept
}

// spent is what the time goes into.
func (c *Cargo) spent() string {
	sum := map[string]float64{}
	for _, x := range c.spans {
		sum[x.Kind] += x.Time
	}
	text := "Of that " + clock(sum[cargo.Hooking]+sum[cargo.Unhooking]) + " go into hooking up and unhooking, " + clock(sum[cargo.Carrying]) + " into carrying, " +
		clock(sum[cargo.Flying]) + " into flying without a payload"
	if sum[cargo.Changing] > 0 {
		text += ", " + clock(sum[cargo.Changing]) + " into changing packs"
	}
	if figureOf(c.Study.Best.Energy) {
		text += "; the team takes " + c.energy(c.Study.Best.Energy)
	}
	return text + "."
}

func (c *Cargo) energy(j float64) string { return amount(j/3600, "Wh") }

// proof says how good the order is.
func (c *Cargo) proof() string {
	b := c.Study.Best
	switch {
	case len(b.Stops) < 2:
		return ""
	case b.Exact:
		return "No order that keeps supports under what is placed is quicker: all were ruled out."
	}
	return "A quicker order may exist; none takes less than " + clock(b.Bound) + "."
}

// crew compares the order of the list.
func (c *Cargo) crew() string {
	s := c.Study
	switch {
	case s.Broken != nil:
		item, needs := s.Items[s.Broken.Item].ID, s.Items[s.Broken.Needs].ID
		if s.Broken.Under {
			return "In the crew’s order, that of the list, " + item + " cannot be picked: " + needs + " still lies on it."
		}
		return "In the crew’s order, that of the list, " + item + " cannot be set: " + needs + ", which it stands on, is not there yet."
	case !s.OwnFound:
		return "In the crew’s order, that of the list, the packs do not suffice."
	case s.Own.Time > s.Best.Time*(1+1e-9):
		return "In the crew’s order, that of the list, it takes " + clock(s.Own.Time) + c.withPacks(s.Own) + ", " + lasts(s.Own.Time-s.Best.Time) + " more."
	}
	return "The crew’s order, that of the list, is as quick."
}

// lowest says how low packs come.
func (c *Cargo) lowest() string {
	s, v := c.Study, 0
	for i, q := range s.Left {
		if q < s.Left[v] {
			v = i
		}
	}
	id := s.Items[s.Best.Stops[0].Item].Plan.Team[v].ID
	if s.Short != nil {
		return "By an exact reckoning the pack of " + s.Short.Vehicle + " ends too soon, at " + s.Items[s.Short.Item].ID + "."
	}
	return "The packs come down to a charge of " + percent(s.Left[v], 2) + " at the lowest, that of " + id + "; the reserve is kept."
}

// cargoRow is a row of the table of items.
type cargoRow struct {
	Place                                      int
	Order, ID, Mass, Verdict, Class, By, Takes string
	Done, Energy, Before                       string
}

// rows are the items in the order found, then those that are not set.
func (c *Cargo) rows() []cargoRow {
	var out []cargoRow
	for _, stop := range c.Study.Best.Stops {
		out = append(out, c.row(stop.Item, stop.Fresh))
	}
	for i := range c.Study.Items {
		if c.at[i] == 0 {
			out = append(out, c.row(i, false))
		}
	}
	return out
}

// verdictWords are verdicts as the table says them, and the looks of their mark.
var verdictWords = map[report.Verdict][2]string{report.Lifts: {"lifts", "ok"}, report.ThinLift: {"lifts, thin", "thin"}, report.Fails: {"fails", "fail"}}

func (c *Cargo) row(i int, fresh bool) cargoRow {
	it := &c.Study.Items[i]
	r := cargoRow{Place: i, Order: "–", ID: it.ID, Mass: c.Units.Show(format.Mass, it.Report.Payload.Mass), By: it.Check(), Takes: "–", Energy: "–", Done: it.Why}
	r.Verdict, r.Class = "not known", "other"
	if words, ok := verdictWords[it.Report.Verdict]; ok {
		r.Verdict, r.Class = words[0], words[1]
	}
	if figureOf(it.Own.Time) {
		r.Takes = lasts(it.Own.Time)
	}
	if figureOf(it.Own.Energy) {
		r.Energy = c.energy(it.Own.Energy)
	}
	if n := c.at[i]; n > 0 {
		r.Order, r.Done = digits(n), clock(c.ends[i])
	}
	if fresh {
		r.Before = "after fresh packs"
	}
	return r
}

// itemChoice is of which item the working is shown.
func (c *Cargo) itemChoice() Choice {
	choice := Choice{Name: "item", Label: "Of the item"}
	for _, stop := range c.Study.Best.Stops {
		id := c.Study.Items[stop.Item].ID
		choice.Words = append(choice.Words, Word{id, id})
	}
	if choice.Words == nil {
		choice.Words = []Word{{"", "none"}}
	}
	return choice
}

func (c *Cargo) choices() []Choice { return []Choice{c.itemChoice()} }

// steps is the working of the item that is chosen.
func (c *Cargo) steps() []energy.Step {
	for i := range c.Study.Items {
		if c.Study.Items[i].ID == c.chosen {
			return c.Study.Working(i)
		}
	}
	return nil
}

func (c *Cargo) assumed() string { return strings.Join(c.Study.Assumed, " ") }

// better tells that the order found is another than the list's.
func (c *Cargo) better() bool {
	list := c.Study.Best.Stops
	for k := 1; k < len(list); k++ {
		if list[k].Item < list[k-1].Item {
			return c.Study.Found
		}
	}
	return false
}

// stepSays is what stands after so many steps.
func (c *Cargo) stepSays(k int) string {
	n := len(c.Study.Best.Stops)
	if k == 0 {
		return "Before the first of " + several(n, "item", "items") + "."
	}
	stop := c.Study.Best.Stops[k-1]
	it := &c.Study.Items[stop.Item]
	text := "After " + digits(k) + " of " + digits(n) + ", at " + clock(c.ends[stop.Item]) + ": " + it.ID + " is set"
	var on []string
	for _, j := range it.On {
		on = append(on, c.Study.Items[j].ID)
	}
	if on != nil {
		text += ", on " + strings.Join(on, " and ")
	}
	if stop.Fresh {
		text += "; the packs were changed before it"
	}
	return text + "."
}

// cargoFrames is the name of the pictures that the slider moves.
const cargoFrames = talk.Cargo
