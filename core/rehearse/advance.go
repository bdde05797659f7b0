package rehearse

import "cohoist/core/vec"

// Advance flies one tick of the motor commands, 1/600 s.
func (r *Rehearsal) Advance() {
	w := r.World
	if f := r.fail; f != nil && w.Time >= f.Time-1e-9 && f.Vehicle >= 0 && f.Vehicle < len(r.crew) {
		c := &r.crew[f.Vehicle]
		c.failed, c.pilot.failed = true, true
		if c.line >= 0 {
			w.Lines[c.line].Cut = f.Cut
		}
	}
	if r.ticks%int(motorRate/placeRate) == 0 {
		r.places()
	}
	if r.m.Rigid {
		r.rotors()
	}
	for i := range r.crew {
		if c := &r.crew[i]; c.holder == nil {
			w.Bodies[c.body].target = c.pilot.motors(&w.Poses[c.body])
		}
	}
	for range r.steps {
		w.Step(1 / (motorRate * float64(r.steps)))
	}
	r.ticks++
	w.Time = float64(r.ticks) / motorRate // no rounding adds up
}

// places runs the position loops.
func (r *Rehearsal) places() {
	w := r.World
	var s stand
	if r.m.Rigid {
		s = r.Score.stand(r.lifts, w.Time)
	}
	for i := range r.crew {
		c := &r.crew[i]
		if c.holder != nil {
			c.holder.place(&w.Poses[0], s)
			continue
		}
		r.others = r.others[:0]
		for j := range r.crew {
			if o := &r.crew[j]; j != i && o.holder == nil {
				r.others = append(r.others, w.Poses[o.body].At)
			} else if j != i {
				r.others = append(r.others, w.place(0, r.m.Craft[j].At.Sub(r.m.Body.COM)))
			}
		}
		c.pilot.place(&w.Poses[c.body], r.feel(i), r.others, r.aim(i), r.m.Plan.Limits.Separation)
	}
}

// rotors tells those of the rigid holds what to do, and lets them follow as they will by the end of the tick.
func (r *Rehearsal) rotors() {
	b := &r.World.Bodies[0]
	b.target = Push{}
	for i := range r.crew {
		h := r.crew[i].holder
		if h == nil {
			continue
		}
		if r.crew[i].failed {
			clear(h.target)
		} else {
			h.motors(&r.World.Poses[0])
			k := h.told.mark
			h.give(r.Score.mark(k).Thrusts[i], r.Score.mark(k + 1).Thrusts[i], r.m.Craft[i].Rotors)
		}
		b.target.add(push(r.m, i, h.target))
		h.follow(r.left)
	}
}

// aim is what the score tells a vehicle now, its line stretched by the planned pull.
func (r *Rehearsal) aim(i int) aim {
	a, c := r.Score.aim(i, r.World.Time), &r.crew[i]
	short := (c.most - a.pull.Norm()) / r.World.Lines[c.line].Stiffness
	a.place = a.place.Sub(a.pull.Unit().Scale(short))
	return a
}

// feel is the line's pull on a vehicle, N, level axes.
func (r *Rehearsal) feel(i int) vec.V3 {
	w, c := r.World, &r.crew[i]
	return w.place(0, w.Lines[c.line].AtA).Sub(w.Poses[c.body].At).Unit().Scale(w.Tension[c.line])
}

// centre is where a vehicle is, and up the direction of its thrust axis, level axes.
func (r *Rehearsal) centre(i int) (at, up vec.V3) {
	c := &r.crew[i]
	p := &r.World.Poses[c.body]
	turn := Matrix(p.Attitude)
	if c.holder == nil {
		return p.At, vec.V3{turn[0][2], turn[1][2], turn[2][2]}
	}
	axes := &r.m.Craft[i].Axes
	return p.At.Add(turn.Mul(r.m.Craft[i].At.Sub(r.m.Body.COM))), turn.Mul(vec.V3{axes[0][2], axes[1][2], axes[2][2]})
}

// used is the thrust of a vehicle over what it has; of a rigid hold that of its worst rotor, (5.5).
func (r *Rehearsal) used(i int) float64 {
	c, craft := &r.crew[i], &r.m.Craft[i]
	if c.holder == nil {
		return r.World.Bodies[c.body].push.Force[2] / craft.Vehicle.ThrustMax
	}
	most := 0.0
	for j, u := range c.holder.thrust {
		most = max(most, u/craft.Rotors[j].Max)
	}
	return most
}

// tension is the pull of a vehicle's line, N; NaN: it has none.
func (r *Rehearsal) tension(i int) float64 {
	if c := &r.crew[i]; c.line >= 0 {
		return r.World.Tension[c.line]
	}
	return nan
}
