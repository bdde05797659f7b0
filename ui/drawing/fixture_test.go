package drawing

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// Scenes made by hand: plan and report as the core would fill them, with forces that balance the
// weight, so that the drawing's tests stand on their own.

var quad = plan.Class{Mass: 3.4, Rotors: 4, Layout: plan.Cross, Arm: 0.33, RotorRadius: 0.19, RotorThrustMax: 19, TiltMax: 30}
var hexa = plan.Class{Mass: 6, Rotors: 6, Layout: plan.Plus, Arm: 0.5, RotorRadius: 0.22, RotorThrustMax: 30, TiltMax: 30}
var pocket = plan.Class{Mass: 0.075, Rotors: 4, Layout: plan.Cross, Arm: 0.046, RotorRadius: 0.023, RotorThrustMax: 0.35, TiltMax: 30}

type fixture struct {
	plan   plan.Plan
	report report.Report
}

// lift starts a fixture: solids, their mass and centre of mass.
func lift(mass float64, com vec.V3, solids ...plan.Solid) *fixture {
	f := &fixture{report: report.Blank()}
	f.plan.Payload.Solids = solids
	f.plan.Vehicles = map[string]plan.Class{"quad": quad, "hexa": hexa, "pocket": pocket}
	f.plan.Limits.Utilisation = 0.8
	f.report.Payload.Mass, f.report.Payload.COM = mass, com
	return f
}

// cable adds a vehicle on a cable that pulls with force.
func (f *fixture) cable(id, class string, attach vec.V3, length float64, force vec.V3, use float64) *fixture {
	f.plan.Team = append(f.plan.Team, plan.Member{ID: id, Vehicle: class, Attach: attach, Hold: plan.Hold{Kind: plan.Cable, Length: length}})
	thrust := force.Add(vec.V3{0, 0, f.plan.Vehicles[class].Mass * gravity})
	f.report.Vehicles = append(f.report.Vehicles, report.Vehicle{ID: id, Force: force, Tension: force.Norm(), Utilisation: use,
		ThrustVector: thrust, Position: attach.Add(force.Unit().Scale(length))})
	return f
}

// rigid adds a vehicle held rigidly.
func (f *fixture) rigid(id, class string, at vec.V3, yaw, push, use float64) *fixture {
	f.plan.Team = append(f.plan.Team, plan.Member{ID: id, Vehicle: class, Attach: at, Yaw: yaw, Hold: plan.Hold{Kind: plan.Rigid}})
	f.report.Vehicles = append(f.report.Vehicles, report.Vehicle{ID: id, Force: vec.V3{0, 0, push}, Utilisation: use, Position: at})
	return f
}

func beam() *fixture {
	w := 7 * gravity
	return lift(7, vec.V3{0.04, 0, 0.02}, plan.Solid{Shape: plan.Box, Size: []float64{2.4, 0.3, 0.05}, Mass: 6},
		plan.Solid{Shape: plan.Point, Mass: 1, At: vec.V3{0.3, 0, 0.1}}).
		cable("A", "quad", vec.V3{1.1, 0, 0.03}, 3, vec.V3{0, 0, w / 2}, 0.72).
		cable("B", "quad", vec.V3{-1.1, 0, 0.03}, 3, vec.V3{0, 0, w / 2}, 0.69)
}

// ring hangs a crate with a drum on it from n vehicles, their cables leaning out by the angle lean.
func ring(n int, lean float64) *fixture {
	const mass = 18.0
	f := lift(mass, vec.V3{}, plan.Solid{Shape: plan.Box, Size: []float64{1.1, 0.8, 0.6}, Mass: 15},
		plan.Solid{Shape: plan.Cylinder, Length: 0.3, OuterRadius: 0.22, At: vec.V3{0.2, 0, 0.45}, Mass: 3})
	for i := range n {
		a := 2 * math.Pi * (float64(i) + 0.5) / float64(n)
		out := vec.V3{math.Cos(a), math.Sin(a), 0}
		push := mass * gravity / float64(n)
		f.cable(string(rune('A'+i)), "quad", vec.V3{0.5 * out[0], 0.38 * out[1], 0.3}, 4,
			out.Scale(push*math.Tan(lean)).Add(vec.V3{0, 0, push}), 0.5+0.03*float64(i))
	}
	return f
}

func panel() *fixture {
	w := 4 * gravity / 4
	return lift(4, vec.V3{0, 0, 0.01}, plan.Solid{Shape: plan.Box, Size: []float64{1.6, 1.2, 0.04}, Mass: 3},
		plan.Solid{Shape: plan.Tube, Length: 1.8, OuterRadius: 0.05, InnerRadius: 0.04, Mass: 1, At: vec.V3{0, 0, 0.07}}).
		rigid("NE", "quad", vec.V3{0.95, 0.75, 0.1}, 0, w, 0.58).rigid("NW", "quad", vec.V3{-0.95, 0.75, 0.1}, 45, w, 0.6).
		rigid("SW", "quad", vec.V3{-0.95, -0.75, 0.1}, 90, w, 0.58).rigid("SE", "quad", vec.V3{0.95, -0.75, 0.1}, 0, w, 0.61).team(17.6, vec.V3{0.02, 0, 0.08})
}

