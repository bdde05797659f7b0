// Package prerender writes the page as HTML before the program runs. It stands apart because it needs an HTML
// parser, which the browser program must not carry.
package prerender

import (
	"io"
	"strconv"

	"github.com/vugu/vugu"
	"github.com/vugu/vugu/staticrender"

	"cohoist/ui/paint"
)

// Write writes a build as HTML, with the properties of inputs as attributes, so that the page
// shows its first view before the program runs. The mount gets the given id.
func Write(w io.Writer, br *vugu.BuildResults, id string) error {
	var p paint.Painter
	tree := p.Flatten(br)
	tree.Attr = append(tree.Attr, vugu.VGAttribute{Key: "id", Val: id})
	properties(tree)
	return staticrender.New(w).Render(&vugu.BuildResults{Out: &vugu.BuildOut{Out: []*vugu.VGNode{tree}}})
}

func properties(n *vugu.VGNode) {
	for _, q := range n.Prop {
		val := string(q.JSONVal)
		if s, err := strconv.Unquote(val); err == nil {
			val = s
		}
		switch {
		case val == "false":
		case val == "true":
			n.Attr = append(n.Attr, vugu.VGAttribute{Key: q.Key, Val: ""})
		case q.Key == "value" && n.Data == "textarea":
			n.AppendChild(&vugu.VGNode{Type: vugu.TextNode, Data: val})
		case q.Key == "value":
			n.Attr = append(n.Attr, vugu.VGAttribute{Key: q.Key, Val: val})
		}
	}
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		properties(k)
	}
}
