package markup

import (
	"testing"

	"github.com/vugu/vugu"
)

type fixed struct{ n *vugu.VGNode }

func (f fixed) Build(*vugu.BuildIn) *vugu.BuildOut {
	return &vugu.BuildOut{Out: []*vugu.VGNode{f.n}}
}

func TestValuesTextsAndNames(t *testing.T) {
	in := &vugu.VGNode{Type: vugu.ElementNode, Data: "input", Prop: []vugu.VGProperty{
		{Key: "value", JSONVal: []byte(`"1 \"<b>\""`)}, {Key: "checked", JSONVal: []byte("true")}, {Key: "disabled", JSONVal: []byte("false")}}}
	area := &vugu.VGNode{Type: vugu.ElementNode, Data: "textarea", Prop: []vugu.VGProperty{{Key: "value", JSONVal: []byte(`"</textarea>"`)}}}
	p := &vugu.VGNode{Type: vugu.ElementNode, Data: "p", Attr: []vugu.VGAttribute{{Key: "title", Val: `"><script>`}}}
	p.AppendChild(&vugu.VGNode{Type: vugu.TextNode, Data: "a < b & c"})
	root := &vugu.VGNode{Type: vugu.ElementNode, Data: "div"}
	for _, n := range []*vugu.VGNode{in, area, p} {
		root.AppendChild(n)
	}
	env, err := vugu.NewBuildEnv()
	if err != nil {
		t.Fatal(err)
	}
	const want = `<div id="app"><input value="1 &#34;&lt;b&gt;&#34;" checked=""><textarea>&lt;/textarea&gt;</textarea>` +
		`<p title="&#34;&gt;&lt;script&gt;">a &lt; b &amp; c</p></div>`
	if got := Element(env.RunBuild(&fixed{root}), "app"); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
