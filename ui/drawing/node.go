package drawing

import (
	"github.com/vugu/vugu"

	"cohoist/ui/figure"
)

// group turns a display list into one <g>, hidden from screen readers: the figure has its words.
func group(l List) *vugu.VGNode {
	g := figure.SVG("g", figure.Attrs{"aria-hidden", "true"})
	for _, s := range l {
		if s.Text == "" {
			d := s.d
			if d == "" {
				d = data(s.Path)
			}
			g.AppendChild(figure.SVG("path", figure.Attrs{"class", s.Class, "d", d}))
			continue
		}
		a := figure.Attrs{"class", s.Class, "x", figure.Num(s.At.X), "y", figure.Num(s.At.Y)}
		if s.Slope != 0 {
			a = append(a, "transform", "rotate("+figure.Num(s.Slope)+" "+figure.Num(s.At.X)+" "+figure.Num(s.At.Y)+")")
		}
		g.AppendChild(figure.SVG("text", a, figure.Text(s.Text)))
	}
	return g
}
