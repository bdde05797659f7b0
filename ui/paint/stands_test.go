package paint

import (
	"math/rand/v2"
	"testing"

	"github.com/vugu/vugu"
)

// A page that stands is left as it is, but for handlers and properties; another one is drawn whole.
func TestWhatStandsIsLeft(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	for run := range 300 {
		n := tree(r, 0)
		n.Data = "div"
		listener(r, n)
		br := build(t, &fixed{n})
		screen := &element{tag: "div"}
		apply(screen, (&Painter{}).Frame(br).Out.Out[0])
		before, drawn := screen.String(), screen.count()
		p := Painter{Stands: Sum(br)}
		frame, patch := p.Next(br)
		if patch != "" {
			t.Fatalf("run %d: a patch %q", run, patch)
		}
		if frame != nil {
			apply(screen, frame.Out.Out[0])
		}
		if after := screen.String(); after != before {
			t.Fatalf("run %d:\nbefore %s\nafter  %s", run, before, after)
		}
		if n := screen.count() - drawn; n > drawn {
			t.Errorf("run %d: %d of %d were drawn again", run, n, drawn)
		}
		if frame, _ := (&Painter{Stands: "other"}).Next(br); frame == nil || size(frame.Out.Out[0]) != size(p.last) {
			t.Fatalf("run %d: a page of another sum was not drawn whole", run)
		}
	}
}

// Two sums are the same where two trees are.
func TestSumTellsTreesApart(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	equal := 0
	for run := range 20000 {
		a, b := tree(r, 2), tree(r, 2)
		alike := same(a, b)
		if alike != (sum(a) == sum(b)) {
			t.Fatalf("run %d: same %v, sums %s and %s", run, alike, sum(a), sum(b))
		}
		if alike {
			equal++
		}
	}
	if equal < 100 {
		t.Errorf("only %d pairs were the same", equal)
	}
}

// listener puts handlers on some elements.
func listener(r *rand.Rand, n *vugu.VGNode) {
	if n.Type == vugu.ElementNode && r.IntN(4) == 0 {
		n.DOMEventHandlerSpecList = []vugu.DOMEventHandlerSpec{{EventType: "click", Func: func(vugu.DOMEvent) {}}}
	}
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		listener(r, k)
	}
}

func (e *element) count() int {
	n := e.drawn
	for _, k := range e.kids {
		n += k.count()
	}
	return n
}

func size(n *vugu.VGNode) int {
	s := 1
	for k := n.FirstChild; k != nil; k = k.NextSibling {
		s += size(k)
	}
	return s
}
