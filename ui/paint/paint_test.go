package paint

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/vugu/vugu"
)

// element is what a browser would hold, changed only as vugu's renderer changes it.
type element struct {
	tag, text, inner string
	attrs            string
	kids             []*element
	drawn            int // how often it was written
}

// apply does what the renderer does with a frame: attributes are always written; children are left
// alone when there are none, else matched by position and the rest removed.
func apply(e *element, n *vugu.VGNode) {
	e.drawn++
	e.attrs = fmt.Sprint(n.Attr)
	if n.InnerHTML != nil {
		e.inner, e.kids = *n.InnerHTML, nil
		return
	}
	if n.FirstChild == nil {
		return
	}
	e.inner = ""
	i := 0
	for k := n.FirstChild; k != nil; k, i = k.NextSibling, i+1 {
		tag := k.Data
		if k.Type == vugu.TextNode {
			tag = "#text"
		}
		if i == len(e.kids) {
			e.kids = append(e.kids, &element{tag: tag})
		} else if e.kids[i].tag != tag {
			e.kids[i] = &element{tag: tag}
		}
		if k.Type == vugu.TextNode {
			e.kids[i].text = k.Data
			e.kids[i].drawn++
			continue
		}
		apply(e.kids[i], k)
	}
	e.kids = e.kids[:i]
}

func (e *element) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "<%s %s|%s|%s>", e.tag, e.attrs, e.text, e.inner)
	for _, k := range e.kids {
		b.WriteString(k.String())
	}
	return b.String() + "</>"
}

// tree makes a random tree out of few tags, texts and attributes, so that often parts are alike.
func tree(r *rand.Rand, depth int) *vugu.VGNode {
	if depth > 0 && r.IntN(4) == 0 {
		return &vugu.VGNode{Type: vugu.TextNode, Data: "t" + strconv.Itoa(r.IntN(2))}
	}
	n := &vugu.VGNode{Type: vugu.ElementNode, Data: []string{"div", "p"}[r.IntN(2)]}
	if r.IntN(2) == 0 {
		n.Attr = []vugu.VGAttribute{{Key: "class", Val: strconv.Itoa(r.IntN(2))}}
	}
	switch r.IntN(4) {
	case 0:
		h := []string{"", "x"}[r.IntN(2)]
		n.InnerHTML = &h
	case 1:
	default:
		for range r.IntN(4) {
			if depth < 4 {
				n.AppendChild(tree(r, depth+1))
			}
		}
	}
	return n
}

type fixed struct{ n *vugu.VGNode }

func (f fixed) Build(*vugu.BuildIn) *vugu.BuildOut {
	return &vugu.BuildOut{Out: []*vugu.VGNode{f.n}}
}

func build(t *testing.T, b vugu.Builder) *vugu.BuildResults {
	t.Helper()
	env, err := vugu.NewBuildEnv()
	if err != nil {
		t.Fatal(err)
	}
	return env.RunBuild(b)
}

// The screen after any run of frames is the screen of drawing the last build whole.
func TestFramesLeadToTheWholeTree(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for run := range 300 {
		var p Painter
		screen := &element{tag: "div"}
		for step := range 12 {
			n := tree(r, 0)
			n.Data = "div"
			apply(screen, p.Frame(build(t, &fixed{n})).Out.Out[0])
			whole := &element{tag: "div"}
			apply(whole, (&Painter{}).Frame(build(t, &fixed{n})).Out.Out[0])
			if a, b := screen.String(), whole.String(); a != b {
				t.Fatalf("run %d step %d:\non the screen %s\nit should be   %s", run, step, a, b)
			}
		}
	}
}

func TestUnchangedPartsAreNotDrawnAgain(t *testing.T) {
	view := func(last string) *vugu.VGNode {
		root := &vugu.VGNode{Type: vugu.ElementNode, Data: "div"}
		for i := range 3 {
			list := &vugu.VGNode{Type: vugu.ElementNode, Data: "ul"}
			for k := range 50 {
				li := &vugu.VGNode{Type: vugu.ElementNode, Data: "li"}
				text := strconv.Itoa(k)
				if i == 1 && k == 7 {
					text = last
				}
				li.AppendChild(&vugu.VGNode{Type: vugu.TextNode, Data: text})
				list.AppendChild(li)
			}
			root.AppendChild(list)
		}
		return root
	}
	var p Painter
	screen := &element{tag: "div"}
	apply(screen, p.Frame(build(t, &fixed{view("a")})).Out.Out[0])
	apply(screen, p.Frame(build(t, &fixed{view("b")})).Out.Out[0])
	if got := screen.kids[1].kids[7].kids[0].text; got != "b" {
		t.Errorf("the changed text is %q", got)
	}
	if n := screen.kids[0].kids[0].drawn; n != 1 {
		t.Errorf("an item of an unchanged list was drawn %d times", n)
	}
	if n := screen.kids[1].kids[3].kids[0].drawn; n != 1 {
		t.Errorf("an unchanged item of the changed list was drawn %d times", n)
	}
}

// An element that is not drawn again calls the handler of the newest build.
func TestHandlersAreTheNewest(t *testing.T) {
	called := ""
	view := func(name string) *vugu.VGNode {
		root := &vugu.VGNode{Type: vugu.ElementNode, Data: "div"}
		b := &vugu.VGNode{Type: vugu.ElementNode, Data: "button"}
		b.DOMEventHandlerSpecList = []vugu.DOMEventHandlerSpec{{EventType: "click", Func: func(vugu.DOMEvent) {
			if name == "boom" {
				panic("boom")
			}
			called = name
		}}}
		root.AppendChild(b)
		return root
	}
	var caught any
	p := Painter{Guard: func(r any) { caught = r }}
	onScreen := p.Frame(build(t, &fixed{view("first")})).Out.Out[0].FirstChild.DOMEventHandlerSpecList[0].Func
	p.Frame(build(t, &fixed{view("second")}))
	onScreen(nil)
	if called != "second" {
		t.Errorf("the handler of the %s build ran", called)
	}
	p.Frame(build(t, &fixed{view("boom")}))
	onScreen(nil)
	if caught != "boom" {
		t.Errorf("the panic went to %v", caught)
	}
}
