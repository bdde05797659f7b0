package hang

import (
	"math"
	"sort"

	"cohoist/core/vec"
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

// axes are level x, y, z and the principal axes of the inertia, in columns, with the masses that belong to them, kg:
// the moments are over size².
func (b *body) axes(turn vec.M3, l Load) (mat6, vec6) {
	j := turn.MulM(l.Inertia).MulM(turn.T())
	var tensor mat6
	for i := range 3 {
		for k := range 3 {
			tensor[i][k] = (j[i][k] + j[k][i]) / 2 / (b.size * b.size)
		}
	}
	moments, principal := tensor.eigen(3)
	var axes mat6
	var inertia vec6
	for i := range 3 {
		axes[i][i], inertia[i], inertia[3+i] = 1, l.Mass, moments[i]
		for k := range 3 {
			axes[3+i][3+k] = principal[i][k]
		}
	}
	return axes, inertia
}

// turnInto is Qᵀ m Q.
func turnInto(m, q mat6) mat6 {
	var out mat6
	for j := range q {
		column := q.column(j)
		image := m.mul(&column)
		for i := range q {
			row := q.column(i)
			out[i][j] = row.dot(&image)
		}
	}
	return out
}

type motion struct {
	square float64
	shape  vec6
}

// motions are the eigenvectors of a matrix. Where several belong to one value any mixture would do, and a
// preference of one axis over the next, too small to show in the values, picks those along the axes. The values are those
// without it, by Rayleigh's quotient.
func motions(m mat6, n int, preference float64) []motion {
	preferring := m
	for i := range min(3, n) { // the shifts, of which none is ever left out
		preferring[i][i] += preference * float64(i)
	}
	_, vectors := preferring.eigen(n)
	out := make([]motion, n)
	for i := range out {
		v := vectors.column(i)
		image := m.mul(&v)
		out[i] = motion{v.dot(&image), v}
	}
	return out
}

// follow fills in the turns about axes without inertia, which stand where the energy is least, (12.13).
func follow(h *mat6, inertia vec6, least, neutral float64, y *vec6) {
	for range 50 { // Gauss and Seidel's steps; there are at most three such axes
		for i := range inertia {
			if inertia[i] > least || h[i][i] <= neutral {
				continue
			}
			y[i] -= h[i].dot(y) / h[i][i]
		}
	}
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

// stretch is twice the energy of a motion in the stretch of lines along themselves, that of lines that should not, and
// all of its energy.
func (b *body) stretch(x spot, y *vec6) (lines, rigid, all float64) {
	var g vec6
	var h mat6
	b.slope(x, &g, &h)
	image := h.mul(y)
	shift, turn := vec.V3{y[0], y[1], y[2]}, vec.V3{y[3], y[4], y[5]}.Scale(1/b.size)
	for _, s := range b.springs {
		r := x.turn.Mul(s.arm)
		d := s.top.Sub(x.at).Sub(r)
		if d.Norm() <= s.rest {
			continue
		}
		longer := d.Unit().Dot(shift.Add(turn.Cross(r)))
		lines += s.k * longer * longer
		if s.rigid {
			rigid += s.k * longer * longer
		}
	}
	return lines, rigid, math.Max(lines, y.dot(&image))
}
