package study

import (
	"math"
	"strings"

	"cohoist/core/patch"
	"cohoist/core/solve"
	"cohoist/ui/format"
)

// sentences are the answer in words.
func (c *Patch) sentences() []string {
	list := c.about(c.Patch)
	if c.Losses != nil {
		list = append(list, c.left())
	}
	return list
}

// about says how large a patch is, and where in it the centre of mass stands.
func (c *Patch) about(p patch.Patch) []string {
	switch {
	case p.Status == solve.NotRun:
		return []string{"The payload weighs nothing, so that its centre of mass may stand anywhere."}
	case p.Status == solve.Infeasible && !math.IsInf(p.Least, 1):
		return []string{"There is no safe patch: " + p.Note + ". At the best place, " + c.places(p.Best)[0] + ", one would still need " + format.Share(p.Least) + " of its thrust."}
	case p.Status == solve.Infeasible:
		return []string{"There is no safe patch: " + p.Note + "."}
	case p.Status != solve.Optimal:
		return []string{"The safe patch was not found: " + p.Note + "."}
	}
	return append([]string{c.extent(p)}, c.stands(p)...)
}

// extent says how large a patch is.
func (c *Patch) extent(p patch.Patch) string {
	switch len(p.Inner) {
	case 1:
		return "The centre of mass may stand in one place only, " + c.places(p.Inner[0])[0] + "."
	case 2:
		return "The centre of mass may stand on a line only, " + c.length(c.long(p)) + " long, from " + strings.Join(c.places(p.Inner...), " to ") + "."
	}
	text := "The centre of mass may stand anywhere in a patch of " + c.size(p) + ", " + c.Units.Show(format.Area, p.Area()) + "."
	if c.covers(p) {
		text += " All of the payload lies within it, wherever its mass is."
	}
	return text
}

// covers tells that no part of the payload is outside a patch.
func (c *Patch) covers(p patch.Patch) bool {
	for _, o := range c.Outlines {
		for _, q := range o {
			for i, b := range p.Inner {
				a := p.Inner[(i+len(p.Inner)-1)%len(p.Inner)]
				if (b[0]-a[0])*(q.Y-a[1])-(b[1]-a[1])*(q.X-a[0]) < 0 {
					return false
				}
			}
		}
	}
	return len(c.Outlines) > 0
}

// stands says where the centre of mass is, and whether it may be wrong by as much as the plan says.
func (c *Patch) stands(p patch.Patch) []string {
	way := toward(math.Mod(360+math.Atan2(p.Toward[1], p.Toward[0])*180/math.Pi, 360))
	switch {
	case p.Edge < 0:
		return []string{"As planned it stands " + c.length(-p.Edge) + " outside; the patch is towards " + way + "."}
	case !(p.Edge > 0):
		return []string{"As planned it stands on the edge."}
	}
	if len(p.Inner) == 2 {
		list := []string{"As planned it stands " + c.length(p.Edge) + " from the nearer end, which is towards " + way + "."}
		if c.Cables {
			list = append(list, "Beside the line the payload cannot be held level: it turns until its centre of mass hangs below the line. How far is a question of its free attitude, chapter 12.")
		}
		return list
	}
	list := []string{"As planned it stands " + c.length(p.Edge) + " inside; the nearest edge is towards " + way + "."}
	switch e := c.Plan.Limits.COMError; {
	case e > p.Edge:
		return append(list, "The plan may be wrong about it by "+c.length(e)+", the circle, which reaches "+c.length(e-p.Edge)+" beyond the edge.")
	case e > 0:
		return append(list, "The plan may be wrong about it by "+c.length(e)+", the circle, which leaves "+c.length(p.Edge-e)+" to the edge.")
	}
	return list
}

// lengths shows lengths that belong together in one unit.
func (c *Patch) lengths(x ...float64) []string {
	u, most := c.Units, 0.0
	for _, l := range x {
		most = math.Max(most, math.Abs(l))
	}
	if u.Length == "m" && most < 0.01 && most > 0 { // as Small does
		u.Length = "mm"
	}
	list := make([]string, len(x))
	for i, l := range x {
		if math.Abs(l) < 1e-6 { // what is nothing but rounding
			l = 0
		}
		list[i] = u.Show(format.Length, l)
	}
	return list
}

func (c *Patch) length(x float64) string { return c.lengths(x)[0] }

// long is the length of a patch without width, m.
func (c *Patch) long(p patch.Patch) float64 {
	a, b := p.Inner[0], p.Inner[1]
	return math.Hypot(b[0]-a[0], b[1]-a[1])
}

// size is how far a patch reaches along payload x and y.
func (c *Patch) size(p patch.Patch) string {
	lo, hi := p.Inner[0], p.Inner[0]
	for _, v := range p.Inner {
		for k := range 2 {
			lo[k], hi[k] = math.Min(lo[k], v[k]), math.Max(hi[k], v[k])
		}
	}
	return strings.Join(c.lengths(hi[0]-lo[0], hi[1]-lo[1]), " by ")
}

// places are points in the plane of the payload.
func (c *Patch) places(points ...patch.XY) []string {
	var all, list []string
	var x []float64
	for _, v := range points {
		x = append(x, v[0], v[1])
	}
	all = c.lengths(x...)
	for i := range points {
		list = append(list, "x = "+all[2*i]+", y = "+all[2*i+1])
	}
	return list
}
