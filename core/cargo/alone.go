package cargo

import (
	"math"

	"cohoist/core/energy"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// craft is a vehicle by itself.
type craft struct {
	mass   float64 // kg
	thrust float64 // N: the most of it that the crew accepts
	tilt   float64 // tangent of the largest tilt
	drag   float64 // ½ ρ C_d A, kg/m
	wind   float64 // m/s
	speed  float64 // m/s: the largest; +Inf: none
	cable  float64 // m that hangs below it
	power  float64 // W, hovering; NaN: not known
	pack   energy.Pack
}

// Of the polynomial of the seventh degree from rest to rest, (20.2): its largest speed over the mean, 35/16, and its largest
// acceleration over distance by the time's square, 84/(5√5).
const topSpeed, topAcceleration = 35.0 / 16, 7.513188404399293

// climb is how hard it may speed up and slow down upright, m/s², (23.3).
func (c craft) climb() float64 {
	return math.Min(c.thrust/c.mass-share.Gravity, share.Gravity/2) // (23.3)
}

// up is how long a vehicle takes for so much height, s: its thrust must speed it up and stop it, (23.3).
func (c craft) up(height float64) float64 {
	height = math.Abs(height)
	most := c.climb()
	if height == 0 {
		return 0
	}
	if !(most > 0) {
		return math.Inf(1)
	}
	return math.Max(math.Sqrt(topAcceleration*height/most), topSpeed*height/c.speed)
}

// over is how long it takes for so much distance at one height, s: its thrust and its tilt must also hold the drag of its largest
// speed against the wind, (23.4).
func (c craft) over(distance float64) float64 {
	if distance == 0 {
		return 0
	}
	weight := c.mass * share.Gravity
	most := math.Min(weight*c.tilt, math.Sqrt(float64(c.thrust*c.thrust)-float64(weight*weight)))
	holds := func(time float64) bool {
		v := topSpeed * distance / time
		air := v + c.wind
		return v <= c.speed && c.mass*topAcceleration*distance/(time*time)+c.drag*air*air <= most // (23.4)
	}
	slow := 1.0
	for !holds(slow) {
		if slow *= 2; slow > 1e6 {
			return math.Inf(1)
		}
	}
	quick := 0.0
	for slow-quick > 1e-9*slow {
		if mid := quick + (slow-quick)/2; holds(mid) {
			slow = mid
		} else {
			quick = mid
		}
	}
	return slow
}

// still is the speed of a leg on which a vehicle hovers, m/s.
const still = 1e-9

// hover is a leg on which a vehicle hovers for a time, s.
func hover(time float64) energy.Leg { return energy.Leg{Distance: still * time, Speed: still} }

// crafts are the team's vehicles by themselves, by any item that it lifts.
func crafts(it *Item) []craft {
	m := it.model
	speed := m.Plan.Way.SpeedMax
	if !(speed > 0) {
		speed = math.Inf(1)
	}
	out := make([]craft, len(m.Craft))
	for v := range m.Craft {
		c := &m.Craft[v]
		out[v] = craft{mass: c.Vehicle.Mass, thrust: m.Plan.Limits.Utilisation * c.Vehicle.ThrustMax, tilt: math.Tan(c.Vehicle.TiltMax),
			drag: m.Density / 2 * c.Vehicle.DragArea, wind: m.Wind.Norm(), speed: speed}
		if !c.Rigid {
			out[v].cable = c.Length
		}
		spent, _ := it.study.Alone(v, hover(1), 1)
		out[v].power = spent.Energy
		out[v].pack, _, _ = energy.NewPack(c.Class, m.Plan.Vehicles[c.Class].Battery)
	}
	return out
}

// Flight is the team's way without a payload.
type Flight struct {
	Up, Over, Down float64 // s
	Time           float64
	Far            float64 // m: of the vehicle with the longest way over
}

// flight is how the team gets from where its vehicles are to where they are to be: up until every cable's end is clear of all that
// stands, over, and down; each part takes as long as the slowest needs, (23.5).
func (s *Study) flight(team []craft, from, to []vec.V3) (f Flight) {
	for v, c := range team {
		a, b := from[v], to[v]
		high := math.Max(math.Max(a[2], b[2]), s.Top+s.Has.Clearance+c.cable) // (23.5)
		far := math.Hypot(b[0]-a[0], b[1]-a[1])
		f.Up, f.Down = math.Max(f.Up, c.up(high-a[2])), math.Max(f.Down, c.up(high-b[2]))
		f.Over, f.Far = math.Max(f.Over, c.over(far)), math.Max(f.Far, far)
	}
	f.Time = f.Up + f.Over + f.Down
	return f
}

// above is where the vehicles are that hold an item at a spot.
func (it *Item) above(at Spot) []vec.V3 {
	out := make([]vec.V3, len(it.answer.Parts))
	for v, p := range it.answer.Parts {
		out[v] = at.Point(p.Position)
	}
	return out
}

// atHome is where the vehicles stand at home: as the plan's payload is attached, (23.5).
func (s *Study) atHome() []vec.V3 {
	team := s.work.plan.Team
	out := make([]vec.V3, len(team))
	for v, m := range team {
		out[v] = s.Has.Home
		if !math.IsNaN(m.Attach.Norm()) {
			out[v] = out[v].Add(vec.V3{m.Attach[0], m.Attach[1], 0})
		}
	}
	return out
}

// Flight is the team's way without a payload from one item to the next; a negative index stands for home.
func (s *Study) Flight(from, to int) Flight {
	a, b := s.atHome(), s.atHome()
	if from >= 0 {
		a = s.Items[from].above(s.Items[from].Set)
	}
	if to >= 0 {
		b = s.Items[to].above(s.Items[to].Pick)
	}
	return s.flight(s.work.team, a, b)
}
