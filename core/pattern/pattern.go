// Package pattern gives a team places on its payload: a ring, a line, the corners, along the edges.
//
// Geometry: payload frame; the places lie on the top of the box that holds the payload's solids.
// Vehicles that hold rigidly stand with their centres there, so a pattern grows until neighbouring
// rotors clear each other; cables may start closer together.
package pattern

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Kind is a way to arrange a team.
type Kind struct{ Name, Title string }

// Kinds are the patterns.
var Kinds = []Kind{
	{"ring", "in a ring"},
	{"line", "in a line along x"},
	{"corners", "at the corners"},
	{"edges", "evenly along the edges"},
}

// inset is how far from the payload's edge an attachment stays, as a part of the payload's size.
const inset = 0.05

// clearance is the distance between neighbours on rigid holds over the sum of their reaches.
const clearance = 1.05

// Arrange gives every vehicle of the team a place of the named pattern, in the order of the team.
// It returns a new team; an unknown name leaves the places as they are.
func Arrange(name string, p plan.Plan) []plan.Member {
	team := append([]plan.Member(nil), p.Team...)
	lo, hi := Extent(p.Payload)
	mid := lo.Add(hi).Scale(0.5)
	half := hi.Sub(lo).Scale(0.5 - inset)
	a, b := room(half[0], half[1], p, team)
	points := places(name, len(team), a, b)
	if points == nil {
		return team
	}
	grow := spread(points, p, team)
	for i, at := range points {
		team[i].Attach = vec.V3{tidy(mid[0] + grow*at[0]), tidy(mid[1] + grow*at[1]), tidy(hi[2])}
	}
	return team
}

// tidy rounds to a tenth of a millimetre: places that can be measured, and links that stay short.
func tidy(x float64) float64 { return math.Round(x*1e4) / 1e4 }

// places are k points of a pattern within half lengths a, b of a rectangle about the origin.
func places(name string, k int, a, b float64) [][2]float64 {
	out := make([][2]float64, k)
	for i := range out {
		s := float64(i) / float64(k)
		switch name {
		case "ring":
			sin, cos := math.Sincos(2 * math.Pi * s)
			out[i] = [2]float64{a * cos, b * sin}
		case "line":
			if k > 1 {
				out[i] = [2]float64{a - 2*a*float64(i)/float64(k-1), 0}
			}
		case "corners":
			if k <= 4 {
				out[i] = along([...]float64{0, 2, 1, 3}[i]/4, a, b, true)
			} else {
				out[i] = along(s, a, b, true)
			}
		case "edges":
			out[i] = along(s, a, b, false)
		default:
			return nil
		}
	}
	return out
}

// along is the point at part s of the way round the rectangle, anticlockwise from its corner +x −y.
// By sides, each side is a quarter of the way; else each metre counts the same.
func along(s, a, b float64, bySides bool) [2]float64 {
	way := [4]float64{0.25, 0.25, 0.25, 0.25}
	if round := 4 * (a + b); !bySides && round > 0 {
		way = [4]float64{2 * b / round, 2 * a / round, 2 * b / round, 2 * a / round}
	}
	corner := [5][2]float64{{a, -b}, {a, b}, {-a, b}, {-a, -b}, {a, -b}}
	for side := range 4 {
		if s < way[side] || side == 3 {
			x := math.Min(1, s/way[side])
			p, q := corner[side], corner[side+1]
			return [2]float64{p[0] + x*(q[0]-p[0]), p[1] + x*(q[1]-p[1])}
		}
		s -= way[side]
	}
	return corner[0]
}

// spread is how much a pattern grows so that rigid neighbours clear each other and no two places
// are the same.
func spread(points [][2]float64, p plan.Plan, team []plan.Member) float64 {
	grow := 1.0
	for i, a := range points {
		for j := range i {
			d := math.Hypot(a[0]-points[j][0], a[1]-points[j][1])
			if team[i].Hold.Kind == plan.Rigid && team[j].Hold.Kind == plan.Rigid && d > 0 {
				grow = math.Max(grow, clearance*(reach(p, team[i])+reach(p, team[j]))/d)
			}
		}
	}
	return grow
}

// room widens the rectangle for rigid holds, so that two of them clear each other across it.
func room(a, b float64, p plan.Plan, team []plan.Member) (float64, float64) {
	for _, m := range team {
		if m.Hold.Kind == plan.Rigid {
			a, b = math.Max(a, clearance*reach(p, m)), math.Max(b, clearance*reach(p, m))
		}
	}
	return a, b
}

func reach(p plan.Plan, m plan.Member) float64 {
	c := p.Vehicles[m.Vehicle]
	if r := c.Arm + c.RotorRadius; r > 0 {
		return r
	}
	return 0
}

// ID is the name of vehicle i in a team: A to Z, then AA, AB, …
func ID(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return ID(i/26-1) + string(rune('A'+i%26))
}
