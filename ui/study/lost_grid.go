package study

import (
	"unicode/utf8"

	"github.com/vugu/vugu"

	"cohoist/core/lost"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

// The grid of losses: one vehicle lost on the diagonal, two below it, one rotor beside it.
const (
	cellWide, cellHigh = 54.0, 28.0
	gridLeft, gridTop  = 52.0, 18.0
	gridGap            = 14.0 // before the column of rotors
)

// mostGrid is up to how many vehicles the grid is drawn; a larger one could not be read.
const mostGrid = 24

func (c *Lost) grid() vugu.Builder {
	n := c.Study.Vehicles.Asked
	wide, high := gridLeft+float64(n+1)*cellWide+gridGap+1, gridTop+float64(n)*cellHigh+1
	pic := figure.SVG("svg", figure.Attrs{"class", "lo-svg", "viewBox", "0 0 " + figure.Num(wide) + " " + figure.Num(high), "width", figure.Num(wide),
		"role", "img", "aria-label", c.words()})
	at := map[string]int{}
	for _, e := range c.Study.Entries {
		if e.Kind != lost.Vehicle {
			continue
		}
		i := len(at)
		at[e.Lost[0]] = i
		text(pic, "lo-end", gridLeft-6, gridTop+(float64(i)+0.5)*cellHigh+4, clipped(e.Lost[0], 7))
		text(pic, "lo-mid", gridLeft+(float64(i)+0.5)*cellWide, gridTop+float64(i)*cellHigh-5, clipped(e.Lost[0], 7))
		c.cell(pic, e, i, gridLeft+float64(i)*cellWide)
	}
	rotors := gridLeft + float64(n)*cellWide + gridGap
	text(pic, "lo-mid", rotors+cellWide/2, gridTop-5, "a rotor")
	for _, e := range c.Study.Entries {
		if e.Kind == lost.Pair {
			c.cell(pic, e, at[e.Lost[1]], gridLeft+float64(at[e.Lost[0]])*cellWide)
		}
	}
	for id, i := range at {
		if e, ok := c.worst(lost.Rotor, id); ok {
			c.cell(pic, e, i, rotors)
		}
	}
	return node{pic}
}

// cell draws what is left after a loss.
func (c *Lost) cell(pic *vugu.VGNode, e lost.Entry, row int, x float64) {
	y, s := gridTop+float64(row)*cellHigh, c.state(e)
	class := "lo-cell " + s.class
	if e.Kind != lost.Pair {
		class += " lo-one"
	}
	rect(pic, class, x+0.5, y+0.5, cellWide-1, cellHigh-1)
	text(pic, "lo-mid", x+cellWide/2, y+cellHigh/2+4, s.mark+" "+need(e))
}

// clipped is a name that has room for so many letters.
func clipped(name string, most int) string {
	if utf8.RuneCountInString(name) <= most {
		return name
	}
	return string([]rune(name)[:most-1]) + "…"
}

// words are the grid for those who do not see it; the table beside it says the same.
func (c *Lost) words() string {
	text := "Grid of losses, each with what the hardest-working of the rest would need of its thrust."
	for _, r := range c.rows() {
		text += " Without " + r.ID + ": " + need(r.Entry) + ", " + r.Says + "."
	}
	return text
}

func (c *Lost) caption() string {
	return "A square is a loss: on the diagonal one vehicle, left of it two, that of its row and that of its column. The number is how much of its thrust the " +
		"hardest-working of the rest would need: ✓ within the limit of " + format.Share(c.Study.Limit) + ", ! held, but above it, ✕ not held; “never” where no thrust balances the payload. " +
		"The last column is the worst loss of one rotor."
}
