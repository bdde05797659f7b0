package rehearse

import "cohoist/core/vec"

// aim is what a vehicle on a cable is told for an instant.
type aim struct {
	place, velocity, acceleration, pull vec.V3
	heading                             float64
}

// between is the mark before a time, and how far the time is on the way to the next.
func (c *Score) between(t float64) (k int, s float64) {
	k = min(max(int(t/beat), 0), len(c.Marks)-1)
	return k, min(t/beat-float64(k), 1)
}

// mark is one of the marks; beyond the ends the last one there is.
func (c *Score) mark(k int) *Mark { return &c.Marks[min(max(k, 0), len(c.Marks)-1)] }

// cubic goes through b at s = 0 and d at s = 1, with the slopes of their neighbours, and tells its slope by a mark.
func cubic(a, b, d, e, s float64) (value, slope float64) {
	m0, m1 := (d-a)/2, (e-b)/2
	c2, c3 := 3*(d-b)-2*m0-m1, m0+m1-2*(d-b)
	return b + s*(m0+s*(c2+s*c3)), m0 + s*(2*c2+3*s*c3)
}

// aim reads the score between its marks: places by cubics through them, pulls straight.
func (c *Score) aim(i int, t float64) aim {
	k, s := c.between(t)
	now, next := c.mark(k), c.mark(k+1)
	a, b, d, e := &c.mark(k - 1).Places[i], &now.Places[i], &next.Places[i], &c.mark(k + 2).Places[i]
	out := aim{heading: now.Heading + s*(next.Heading-now.Heading)}
	for x := range 3 {
		p, v := cubic(a[x], b[x], d[x], e[x], s)
		out.place[x], out.velocity[x] = p, v/beat
		out.acceleration[x] = ((d[x]-2*b[x]+a[x])*(1-s) + (e[x]-2*d[x]+b[x])*s) / (beat * beat)
		out.pull[x] = now.Pulls[i][x] + s*(next.Pulls[i][x]-now.Pulls[i][x])
	}
	return out
}

// stand is what every vehicle that holds rigidly is told of the body for an instant.
type stand struct {
	place, velocity vec.V3     // of its centre of mass, level axes
	attitude        [4]float64 // body axes → level axes
	spin            vec.V3     // rad/s, body axes
	lift            vec.V3     // what all rotors of rigid holds give together, N, body axes
	grip            float64
	mark            int // thrusts are those of this mark and the next, so far between: of a lag ahead, as rotors are late by that
	part            float64
}

// stand reads the score between its marks, places and attitudes by cubics. The lifts are those of the marks.
func (c *Score) stand(lifts []vec.V3, t float64) stand {
	k, s := c.between(t)
	next := min(k+1, len(c.Marks)-1)
	a, b, d, e := c.mark(k-1), c.mark(k), c.mark(k+1), c.mark(k+2)
	out := stand{grip: b.Grip + s*(d.Grip-b.Grip)}
	for x := range 3 {
		p, v := cubic(a.Payload[x], b.Payload[x], d.Payload[x], e.Payload[x], s)
		out.place[x], out.velocity[x] = p, v/beat
		out.lift[x] = lifts[k][x] + s*(lifts[next][x]-lifts[k][x])
	}
	out.mark, out.part = c.between(t + motorLag)
	var change [4]float64
	before, after, last := like(a.Attitude, b.Attitude), like(d.Attitude, b.Attitude), like(e.Attitude, b.Attitude)
	for x := range 4 {
		out.attitude[x], change[x] = cubic(before[x], b.Attitude[x], after[x], last[x], s)
	}
	out.attitude = unit(out.attitude)
	turn := times(conjugate(out.attitude), change) // q̇ = ½ q (0, ω)
	out.spin = vec.V3{turn[1], turn[2], turn[3]}.Scale(2 / beat)
	return out
}

// At is where the score has the centre of mass of what moves as one at a time.
func (c *Score) At(t float64) vec.V3 {
	k, s := c.between(t)
	a, b := c.mark(k).Payload, c.mark(k+1).Payload
	return a.Add(b.Sub(a).Scale(s))
}
