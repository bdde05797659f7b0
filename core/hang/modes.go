package hang

import (
	"math"
	"sort"
)

// Mode is a small motion about an equilibrium that keeps its shape.
type Mode struct {
	Square  float64    // of the angular frequency, 1/s²: negative where the motion runs away
	Hertz   float64    // Hz; 0: neutral; NaN: runs away
	Period  float64    // s; +Inf: neutral; NaN: runs away
	Shape   [6]float64 // shift of the centre of mass (m) and turn (radians), level axes; see shape
	Word    string     // what it looks like: "sway along x", "twist", …
	Stretch float64    // part of its elastic and pendulum energy that stretches lines along themselves, 0 to 1
}

// LoopRate is how often a second the position loop of a small multirotor runs, Hz (common practice, no source).
const LoopRate = 100

// LoopRatio is the mode's frequency over the rate of a control loop, Hz. A loop of rate f sees motions well below
// f/2 only, and one of a tenth of its rate or more swings against it (common practice, no source).
func (m Mode) LoopRatio(rate float64) float64 { return m.Hertz / rate }

// massless is the moment of inertia that counts as none, over mass × size².
const massless = 1e-9

// Modes are the small motions about an equilibrium, the slowest first, (12.12). A turn about an axis without any inertia
// follows the others and is no mode, (12.13); nor are motions that only a line that does not stretch would allow.
func (r Rig) Modes(s State) []Mode {
	b, err := r.body()
	if err != nil || !(r.Load.Mass > 0) {
		return nil
	}
	x := b.spot(s.Pose)
	axes, inertia := b.axes(x.turn, r.Load)
	var g vec6
	var level mat6
	b.slope(x, &g, &level)
	h := turnInto(level, axes)
	var keep []int
	condensed := h
	for i := range inertia {
		if inertia[i] > massless*r.Load.Mass {
			keep = append(keep, i)
		} else if pivot := condensed[i][i]; math.Abs(pivot) > b.neutral() {
			column := condensed.column(i)
			for j := range column {
				for k := range column {
					condensed[j][k] -= column[j] * column[k] / pivot // (12.13)
				}
			}
		}
	}
	var scaled mat6
	for i, p := range keep {
		for j, q := range keep {
			scaled[i][j] = condensed[p][q] / math.Sqrt(inertia[p]*inertia[q])
		}
	}
	var modes []Mode
	for _, v := range motions(scaled, len(keep), 1e-6*b.weight/(b.reach*r.Load.Mass)) {
		var y vec6
		for i, p := range keep {
			y[p] = v.shape[i] / math.Sqrt(inertia[p])
		}
		follow(&h, inertia, massless*r.Load.Mass, b.neutral(), &y)
		y = axes.mul(&y)
		if m, ok := b.mode(x, v.square, y, r.Load); ok {
			modes = append(modes, m)
		}
	}
	sort.SliceStable(modes, func(i, j int) bool { return modes[i].Square < modes[j].Square })
	return modes
}

// mode is a motion in level axes described. It returns false when only a line that does not stretch would allow it.
func (b *body) mode(x spot, square float64, y vec6, l Load) (Mode, bool) {
	m := Mode{Square: square}
	rest := 1e-6 * b.weight / (b.reach * l.Mass)
	switch {
	case math.Abs(square) <= rest:
		m.Period = math.Inf(1)
	case square < 0:
		m.Hertz, m.Period = math.NaN(), math.NaN()
	default:
		m.Hertz = math.Sqrt(square) / (2 * math.Pi)
		m.Period = 1 / m.Hertz
	}
	for i := range 3 {
		m.Shape[i], m.Shape[3+i] = y[i], y[3+i]/b.size
	}
	m.shape(b.size)
	lines, rigid, all := b.stretch(x, &y)
	if all > 0 {
		m.Stretch = lines / all
	}
	m.Word = m.word(x.turn, l)
	if m.Period > 1e300 {
		m.Word = "free " + m.Word
	}
	return m, !(rigid > 0.5*all)
}
