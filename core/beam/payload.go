package beam

import (
	"math"

	"cohoist/core/mass"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Model is a payload taken as a beam.
type Model struct {
	Bar
	Needs []string // paths of the fields without which stress or deflection cannot be computed
	Notes []string // what was assumed
	parts []part
	mass  float64
	shift vec.V3 // kg m, first moment that a measured centre of mass adds
}

// part is a solid as the bar feels it: spread evenly from A to B (m), or at its centre when A = B.
type part struct {
	mass, a, b float64
	com        vec.V3
}

// Of takes a payload as a beam along x. It reports false when the plan does not ask for it, or no box,
// rod, tube or plate lies along x, or a mesh is not closed. The longest one gives the ends and the
// section; others that touch it in line make it longer.
func Of(p plan.Payload) (Model, bool) {
	var m Model
	long, length := -1, 0.0
	for i, s := range p.Solids {
		q, err := mass.Of(plan.Payload{Solids: []plan.Solid{s}})
		if err != nil {
			return m, false
		}
		n := part{q.Mass, q.COM[0], q.COM[0], q.COM}
		if l, ok := along(s); ok {
			n.a, n.b = q.COM[0]-l/2, q.COM[0]+l/2
			if l > length {
				long, length = i, l
			}
		}
		m.parts, m.mass = append(m.parts, n), m.mass+n.mass
	}
	if long < 0 || !p.Beam.Given() {
		return m, false
	}
	m.Left, m.Right = m.parts[long].a, m.parts[long].b
	m.Axis = [2]float64{m.parts[long].com[1], m.parts[long].com[2]}
	for grown := true; grown; {
		grown = false
		for _, n := range m.parts {
			touches := n.b > n.a && n.a <= m.Right+1e-9 && n.b >= m.Left-1e-9
			if touches && (n.a < m.Left || n.b > m.Right) {
				m.Left, m.Right = math.Min(m.Left, n.a), math.Max(m.Right, n.b)
				grown = true
			}
		}
	}
	if m.Right-m.Left > length*(1+1e-9) {
		m.Notes = append(m.Notes, "Beam: solids in line count as one bar with the section of the longest.")
	}
	if p.COM != nil {
		m.shift = p.COM.Scale(m.mass)
		for _, n := range m.parts {
			m.shift = m.shift.Sub(n.com.Scale(n.mass))
		}
		if m.shift != (vec.V3{}) {
			m.Notes = append(m.Notes, "Beam: the measured centre of mass is met by mass that grows evenly along the bar.")
		}
	}
	m.fill(p.Beam, p.Solids[long])
	return m, true
}

// along tells the length of a solid that lies along x, m.
func along(s plan.Solid) (float64, bool) {
	if math.Abs(turn(s)[0][0]) < 1-1e-9 {
		return 0, false
	}
	switch s.Shape {
	case plan.Box, plan.Plate:
		return s.Size[0], true
	case plan.Rod, plan.Tube:
		return s.Length, true
	}
	return 0, false
}

func turn(s plan.Solid) vec.M3 {
	const deg = math.Pi / 180
	return vec.Euler(s.Turn[0]*deg, s.Turn[1]*deg, s.Turn[2]*deg)
}

// fill sets section and material, and says what is missing.
func (m *Model) fill(b plan.Beam, s plan.Solid) {
	need := func(path string, x float64) {
		if !(x > 0) {
			m.Needs = append(m.Needs, "payload.beam."+path)
		}
	}
	width, depth, wall, profile := b.Width, b.Depth, b.Wall, plan.Rectangle
	switch s.Shape {
	case plan.Tube:
		profile = plan.Pipe
		depth, wall = or(depth, 2*s.OuterRadius), or(wall, s.OuterRadius-s.InnerRadius)
	case plan.Rod:
		profile = plan.Pipe
	case plan.Box, plan.Plate:
		size := [2]float64{s.Size[1]}
		if s.Shape == plan.Box {
			size[1] = s.Size[2]
		}
		if upright := math.Abs(turn(s)[1][1]); upright < 0.5 {
			size[0], size[1] = size[1], size[0]
		} else if upright < 1-1e-9 {
			size = [2]float64{} // it lies on an edge: the plan has to say the section
		}
		width, depth = or(width, size[0]), or(depth, size[1])
	}
	if b.Profile != "" {
		profile = b.Profile
	}
	if profile == plan.Pipe {
		m.Section = Pipe(depth/2, math.Max(0, depth/2-or(wall, depth)))
	} else {
		m.Section = Rectangle(width, depth, wall)
	}
	m.Section.Area = or(b.Area, m.Section.Area)
	for i := range 2 {
		m.Section.Second[i] = or(b.SecondMoment[i], m.Section.Second[i])
		m.Section.Modulus[i] = or(b.SectionModulus[i], m.Section.Modulus[i])
	}
	if profile != plan.Pipe && !(m.Section.Second[0] > 0 && m.Section.Modulus[0] > 0 && m.Section.Area > 0) {
		need("width_m", width)
	}
	if !(m.Section.Second[0] > 0 && m.Section.Modulus[0] > 0 && m.Section.Area > 0) {
		need("depth_m", depth)
	}
	row, _ := MaterialOf(b.Material)
	m.Youngs = or(b.Youngs, row.Youngs)
	m.Allowable = or(b.Allowable, or(b.Strength, row.Strength)/or(b.Factor, Factor))
	need("youngs_modulus_pa", m.Youngs)
	need("allowable_stress_pa", m.Allowable)
}

// or is x when it is given, else other.
func or(x, other float64) float64 {
	if x > 0 {
		return x
	}
	return other
}

// Weight is what every kilogram of the payload feels, perKg (N/kg, payload axes): (0, 0, −g) in level
// hover; drag over mass adds to it.
func (m Model) Weight(perKg vec.V3) Loads {
	var l Loads
	for _, n := range m.parts {
		if n.mass == 0 {
			continue
		}
		q := m.Act(n.com, perKg.Scale(n.mass), vec.V3{})
		if a, b := n.a, n.b; b > a && a >= m.Left && b <= m.Right {
			line := perKg.Scale(n.mass / (b - a))
			l.Spreads = append(l.Spreads, Spread{a, b, line, line})
			q.Force = vec.V3{} // the lever's moment stays
		}
		if q.Force != (vec.V3{}) || q.Moment != (vec.V3{}) {
			l.Points = append(l.Points, q)
		}
	}
	if m.shift != (vec.V3{}) {
		length := m.Right - m.Left
		end := perKg.Scale(6 * m.shift[0] / (length * length)) // ∫ x dm = shift
		l.Spreads = append(l.Spreads, Spread{m.Left, m.Right, end.Scale(-1), end})
		across := vec.V3{0, m.shift[1], m.shift[2]}
		l.Points = append(l.Points, Point{X: m.Left + length/2, Moment: across.Cross(perKg)})
	}
	return l
}

// Slender is length over depth; below 10 shear adds to the deflection what this theory leaves out
// (common practice, no source).
func (b Bar) Slender() float64 { return (b.Right - b.Left) / b.Section.Size[Upright] }

// Buckling is the largest compression over the load at which the bar would buckle between its ends, (9.13).
func (d Diagram) Buckling() float64 {
	length := d.Bar.Right - d.Bar.Left
	weak := math.Min(d.Bar.Stiffness(Upright), d.Bar.Stiffness(Level))
	least, _ := d.Axial.Extremes()
	return math.Max(0, -least.Value) / (math.Pi * math.Pi * weak / (length * length)) // (9.13)
}
