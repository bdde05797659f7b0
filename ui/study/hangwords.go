package study

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/hang"
	"cohoist/core/share"
	"cohoist/core/unit"
	"cohoist/core/vec"
	"cohoist/ui/figure"
	"cohoist/ui/format"
)

func digits(i int) string        { return strconv.Itoa(i) }
func degrees(x float64) string   { return format.SI.Show(format.Angle, x) }
func seconds(x float64) string   { return unit.Format(x, "s", 3) }
func figureOf(x float64) bool    { return figure.Finite(x) }
func inDegrees(x float64) string { return degrees(x * 180 / math.Pi) }
func hertz(x float64) string     { return unit.Figures(x, 3) + "\u202fHz" }
func kindTitle(kind string) string {
	return map[string]string{outOfPlace: "A vehicle out of place", shortLine: "A line too short", lostOne: "A vehicle lost"}[kind]
}

// head says how it hangs as planned.
func (c *Hang) head() string {
	s := c.hung.rest
	text := "As planned it hangs level"
	if s.Tilt*180/math.Pi > level {
		text = "Let go in the planned pose it does not stay level: it comes to rest tilted by " + inDegrees(s.Tilt) + c.down(s)
	}
	switch {
	case s.Neutral > 0:
		text += "; " + several(s.Neutral, "motion is", "motions are") + " held back by nothing"
	case s.Stable:
		text += ", and it comes back to that when it is pushed a little"
	}
	return text + "." + c.slackSays(s, -1)
}

// down says which side is lower.
func (c *Hang) down(s hang.State) string {
	z := s.Pose.Attitude.Mul(upright)
	if s.Tilt*180/math.Pi <= level {
		return ""
	}
	return ", down towards " + towards(z[0], z[1])
}

// what says what went wrong.
func (c *Hang) what(u upset) string {
	id := c.Plan.Team[u.who].ID
	switch u.kind {
	case lostOne:
		return id + " is lost, and its line lets go"
	case shortLine:
		if u.short < 0 {
			return id + "’s line is " + c.Units.Small(-u.short) + " too long"
		}
		return id + "’s line is " + c.Units.Small(u.short) + " too short"
	}
	var ways []string
	for k, names := range [3][2]string{{"towards x", "towards −x"}, {"towards y", "towards −y"}, {"too high", "too low"}} {
		if x := u.by[k]; x > 0 {
			ways = append(ways, c.Units.Small(x)+" "+names[0])
		} else if x < 0 {
			ways = append(ways, c.Units.Small(-x)+" "+names[1])
		}
	}
	if len(ways) == 0 {
		return id + " stands where it should"
	}
	return id + " stands " + share.List(ways)
}

// follows says what an upset does.
func (c *Hang) follows(u upset) string {
	if u.lost {
		return c.what(u) + ". No rest was found: it may fall from line to line."
	}
	text := c.what(u) + ". "
	if tilt := u.state.Tilt * 180 / math.Pi; tilt > level {
		text += "The payload tilts by " + degrees(tilt) + c.down(u.state)
	} else {
		text += "The payload stays level"
	}
	com := c.hung.model.Payload.COM
	if far := u.state.Pose.Place(com).Sub(c.hung.rest.Pose.Place(com)).Norm(); far > 1e-3 {
		text += ", and moves by " + c.Units.Small(far)
	}
	text += "."
	if u.most >= 0 {
		text += " " + c.works(u)
	}
	gone := -1
	if u.kind == lostOne {
		gone = u.who
	}
	return text + c.slackSays(u.state, gone) + c.overloaded(u)
}

// works says who works hardest.
func (c *Hang) works(u upset) string {
	part := u.parts[u.most].Utilisation
	text := c.Plan.Team[u.most].ID + " works hardest, with " + format.Share(part) + " of its thrust"
	limit := c.hung.model.Plan.Limits.Utilisation
	switch {
	case part > 1+1e-9:
		return text + ": more than it has, so that it cannot keep its place."
	case part > limit+1e-9:
		return text + ", above the limit of " + format.Share(limit) + "."
	}
	return text + "."
}

