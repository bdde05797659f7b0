package paint

import (
	"strconv"

	"github.com/vugu/vugu"
)

// Sum is short for what a build shows and listens to: that of a page drawn before tells whether this build would draw the same.
func Sum(br *vugu.BuildResults) string {
	var p Painter
	return sum(p.Flatten(br))
}

func sum(n *vugu.VGNode) string {
	d := digest(14695981039346656037)
	d.node(n)
	return strconv.FormatUint(uint64(d), 36)
}

// digest is the FNV-1a hash of 64 bits.
type digest uint64

// text adds a text and a byte that no text has.
func (d *digest) text(s string) {
	x := uint64(*d)
	for i := range len(s) {
		x = (x ^ uint64(s[i])) * 1099511628211
	}
	*d = digest((x ^ 0xff) * 1099511628211)
}

// node adds all that same compares.
func (d *digest) node(n *vugu.VGNode) {
	d.text(strconv.Itoa(int(n.Type)))
	d.text(n.Namespace)
	d.text(n.Data)
	for _, a := range n.Attr {
		d.text(a.Key)
		d.text(a.Val)
	}
	d.text("properties")
	for _, q := range n.Prop {
		d.text(q.Key)
		d.text(string(q.JSONVal))
	}
	d.text("handlers")
	for _, h := range n.DOMEventHandlerSpecList {
		d.text(h.EventType)
	}
	if n.InnerHTML != nil {
		d.text("inner")
		d.text(*n.InnerHTML)
	}
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		d.node(k)
	}
	d.text("end")
}

// alive copies what a page drawn before lacks of a build: elements with event handlers or properties, as shells, with what
// leads there. nil: there is nothing.
func alive(n *vugu.VGNode) *vugu.VGNode {
	var kids []*vugu.VGNode
	found := len(n.DOMEventHandlerSpecList)+len(n.Prop) > 0
	some := false
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		c := alive(k)
		some = some || c != nil
		kids = append(kids, c)
	}
	if !found && !some {
		return nil
	}
	c := shell(n, false)
	if !some {
		return c
	}
	i := 0
	for k := n.FirstChild; k != nil; k, i = k.NextSibling, i+1 {
		if kids[i] == nil {
			kids[i] = shell(k, false)
		}
		c.AppendChild(kids[i])
	}
	return c
}
