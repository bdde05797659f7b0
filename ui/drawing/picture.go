package drawing

// Sheet draws elevation and plan, aligned, as one picture.
func (s *Scene) Sheet(f Frame, u Units, snaps []snap) (elevation, plan List) {
	return s.elevation(f, u, snaps), s.plan(f, u, snaps)
}

func (s *Scene) elevation(f Frame, u Units, snaps []snap) List {
	c := f.elevation()
	p := newPen(layers...)
	s.common(c, p, f.Force)
	c.centreLines(p, s)
	c.payloadLength(p, s, u)
	c.cableLengths(p, s, u)
	c.guides(p, s, snaps, rect{0, f.ElevTop, SheetWidth, f.ElevBottom})
	c.axes(p, s, Point{18, f.ElevBottom + axesBand - 12})
	p.text(textTitle, "Elevation", Point{8, 14})
	p.text(textSmallL, "from the side, along y", Point{74, 14})
	l := &labels{pen: p, within: rect{2, f.ElevTop, SheetWidth - 2, f.ElevBottom + axesBand}}
	if s.Wind.Norm() > 0 {
		at := Point{SheetWidth - 22, f.ElevTop - 7}
		c.wind(p, s, at, u)
		l.take(windBox(at))
	}
	c.massLabels(l, s, f.Force, u)
	c.names(l, s, false, f.Force)
	return p.done()
}

func (s *Scene) plan(f Frame, u Units, snaps []snap) List {
	c := f.plan()
	p := newPen(layers...)
	s.common(c, p, f.Force)
	c.centreLines(p, s)
	c.payloadWidth(p, s, f.Left, u)
	c.guides(p, s, snaps, rect{0, f.PlanTop, SheetWidth, f.PlanBottom})
	c.axes(p, s, Point{18, f.PlanBottom + barBand - 12})
	f.bars(p, u)
	p.text(textTitle, "Plan", Point{8, f.PlanTop - 6})
	p.text(textSmallL, "from above", Point{42, f.PlanTop - 6})
	l := &labels{pen: p, within: rect{2, f.PlanTop, SheetWidth - 2, f.PlanBottom + 14}}
	if s.Wind.Norm() > 0 {
		at := Point{SheetWidth - 22, f.PlanTop - 9}
		c.wind(p, s, at, u)
		l.take(windBox(at))
	}
	c.names(l, s, true, f.Force)
	return p.done()
}

// Turnable draws the view from any side.
func (s *Scene) Turnable(f Frame, azimuth, height float64, u Units) List {
	c := f.turned(azimuth, height)
	p := newPen(layers...)
	s.common(c, p, f.Force)
	c.axes(p, s, Point{30, TurnSize - 30})
	l := &labels{pen: p, within: rect{2, 2, TurnSize - 2, TurnSize - 2}}
	if s.Wind.Norm() > 0 {
		at := Point{TurnSize - 22, TurnSize - 22}
		c.wind(p, s, at, u)
		l.take(windBox(at))
	}
	c.names(l, s, true, f.Force)
	return p.done()
}

// common is what every view shows.
func (s *Scene) common(c Camera, p *pen, perN float64) {
	p.paste(s.keep.drawn(c, func() []Shape {
		q := newPen(payloadLayers...)
		c.solids(q, s.Bodies, s.PayMax.Sub(s.PayMin).Norm())
		return q.done()
	}))
	c.fleet(p, s)
	c.forces(p, s, perN)
}

func windBox(at Point) rect { return rect{at.X - 92, at.Y - 12, at.X + 14, at.Y + 7} }

// massLabels names the weight and the combined centre of mass.
func (c Camera) massLabels(l *labels, s *Scene, perN float64, u Units) {
	if !s.HasCOM {
		return
	}
	g := c.At(s.COM)
	l.take(rect{g.X - 8, g.Y - 8, g.X + 8, g.Y + 8})
	if long := s.Weight * perN; long > 3 && usable(s.Weight) {
		text := u.force(s.Weight)
		l.take(boxAt(Point{g.X + 8 + 3*float64(len(text)), g.Y + long}, text))
		l.pen.text(textForce, text, Point{g.X + 7, g.Y + max(long-1, 12)})
	}
	if s.HasTeam {
		t := c.At(s.TeamCOM)
		if dx, dy := t.X-g.X, t.Y-g.Y; dx*dx+dy*dy > 200 {
			l.pen.text(textSmallL, "team", Point{t.X + 8, t.Y + 3.5})
		}
	}
}
