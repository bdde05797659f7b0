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

// patch does what the page's script does with a patch.
func (e *element) patch(text string) {
	f := strings.Split(text, separator)
	for i := 0; i+3 < len(f); i += 4 {
		at := e
		if f[i] != "" {
			for _, k := range strings.Split(f[i], ",") {
				n, _ := strconv.Atoi(k)
				at = at.kids[n]
			}
		}
		n, _ := strconv.Atoi(f[i+2])
		switch value := f[i+3]; f[i+1] {
		case setAttr:
			at.attrs = fmt.Sprint([]vugu.VGAttribute{{Key: f[i+2], Val: value}}) // tree gives an element one at most
		case dropAttr:
			at.attrs = "[]"
		case setText:
			at.text = value
		case setInner:
			at.inner, at.kids = value, nil
		case trim:
			m, _ := strconv.Atoi(value)
			at.kids = at.kids[:m]
		case place:
			tag := value
			if tag == "" {
				tag = "#text"
			}
			k := &element{tag: tag}
			if tag != "#text" {
				k.attrs = "[]"
			}
			if n == len(at.kids) {
				at.kids = append(at.kids, k)
			} else {
				at.kids[n] = k
			}
		}
	}
}

// Patches lead where whole frames lead, and are empty when nothing changed.
func TestPatchesLeadToTheWholeTree(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	patches := 0
	for run := range 300 {
		var p Painter
		screen := &element{tag: "div"}
		for step := range 12 {
			n := tree(r, 0)
			n.Data = "div"
			frame, patch := p.Next(build(t, &fixed{n}))
			if frame != nil {
				apply(screen, frame.Out.Out[0])
			}
			if patch != "" {
				screen.patch(patch)
				patches++
			}
			whole := &element{tag: "div"}
			apply(whole, (&Painter{}).Frame(build(t, &fixed{n})).Out.Out[0])
			if a, b := screen.String(), whole.String(); a != b {
				t.Fatalf("run %d step %d:\non the screen %s\nit should be   %s", run, step, a, b)
			}
			if frame, again := p.Next(build(t, &fixed{n})); again != "" || frame != nil {
				t.Fatalf("run %d step %d: nothing changed, but the patch is %q", run, step, again)
			}
		}
	}
	if patches < 2500 {
		t.Errorf("only %d patches were tried", patches)
	}
}

// A text too long for the renderer comes by a patch, with the frame it belongs to and after it.
func TestALongTextComesByAPatch(t *testing.T) {
	view := func(h string, handler bool) *vugu.VGNode {
		n := &vugu.VGNode{Type: vugu.ElementNode, Data: "g", InnerHTML: &h, Attr: []vugu.VGAttribute{{Key: "d", Val: h}}}
		root := &vugu.VGNode{Type: vugu.ElementNode, Data: "div"}
		root.AppendChild(n)
		if handler {
			root.DOMEventHandlerSpecList = []vugu.DOMEventHandlerSpec{{EventType: "click", Func: func(vugu.DOMEvent) {}}}
		}
		return root
	}
	var p Painter
	screen := &element{tag: "div"}
	for i, h := range []string{strings.Repeat("a", 2*most), "short", strings.Repeat("b", 2*most), strings.Repeat("b", 2*most)} {
		frame, patch := p.Next(build(t, &fixed{view(h, i != 1)}))
		if frame != nil {
			apply(screen, frame.Out.Out[0])
			if n := frame.Out.Out[0].FirstChild; n != nil && long(n) {
				t.Errorf("step %d: the renderer is handed the long text", i)
			}
		}
		if patch != "" {
			screen.patch(patch)
		}
		if k := screen.kids[0]; k.inner != h || k.attrs != "[{ d "+h+"}]" {
			t.Errorf("step %d: %d and %d letters on the screen, want %d", i, len(k.inner), len(k.attrs), len(h))
		}
	}
}

// Where a handler comes the renderer draws, and the handlers of the build before are those that are called
// until it has.
func TestANewHandlerTakesAFrame(t *testing.T) {
	view := func(h bool) *vugu.VGNode {
		n := &vugu.VGNode{Type: vugu.ElementNode, Data: "button"}
		if h {
			n.DOMEventHandlerSpecList = []vugu.DOMEventHandlerSpec{{EventType: "click", Func: func(vugu.DOMEvent) {}}}
		}
		root := &vugu.VGNode{Type: vugu.ElementNode, Data: "div"}
		root.AppendChild(n)
		return root
	}
	var p Painter
	p.Next(build(t, &fixed{view(false)}))
	if frame, patch := p.Next(build(t, &fixed{view(true)})); frame == nil || patch != "" {
		t.Errorf("a new handler came as the patch %q", patch)
	}
	if frame, _ := p.Next(build(t, &fixed{view(true)})); frame != nil {
		t.Error("the same handlers took a frame")
	}
	if frame, _ := p.Next(build(t, &fixed{view(false)})); frame == nil {
		t.Error("a handler that goes took no frame")
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
