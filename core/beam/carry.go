package beam

import (
	"errors"
	"math"

	"cohoist/core/vec"
)

// Support is a vehicle that holds its place: a spring that pulls up with Stiffness times how far the
// bar hangs below the spring's own place (9.9).
type Support struct {
	X         float64 // m
	Stiffness float64 // N/m; +Inf holds exactly
	Rise      float64 // m, how far its place stands above the common level: a length error
}

// Carried says who carries a bar on springs.
type Carried struct {
	Reactions []float64 // N, upwards, by support
	Slack     []bool    // the support would have to push, so it carries nothing
	Gap       []float64 // m, how far the bar has come above the place of a slack support
	Bending   Bending   // in the upright plane, deflection from the common level
}

// ErrTips means that no forces of the supports balance the load: it lies beyond the outermost ones, or
// they cannot pull where it would take pulling down.
var ErrTips = errors.New("the supports cannot hold the load: it tips over the outermost of them")

// Carry solves who carries the loads (which must not contain the supports' own forces), (9.9) and
// (9.10). One-sided supports cannot push: those that would go slack and the others share the load
// anew. The answer is unique and found in finitely many steps. It fails with ErrTips.
func (b Bar) Carry(l Loads, supports []Support, oneSided bool) (Carried, error) {
	n := len(supports)
	length := b.Right - b.Left
	shear, moment, force, couple := b.curves(l, Upright)
	free := b.bent(shear, moment, Upright).Deflection // with the left end held level
	weight := -force                                  // Σ R
	first := float64(weight*length) + couple          // Σ R x, x from the left end: moments about the right end vanish
	q := program{oneSided: oneSided, K: make([][]float64, n), c: make([]float64, n),
		A: [][]float64{make([]float64, n), make([]float64, n)}, b: []float64{1, 0}}
	// Without dimensions: force by scale, length by length, and flexibility so that the softest way
	// of giving way is about one.
	scale := loadScale(l, Upright)
	if scale == 0 {
		scale = 1
	}
	flex := 0.0 // the kernel of the bar, (9.10), 1/N m
	if ei := b.Stiffness(Upright); !math.IsInf(ei, 1) {
		flex = length * length * length / ei
	}
	unit := flex
	for _, s := range supports {
		unit = math.Max(unit, 1/s.Stiffness)
	}
	if unit == 0 {
		unit = 1 // stiff bar on stiff supports: share as equal springs would, (9.11)
	}
	q.b[0], q.b[1] = weight/scale, first/(scale*length)
	for i, s := range supports {
		xi := (s.X - b.Left) / length
		q.K[i] = make([]float64, n)
		for j, t := range supports {
			d := math.Abs(s.X-t.X) / length
			q.K[i][j] = d * d * d / 12 * flex / unit // (9.10)
		}
		q.K[i][i] += 1 / s.Stiffness / unit
		if twin(supports, i, 1e-6*length) {
			q.K[i][i] += alike
		}
		if flex == 0 && unit == 1 {
			q.K[i][i] = 1
		}
		q.A[0][i], q.A[1][i] = 1, xi
		bent := flex / unit * (float64(q.b[0]*xi*xi*xi)/12 - float64(q.b[1]*xi*xi)/4)
		q.c[i] = (s.Rise-free.At(s.X))/(scale*unit) - bent
	}
	r, err := q.solve()
	if err != nil {
		return Carried{}, err
	}
	out := Carried{Reactions: r, Slack: make([]bool, n), Gap: make([]float64, n)}
	all := Loads{append([]Point(nil), l.Points...), l.Spreads}
	for i, s := range supports {
		r[i] *= scale
		all.Points = append(all.Points, Point{X: s.X, Force: vec.V3{0, 0, r[i]}})
		out.Slack[i] = oneSided && r[i] == 0
	}
	shear, moment, _, _ = b.curves(all, Upright)
	out.Bending = b.bent(shear, moment, Upright).settled(supports, out)
	for i, s := range supports {
		if out.Slack[i] {
			out.Gap[i] = out.Bending.Deflection.At(s.X) - s.Rise
		}
	}
	return out, nil
}

// alike is a flexibility, against one of about 1, that stiff supports at one place get, so that they share
// evenly what the bar leaves open.
const alike = 1e-9

// twin tells whether another stiff support stands at the place of a stiff one.
func twin(supports []Support, i int, near float64) bool {
	for j, t := range supports {
		if i != j && math.IsInf(t.Stiffness, 1) && math.IsInf(supports[i].Stiffness, 1) && math.Abs(t.X-supports[i].X) <= near {
			return true
		}
	}
	return false
}

// settled shifts and turns the line so that the outermost supports that carry give way by R/k.
func (d Bending) settled(supports []Support, c Carried) Bending {
	first, last := -1, -1
	for i, s := range supports {
		if c.Slack[i] {
			continue
		}
		if first < 0 || s.X < supports[first].X {
			first = i
		}
		if last < 0 || s.X > supports[last].X {
			last = i
		}
	}
	if first < 0 {
		return d
	}
	rise := func(i int) float64 { return supports[i].Rise - c.Reactions[i]/supports[i].Stiffness }
	x1, x2 := supports[first].X, supports[last].X
	d = d.measured(x1, x2)
	turn := 0.0
	if x1 != x2 {
		turn = (rise(last) - rise(first)) / (x2 - x1)
	}
	return d.moved(rise(first)-float64(turn*(x1-d.Slope.X[0])), turn)
}

// loadScale is the sum of the sizes of all forces in a plane, N.
func loadScale(l Loads, p Plane) float64 {
	sum := 0.0
	for _, q := range l.Points {
		f, _ := p.along(q)
		sum += math.Abs(f)
	}
	i := p.index()
	for _, s := range l.Spreads {
		sum += (math.Abs(s.A[i]) + math.Abs(s.B[i])) / 2 * (s.To - s.From)
	}
	return sum
}
