package handover

import (
	"fmt"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// MJCF is the lift as a scene in MJCF, the format of MuJoCo (https://mujoco.readthedocs.io/en/stable/XMLreference.html):
// z up, SI, radians, the origin where that of the payload frame is. The payload and each vehicle on a cable are free
// bodies, rigid vehicles are part of the payload's body tree; a cable is a spatial tendon from the attachment to the vehicle's
// centre, a spring that is slack when shorter than its rest length. Actuators push with the report's forces when their control is
// 0, and with a tenth more at 0.1: on a cable one force at the centre that keeps its direction; on a rigid
// hold each rotor's thrust and drag torque, which turn with the body. The drag of the report's wind is a constant force.
// So the lift starts at rest and stays. Nothing collides; there is no ground and no controller.
func (l Lift) MJCF() []byte {
	s := l.scene()
	m := &markup{}
	m.begin("mujoco", "model", s.title)
	m.comment("A lift in steady flight, z up, SI. Actuators hold it with their control at 0; 0.1 is a tenth more of that force.",
		"Tendons are the cables: tension = stiffness times (length less springlength). joint damping only lets it come to rest: 0 for the",
		"bare motion. Forces are constant; there is no controller, no ground, and nothing collides.")
	m.one("compiler", "angle", "radian", "inertiafromgeom", "false", "balanceinertia", "true")
	m.one("option", "gravity", "0 0 -9.80665", "timestep", "0.001", "integrator", "implicitfast")
	m.begin("default")
	m.one("geom", "contype", "0", "conaffinity", "0", "rgba", "0.55 0.5 0.42 1")
	m.one("site", "size", "0.01")
	m.end()
	l.assets(m)
	m.begin("worldbody")
	m.one("site", "name", "level", "pos", "0 0 0")
	s.bodies(m, l.Plan.Payload.Solids)
	m.end()
	s.tendons(m)
	s.actuators(m)
	m.end()
	return m.bytes()
}

// assets writes the payload's meshes.
func (l Lift) assets(m *markup) {
	m.begin("asset")
	for i, solid := range l.Plan.Payload.Solids {
		d, ok := draw(solid)
		if !ok || d.mesh == nil {
			continue
		}
		var places, faces []float64
		for _, v := range d.mesh.Vertices {
			places = append(places, v[:]...)
		}
		for _, t := range d.mesh.Triangles {
			faces = append(faces, float64(t[0]), float64(t[1]), float64(t[2]))
		}
		m.one("mesh", "name", fmt.Sprintf("solid %d", i+1), "vertex", list(places...), "face", list(faces...))
	}
	m.end()
}

func (s scene) bodies(m *markup, solids []plan.Solid) {
	s.payload.begin(m, s.payload.at, s.payload.axes, true)
	for i, solid := range solids {
		d, ok := draw(solid)
		if !ok {
			continue
		}
		q := quaternion(d.axes)
		place := []string{"pos", vector(d.at), "quat", list(q[:]...)}
		switch d.shape {
		case "box":
			place = append(place, "type", "box", "size", vector(d.size.Scale(0.5)))
		case "cylinder":
			place = append(place, "type", "cylinder", "size", list(d.size[0], d.size[1]/2))
		case "sphere":
			place = append(place, "type", "sphere", "size", list(d.size[0]))
		case "mesh":
			place = append(place, "type", "mesh", "mesh", fmt.Sprintf("solid %d", i+1))
		}
		m.one("geom", place...)
	}
	m.one("site", "name", "centre of mass", "pos", vector(s.payload.com))
	for _, f := range s.flyers {
		if f.craft.Rigid {
			f.begin(m, f.craft.At, f.craft.Axes, false)
			f.draw(m)
			m.end()
		} else {
			m.one("site", "name", "attachment "+f.name, "pos", vector(f.cable.attach))
		}
	}
	m.end()
	for _, f := range s.flyers {
		if !f.craft.Rigid {
			f.begin(m, f.at, f.axes, true)
			f.draw(m)
			m.end()
		}
	}
}

// settling is the damping of a free body over its mass, 1/s.
const settling = 0.5

// begin opens a body at a place and turn in its parent.
func (b body) begin(m *markup, at vec.V3, axes vec.M3, free bool) {
	q := quaternion(axes)
	m.begin("body", "name", b.name, "pos", vector(at), "quat", list(q[:]...))
	if free {
		m.one("joint", "name", "free "+b.name, "type", "free", "damping", list(settling*b.mass))
	}
	m.one("inertial", "pos", vector(b.com), "mass", list(b.mass), "fullinertia", list(b.inertia[:]...))
}

// draw writes the rotors of a vehicle, where they push, and its centre.
func (f flyer) draw(m *markup) {
	v := f.craft.Vehicle
	m.one("site", "name", f.name, "pos", "0 0 0")
	for j, r := range v.Rotors {
		m.one("geom", "type", "cylinder", "size", list(v.Reach-r.At.Norm(), thin/2), "pos", vector(r.At), "rgba", "0.13 0.25 0.42 0.5")
		if f.craft.Rigid {
			m.one("site", "name", fmt.Sprintf("%s rotor %d", f.name, j+1), "pos", vector(r.At))
		}
	}
}

func (s scene) tendons(m *markup) {
	m.begin("tendon")
	for _, f := range s.flyers {
		if f.craft.Rigid {
			continue
		}
		c := f.cable
		m.begin("spatial", "name", "cable "+f.name, "stiffness", list(c.stiffness), "damping", list(c.damping), "springlength", "0 "+list(c.rest), "width", "0.003")
		m.one("site", "site", "attachment "+f.name)
		m.one("site", "site", f.name)
		m.end()
	}
	m.end()
}

// actuators writes the forces: gear is the force and moment for a factor of 1, and the bias makes that factor 1
// plus the control.
func (s scene) actuators(m *markup) {
	m.begin("actuator")
	push := func(name, site string, fixed bool, gain string, force, turn vec.V3) {
		if force == (vec.V3{}) && turn == (vec.V3{}) {
			return
		}
		where := []string{"name", name, "site", site}
		if fixed {
			where = append(where, "refsite", "level")
		}
		m.one("general", append(where, "gear", vector(force)+" "+vector(turn), "gainprm", gain, "biastype", "affine", "biasprm", "1 0 0")...)
	}
	push("drag", "centre of mass", true, "0", s.drag, vec.V3{})
	for _, f := range s.flyers {
		push("drag "+f.name, f.name, true, "0", f.drag, vec.V3{})
		if !f.craft.Rigid {
			push("thrust "+f.name, f.name, true, "1", f.thrust, vec.V3{})
			continue
		}
		for j, r := range f.craft.Vehicle.Rotors {
			turn := r.Axis.Scale(zeroIfUnknown(r.Torque) * f.rotors[j])
			name := fmt.Sprintf("%s rotor %d", f.name, j+1)
			push(name, name, false, "1", r.Axis.Scale(f.rotors[j]), turn)
		}
	}
	m.end()
}

// zeroIfUnknown is a torque per thrust that no rigid hold needed.
func zeroIfUnknown(x float64) float64 {
	if x != x {
		return 0
	}
	return x
}
