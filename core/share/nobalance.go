package share

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// NoBalance says which force or moment runs out when no thrust at all would balance the payload,
// (5.17). Read as a small motion of the body, Direction is how the load escapes.
type NoBalance struct {
	Direction [6]float64 `json:"direction"`  // force x y z, moment x y z about the body's centre of mass; its moment (or, without one, its force) has length 1
	Need      float64    `json:"need"`       // what the load asks for along Direction
	Have      float64    `json:"have"`       // the most that the team has along it, below Need
	Unit      string     `json:"unit"`       // N m when Direction turns, else N
	AtLimit   []string   `json:"at_limit"`   // vehicles that give all they can along it
	WouldPull []string   `json:"would_pull"` // vehicles that only make it worse: they would have to pull down or push a cable
	Loosen    []string   `json:"loosen"`     // limits that, left out alone, give a balance
	Sentence  string     `json:"sentence"`
	Dropped   Drop       `json:"-"` // the same limits as Loosen
}

// explain turns a certificate into what runs out, and looks for the bound that is in the way.
func (m *Model) explain(s *solve.Solver, p *solve.Program, r solve.Result) *NoBalance {
	n := &NoBalance{Direction: r.Y, Unit: "N m"}
	v, turn := split(r.Y)
	size := turn.Norm()
	if size <= 1e-6*v.Norm() {
		size, n.Unit = v.Norm(), "N"
	}
	if size > 0 {
		for i := range n.Direction {
			n.Direction[i] /= size
		}
	}
	n.Need = dot(n.Direction, p.Wrench)
	m.have(p, n)
	m.loosen(s, n)
	n.Sentence = m.words(n)
	return n
}

// have adds up the most that every vehicle can give along the direction, and who gives it.
func (m *Model) have(p *solve.Program, n *NoBalance) {
	v, turn := split(n.Direction)
	line, pull := 0, 0
	small := 1e-7 * (v.Norm() + turn.Norm())
	for _, c := range m.Craft {
		if c.Rigid {
			worst, best := 0.0, 0.0
			for range c.Rotors {
				x := dot(n.Direction, p.Lines[line].Column)
				worst, best = math.Min(worst, x), math.Max(best, x)
				line++
			}
			if worst < -small && best <= small { // every rotor pushes the wrong way
				n.WouldPull = append(n.WouldPull, c.ID)
			}
			continue
		}
		g := v.Add(turn.Cross(p.Pulls[pull].At)) // y · (F, a × F) = F · (v + ω × a)
		most := support(g, math.Tan(m.Plan.Limits.Cone*math.Pi/180), m.Plan.Limits.TensionMin*c.Keep(), c.WorkingLoad*c.Keep())
		switch {
		case most > small:
			n.AtLimit = append(n.AtLimit, c.ID)
		case most < -small*m.Plan.Limits.TensionMin:
			n.WouldPull = append(n.WouldPull, c.ID)
		}
		n.Have += most
		pull++
	}
	if !(n.Have < n.Need) { // the tilt bound, left out of support, is the one that decides
		n.Have = math.NaN()
	}
}

// support is the most of g · F over forces in a cone of the given slope, at least least upwards
// and at most working long (NaN: without end).
func support(g vec.V3, slope, least, working float64) float64 {
	h := math.Hypot(g[0], g[1])
	angle := math.Min(math.Atan2(h, g[2]), math.Atan(slope))
	best := float64(h*math.Sin(angle)) + float64(g[2]*math.Cos(angle)) // per newton of pull
	switch {
	case best <= 0:
		return least * (float64(h*slope) + g[2])
	case math.IsNaN(working):
		return math.Inf(1)
	}
	return best * working
}

var bounds = [...]struct {
	drop Drop
	name string
}{
	{DropWorkingLoad, "the working load of the lines"},
	{DropTension, "the least pull that keeps the cables taut"},
	{DropCone, "the cone of the cables"},
	{DropTilt, "the tilt of the vehicles"},
}

// loosen leaves out one bound on the cables after the other.
func (m *Model) loosen(s *solve.Solver, n *NoBalance) {
	if !m.Cables {
		return
	}
	for _, b := range bounds {
		if s.Solve(m.Even(b.drop)).Status == solve.Optimal {
			n.Dropped |= b.drop
			n.Loosen = append(n.Loosen, b.name)
		}
	}
}

// words says it.
func (m *Model) words(n *NoBalance) string {
	v, turn := split(n.Direction)
	var b strings.Builder
	b.WriteString("No thrust balances this load: it takes " + Short(n.Need) + " " + n.Unit)
	if n.Unit == "N m" {
		b.WriteString(" about the axis ")
		if through := turn.Cross(v); math.Abs(v.Dot(turn)) <= 1e-6*v.Norm() {
			b.WriteString("through " + point(m.Body.COM.Add(through)) + " m ")
		}
		b.WriteString("along " + direction(turn) + " to hold it")
	} else {
		b.WriteString(" towards " + direction(v) + " to hold it")
	}
	switch {
	case math.IsNaN(n.Have):
		b.WriteString(", more than the team has.")
	case n.Have <= 0:
		b.WriteString(", and nothing that the team can do acts that way.")
	default:
		b.WriteString(", and the team has at most " + Short(n.Have) + " " + n.Unit + ".")
	}
	if len(n.AtLimit) > 0 {
		b.WriteString(" " + List(n.AtLimit) + " " + give(n.AtLimit) + " all that the limits allow.")
	}
	if len(n.WouldPull) > 0 {
		b.WriteString(" " + List(n.WouldPull) + " would have to push down.")
	}
	if _, ok := m.InLine(); ok && n.Unit == "N m" {
		b.WriteString(" A load that hangs from one line or point tips until its centre of mass hangs below it.")
	}
	if len(n.Loosen) > 0 {
		b.WriteString(" Without " + strings.Join(n.Loosen, ", or without ") + ", there would be a balance.")
	}
	return b.String()
}

func split(y [6]float64) (v, turn vec.V3) { return vec.V3{y[0], y[1], y[2]}, vec.V3{y[3], y[4], y[5]} }

func dot(a, b [6]float64) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}

// direction names a direction: an axis, or its three parts.
func direction(d vec.V3) string {
	d = d.Unit()
	for i, name := range [3]string{"x", "y", "z"} {
		if math.Abs(d[i]) > 1-1e-6 {
			if d[i] < 0 {
				return "−" + name
			}
			return "+" + name
		}
	}
	return point(d)
}

func point(p vec.V3) string { return "(" + Short(p[0]) + ", " + Short(p[1]) + ", " + Short(p[2]) + ")" }

// Short writes three figures, and nothing smaller than a thousandth.
func Short(x float64) string {
	if math.Abs(x) < 0.0005 {
		return "0"
	}
	scale := math.Pow(10, math.Max(0, math.Min(3, 2-math.Floor(math.Log10(math.Abs(x))))))
	return strings.Replace(strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64), "-", "−", 1)
}

// List joins names: "A, B and C"; long lists end in a count.
func List(names []string) string {
	n := len(names)
	switch {
	case n == 1:
		return names[0]
	case n > 6:
		return strings.Join(names[:5], ", ") + " and " + strconv.Itoa(n-5) + " more"
	}
	return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
}

func give(names []string) string {
	if len(names) == 1 {
		return "gives"
	}
	return "give"
}
