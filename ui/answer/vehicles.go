package answer

import (
	"math"
	"strconv"

	"cohoist/core/report"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// Compute fetches the vehicles' parts of the report once for a drawing.
func (c *Vehicles) Compute() {
	c.seen = c.seen[:0]
	for _, m := range c.Store.Plan().Team {
		c.seen = append(c.seen, c.Store.Vehicle(m.ID))
	}
}

func (c *Vehicles) of(i int) report.Vehicle { return c.seen[i] }

func (c *Vehicles) id(i int) string {
	if team := c.Store.Plan().Team; i < len(team) {
		return team[i].ID
	}
	return ""
}

func (c *Vehicles) row(i int) string {
	class := "tr is-" + grade(c.of(i).Utilisation, c.share())
	if c.id(i) == c.Store.Selected {
		class += " selected"
	}
	return class
}

func (c *Vehicles) pressed(i int) string { return strconv.FormatBool(c.id(i) == c.Store.Selected) }

// pick points vehicle i out, or no longer.
func (c *Vehicles) pick(i int) {
	if id := c.id(i); id != c.Store.Selected {
		c.Store.Select(id)
		return
	}
	c.Store.Select("")
}

// share is the part of the thrust that the crew accepts.
func (c *Vehicles) share() float64 { return c.Store.Assumed().Limits.Utilisation }

func (c *Vehicles) limit() string { return bar(c.share()) }

// pull is the force on the payload: a cable's tension, or the size of a grip's force.
func (c *Vehicles) pull(i int) string {
	v := c.of(i)
	if !math.IsNaN(v.Tension) {
		return c.Store.Units.Show(format.Force, v.Tension)
	}
	return c.Store.Units.Show(format.Force, size(v.Force))
}

// place is where vehicle i is attached.
func (c *Vehicles) place(i int) string {
	a, u := c.Store.Plan().Team[i].Attach, c.Store.Units
	return u.Bare(format.Length, a[0]) + ", " + u.Bare(format.Length, a[1]) + ", " + u.Show(format.Length, a[2])
}

func size(v vec.V3) float64 { return math.Hypot(math.Hypot(v[0], v[1]), v[2]) }

func (c *Vehicles) says(i int) string {
	return "Vehicle " + c.id(i) + " uses " + format.Share(c.of(i).Utilisation) + " of its thrust; show the working"
}
