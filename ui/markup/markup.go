// Package markup writes built components as HTML.
package markup

import (
	"html"
	"strconv"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/ui/paint"
)

// Text is text as HTML.
func Text(s string) string { return html.EscapeString(s) }

// Element is a built component as HTML, with the properties of inputs as attributes. An id, when given, goes
// on its outermost element.
func Element(br *vugu.BuildResults, id string) string {
	var p paint.Painter
	tree := p.Flatten(br)
	if id != "" {
		tree.Attr = append(tree.Attr, vugu.VGAttribute{Key: "id", Val: id})
	}
	var b strings.Builder
	write(&b, tree)
	return b.String()
}

// void are the elements without an end tag.
var void = map[string]bool{"br": true, "hr": true, "img": true, "input": true, "link": true, "meta": true}

func write(b *strings.Builder, n *vugu.VGNode) {
	if n.Type != vugu.ElementNode {
		b.WriteString(html.EscapeString(n.Data))
		return
	}
	b.WriteString("<" + n.Data)
	for _, a := range n.Attr {
		attribute(b, a.Key, a.Val)
	}
	inner := property(b, n)
	b.WriteByte('>')
	if void[n.Data] {
		return
	}
	b.WriteString(inner)
	if n.InnerHTML != nil {
		b.WriteString(*n.InnerHTML)
	}
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		write(b, k)
	}
	b.WriteString("</" + n.Data + ">")
}

func attribute(b *strings.Builder, key, val string) {
	b.WriteString(" " + key + `="` + html.EscapeString(val) + `"`)
}

// property writes the properties of an element as attributes, and returns what stands inside a text area.
func property(b *strings.Builder, n *vugu.VGNode) (inner string) {
	for _, q := range n.Prop {
		val := string(q.JSONVal)
		if s, err := strconv.Unquote(val); err == nil {
			val = s
		}
		switch {
		case val == "false":
		case val == "true":
			attribute(b, q.Key, "")
		case q.Key == "value" && n.Data == "textarea":
			inner = html.EscapeString(val)
		case q.Key == "value":
			attribute(b, q.Key, val)
		}
	}
	return inner
}
