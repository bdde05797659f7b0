package handover

import (
	"math"

	"cohoist/core/hang"
	"cohoist/core/plan"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// scene is a lift as bodies and forces, in level axes with their origin where that of the payload frame is.
type scene struct {
	title   string
	payload body
	drag    vec.V3 // on the payload at its centre of mass, N
	flyers  []flyer
}

// body is a rigid body.
type body struct {
	name    string
	at      vec.V3 // of its own origin, m
	axes    vec.M3 // own axes → level axes
	mass    float64
	com     vec.V3     // own axes, m
	inertia [6]float64 // about com, own axes: xx yy zz xy xz yz, kg m²
}

// flyer is a vehicle with what it pushes with.
type flyer struct {
	body
	craft  *share.Craft
	rotors []float64 // thrust of each, N
	thrust vec.V3    // their sum, N
	turn   vec.V3    // their moment about its centre, N m; on a cable none
	drag   vec.V3    // N
	cable  cable     // when it does not hold rigidly
}

// cable is a spring that only pulls.
type cable struct {
	attach    vec.V3 // payload frame, m
	rest      float64
	stiffness float64 // N/m
	damping   float64 // N s/m
}

// Cables whose stiffness the plan does not say stretch by a thousandth of their length here: a stiffer one would ask for
// shorter steps of the simulator. Damping is a fifth of the critical one of the vehicle on its cable, so that what shakes comes to
// rest. Neither moves the equilibrium (common practice, no source).
const (
	strain = 1e-3
	damped = 0.2
)

// scene lays the lift out.
func (l Lift) scene() scene {
	m := l.Model
	used := map[string]bool{}
	s := scene{title: l.Plan.Title, drag: m.Attitude.Mul(m.Drag)}
	s.payload = body{name: named("payload", used), axes: m.Attitude, mass: m.Payload.Mass, com: m.Payload.COM,
		inertia: solidEnough(m.Payload.Six(), m.Payload.Mass)}
	for i := range m.Craft {
		c, v := &m.Craft[i], l.Report.Vehicles[i]
		f := flyer{craft: c, rotors: v.RotorThrust, thrust: m.Attitude.Mul(v.ThrustVector), drag: m.Attitude.Mul(c.Drag)}
		f.body = body{name: named(c.ID, used), at: m.Attitude.Mul(v.Position), axes: m.Attitude.MulM(c.Axes), mass: c.Vehicle.Mass}
		j := c.Vehicle.Inertia
		f.inertia = solidEnough([6]float64{j[0][0], j[1][1], j[2][2], j[0][1], j[0][2], j[1][2]}, c.Vehicle.Mass)
		if c.Rigid {
			f.turn = m.Attitude.Mul(v.Moment)
		} else {
			f.axes = upTo(f.thrust).MulM(l.yawed(i))
			f.cable = l.cable(i)
		}
		s.flyers = append(s.flyers, f)
	}
	return s
}

// yawed are the axes of vehicle i on a cable before it leans, in level axes.
func (l Lift) yawed(i int) vec.M3 { return vec.Rot(vec.V3{0, 0, l.Plan.Team[i].Yaw * math.Pi / 180}) }

// cable is that of vehicle i: so long at rest that it has the plan's length under its pull, (12.14).
func (l Lift) cable(i int) cable {
	c := l.Model.Craft[i]
	pull := l.Report.Vehicles[i].Tension
	axial := hang.Axial(l.Plan.Team[i].Hold)
	if math.IsInf(axial, 1) {
		even := l.Model.Payload.Mass * share.Gravity / float64(len(l.Model.Craft))
		axial = math.Max(pull, even/10) / strain
	}
	out := cable{attach: c.At, rest: c.Length / (1 + pull/axial)} // (12.14)
	out.stiffness = axial / out.rest
	out.damping = 2 * damped * math.Sqrt(out.stiffness*c.Vehicle.Mass)
	return out
}

// upTo is the smallest turn that takes z to the direction of f.
func upTo(f vec.V3) vec.M3 {
	z := vec.V3{0, 0, 1}
	axis := z.Cross(f)
	return vec.Rot(axis.Unit().Scale(math.Atan2(axis.Norm(), z.Dot(f))))
}

// solidEnough is an inertia that a simulator takes: points and thin rods have none about an axis, so that they
// get that of a ball whose radius of gyration is 1 cm.
func solidEnough(j [6]float64, mass float64) [6]float64 {
	det := j[0]*(j[1]*j[2]-j[5]*j[5]) - j[3]*(j[3]*j[2]-j[5]*j[4]) + j[4]*(j[3]*j[5]-j[1]*j[4])
	mean := (j[0] + j[1] + j[2]) / 3
	if det <= 1e-9*mean*mean*mean {
		for i := range 3 {
			j[i] += mass * 1e-4
		}
	}
	return j
}

// named is a name that no other body has; two colons and leading underscores mean something in SDF.
func named(s string, used map[string]bool) string {
	out := []rune(s)
	for i, r := range out {
		if r == ':' || r == '_' && (i == 0 || i == len(out)-1) {
			out[i] = '-'
		}
	}
	name := string(out)
	for used[name] || name == "world" || name == "level" {
		name += "'"
	}
	used[name] = true
	return name
}

// drawn is a solid of the payload as a shape that simulators know; size as in the plan, 0 when it has too few.
type drawn struct {
	shape string // box, cylinder (along its own z), sphere or mesh
	size  vec.V3 // box: sides; cylinder: radius, length; sphere: radius
	at    vec.V3
	axes  vec.M3
	mesh  *plan.Mesh
}

// thin is how thick what has no thickness is drawn, m.
const thin = 0.004

// draw is a solid as it is drawn; false when the plan does not say how large it is.
func draw(s plan.Solid) (drawn, bool) {
	const deg = math.Pi / 180
	d := drawn{shape: "box", at: s.At, axes: vec.Euler(s.Turn[0]*deg, s.Turn[1]*deg, s.Turn[2]*deg)}
	along := vec.Rot(vec.V3{0, math.Pi / 2, 0}) // z to x
	switch s.Shape {
	case plan.Box, plan.Plate:
		copy(d.size[:], s.Size)
		if s.Shape == plan.Plate {
			d.size[2] = thin
		}
		return d, d.size[0]*d.size[1]*d.size[2] > 0
	case plan.Rod:
		d.shape, d.size, d.axes = "cylinder", vec.V3{thin, s.Length}, d.axes.MulM(along)
	case plan.Tube:
		d.shape, d.size, d.axes = "cylinder", vec.V3{s.OuterRadius, s.Length}, d.axes.MulM(along)
	case plan.Cylinder:
		d.shape, d.size = "cylinder", vec.V3{s.OuterRadius, s.Length}
	case plan.MeshBody:
		d.shape, d.mesh = "mesh", s.Mesh
		return d, s.Mesh != nil && len(s.Mesh.Vertices) > 3
	default:
		d.shape, d.size = "sphere", vec.V3{5 * thin}
		return d, true
	}
	return d, d.size[0]*d.size[1] > 0
}

// quaternion is a turn as w, x, y, z, w not negative.
func quaternion(m vec.M3) [4]float64 {
	w := 1 + m[0][0] + m[1][1] + m[2][2]
	q := [4]float64{w, m[2][1] - m[1][2], m[0][2] - m[2][0], m[1][0] - m[0][1]}
	if w < 1 { // turned by more than 120°: by the largest of x, y, z
		i := 0
		for k := range 3 {
			if m[k][k] > m[i][i] {
				i = k
			}
		}
		j, k := (i+1)%3, (i+2)%3
		q[0] = m[k][j] - m[j][k]
		q[1+i] = 1 + m[i][i] - m[j][j] - m[k][k]
		q[1+j], q[1+k] = m[j][i]+m[i][j], m[k][i]+m[i][k]
	}
	n := math.Sqrt(q[0]*q[0] + q[1]*q[1] + q[2]*q[2] + q[3]*q[3])
	if q[0] < 0 {
		n = -n
	}
	for i := range q {
		q[i] /= n
	}
	return q
}