func (f *fixture) team(mass float64, com vec.V3) *fixture {
	f.report.Team.Mass, f.report.Team.COM = mass, com
	return f
}

// windy tilts the panel into a wind of 9 m/s.
func windy() *fixture {
	f := panel()
	f.plan.Site.Wind, f.plan.Site.WindTo = 9, 20
	f.report.Team.Lean = vec.V3{3, -11, 0}
	return f
}

func eight() *fixture {
	f := lift(40, vec.V3{0.1, 0, 0}, plan.Solid{Shape: plan.Tube, Length: 6, OuterRadius: 0.18, InnerRadius: 0.15, Mass: 40})
	for i := range 8 {
		x := -2.9 + 5.8*float64(i/2)/3
		y := 0.18 - 0.36*float64(i%2)
		f.cable(string(rune('A'+i)), "hexa", vec.V3{x, y, 0}, 3+0.6*float64(i%2), vec.V3{0, y * 100, 5 * gravity}, 0.55)
	}
	return f
}

func pocketTeam() *fixture {
	f := lift(0.1, vec.V3{}, plan.Solid{Shape: plan.Plate, Size: []float64{0.12, 0.08}, Mass: 0.1})
	for i := range 4 {
		x, y := 0.055-0.11*float64(i%2), 0.035-0.07*float64(i/2)
		f.cable(string(rune('1'+i)), "pocket", vec.V3{x, y, 0}, 0.2, vec.V3{x * 6, y * 6, 0.1 * gravity / 4}, 0.62)
	}
	return f
}

func overloaded() *fixture {
	f := beam()
	f.report.Vehicles[0].Utilisation = 1.07
	f.plan.Site.Wind, f.plan.Site.WindTo = 6, 90
	return f
}

// rock is a lumpy closed mesh: an octahedron cut fine and pushed in and out.
func rock() *plan.Mesh {
	m := &plan.Mesh{Vertices: []vec.V3{{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}},
		Triangles: [][3]int{{0, 2, 4}, {2, 1, 4}, {1, 3, 4}, {3, 0, 4}, {2, 0, 5}, {1, 2, 5}, {3, 1, 5}, {0, 3, 5}}}
	for range 2 {
		mid := map[[2]int]int{}
		half := func(a, b int) int {
			k := [2]int{min(a, b), max(a, b)}
			if i, ok := mid[k]; ok {
				return i
			}
			m.Vertices = append(m.Vertices, m.Vertices[a].Add(m.Vertices[b]).Unit())
			mid[k] = len(m.Vertices) - 1
			return mid[k]
		}
		var out [][3]int
		for _, t := range m.Triangles {
			a, b, c := half(t[0], t[1]), half(t[1], t[2]), half(t[2], t[0])
			out = append(out, [3]int{t[0], a, c}, [3]int{a, t[1], b}, [3]int{c, b, t[2]}, [3]int{a, b, c})
		}
		m.Triangles = out
	}
	for i, v := range m.Vertices {
		r := 0.45 + 0.09*math.Sin(5*v[0]+2*v[1]) + 0.07*math.Cos(4*v[2]-3*v[1])
		m.Vertices[i] = vec.V3{1.3 * r * v[0], r * v[1], 0.8 * r * v[2]}
	}
	return m
}

func boulder() *fixture {
	w := 9 * gravity / 3
	f := lift(9, vec.V3{0.02, 0, 0}, plan.Solid{Shape: plan.MeshBody, Mesh: rock(), Mass: 9})
	for i := range 3 {
		a := 2 * math.Pi * float64(i) / 3
		out := vec.V3{math.Cos(a), math.Sin(a), 0}
		f.cable(string(rune('P'+i)), "quad", out.Scale(0.35).Add(vec.V3{0, 0, 0.15}), 2.5, out.Scale(w*0.3).Add(vec.V3{0, 0, w}), 0.66)
	}
	return f
}

// many hangs a plate from n vehicles in a square lattice.
func many(n int) *fixture {
	f := lift(float64(n), vec.V3{}, plan.Solid{Shape: plan.Box, Size: []float64{20, 20, 0.2}, Mass: float64(n)})
	side := int(math.Ceil(math.Sqrt(float64(n))))
	for i := range n {
		x, y := float64(i%side)*1.5-10, float64(i/side)*1.5-10
		f.cable("v"+whole(i), "quad", vec.V3{x, y, 0.1}, 5, vec.V3{0, 0, gravity}, 0.4)
	}
	return f
}

var fixtures = map[string]func() *fixture{
	"beam": beam, "ring": func() *fixture { return ring(6, 0.35) }, "panel": panel, "windy": windy, "eight": eight,
	"pocket": pocketTeam, "over": overloaded, "boulder": boulder,
}

func (f *fixture) view() *View { return &View{Plan: f.plan, Report: f.report} }
