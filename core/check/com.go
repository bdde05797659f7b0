package check

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// CentreOfMass asks how far the centre of mass may be from where the plan has it.
var CentreOfMass = Check{
	ID: "com", Title: "Centre of mass within what the team can hold",
	Doc:      "The smallest sideways shift of the payload's centre of mass, of 16 directions, at which a vehicle reaches the crew's utilisation limit, against how wrong the plan may be about it. Attachments in one line are asked along that line only: across it a hung load tips until it hangs.",
	Limits:   []Limit{air, leanRange},
	Examples: []Example{{Plan: "beam-pair", Utilisation: 0.050008, Tol: 2e-6, Source: "by hand: 2 g (1 + δ/1 m) + 3.4 g = 0.8 × 76 N at δ = 0.39994 m; 0.02 m over it, (8.9)"}},
	Run:      centreOfMass,
}

// directions is how many ways the centre of mass is shifted.
const directions = 16

func centreOfMass(f Facts) Outcome {
	m := f.Model
	if m.Payload.Mass == 0 {
		return none(NotApplicable, "The payload weighs nothing.")
	}
	if f.Answer.Parts == nil {
		return noBalance()
	}
	ways, note := shifts(m)
	if len(ways) == 0 {
		return none(NotApplicable, "One cable: the load hangs below its attachment, wherever its centre of mass is.")
	}
	p := m.Within(f.Plan.Limits.Utilisation)
	least, at := math.Inf(1), vec.V3{}
	found := make([]float64, len(ways))
	for _, i := range order(len(ways)) {
		if inside(found, i, least) {
			continue
		}
		m.Push(p, vec.V3{}, ways[i].Cross(m.Up).Scale(m.Payload.Mass*share.Gravity)) // (8.9)
		if o := opposite(i, len(ways)); found[o] > 0 && p.Reversible() {
			found[i] = found[o]
			continue
		}
		r := f.Solver.Solve(p)
		switch r.Status {
		case solve.Optimal:
			found[i] = math.Max(0, r.T)
		case solve.Infeasible: // over the limit already
		case solve.Unbounded:
			found[i] = math.Inf(1)
		default:
			return none(Unsolved, "How far the centre of mass may be off was not solved.")
		}
		if found[i] < least*(1-1e-6) {
			least, at = found[i], ways[i]
		}
		if least == 0 {
			break
		}
	}
	want := f.Plan.Limits.COMError
	var w working
	w.add("δ", least, "m", "THEORY (8.9)", "%v", least)
	w.add("e", want, "m", given, "%v", want)
	o := Outcome{Demand: want, Capacity: least, Unit: "m",
		Sentence: "The centre of mass may be " + say(1000*least, "mm") + " off towards " + say(degrees(math.Atan2(at[1], at[0])), "°") +
			" from the long side before a vehicle reaches its limit; the plan may be wrong by " + say(1000*want, "mm") + "." + note}
	if least > 0 {
		w.add("n", want/least, "1", "THEORY (8.9)", "e/δ")
	} else {
		o.Sentence = "The centre of mass may not be off at all: the team is at its limit as planned." + note
	}
	o.Steps = w
	return o
}

// order takes quarters first, then what lies between them, so that inside has something to go by.
func order(n int) []int {
	if n != directions {
		return []int{0, 1}
	}
	return []int{0, 4, 8, 12, 2, 6, 10, 14, 1, 3, 5, 7, 9, 11, 13, 15}
}

// opposite is the other way of a direction.
func opposite(i, n int) int { return (i + n/2) % n }

// inside tells that direction i cannot be the least: what the team can hold is convex, so the chord
// between the shifts found on both sides is held, too, and it is already longer than least.
func inside(found []float64, i int, least float64) bool {
	step := 2
	if i%2 == 1 {
		step = 1
	}
	if len(found) != directions || i%4 == 0 {
		return false
	}
	a, b := found[i-step], found[(i+step)%directions]
	cos := math.Cos(2 * math.Pi * float64(step) / directions)
	chord := 2 * cos / (1/a + 1/b)
	if chord < least*(1+1e-6) {
		return false
	}
	found[i] = chord
	return true
}

// shifts are the unit directions to ask in: 16 around, or both ways along attachments in one line.
func shifts(m *share.Model) (ways []vec.V3, note string) {
	if line, ok := m.InLine(); ok {
		if line == (vec.V3{}) {
			return nil, ""
		}
		return []vec.V3{line, line.Scale(-1)}, " Asked along the line of the attachments; across it the load tips until it hangs."
	}
	for i := range directions {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / directions)
		ways = append(ways, vec.V3{cos, sin, 0})
	}
	return ways, ""
}
