package hang

import (
	"math"
	"math/rand/v2"
	"sort"

	"cohoist/core/vec"
)

// Starts of a search: the payload turned to the 24 attitudes of a cube, and to as many by chance.
const byChance = 24

// Equilibria are the equilibria found from the payload turned every way, stable and unstable, the lowest energy first. Every start is
// followed down to a rest, and by Newton's method to a stationary point of whatever kind, (12.11). Others may exist:
// this is a search, and no proof. Of a family that a neutral motion joins, one stands for all.
func (r Rig) Equilibria(seed int64) []State {
	b, err := r.body()
	if err != nil {
		return nil
	}
	var found []State
	for _, turn := range attitudes(seed) {
		x, ok := b.descend(spot{b.below(), turn}, patient, true)
		if !ok {
			continue
		}
		if y, ok := b.rest(x); ok && b.fits(y) {
			found = b.note(found, b.state(y, len(r.Lines)))
		}
		if y, ok := b.balance(x); ok && b.fits(y) {
			found = b.note(found, b.state(y, len(r.Lines)))
		}
	}
	sort.SliceStable(found, func(i, j int) bool { return found[i].Energy < found[j].Energy })
	return found
}

// below is a place for the centre of mass to start from: under the middle of the tops.
func (b *body) below() vec.V3 {
	var middle vec.V3
	for _, s := range b.springs {
		middle = middle.Add(s.top)
	}
	return middle.Scale(1 / float64(len(b.springs))).Sub(vec.V3{0, 0, b.reach})
}

// attitudes are the 24 of a cube and as many by chance.
func attitudes(seed int64) []vec.M3 {
	var out []vec.M3
	quarter := math.Pi / 2
	for _, face := range []vec.V3{{}, {quarter, 0, 0}, {-quarter, 0, 0}, {2 * quarter, 0, 0}, {0, quarter, 0}, {0, -quarter, 0}} {
		for i := range 4 {
			out = append(out, vec.Rot(vec.V3{0, 0, quarter * float64(i)}).MulM(vec.Rot(face)))
		}
	}
	chance := rand.New(rand.NewPCG(uint64(seed), 12))
	for range byChance {
		axis := vec.V3{chance.NormFloat64(), chance.NormFloat64(), chance.NormFloat64()}.Unit()
		out = append(out, vec.Rot(axis.Scale(math.Pi*chance.Float64())))
	}
	return out
}

// overlong is the strain at which a line that does not stretch would have to: a thousand times that of (12.3).
const overlong = 1e-4

// fits tells that no line that does not stretch is overlong. Payloads caught between such lines, far beyond what
// anything bears, are no equilibria.
func (b *body) fits(x spot) bool {
	for i := range b.springs {
		s := &b.springs[i]
		if s.rigid && s.top.Sub(x.at).Sub(x.turn.Mul(s.arm)).Norm() > s.rest*(1+overlong) {
			return false
		}
	}
	return true
}

// note adds a state unless one like it is known.
func (b *body) note(found []State, s State) []State {
	for _, f := range found {
		if b.alike(f, s) {
			return found
		}
	}
	return append(found, s)
}

// alike tells that two states are one: the same pose, or the same energy, tensions and number of neutral motions
// when there are such.
func (b *body) alike(f, s State) bool {
	const near = 1e-5 // of the payload's size: Newton's method ends far closer
	if s.Neutral > 0 {
		same := f.Neutral == s.Neutral && f.Stable == s.Stable && math.Abs(f.Energy-s.Energy) <= near*b.weight*b.size
		for i := range s.Tension {
			same = same && math.Abs(f.Tension[i]-s.Tension[i]) <= 1e-3*b.weight
		}
		return same
	}
	apart := f.Pose.Place(b.com).Sub(s.Pose.Place(b.com)).Norm()
	for i := range 3 {
		apart = math.Max(apart, b.size*f.Pose.Attitude[i].Sub(s.Pose.Attitude[i]).Norm())
	}
	return apart <= near*b.reach
}

// balance follows Newton's method to a stationary point of any kind, with soft lines first, (12.11).
func (b *body) balance(x spot) (spot, bool) {
	for strain := softest; ; strain *= 0.1 {
		soft, same := b.soft(strain)
		y, ok := soft.stationary(x)
		if same || !ok {
			return y, ok
		}
		x = y
	}
}

// stationary takes full Newton steps, none longer than a third of a radian, whatever the energy does.
func (b *body) stationary(x spot) (spot, bool) {
	var g vec6
	var h mat6
	for range 40 {
		b.slope(x, &g, &h)
		if g.norm() <= 100*b.precision() {
			return x, true
		}
		values, vectors := h.eigen(6)
		var step vec6
		for i, v := range values {
			if math.Abs(v) <= b.neutral() {
				continue
			}
			axis := vectors.column(i)
			part := -axis.dot(&g) / v
			for j := range step {
				step[j] += float64(part * axis[j])
			}
		}
		if long := step.norm(); long > b.size/3 {
			step = step.scale(b.size / 3 / long)
		}
		x = b.move(x, &step)
	}
	return x, false
}
