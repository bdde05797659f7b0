package check

import (
	"math"

	"cohoist/core/beam"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// Held is the same team when it holds places instead of thrusts: each vehicle a spring, (9.9) to (9.12).
type Held struct {
	Stated   bool      // every vehicle's stiffness is given; else all hold stiffly
	Bends    bool      // the payload is a beam and gives way; else it counts as stiff
	Force    []float64 // N, upwards on the payload, by vehicle, without length errors
	Slack    []bool    // it would have to push, so it carries nothing
	Most     []float64 // N, with the length errors as they may fall; without stiffness and bending, the most that balance allows
	Least    []float64
	Tips     bool // the load is not held: it lies outside the holds
	Measured bool // Most and Least cover length errors that the plan states
}

// errorsTried is the most vehicles for which every combination of length errors is tried.
const errorsTried = 8

// Hold computes who carries when the team holds places; nil when statics alone says who carries.
func Hold(f Facts) *Held {
	if f.Model == nil || f.Model.Payload.Mass == 0 || !open(f.Model) {
		return nil
	}
	n := len(f.Model.Craft)
	h := &Held{Stated: true}
	stiffness, off := make([]float64, n), make([]float64, n)
	for i, m := range f.Plan.Team {
		stiffness[i], off[i] = m.Hold.Stiffness, m.Hold.LengthError
		h.Stated = h.Stated && m.Hold.Stiffness > 0
		h.Measured = h.Measured || m.Hold.LengthError > 0
	}
	for i := range stiffness {
		if !h.Stated {
			stiffness[i], off[i] = math.Inf(1), 0
		}
		if !(off[i] > 0) {
			off[i] = 0
		}
	}
	carry := carrier(f, h, stiffness)
	var ok bool
	if h.Force, h.Slack, ok = carry(make([]float64, n)); !ok {
		h.Tips = true
		return h
	}
	h.Least, h.Most = append([]float64(nil), h.Force...), append([]float64(nil), h.Force...)
	if !h.Stated && !h.Bends {
		if n <= 12 {
			if least, most, err := beam.Ranges(weight(f), f.Model.Payload.COM, legs(f, stiffness)); err == nil { // (9.12)
				h.Least, h.Most = least, most
			}
		}
		return h
	}
	if !h.Measured || !h.Stated {
		return h
	}
	for _, rise := range corners(off) {
		if force, _, ok := carry(rise); ok {
			for i, x := range force {
				h.Least[i], h.Most[i] = math.Min(h.Least[i], x), math.Max(h.Most[i], x)
			}
		}
	}
	return h
}

// open tells that balance alone leaves open who carries: more than two holds in line, or more than three.
func open(m *share.Model) bool {
	if _, inLine := m.InLine(); inLine {
		return len(m.Craft) > 2
	}
	return len(m.Craft) > 3
}

func weight(f Facts) float64 { return f.Model.Payload.Mass * share.Gravity }

func legs(f Facts, stiffness []float64) []beam.Leg {
	out := make([]beam.Leg, len(stiffness))
	for i := range out {
		out[i] = beam.Leg{At: f.Model.Craft[i].At, Stiffness: stiffness[i]}
	}
	return out
}

// carrier says who carries for given rises of the holds: a beam when the payload is one, else a stiff body.
func carrier(f Facts, h *Held, stiffness []float64) func(rise []float64) ([]float64, []bool, bool) {
	if b := f.Bent; b != nil && inLine(f) && b.Model.Youngs > 0 && b.Model.Section.Second[beam.Upright] > 0 {
		h.Bends = true
		load := b.Model.Weight(vec.V3{0, 0, -share.Gravity})
		return func(rise []float64) ([]float64, []bool, bool) {
			s := make([]beam.Support, len(rise))
			for i := range s {
				x := math.Min(math.Max(f.Model.Craft[i].At[0], b.Model.Left), b.Model.Right)
				s[i] = beam.Support{X: x, Stiffness: stiffness[i], Rise: rise[i]}
			}
			c, err := b.Model.Carry(load, s, true) // (9.10)
			return c.Reactions, c.Slack, err == nil
		}
	}
	return func(rise []float64) ([]float64, []bool, bool) {
		g := legs(f, stiffness)
		slack := make([]bool, len(g))
		for i := range g {
			g[i].Rise = rise[i]
		}
		r, err := beam.Legs(weight(f), f.Model.Payload.COM, g, true) // (9.11)
		for i, x := range r {
			slack[i] = x == 0
		}
		return r, slack, err == nil
	}
}

// inLine tells that all holds lie in line along x, so that the payload carries as a beam between them.
func inLine(f Facts) bool {
	line, ok := f.Model.InLine()
	return (ok || f.Model.Rigid && sameY(f.Model)) && (line == vec.V3{} || math.Abs(line[1]) < 1e-9)
}

func sameY(m *share.Model) bool {
	for _, c := range m.Craft {
		if math.Abs(c.At[1]-m.Craft[0].At[1]) > 1e-9 {
			return false
		}
	}
	return true
}

// corners are the combinations of length errors to try: every one of plus and minus up to errorsTried
// vehicles, beyond that each vehicle alone.
func corners(off []float64) [][]float64 {
	var out [][]float64
	if len(off) > errorsTried {
		for i, e := range off {
			for _, sign := range [2]float64{1, -1} {
				rise := make([]float64, len(off))
				rise[i] = sign * e
				out = append(out, rise)
			}
		}
		return out
	}
	for bits := range 1 << len(off) {
		rise := make([]float64, len(off))
		for i, e := range off {
			rise[i] = e
			if bits>>i&1 == 1 {
				rise[i] = -e
			}
		}
		out = append(out, rise)
	}
	return out
}
