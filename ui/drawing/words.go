package drawing

import (
	"strings"

	"github.com/vugu/vugu"

	"cohoist/ui/figure"
)

// key states the projection and what the signs mean.
func (v *View) key() *vugu.VGNode {
	return figure.HTML("p", figure.Attrs{"class", "dw-key"}, figure.Text(strings.Join(v.scene.signs(), " ")))
}

// signs explains what the picture shows, and only that.
func (s *Scene) signs() []string {
	out := []string{"First-angle projection, to scale: the plan lies below the elevation."}
	cable, rigid, over, forces := false, false, false, false
	for _, c := range s.Craft {
		cable, rigid = cable || c.Cable, rigid || !c.Cable
		over, forces = over || s.Over(c), forces || c.HasForce
	}
	switch {
	case cable && rigid:
		out = append(out, "Ring: a cable's attachment. Square: a rigid hold.")
	case cable:
		out = append(out, "Ring: attachment of a cable.")
	case rigid:
		out = append(out, "Square: rigid hold.")
	}
	if s.HasCOM {
		t := "Quartered circle: centre of mass of the payload"
		if s.HasTeam {
			t += "; the small one: of payload and vehicles together"
		}
		out = append(out, t+".")
	}
	if forces {
		out = append(out, "Arrows: force on the payload, to the scale of the force bar.")
	}
	if over {
		out = append(out, "Eight-sided frame: over the accepted utilisation of "+percent(s.Limit)+".")
	}
	if len(s.Craft) > craftDrawn {
		out = append(out, "Only the first "+whole(craftDrawn)+" of "+whole(len(s.Craft))+" vehicles are drawn.")
	}
	if len(s.Missing) > 0 {
		n := s.Missing[:min(3, len(s.Missing))]
		t := "Not drawn: " + strings.Join(n, "; ")
		if len(s.Missing) > len(n) {
			t += "; and " + whole(len(s.Missing)-len(n)) + " more"
		}
		out = append(out, t+".")
	}
	return out
}

// hint says what can be done with the drawing on a screen.
func (v *View) hint() *vugu.VGNode {
	t := ""
	if len(v.handles) > 0 {
		t = "Drag attachments, vehicles or the centre of mass; a point catches on edges, centre lines and its neighbours' lines unless Alt is held."
	}
	return figure.HTML("p", figure.Attrs{"class", "dw-hint"}, figure.Text(t))
}

func (v *View) inWords() *vugu.VGNode {
	open := "false"
	a := figure.Attrs{"id", "dw-words", "class", "dw-words"}
	if v.words {
		open = "true"
	} else {
		a = append(a, "hidden", "hidden")
	}
	b := figure.HTML("button", figure.Attrs{"type", "button", "class", "dw-words-button", "aria-expanded", open, "aria-controls", "dw-words"},
		figure.Text("The drawing in words"))
	figure.On(b, "click", func(vugu.DOMEvent) { v.words = !v.words })
	return figure.HTML("div", figure.Attrs{"class", "dw-in-words"}, b, figure.HTML("p", a, figure.Text(v.scene.Words(v.Units))))
}

// Vehicles told one by one in the drawing in words.
const told = 24

// Words tells what the drawing shows.
func (s *Scene) Words(u Units) string {
	var b strings.Builder
	switch {
	case s.HasPay:
		d := s.PayMax.Sub(s.PayMin)
		b.WriteString("The payload is " + u.length(d[0]) + " long, " + u.length(d[1]) + " wide and " + u.length(d[2]) + " high")
	default:
		b.WriteString("The payload has no dimensions yet")
	}
	if s.HasCOM {
		c := s.Turn.T().Mul(s.COM)
		b.WriteString("; its centre of mass is at x " + u.place(c[0]) + ", y " + u.place(c[1]) + ", z " + u.place(c[2]))
	}
	if usable(s.Weight) {
		b.WriteString("; it weighs " + u.force(s.Weight))
	}
	b.WriteString(".")
	if s.Lean > 0.05 {
		b.WriteString(" The team leans by " + u.show(s.Lean, Unit{"°", 1}) + " into the wind.")
	}
	if w := s.Wind.Norm(); w > 0 {
		b.WriteString(" Wind " + u.show(w, Unit{"m/s", 1}) + ".")
	}
	for i, c := range s.Craft {
		if i == told {
			b.WriteString(" And " + whole(len(s.Craft)-told) + " more vehicles.")
			break
		}
		s.tell(&b, i, c, u)
	}
	return b.String()
}

func (s *Scene) tell(b *strings.Builder, i int, c Craft, u Units) {
	a := s.attach(i)
	where := "x " + u.place(a[0]) + ", y " + u.place(a[1]) + ", z " + u.place(a[2])
	if c.Cable {
		b.WriteString(" Vehicle " + c.ID + " hangs on to " + where + " by a cable of " + u.length(length(c)))
		if n := length(c); n > 0 {
			if tilt := angle(c.Centre.Sub(c.Attach)); tilt > 0.05 {
				b.WriteString(", " + u.show(tilt, Unit{"°", 1}) + " from the vertical")
			}
		}
	} else {
		b.WriteString(" Vehicle " + c.ID + " is held rigidly at " + where)
	}
	if f := c.Force.Norm(); c.HasForce {
		b.WriteString("; it pulls the payload with " + u.force(f))
	}
	if q := percent(c.Use); q != "" {
		b.WriteString("; utilisation " + q)
		if s.Over(c) {
			b.WriteString(", over the accepted " + percent(s.Limit))
		}
	}
	b.WriteString(".")
}
