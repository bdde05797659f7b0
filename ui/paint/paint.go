// Package paint stands between vugu's build and vugu's renderer: it draws only what changed.
//
// The renderer writes every node it is given, but leaves the children of an element alone when the
// element comes without any. So the built tree is flattened (components and templates opened, event
// handlers guarded), compared with the tree that is on the screen, and every part that is the same
// is handed over as its shell only.
package paint

import (
	"slices"

	"github.com/vugu/vugu"
)

// Painter remembers what is on the screen.
type Painter struct {
	Guard  func(recovered any) // called with what an event handler panicked with
	Stands string              // the Sum of what is on the screen before the first frame; empty: not known
	last   *vugu.VGNode

	handlers map[string][]func(vugu.DOMEvent) // of the newest build, by place in the tree
}

// Forget makes the next Frame a whole one.
func (p *Painter) Forget() { p.last, p.Stands = nil, "" }

// Frame returns what the renderer must draw to bring the screen from the frame before to this build.
func (p *Painter) Frame(br *vugu.BuildResults) *vugu.BuildResults {
	return p.frame(p.Flatten(br))
}

func (p *Painter) frame(tree *vugu.VGNode) *vugu.BuildResults {
	var frame *vugu.VGNode
	if p.last != nil && sameTag(p.last, tree) {
		frame = shell(tree, false)
		diff(frame, p.last, tree)
	} else {
		frame = shell(tree, true)
	}
	p.last = tree
	return results(frame)
}

func results(frame *vugu.VGNode) *vugu.BuildResults {
	return &vugu.BuildResults{Out: &vugu.BuildOut{Out: []*vugu.VGNode{frame}}}
}

// most is how long a text the renderer takes in one piece, with room for what goes with it. Longer ones are
// left to a patch.
const most = 12 << 10

// long tells that the renderer does not take what an element holds.
func long(n *vugu.VGNode) bool { return n.InnerHTML != nil && len(*n.InnerHTML) > most }

func tooLong(a vugu.VGAttribute) bool { return len(a.Val) > most }

// diff gives to, a shell of now, the children that differ from those of old.
func diff(to, old, now *vugu.VGNode) {
	if now.InnerHTML != nil {
		if !long(now) && (old.InnerHTML == nil || *old.InnerHTML != *now.InnerHTML) {
			to.InnerHTML = now.InnerHTML
		}
		return
	}
	if old.InnerHTML != nil {
		adopt(to, now) // drawn as text before, as nodes now
		return
	}
	if now.FirstChild == nil {
		if old.FirstChild != nil {
			empty := ""
			to.InnerHTML = &empty
		}
		return
	}
	if sameChildren(old, now) {
		return
	}
	o := old.FirstChild
	for n := now.FirstChild; n != nil; n = n.NextSibling {
		c := shell(n, false)
		if o == nil || !sameTag(o, n) {
			c = shell(n, true)
		} else {
			diff(c, o, n)
		}
		to.AppendChild(c)
		if o != nil {
			o = o.NextSibling
		}
	}
}

// adopt draws all of now's children anew. Text drawn before is cleared node by node by the renderer.
func adopt(to, now *vugu.VGNode) {
	if now.FirstChild == nil {
		empty := ""
		to.InnerHTML = &empty
		return
	}
	for n := now.FirstChild; n != nil; n = n.NextSibling {
		to.AppendChild(shell(n, true))
	}
}

// shell copies a node, with its content when whole, else without.
func shell(n *vugu.VGNode, whole bool) *vugu.VGNode {
	c := *n
	c.Parent, c.PrevSibling, c.NextSibling = nil, nil, nil
	c.FirstChild, c.LastChild = nil, nil
	if i := slices.IndexFunc(n.Attr, tooLong); i >= 0 {
		c.Attr = slices.DeleteFunc(slices.Clone(n.Attr), tooLong)
	}
	if !whole || long(n) {
		c.InnerHTML = nil
		return &c
	}
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		c.AppendChild(shell(k, true))
	}
	return &c
}

func sameTag(a, b *vugu.VGNode) bool {
	return a.Type == b.Type && (a.Type != vugu.ElementNode || a.Data == b.Data && a.Namespace == b.Namespace)
}

func sameChildren(a, b *vugu.VGNode) bool {
	x, y := a.FirstChild, b.FirstChild
	for ; x != nil && y != nil; x, y = x.NextSibling, y.NextSibling {
		if !same(x, y) {
			return false
		}
	}
	return x == nil && y == nil
}

// same compares two nodes with all they hold; handlers by name only, as the newest is always called.
func same(a, b *vugu.VGNode) bool {
	if a.Type != b.Type || a.Data != b.Data || a.Namespace != b.Namespace ||
		len(a.Attr) != len(b.Attr) || len(a.Prop) != len(b.Prop) ||
		len(a.DOMEventHandlerSpecList) != len(b.DOMEventHandlerSpecList) ||
		(a.InnerHTML == nil) != (b.InnerHTML == nil) {
		return false
	}
	for i := range a.Attr {
		if a.Attr[i] != b.Attr[i] {
			return false
		}
	}
	for i := range a.Prop {
		if a.Prop[i].Key != b.Prop[i].Key || string(a.Prop[i].JSONVal) != string(b.Prop[i].JSONVal) {
			return false
		}
	}
	for i := range a.DOMEventHandlerSpecList {
		if a.DOMEventHandlerSpecList[i].EventType != b.DOMEventHandlerSpecList[i].EventType {
			return false
		}
	}
	if a.InnerHTML != nil && *a.InnerHTML != *b.InnerHTML {
		return false
	}
	return sameChildren(a, b)
}
