package chart

import (
	"github.com/vugu/vugu"

	"cohoist/ui/figure"
)

// pathData writes an SVG path.
type pathData struct{ b []byte }

func (p *pathData) put(op byte, x, y float64) *pathData {
	p.b = append(figure.Append(append(p.b, op), x), ' ')
	p.b = figure.Append(p.b, y)
	return p
}

func (p *pathData) move(x, y float64) *pathData { return p.put('M', x, y) }
func (p *pathData) line(x, y float64) *pathData { return p.put('L', x, y) }

func (p *pathData) rect(x, y, w, h float64) *pathData {
	p.move(x, y).line(x+w, y).line(x+w, y+h).line(x, y+h)
	p.b = append(p.b, 'Z')
	return p
}

// mark is a point of a series: a disc, a square or a triangle.
func (p *pathData) mark(series int, x, y float64) {
	const r = 2.8
	switch series {
	case 0:
		p.move(x-r, y)
		p.b = append(p.b, "a2.8 2.8 0 1 1 5.6 0a2.8 2.8 0 1 1 -5.6 0Z"...)
	case 1:
		p.rect(x-2.5, y-2.5, 5, 5)
	default:
		p.move(x, y-3.4).line(x+3.2, y+2.4).line(x-3.2, y+2.4)
		p.b = append(p.b, 'Z')
	}
}

func path(pic *vugu.VGNode, class string, d *pathData) {
	if len(d.b) > 0 {
		pic.AppendChild(figure.SVG("path", figure.Attrs{"class", class, "d", string(d.b)}))
	}
}

func label(pic *vugu.VGNode, class string, x, y float64, s string) {
	if s == "" || !figure.Finite(x) || !figure.Finite(y) {
		return
	}
	pic.AppendChild(figure.SVG("text", figure.Attrs{"class", class, "x", figure.Num(x), "y", figure.Num(y)}, figure.Text(s)))
}

// picture starts an SVG that reads as one image with a name and a description.
func picture(title, summary string, w, h float64) *vugu.VGNode {
	return figure.SVG("svg", figure.Attrs{"viewBox", "0 0 " + figure.Num(w) + " " + figure.Num(h), "role", "img", "aria-label", title},
		figure.SVG("desc", nil, figure.Text(summary)))
}

func frame(pic *vugu.VGNode) *vugu.VGNode {
	return figure.HTML("figure", figure.Attrs{"class", "ch"}, pic)
}
