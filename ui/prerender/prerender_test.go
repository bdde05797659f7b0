package prerender

import (
	"bytes"
	"testing"

	"github.com/vugu/vugu"
)

type fixed struct{ n *vugu.VGNode }

func (f fixed) Build(*vugu.BuildIn) *vugu.BuildOut {
	return &vugu.BuildOut{Out: []*vugu.VGNode{f.n}}
}

func TestValuesAreShown(t *testing.T) {
	in := &vugu.VGNode{Type: vugu.ElementNode, Data: "input", Prop: []vugu.VGProperty{{Key: "value", JSONVal: []byte(`"1 \"<b>\""`)}}}
	root := &vugu.VGNode{Type: vugu.ElementNode, Data: "div"}
	root.AppendChild(in)
	env, err := vugu.NewBuildEnv()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := Write(&b, env.RunBuild(&fixed{root}), "app"); err != nil {
		t.Fatal(err)
	}
	if want := `<div id="app"><input value="1 &#34;&lt;b&gt;&#34;"/></div>`; b.String() != want {
		t.Errorf("got  %s\nwant %s", b.String(), want)
	}
}
