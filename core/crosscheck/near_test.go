package crosscheck

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// Rigid teams over a plate, some of their rotors' wakes on it: the smallest worst utilisation by gonum's simplex method, from a matrix made here, the
// wakes' shares and centres summed in strips. 1e-6: 4 000 strips of a disc are good to 1e-7 of it (the edge's root at the ends), the solver to 1e-9.
func TestWashBySimplex(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 22))
	asked := 0
	for range 12 {
		p := washed(rng)
		r := report.Build(p)
		want, ok := simplexed(p, r.Payload.Mass)
		if !ok {
			continue
		}
		asked++
		if math.Abs(r.Team.Utilisation-want) > 1e-6*want {
			t.Errorf("utilisation %.10g, by the simplex method %.10g", r.Team.Utilisation, want)
		}
		bare := p
		bare.Near = plan.Near{Clearance: math.NaN()}
		if b := report.Build(bare).Team.Utilisation; math.Abs(b-want) < 1e-4*want {
			t.Errorf("the wash changes nothing: %g", b)
		}
	}
	if asked < 8 {
		t.Errorf("only %d were asked", asked)
	}
}

const washRadius, washArm, washTorque, washMost = 0.1, 0.2, 0.016, 9.0

// washed is three or four quadrotors that grip a plate near its corners, upright, each yawed.
func washed(rng *rand.Rand) plan.Plan {
	p := plan.Blank()
	s := plan.BlankSolid()
	s.Shape, s.Size, s.Mass, s.At, s.Turn = plan.Plate, []float64{between(rng, 0.8, 1.4), between(rng, 0.7, 1.2)}, between(rng, 1, 2), vec.V3{}, vec.V3{}
	p.Payload.Solids = []plan.Solid{s}
	c := plan.BlankClass()
	c.Mass, c.Rotors, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust = 0.8, 4, washArm, washRadius, washMost, washTorque
	p.Vehicles = map[string]plan.Class{"q": c}
	corners := [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}
	for i := range 3 + rng.IntN(2) {
		m := plan.BlankMember()
		m.ID, m.Vehicle, m.Yaw, m.Hold.Kind = string(rune('A'+i)), "q", between(rng, 0, 90), plan.Rigid
		m.Attach = vec.V3{corners[i][0] * s.Size[0] / 2 * between(rng, 0.8, 1.3), corners[i][1] * s.Size[1] / 2 * between(rng, 0.8, 1.3), 0.2}
		p.Team = append(p.Team, m)
	}
	p.Near.Download = plan.Counted
	return p
}

// simplexed is the smallest t with Σ columns u = weight, 0 ≤ u ≤ t most, in standard form: u, the room under each bound, t.
func simplexed(p plan.Plan, load float64) (float64, bool) {
	const g = 9.80665
	kg, com := load, vec.V3{}
	for _, m := range p.Team {
		kg += p.Vehicles["q"].Mass
		com = com.Add(m.Attach.Scale(p.Vehicles["q"].Mass))
	}
	com = com.Scale(1 / kg)
	var columns [][6]float64
	size := p.Payload.Solids[0].Size
	for _, m := range p.Team {
		for j := range 4 {
			sin, cos := math.Sincos(m.Yaw*math.Pi/180 + math.Pi/4 + float64(j)*math.Pi/2) // (4.1)
			at := m.Attach.Add(vec.V3{washArm * cos, washArm * sin, 0}).Sub(com)
			part, x, y := strips(at[0]+com[0], at[1]+com[1], size[0]/2, size[1]/2)
			press := 1.17 * part / 2 // (22.2), (22.4)
			spin := washTorque * float64(1-j%2*2)
			columns = append(columns, [6]float64{2: 1 - press,
				3: at[1] - press*(y-com[1]), 4: -at[0] + press*(x-com[0]), 5: spin})
		}
	}
	n := len(columns)
	rows := []int{2, 3, 4, 5}
	a := mat.NewDense(len(rows)+n, 2*n+1, nil)
	b := make([]float64, len(rows)+n)
	b[0] = kg * g
	for j, c := range columns {
		for i, k := range rows {
			a.Set(i, j, c[k])
		}
		a.Set(len(rows)+j, j, 1)
		a.Set(len(rows)+j, n+j, 1)
		a.Set(len(rows)+j, 2*n, -washMost)
	}
	cost := make([]float64, 2*n+1)
	cost[2*n] = 1
	t, _, err := lp.Simplex(cost, a, b, 1e-10, nil)
	return t, err == nil
}

// strips is the part of the contracted wake about (x, y) on the plate −a…a, −b…b, and its centre, by strips across.
func strips(x, y, a, b float64) (part, cx, cy float64) {
	const n = 4000
	r := washRadius / math.Sqrt2
	left, right := math.Max(-a, x-r), math.Min(a, x+r)
	for k := range n {
		if left >= right {
			break
		}
		sin, cos := math.Sincos(math.Pi * ((float64(k)+0.5)/n - 0.5)) // finer towards the ends, where the edge is steep
		u, wide := (left+right)/2+(right-left)/2*sin, (right-left)/2*cos*math.Pi/n
		half := math.Sqrt(math.Max(0, r*r-(u-x)*(u-x)))
		lo, hi := math.Max(-b, y-half), math.Min(b, y+half)
		if hi > lo {
			d := wide * (hi - lo)
			part, cx, cy = part+d, cx+d*u, cy+d*(lo+hi)/2
		}
	}
	if part > 0 {
		cx, cy = cx/part, cy/part
	}
	return part / (math.Pi * r * r), cx, cy
}
