package study

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cohoist/core/pattern"
	"cohoist/core/place"
	"cohoist/core/unit"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// about is how many holes a pattern has when nobody says how far apart they are.
const about = 40

// slim is the width of a payload over its length below which it counts as a beam.
const slim = 0.15

// lie finds the payload's outline from above, and the height at which the team attaches: that of the
// vehicles when they share one, else the payload's top.
func (c *choices) lie() {
	c.lo, c.hi = pattern.Extent(c.plan.Payload)
	c.height = c.hi[2]
	same := len(c.plan.Team) > 0
	for _, m := range c.plan.Team {
		same = same && math.Abs(m.Attach[2]-c.plan.Team[0].Attach[2]) < 1e-6
	}
	if same {
		c.height = c.plan.Team[0].Attach[2]
	}
}

// size is the payload's length along its long side and across, m, and which axis is the long one.
func (c *choices) size() (long, across float64, axis int) {
	x, y := c.hi[0]-c.lo[0], c.hi[1]-c.lo[1]
	if y > x {
		return y, x, 1
	}
	return x, y, 0
}

// slender tells that the payload is a beam rather than a plate.
func (c *choices) slender() bool {
	long, across, _ := c.size()
	return across < slim*long
}

// usual is where points lie when nobody says.
func (c *choices) usual() string {
	if c.slender() {
		return inRow
	}
	return onEdges
}

// spread is the pitch when nobody says: for about forty holes, in two figures.
func (c *choices) spread() float64 {
	long, across, _ := c.size()
	p := long / about
	switch c.kind {
	case onEdges:
		p = 2 * (long + across) / about
	case onGrid:
		p = math.Sqrt(long * across / about)
	}
	x, _ := strconv.ParseFloat(strconv.FormatFloat(p, 'g', 2, 64), 64)
	return x
}

// points lays out the holes, or the region.
func (c *choices) points() {
	c.zones = c.keepOut()
	if c.kind != inList {
		c.margin = c.length("margin", 0)
	}
	if !c.free() && c.kind != inList {
		if c.pitch = c.length("pitch", c.spread()); !(c.pitch > 0) && c.faults["pitch"] == "" {
			c.fault("pitch", errors.New("Holes must be some way apart."))
		}
	}
	long, across, _ := c.size()
	if room := across; c.kind != inList && (c.margin > long/2 || c.margin > room/2 && (c.kind == onEdges || c.kind == onGrid || c.kind == inside)) {
		c.fault("margin", errors.New("This margin leaves nothing of the payload."))
	}
	if c.kind == inList {
		c.list()
	}
	if len(c.faults) > 0 {
		return
	}
	a, b := c.ends()
	switch c.kind {
	case inRow:
		c.holes = c.row(a, b)
	case onEdges:
		c.holes = place.OnEdges(c.outline(), c.pitch)
	case onGrid:
		c.holes = place.OnGrid(c.outline(), c.pitch)
	case along:
		c.region = place.Region{Path: []vec.V3{a, b}, KeepOut: c.zones}
	case inside:
		c.region = place.Region{Area: c.outline(), KeepOut: c.zones}
	}
	c.holes = place.Outside(c.holes, c.zones)
}

// ends are those of the row along the long side.
func (c *choices) ends() (a, b vec.V3) {
	_, _, axis := c.size()
	mid := c.lo.Add(c.hi).Scale(0.5)
	mid[2] = c.height
	a, b = mid, mid
	a[axis], b[axis] = c.lo[axis]+c.margin, c.hi[axis]-c.margin
	return a, b
}

// row is holes a pitch apart, in the middle between two ends.
func (c *choices) row(a, b vec.V3) []vec.V3 {
	d := b.Sub(a)
	n := d.Norm()
	if n == 0 {
		return []vec.V3{a}
	}
	rest := n - c.pitch*math.Floor(n/c.pitch+1e-9)
	return place.InRow(a.Add(d.Scale(math.Max(0, rest/2/n))), b, c.pitch)
}

// outline is the payload's box from above, less the margin.
func (c *choices) outline() []vec.V3 {
	m := c.margin
	return []vec.V3{{c.lo[0] + m, c.lo[1] + m, c.height}, {c.hi[0] - m, c.lo[1] + m, c.height}, {c.hi[0] - m, c.hi[1] - m, c.height}, {c.lo[0] + m, c.hi[1] - m, c.height}}
}

// list reads the pasted holes.
func (c *choices) list() {
	c.listing = c.set["where.list"]
	if strings.TrimSpace(c.listing) == "" {
		c.fault("list", errors.New("Paste a list of holes, or open a file: a line with x and y for each."))
		return
	}
	holes, err := place.ParseHoles(c.listing, c.height, unit.Scale(c.word("list-unit", "m")))
	if err != nil {
		c.fault("list", err)
	}
	c.holes = holes
}

// keepOut reads the zones: x, y and a radius each.
func (c *choices) keepOut() []place.Zone {
	var out []place.Zone
	text, in := c.circles()
	for i, part := range strings.Split(text, ";") {
		cells := strings.Fields(strings.ReplaceAll(part, ", ", " "))
		if len(cells) == 0 {
			continue
		}
		var v [3]float64
		var err error
		for k := 0; k < 3 && err == nil && len(cells) == 3; k++ {
			v[k], err = unit.Parse(cells[k], in)
		}
		if err != nil || len(cells) != 3 || !(v[2] > 0) {
			c.fault("zones", fmt.Errorf("Zone %d is not x, y and a radius: write such as 0 0 0.3; 1.2 0 0.2.", i+1))
			return nil
		}
		out = append(out, place.Zone{Points: []vec.V3{{v[0], v[1], c.height}}, Radius: v[2]})
	}
	return out
}

// circles is the text of the zones and the unit of its numbers: the one they were written in.
func (c *choices) circles() (text, in string) {
	for _, u := range append([]string{c.units.Length}, format.Lengths...) {
		if text = c.set["where.zones."+u]; strings.TrimSpace(text) != "" {
			return text, u
		}
	}
	return "", c.units.Length
}

// said is where points may lie in a few words.
func (c *choices) said() string {
	switch {
	case c.kind == along:
		return "anywhere along the long side"
	case c.kind == inside:
		return "anywhere inside the outline"
	case c.kind == inList:
		return strconv.Itoa(len(c.holes)) + " holes of a list"
	}
	apart := c.units.Show(format.Length, c.pitch)
	if c.pitch < 1 && c.units.Length == "m" { // a pitch is said in millimetres
		apart = unit.Format(c.pitch, "mm", 4)
	}
	if c.kind == onEdges {
		apart += " or a little less"
	}
	return strconv.Itoa(len(c.holes)) + " holes " + apart + " apart"
}
