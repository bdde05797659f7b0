package handover

import (
	"fmt"
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// SDF is the lift as a world in SDF 1.9 (http://sdformat.org/spec): z up, SI, the origin where that of the payload frame is. One
// model holds payload, vehicles and cables as links. A rigid hold is a fixed joint; a cable is a stiff thin rod of
// a thousandth of the vehicle's mass without gravity, with a ball joint at either end, so that it pulls and also pushes. Constant wrenches in
// level axes at the centres of mass hold it: they stand in the plugin gz-sim-apply-link-wrench-system of Gazebo, which other
// programs pass over. Nothing collides; there is no ground and no controller. A mesh is drawn as the box about it,
// for SDF has meshes as files only.
func (l Lift) SDF() []byte {
	s := l.scene()
	m := &markup{}
	m.begin("sdf", "version", "1.9")
	m.begin("world", "name", "lift")
	m.comment("A lift in steady flight, z up, SI. The wrenches below hold it: thrust and drag, constant, level axes, about centres of mass.",
		"Cables are thin stiff rods without gravity. There is no controller, no ground, and nothing collides.")
	m.leaf("gravity", "0 0 -9.80665")
	m.begin("physics", "name", "steps", "type", "ignored")
	m.leaf("max_step_size", "0.001")
	m.leaf("real_time_factor", "1")
	m.leaf("real_time_update_rate", "1000")
	m.end()
	m.one("plugin", "filename", "gz-sim-physics-system", "name", "gz::sim::systems::Physics")
	m.one("plugin", "filename", "gz-sim-scene-broadcaster-system", "name", "gz::sim::systems::SceneBroadcaster")
	s.wrenches(m)
	m.begin("model", "name", "team")
	s.payload.link(m, func() {
		for i, solid := range l.Plan.Payload.Solids {
			if d, ok := draw(solid); ok {
				visual(m, fmt.Sprintf("solid %d", i+1), d)
			}
		}
	})
	for _, f := range s.flyers {
		f.body.link(m, func() {
			for j, r := range f.craft.Vehicle.Rotors {
				visual(m, fmt.Sprintf("rotor %d", j+1), drawn{shape: "cylinder", size: vec.V3{f.craft.Vehicle.Reach - r.At.Norm(), thin}, at: r.At, axes: vec.Identity})
			}
		})
		f.tie(m, s.payload)
	}
	m.end()
	m.end()
	m.end()
	return m.bytes()
}

// wrenches writes the constant forces and moments about centres of mass.
func (s scene) wrenches(m *markup) {
	m.begin("plugin", "filename", "gz-sim-apply-link-wrench-system", "name", "gz::sim::systems::ApplyLinkWrench")
	push := func(name string, force, turn vec.V3) {
		m.begin("persistent")
		m.leaf("entity_name", "team::"+name)
		m.leaf("entity_type", "link")
		m.leaf("force", vector(force))
		m.leaf("torque", vector(turn))
		m.end()
	}
	push(s.payload.name, s.drag, vec.V3{})
	for _, f := range s.flyers {
		push(f.name, f.thrust.Add(f.drag), f.turn)
	}
	m.end()
}

// link writes a body with what is seen of it.
func (b body) link(m *markup, seen func()) {
	m.begin("link", "name", b.name)
	m.leaf("pose", pose(b.at, b.axes))
	b.inertial(m)
	seen()
	m.end()
}

func (b body) inertial(m *markup) {
	m.begin("inertial")
	m.leaf("pose", pose(b.com, vec.Identity))
	m.leaf("mass", list(b.mass))
	m.begin("inertia")
	for i, key := range []string{"ixx", "iyy", "izz", "ixy", "ixz", "iyz"} {
		m.leaf(key, list(b.inertia[i]))
	}
	m.end()
	m.end()
}

// tie joins a vehicle to the payload: by a fixed joint, or by a rod with two ball joints.
func (f flyer) tie(m *markup, payload body) {
	if f.craft.Rigid {
		m.begin("joint", "name", "hold "+f.name, "type", "fixed")
		m.leaf("parent", payload.name)
		m.leaf("child", f.name)
		m.end()
		return
	}
	from := payload.axes.Mul(f.cable.attach)
	along := f.at.Sub(from)
	length, mass := along.Norm(), f.mass/1000
	rod := body{name: "cable " + f.name, at: from.Add(along.Scale(0.5)), axes: upTo(along), mass: mass}
	across := mass * length * length / 12 // (2.5)
	rod.inertia = [6]float64{across, across, mass * 1e-4, 0, 0, 0}
	m.begin("link", "name", rod.name)
	m.leaf("pose", pose(rod.at, rod.axes))
	m.leaf("gravity", "false")
	rod.inertial(m)
	visual(m, "line", drawn{shape: "cylinder", size: vec.V3{thin, length}, axes: vec.Identity})
	m.end()
	m.begin("joint", "name", "attachment "+f.name, "type", "ball")
	m.leaf("pose", pose(vec.V3{0, 0, -length / 2}, vec.Identity))
	m.leaf("parent", payload.name)
	m.leaf("child", rod.name)
	m.end()
	m.begin("joint", "name", "hook "+f.name, "type", "ball")
	m.leaf("parent", rod.name)
	m.leaf("child", f.name)
	m.end()
}

// visual writes a shape.
func visual(m *markup, name string, d drawn) {
	if d.mesh != nil {
		low, high := d.mesh.Vertices[0], d.mesh.Vertices[0]
		for _, v := range d.mesh.Vertices {
			for i := range 3 {
				low[i], high[i] = math.Min(low[i], v[i]), math.Max(high[i], v[i])
			}
		}
		d.shape, d.size, d.at = plan.Box, high.Sub(low), d.at.Add(d.axes.Mul(low.Add(high).Scale(0.5)))
	}
	m.begin("visual", "name", name)
	m.leaf("pose", pose(d.at, d.axes))
	m.begin("geometry")
	m.begin(d.shape)
	switch d.shape {
	case "box":
		m.leaf("size", vector(d.size))
	case "cylinder":
		m.leaf("radius", list(d.size[0]))
		m.leaf("length", list(d.size[1]))
	case "sphere":
		m.leaf("radius", list(d.size[0]))
	}
	m.end()
	m.end()
	m.end()
}

// pose is a place and a turn as SDF writes them: about the fixed x, then y, then z axis, radians.
func pose(at vec.V3, axes vec.M3) string {
	roll, pitch, yaw := 0.0, math.Atan2(-axes[2][0], math.Hypot(axes[0][0], axes[1][0])), 0.0
	if math.Hypot(axes[0][0], axes[1][0]) > 1e-9 {
		roll, yaw = math.Atan2(axes[2][1], axes[2][2]), math.Atan2(axes[1][0], axes[0][0])
	} else { // straight up or down: all of the turn about z and x in one
		roll = math.Atan2(-math.Copysign(1, axes[2][0])*axes[0][1], axes[1][1])
	}
	return vector(at) + " " + list(roll, pitch, yaw)
}
