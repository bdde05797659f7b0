package mesh

import (
	"encoding/binary"
	"math"
	"strings"
	"testing"
)

// tetra is the tetrahedron between the origin and the unit points of the axes.
const tetra = `solid tetra
facet normal 0 0 -1
 outer loop
  vertex 0 0 0
  vertex 0 1 0
  vertex 1 0 0
 endloop
endfacet
facet normal 0 -1 0
 outer loop
  vertex 0 0 0
  vertex 1 0 0
  vertex 0 0 1
 endloop
endfacet
facet normal -1 0 0
 outer loop
  vertex 0 0 0
  vertex 0 0 1
  vertex 0 1 0
 endloop
endfacet
facet normal 1 1 1
 outer loop
  vertex 1 0 0
  vertex 0 1 0
  vertex 0 0 1
 endloop
endfacet
endsolid tetra
`

// packed is a text file's mesh as a binary file.
func packed(t *testing.T) []byte {
	m, err := Read("a.stl", []byte(tetra))
	if err != nil {
		t.Fatal(err)
	}
	out := make([]byte, 80)
	copy(out, "solid looks like text and is not") // some writers do this
	out = binary.LittleEndian.AppendUint32(out, uint32(len(m.Triangles)))
	for _, f := range m.Triangles {
		out = append(out, make([]byte, 12)...)
		for _, i := range f {
			for _, x := range m.Vertices[i] {
				out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(x)))
			}
		}
		out = append(out, 0, 0)
	}
	return out
}

func TestBothFormsGiveTheSameMesh(t *testing.T) {
	a, err := Read("a.stl", []byte(tetra))
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Vertices) != 4 || len(a.Triangles) != 4 {
		t.Fatalf("%d vertices, %d triangles", len(a.Vertices), len(a.Triangles))
	}
	b, err := Read("a.stl", packed(t))
	if err != nil {
		t.Fatal(err)
	}
	for i := range a.Triangles {
		for k := range 3 {
			if a.Vertices[a.Triangles[i][k]] != b.Vertices[b.Triangles[i][k]] {
				t.Errorf("triangle %d corner %d differs", i, k)
			}
		}
	}
}

func TestBadFilesGetASentence(t *testing.T) {
	whole := packed(t)
	nan := append([]byte(nil), whole...)
	binary.LittleEndian.PutUint32(nan[header+12:], math.Float32bits(float32(math.NaN())))
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"empty":       {nil, "no STL file"},
		"cut binary":  {append([]byte("x"), whole[1:len(whole)-3]...), "no STL file"},
		"no faces":    {[]byte("solid x\nendsolid x\n"), "no triangles"},
		"cut text":    {[]byte(tetra[:strings.Index(tetra, "vertex 0 1 0")]), "cut short"},
		"two corners": {[]byte(strings.Replace(tetra, "  vertex 0 0 0\n", "", 1)), "2 corners"},
		"four":        {[]byte(strings.Replace(tetra, "  vertex 0 0 0\n", "  vertex 0 0 0\n  vertex 2 2 2\n", 1)), "three times"},
		"no number":   {[]byte(strings.Replace(tetra, "vertex 0 0 0", "vertex 0 zero 0", 1)), "“zero”"},
		"infinite":    {[]byte(strings.Replace(tetra, "vertex 0 0 0", "vertex 0 Inf 0", 1)), "no number"},
		"NaN":         {nan, "no number"},
	} {
		if _, err := Read("a.stl", c.data); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(tetra))
	f.Add([]byte("solid"))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := Read("a.stl", data)
		if err != nil {
			return
		}
		for _, tri := range m.Triangles {
			for _, i := range tri {
				if i < 0 || i >= len(m.Vertices) {
					t.Fatalf("vertex %d of %d", i, len(m.Vertices))
				}
			}
		}
	})
}
