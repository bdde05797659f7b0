package paint

import (
	"strconv"
	"strings"

	"github.com/vugu/vugu"
)

// The steps of a patch. Each is four fields: where, what, key, value; where is the way from the mount
// down by child numbers, "3,0,12".
const (
	setAttr   = "a"
	dropAttr  = "d"
	setProp   = "p" // value as JSON
	setText   = "t"
	setInner  = "h" // value is HTML
	trim      = "n" // children from number value on go away
	place     = "x" // child number key becomes a new element (value) or, with no value, a text
	separator = "\x1f"
)

// Next brings the screen to this build: by a frame for the renderer, unless it is nil, and then by a patch,
// a text for the page's script. A frame is needed where event handlers come or go.
func (p *Painter) Next(br *vugu.BuildResults) (frame *vugu.BuildResults, patch string) {
	old, tree := p.last, p.Flatten(br)
	w := writer{}
	if old != nil && sameTag(old, tree) && w.element(old, tree) {
		p.last = tree
		return nil, w.out.String()
	}
	if old == nil && p.Stands != "" && sum(tree) == p.Stands {
		p.last = tree
		if tree = alive(tree); tree == nil {
			return nil, ""
		}
		return results(tree), ""
	}
	w = writer{}
	w.rest(tree)
	return p.frame(tree), w.out.String()
}

// rest writes what a frame leaves out.
func (w *writer) rest(n *vugu.VGNode) {
	for _, a := range n.Attr {
		if tooLong(a) {
			w.step(setAttr, a.Key, a.Val)
		}
	}
	if long(n) {
		w.step(setInner, "", *n.InnerHTML)
		return
	}
	i := 0
	for k := n.FirstChild; k != nil; k, i = k.NextSibling, i+1 {
		w.down(i, func() { w.rest(k) })
	}
}

// down goes to the child number i and back.
func (w *writer) down(i int, f func()) {
	length := len(w.way)
	if length > 0 {
		w.way = append(w.way, ',')
	}
	w.way = strconv.AppendInt(w.way, int64(i), 10)
	f()
	w.way = w.way[:length]
}

// writer writes the steps in the order of the tree.
type writer struct {
	out strings.Builder
	way []byte
}

func (w *writer) step(what, key, value string) {
	if w.out.Len() > 0 {
		w.out.WriteString(separator)
	}
	w.out.Write(w.way)
	for _, s := range []string{what, key, value} {
		w.out.WriteString(separator)
		w.out.WriteString(s)
	}
}

// element writes what turns an element of the screen, nil for one just placed, into now. It tells whether
// a patch can: event handlers are the renderer's.
func (w *writer) element(old, now *vugu.VGNode) bool {
	if old == nil {
		old = &vugu.VGNode{}
	}
	if len(old.DOMEventHandlerSpecList) != len(now.DOMEventHandlerSpecList) {
		return false
	}
	for i, h := range now.DOMEventHandlerSpecList {
		if h.EventType != old.DOMEventHandlerSpecList[i].EventType {
			return false
		}
	}
	w.attributes(old, now)
	for i, q := range now.Prop {
		if i >= len(old.Prop) || old.Prop[i].Key != q.Key || string(old.Prop[i].JSONVal) != string(q.JSONVal) {
			w.step(setProp, q.Key, string(q.JSONVal))
		}
	}
	return w.inside(old, now)
}

func (w *writer) attributes(old, now *vugu.VGNode) {
	if len(old.Attr) == len(now.Attr) { // most often the same, in the same order
		same := true
		for i := range now.Attr {
			same = same && old.Attr[i].Key == now.Attr[i].Key
		}
		if same {
			for i, a := range now.Attr {
				if a.Val != old.Attr[i].Val {
					w.step(setAttr, a.Key, a.Val)
				}
			}
			return
		}
	}
	for _, a := range old.Attr {
		if _, ok := attr(now, a.Key); !ok {
			w.step(dropAttr, a.Key, "")
		}
	}
	for _, a := range now.Attr {
		if v, ok := attr(old, a.Key); !ok || v != a.Val {
			w.step(setAttr, a.Key, a.Val)
		}
	}
}

func attr(n *vugu.VGNode, key string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val, true
		}
	}
	return "", false
}

func (w *writer) inside(old, now *vugu.VGNode) bool {
	if now.InnerHTML != nil {
		if old.InnerHTML == nil || *old.InnerHTML != *now.InnerHTML {
			w.step(setInner, "", *now.InnerHTML)
		}
		return true
	}
	o := old.FirstChild
	if old.InnerHTML != nil {
		w.step(setInner, "", "")
	}
	i := 0
	for n := now.FirstChild; n != nil; n, i = n.NextSibling, i+1 {
		if !w.child(i, o, n) {
			return false
		}
		if o != nil {
			o = o.NextSibling
		}
	}
	if o != nil {
		w.step(trim, "", strconv.Itoa(i))
	}
	return true
}

// child writes the child number i.
func (w *writer) child(i int, old, now *vugu.VGNode) bool {
	if old == nil || !sameTag(old, now) {
		name := ""
		if now.Type == vugu.ElementNode {
			name = now.Data
			if now.Namespace != "" {
				name = now.Namespace + ":" + name
			}
		}
		w.step(place, strconv.Itoa(i), name)
		old = nil
	}
	ok := true
	w.down(i, func() {
		switch {
		case now.Type == vugu.ElementNode:
			ok = w.element(old, now)
		case old == nil || old.Data != now.Data:
			w.step(setText, "", now.Data)
		}
	})
	return ok
}
