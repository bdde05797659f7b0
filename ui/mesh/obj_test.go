package mesh

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/mass"
	"cohoist/core/plan"
)

// A cube of 2 m from quadrilaterals, with comments, textures and corners named from the end.
const cube = `# a cube
o cube
v -1 -1 -1
v 1 -1 -1
v 1 1 -1
v -1 1 -1
v -1 -1 1 1.0
v 1 -1 1
v 1 1 1
v -1 1 1
vt 0 0
f 4 3 2 1
f 5/1 6/1 7/1 8/1
f 1//2 2//2 6//2 5//2
f 2 3 7 6
f 3 4 8 7
f -5 -8 -4 -1
`

func TestAnObjectIsTheCube(t *testing.T) {
	m, err := Read("Cube.OBJ", []byte(cube))
	if err != nil {
		t.Fatal(err)
	}
	if len(m.Vertices) != 8 || len(m.Triangles) != 12 {
		t.Fatalf("%d corners, %d triangles", len(m.Vertices), len(m.Triangles))
	}
	b := plan.BlankSolid()
	b.Shape, b.Mesh, b.Mass = plan.MeshBody, m, 3
	body, err := mass.Of(plan.Payload{Solids: []plan.Solid{b}})
	if err != nil {
		t.Fatal(err)
	}
	if want := 3.0 * (4 + 4) / 12; math.Abs(body.Inertia[0][0]-want) > 1e-12 { // m (b² + c²)/12
		t.Errorf("inertia %g, want %g", body.Inertia[0][0], want)
	}
}

func TestBadObjectsGetASentence(t *testing.T) {
	for text, want := range map[string]string{
		"v 1 2\n": "Line 1 is a corner", "v 1 2 x\n": "no number", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n": "Line 4 names the corner",
		"v 0 0 0\nf 1 1\n": "fewer than three", "v 0 0 0\nf 0 1 1\n": "names the corner", "": "no triangles", "v 1 2 NaN\n": "no number",
	} {
		if _, err := Read("a.obj", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

func FuzzObject(f *testing.F) {
	f.Add(cube)
	f.Add("v 1e999 0 0\nf -1 -2 -3")
	f.Fuzz(func(t *testing.T, text string) {
		m, err := Read("a.obj", []byte(text))
		if (m == nil) == (err == nil) {
			t.Fatalf("mesh %v, error %v", m, err)
		}
	})
}
