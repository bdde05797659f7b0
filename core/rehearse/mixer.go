package rehearse

import (
	"cohoist/core/share"
	"cohoist/core/vec"
)

// demand is what a rigid team is asked for beside the plan: force along its full-thrust axis, N, and the moment about
// the body's centre of mass, N m, body axes.
type demand [4]float64

// mixer is what every rotor of the rigid holds does for a demand, found before the lift, (21.17). A vehicle keeps its own rows.
type mixer struct {
	rows [][]demand // of a vehicle's rotors: N for each N and N m; nil: on a cable
	yaw  float64    // the most moment about the vertical that is asked for, N m
	most float64    // N, of all rotors along the axis
}

// spread is the least Σ (Δu/u_max)² for a demand, (21.17). What no rotor can do is not asked for.
func spread(m *share.Model) mixer {
	var columns [][]demand
	var gram [4]demand
	out := mixer{rows: make([][]demand, len(m.Craft))}
	for i := range m.Craft {
		c := &m.Craft[i]
		var own []demand
		if c.Rigid {
			for _, r := range c.Rotors {
				turn := c.At.Sub(m.Body.COM).Cross(r.Axis).Add(r.Turn)
				b := demand{r.Axis.Dot(m.Axis), turn[0], turn[1], turn[2]}
				out.most += float64(b[0] * r.Max)
				for x := range 4 {
					for y := range 4 {
						gram[x][y] += float64(float64(b[x]*b[y]) * float64(r.Max*r.Max))
					}
				}
				own = append(own, b)
			}
		}
		columns = append(columns, own)
	}
	inv := pseudo(gram)
	least := 0.0
	for i := range m.Craft {
		for j, b := range columns[i] {
			most := m.Craft[i].Rotors[j].Max
			var row demand
			for x := range 4 {
				for y := range 4 {
					row[x] += float64(inv[x][y]*b[y]) * float64(most*most)
				}
			}
			out.rows[i] = append(out.rows[i], row)
			if y := max(row[3], -row[3]) / most; y > least {
				least = y
			}
		}
	}
	if least > 0 {
		out.yaw = yawShare / least
	}
	return out
}

// pseudo inverts a symmetric matrix of demands by elimination; what is asked for in vain has a row of nothing.
func pseudo(g [4]demand) (inv [4]demand) {
	full := g
	for x := range 4 {
		inv[x][x] = 1
	}
	for x := range 4 {
		if g[x][x] <= 1e-9*full[x][x] || full[x][x] == 0 {
			for y := range 4 {
				g[x][y], inv[x][y] = 0, 0
				g[y][x], inv[y][x] = 0, 0
			}
			continue
		}
		scale := 1 / g[x][x]
		for y := range 4 {
			g[x][y], inv[x][y] = g[x][y]*scale, inv[x][y]*scale
		}
		for z := range 4 {
			if f := g[z][x]; z != x && f != 0 {
				for y := range 4 {
					g[z][y] -= float64(f * g[x][y])
					inv[z][y] -= float64(f * inv[x][y])
				}
			}
		}
	}
	return inv
}

// push is what a vehicle's rotors do together about the body's centre of mass.
func push(m *share.Model, i int, u []float64) (p Push) {
	c := &m.Craft[i]
	arm := c.At.Sub(m.Body.COM)
	for j, r := range c.Rotors {
		p.Force = p.Force.Add(r.Axis.Scale(u[j]))
		p.Moment = p.Moment.Add(arm.Cross(r.Axis).Add(r.Turn).Scale(u[j])) // (5.1)
	}
	return p
}

// lifts is what all rotors of rigid holds give together at every mark, N, body axes.
func lifts(m *share.Model, c *Score) []vec.V3 {
	out := make([]vec.V3, len(c.Marks))
	for k := range c.Marks {
		for i, u := range c.Marks[k].Thrusts {
			if u != nil {
				out[k] = out[k].Add(push(m, i, u).Force)
			}
		}
	}
	return out
}
