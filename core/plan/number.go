package plan

import (
	"math"
	"reflect"
	"sort"
	"strings"
)

// numbers returns the numbers of a field, and whether it is a list. A nil pointer has none.
func numbers(v reflect.Value) (xs []float64, isList bool) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return nil, true
		}
		v = v.Elem()
	}
	switch v.Kind() {
	case reflect.Float64:
		return []float64{v.Float()}, false
	case reflect.Slice, reflect.Array:
		if v.Type().Elem().Kind() == reflect.Float64 {
			for i := range v.Len() {
				xs = append(xs, v.Index(i).Float())
			}
		}
		return xs, true
	}
	return nil, false
}

// validateInertia checks that a body can have the inertia xx yy zz xy xz yz. With J the inertia
// matrix, P = ½ tr(J) 1 − J is the second moment of the mass, ∫ r rᵀ dm, which no body has negative;
// P positive semidefinite says at once that J is and that no principal moment exceeds the sum of the
// other two (P. Wensing, S. Kim, J.-J. Slotine, IEEE Robotics and Automation Letters 3(1), 2018,
// 60–67; from memory). Measured numbers are rounded, so P may miss by inertiaTol of the trace.
func validateInertia(l leaf, j []float64, fs *Faults) {
	if len(j) != 6 {
		return
	}
	trace := j[0] + j[1] + j[2]
	for _, x := range j {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return
		}
	}
	if trace == 0 && j[3] == 0 && j[4] == 0 && j[5] == 0 {
		return // a point
	}
	const inertiaTol = 1e-3 // three figures
	signs, order := "Check the signs of the off-diagonal numbers; they are xy, xz, yz.", "Check the order, xx yy zz xy xz yz, and that it is about the centre of mass."
	if l.Class != nil {
		signs, order = "Moments of inertia are above 0.", "Check the order, xx yy zz, and the measurement."
	}
	half := trace / 2
	switch {
	case trace <= 0 || !semidefinite(j, 0, 1, trace):
		fs.add(l.where, "is an inertia that is negative about some axis", signs)
	case !semidefinite(j, half+inertiaTol*trace, -1, trace):
		fs.add(l.where, "has a principal moment larger than the sum of the other two, which no body has", order)
	}
}

// semidefinite tells whether shift·1 + sign·J is positive semidefinite: every principal minor, of the
// matrix scaled by the trace, at least −1e-12 (rounding of products of order one).
func semidefinite(j []float64, shift, sign, trace float64) bool {
	const tol = 1e-12
	var m [6]float64
	for i := range j {
		m[i] = sign * j[i] / trace
		if i < 3 {
			m[i] += shift / trace
		}
	}
	x, y, z, xy, xz, yz := m[0], m[1], m[2], m[3], m[4], m[5]
	minors := [...]float64{x, y, z,
		float64(x*y) - float64(xy*xy), float64(x*z) - float64(xz*xz), float64(y*z) - float64(yz*yz),
		float64(x*(float64(y*z)-float64(yz*yz))) - float64(xy*(float64(xy*z)-float64(yz*xz))) + float64(xz*(float64(xy*yz)-float64(y*xz)))}
	for _, d := range minors {
		if !(d >= -tol) {
			return false
		}
	}
	return true
}

func classNames(p *Plan) []string {
	out := make([]string, 0, len(p.Vehicles))
	for name := range p.Vehicles {
		if name != "" {
			out = append(out, name)
		}
	}
	sort.Strings(out)
	return out
}

func has(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// list writes words as "a, b or c", at most eight of them.
func list(words []string) string {
	short := make([]string, 0, 9)
	for i, w := range words {
		if i == 8 && len(words) > 9 {
			short = append(short, "another")
			break
		}
		if !plainKey(w) {
			w = quote(w)
		}
		short = append(short, w)
	}
	if n := len(short); n > 1 {
		return strings.Join(short[:n-1], ", ") + " or " + short[n-1]
	}
	return strings.Join(short, "")
}

// nearest returns the choice with the fewest edits from s (Levenshtein distance), when they are few enough to
// be a slip: at most a third of its letters, and one in any case.
func nearest(s string, choices []string) string {
	best, least := "", math.MaxInt
	if len(s) > 2*mostID {
		return ""
	}
	for _, c := range choices {
		if d := edits(strings.ToLower(s), strings.ToLower(c)); d < least && d <= max(1, len(c)/3) {
			best, least = c, d
		}
	}
	return best
}

func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		last := row[0]
		row[0] = i + 1
		for j := range len(b) {
			d := last
			if a[i] != b[j] {
				d = min(last, row[j], row[j+1]) + 1
			}
			last, row[j+1] = row[j+1], min(d, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
