package drawing

import "github.com/vugu/vugu"

// An attrs is a list of names and values, in turn.
type attrs []string

func svg(tag string, a attrs, children ...*vugu.VGNode) *vugu.VGNode {
	n := html(tag, a, children...)
	n.Namespace = "svg"
	return n
}

func html(tag string, a attrs, children ...*vugu.VGNode) *vugu.VGNode {
	n := &vugu.VGNode{Type: vugu.ElementNode, Data: tag, Attr: make([]vugu.VGAttribute, 0, len(a)/2)}
	for i := 0; i+1 < len(a); i += 2 {
		n.Attr = append(n.Attr, vugu.VGAttribute{Key: a[i], Val: a[i+1]})
	}
	for _, c := range children {
		n.AppendChild(c)
	}
	return n
}

func text(s string) *vugu.VGNode { return &vugu.VGNode{Type: vugu.TextNode, Data: s} }

func on(n *vugu.VGNode, event string, f func(vugu.DOMEvent)) *vugu.VGNode {
	n.DOMEventHandlerSpecList = append(n.DOMEventHandlerSpecList, vugu.DOMEventHandlerSpec{EventType: event, Func: f})
	return n
}

// group turns a display list into one <g>, hidden from screen readers: the figure has its words.
func group(l List) *vugu.VGNode {
	g := svg("g", attrs{"aria-hidden", "true"})
	for _, s := range l {
		if s.Text == "" {
			d := s.d
			if d == "" {
				d = data(s.Path)
			}
			g.AppendChild(svg("path", attrs{"class", s.Class, "d", d}))
			continue
		}
		a := attrs{"class", s.Class, "x", str(s.At.X), "y", str(s.At.Y)}
		if s.Slope != 0 {
			a = append(a, "transform", "rotate("+str(s.Slope)+" "+str(s.At.X)+" "+str(s.At.Y)+")")
		}
		g.AppendChild(svg("text", a, text(s.Text)))
	}
	return g
}
