package paint

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/vugu/vugu"
)

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