// slackSays names the lines that pull nothing, but for a lost vehicle's.
func (c *Hang) slackSays(s hang.State, lost int) string {
	var ids []string
	for i, slack := range s.Slack {
		if slack && i != lost {
			ids = append(ids, c.Plan.Team[i].ID)
		}
	}
	switch len(ids) {
	case 0:
		return ""
	case 1:
		return " The line of " + ids[0] + " is slack."
	}
	return " The lines of " + share.List(ids) + " are slack."
}

// overloaded names the lines that pull more than their working load.
func (c *Hang) overloaded(u upset) string {
	var ids []string
	for i, t := range u.state.Tension {
		if load := c.Plan.Team[i].Hold.WorkingLoad; t > load*(1+1e-9) {
			ids = append(ids, c.Plan.Team[i].ID)
		}
	}
	if len(ids) == 0 {
		return ""
	}
	return " Pulled above the working load: " + share.List(ids) + "."
}

// asksMore says which other upset of the kind asks more of a vehicle than the one that tilts most.
func (c *Hang) asksMore(p pair) string {
	if p.tilts.lost || p.asks.lost || !(p.asks.asks() > p.tilts.asks()*1.01) {
		return ""
	}
	return "More is asked when " + c.what(p.asks) + ": " + c.works(p.asks) + c.overloaded(p.asks)
}

// pull is a row of the table of lines.
type pull struct {
	ID, Planned string
	After       []cell
}

// cell is a line's pull after an upset.
type cell struct{ Name, Pull, Says string }

func (c *Hang) pulls() []pull {
	var out []pull
	for i, m := range c.Plan.Team {
		r := pull{ID: m.ID, Planned: c.Units.Show(format.Force, c.hung.rest.Tension[i])}
		for _, p := range c.upsets {
			u := p.tilts
			q := cell{Name: kindTitle(u.kind)}
			switch {
			case u.lost:
				q.Says = "not known"
			case u.kind == lostOne && i == u.who:
				q.Says = "lost"
			case u.state.Slack[i]:
				q.Says = "slack"
			default:
				q.Pull = c.Units.Show(format.Force, u.state.Tension[i])
				if part := u.parts[i].Utilisation; part > 1+1e-9 {
					q.Says = "beyond its thrust"
				}
			}
			r.After = append(r.After, q)
		}
		out = append(out, r)
	}
	return out
}

// equilibrium is a row of the table of them.
type equilibrium struct{ Pose, Holds, Higher, Lines string }

func (c *Hang) equilibria() []equilibrium {
	com := c.hung.model.Payload.COM
	low := c.hung.rest.Pose.Place(com)[2]
	var out []equilibrium
	for _, s := range c.others {
		o := equilibrium{Pose: "level", Holds: "stays", Lines: "all taut"}
		if tilt := s.Tilt * 180 / math.Pi; tilt > 179 {
			o.Pose = "upside down"
		} else if tilt > level {
			o.Pose = "tilted by " + degrees(tilt) + c.down(s)
		}
		if turn := heading(s.Pose.Attitude); s.Tilt < math.Pi/4 && math.Abs(turn) > 1 {
			o.Pose += ", turned by " + degrees(turn)
		}
		if !s.Stable {
			o.Holds = "tips over"
		} else if s.Neutral > 0 {
			o.Holds = "drifts"
		}
		switch high := s.Pose.Place(com)[2] - low; {
		case high > 1e-3:
			o.Higher = c.Units.Small(high) + " higher"
		case high < -1e-3:
			o.Higher = c.Units.Small(-high) + " lower"
		default:
			o.Higher = "as high"
		}
		if text := strings.TrimSpace(c.slackSays(s, -1)); text != "" {
			o.Lines = text
		}
		out = append(out, o)
	}
	return out
}

// heading is the turn of a payload about the vertical, degrees above −180.
func heading(r vec.M3) float64 {
	turn := math.Atan2(r[1][0], r[0][0]) * 180 / math.Pi
	if turn < -179.95 {
		turn += 360
	}
	return turn
}

// found says what the search for equilibria found.
func (c *Hang) found() string {
	stays := 0
	for _, s := range c.others {
		if s.Stable {
			stays++
		}
	}
	return "Found from the payload turned every way: " + several(len(c.others), "equilibrium", "equilibria") + ", of which it stays in " + digits(stays) + ". A search proves no others away. The lines pass through the payload here, so that one upside down may need a line led around it."
}
