// Package figure has what pictures are made of: elements of SVG and HTML as vugu nodes, numbers as
// attributes hold them, and round numbers for scales.
package figure

import "github.com/vugu/vugu"

// Attrs is a list of names and values, in turn.
type Attrs []string

// SVG makes an element of SVG.
func SVG(tag string, a Attrs, children ...*vugu.VGNode) *vugu.VGNode {
	n := HTML(tag, a, children...)
	n.Namespace = "svg"
	return n
}

// HTML makes an element of HTML.
func HTML(tag string, a Attrs, children ...*vugu.VGNode) *vugu.VGNode {
	n := &vugu.VGNode{Type: vugu.ElementNode, Data: tag, Attr: make([]vugu.VGAttribute, 0, len(a)/2)}
	for i := 0; i+1 < len(a); i += 2 {
		n.Attr = append(n.Attr, vugu.VGAttribute{Key: a[i], Val: a[i+1]})
	}
	for _, c := range children {
		n.AppendChild(c)
	}
	return n
}

// Text makes a text, which is never read as markup.
func Text(s string) *vugu.VGNode { return &vugu.VGNode{Type: vugu.TextNode, Data: s} }

// On adds a handler to an element and returns the element.
func On(n *vugu.VGNode, event string, f func(vugu.DOMEvent)) *vugu.VGNode {
	n.DOMEventHandlerSpecList = append(n.DOMEventHandlerSpecList, vugu.DOMEventHandlerSpec{EventType: event, Func: f})
	return n
}
