package paint

import (
	"encoding/binary"
	"strings"

	"github.com/vugu/vugu"
)

// Flatten opens the components and templates of a build into one tree, drops the white space that
// only lays out the source, joins texts side by side, and puts the event handlers in their places.
func (p *Painter) Flatten(br *vugu.BuildResults) *vugu.VGNode {
	p.handlers = map[string][]func(vugu.DOMEvent){}
	return p.flat(br, br.Out.Out[0], nil)
}

func (p *Painter) flat(br *vugu.BuildResults, n *vugu.VGNode, path []byte) *vugu.VGNode {
	for n.Component != nil {
		n = br.ResultFor(n.Component).Out[0]
	}
	c := *n
	c.Parent, c.PrevSibling, c.NextSibling, c.FirstChild, c.LastChild = nil, nil, nil, nil, nil
	if len(n.DOMEventHandlerSpecList) > 0 {
		c.DOMEventHandlerSpecList = p.place(n.DOMEventHandlerSpecList, string(path))
	}
	p.children(br, n, &c, path, 0)
	return &c
}

// children appends what n holds to the node to, which has so many children already, and returns how
// many it has then.
func (p *Painter) children(br *vugu.BuildResults, n, to *vugu.VGNode, path []byte, count int) int {
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		switch {
		case k.IsTemplate():
			count = p.children(br, k, to, path, count)
		case k.Type == vugu.CommentNode, k.Type == vugu.TextNode && (k.Data == "" || layout(k)):
		case k.Type == vugu.TextNode && to.LastChild != nil && to.LastChild.Type == vugu.TextNode:
			to.LastChild.Data += k.Data // one text, as a browser reads it from a file
		default:
			to.AppendChild(p.flat(br, k, binary.AppendUvarint(path, uint64(count))))
			count++
		}
	}
	return count
}

// place guards handlers, and makes them those that the newest build has at this place: an element
// that was not drawn again still calls today's handler, not yesterday's.
func (p *Painter) place(list []vugu.DOMEventHandlerSpec, path string) []vugu.DOMEventHandlerSpec {
	out := make([]vugu.DOMEventHandlerSpec, len(list))
	now := make([]func(vugu.DOMEvent), len(list))
	for i, h := range list {
		now[i] = h.Func
		h.Func = func(e vugu.DOMEvent) {
			defer p.recover()
			if today := p.handlers[path]; i < len(today) {
				today[i](e)
			}
		}
		out[i] = h
	}
	p.handlers[path] = now
	return out
}

func (p *Painter) recover() {
	if r := recover(); r != nil {
		if p.Guard == nil {
			panic(r)
		}
		p.Guard(r)
	}
}

// layout says that a text is only the line break and indent at the start or end of an element, or
// lies between blocks, where a browser shows nothing of it.
func layout(n *vugu.VGNode) bool {
	if !strings.Contains(n.Data, "\n") || strings.TrimSpace(n.Data) != "" {
		return false
	}
	return n.PrevSibling == nil || n.NextSibling == nil || block[n.PrevSibling.Data] || block[n.NextSibling.Data]
}

// block are the elements around which white space does not show.
var block = map[string]bool{"div": true, "section": true, "header": true, "footer": true, "main": true, "p": true,
	"h1": true, "h2": true, "h3": true, "ul": true, "ol": true, "li": true, "dl": true, "dt": true, "dd": true,
	"table": true, "thead": true, "tbody": true, "tr": true, "td": true, "th": true, "details": true, "summary": true,
	"fieldset": true, "legend": true, "nav": true, "figure": true, "option": true, "svg": true, "g": true, "rect": true,
	"line": true, "path": true, "circle": true, "text": true, "aside": true}
