package study

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/core/vec"
)

// Size of an elevation, and of the close-up beside a payload that is small in it.
const (
	hangWide, hangHigh = 320.0, 270.0
	closeWide          = 140.0
	smallPart          = 0.4 // of the picture's width
)

// elevation is an upset seen level, across the way in which the payload tilts: before in dashes, and after.
func (c *Hang) elevation(u upset) vugu.Builder { return node{c.tipped(u)} }

func (c *Hang) tipped(u upset) *vugu.VGNode {
	f, before, after := c.body(), c.hung.rest.Pose, u.state.Pose
	s, name := c.across(u)
	var load, all []vec.V3
	f.each(func(p vec.V3) { load = append(load, before.Place(p), after.Place(p)) })
	all = append(all, load...)
	for i, l := range u.rig.Lines {
		all = append(all, l.Top, c.hung.rig.Lines[i].Top)
	}
	pic := image("hg-svg", c.what(u), hangWide, hangHigh)
	whole := s.fit(all, hangWide, hangHigh, 22, 26, 26)
	near := s.fit(load, closeWide, closeWide, 12, 30, 12)
	if near.scale*smallPart*hangWide > whole.scale*closeWide { // small in it
		whole = s.fit(all, hangWide-closeWide, hangHigh, 16, 26, 26)
		near.x += hangWide - closeWide
		near.y += hangHigh - closeWide - 8
		rect(pic, "hg-ghost", hangWide-closeWide-2, hangHigh-closeWide-10, closeWide-4, closeWide)
		c.load(pic, near, u, 0.14*closeWide/near.scale)
		text(pic, "hg-quiet", hangWide-closeWide+4, hangHigh-closeWide+2, "closer")
	}
	c.load(pic, whole, u, math.Inf(1))
	c.vehicles(pic, whole, u)
	text(pic, "hg-quiet", 6, hangHigh-7, "to the right: "+name)
	return pic
}

// body is the payload's form with a frame that joins its attachments and its centre of mass where they stand off it.
func (c *Hang) body() form {
	at := []vec.V3{c.hung.model.Payload.COM}
	for _, l := range c.hung.rig.Lines {
		at = append(at, l.At)
	}
	return formOf(c.Plan.Payload).framed(at...)
}

// load draws the payload before and after, with its lines as far as a length, m.
func (c *Hang) load(pic *vugu.VGNode, s sight, u upset, far float64) {
	f, before, after := c.body(), c.hung.rest.Pose, u.state.Pose
	for _, l := range c.hung.rig.Lines {
		s.stroke(pic, "hg-was", part(before.Place(l.At), l.Top, far), before.Place(l.At))
	}
	path(pic, "hg-was", s.shape(f, before.Place))
	path(pic, "hg-load", s.shape(f, after.Place))
	for i, l := range u.rig.Lines {
		if u.kind == lostOne && i == u.who {
			continue
		}
		class, at := "hg-line", after.Place(l.At)
		if u.state.Slack[i] {
			class = "hg-slack"
		}
		s.stroke(pic, class, part(at, l.Top, far), at)
	}
	com := c.hung.model.Payload.COM
	circle(pic, "hg-ghost", s.at(before.Place(com)), 3)
	circle(pic, "hg-com", s.at(after.Place(com)), 3)
}

// part is a point on the way from a to b, as far as a length, m.
func part(a, b vec.V3, far float64) vec.V3 {
	d := b.Sub(a)
	if long := d.Norm(); long > far {
		return a.Add(d.Scale(far / long))
	}
	return b
}

// vehicles draws the vehicles of an upset; names that would lie over each other stand together.
func (c *Hang) vehicles(pic *vugu.VGNode, s sight, u upset) {
	type mark struct {
		at dot
		id string
	}
	var marks []mark
	for i, l := range u.rig.Lines {
		id, class := c.Plan.Team[i].ID, "hg-top"
		if u.kind == lostOne && i == u.who {
			id, class = id+" lost", "hg-ghost"
		}
		if old := c.hung.rig.Lines[i].Top; old != l.Top {
			circle(pic, "hg-ghost", s.at(old), 4)
			arrow(pic, "hg-arrow", s.at(old), s.at(l.Top))
		}
		circle(pic, class, s.at(l.Top), 4)
		marks = append(marks, mark{s.at(l.Top), id})
	}
	slices.SortStableFunc(marks, func(a, b mark) int { return cmp.Compare(a.at[0], b.at[0]) })
	for i := 0; i < len(marks); {
		j, high := i, marks[i].at[1]
		var ids []string
		for ; j < len(marks) && marks[j].at[0]-marks[i].at[0] < 16; j++ {
			ids = append(ids, marks[j].id)
			high = math.Min(high, marks[j].at[1])
		}
		slices.Sort(ids)
		middle := (marks[i].at[0] + marks[j-1].at[0]) / 2
		text(pic, "hg-mid", math.Min(math.Max(middle, 24), hangWide-24), math.Max(high-9, 11), strings.Join(ids, ", "))
		i = j
	}
}

// across is the level sight in which the payload's tilt shows in full, and what lies to the right in it. A payload
// that stays level is seen with the upset vehicle out to one side.
func (c *Hang) across(u upset) (sight, string) {
	z := u.state.Pose.Attitude.Mul(upright)
	x, y := z[0], z[1]
	if u.state.Tilt*180/math.Pi <= level {
		d := c.hung.rig.Lines[u.who].Top.Sub(c.hung.rest.Pose.Place(c.hung.model.Payload.COM))
		x, y = d[0], d[1]
	}
	if math.Hypot(x, y) < 1e-9 {
		x, y = 1, 0
	}
	if x < -1e-3*math.Abs(y) || math.Abs(x) <= 1e-3*math.Abs(y) && y < 0 { // so that x, or y, lies to the right
		x, y = -x, -y
	}
	s := sight{right: vec.V3{x, y, 0}.Unit(), up: upright}
	return s, towards(x, y)
}
