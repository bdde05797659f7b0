// Package mesh reads the triangles of a file: STL in its text and its binary form (3D Systems,
// "Stereolithography Interface Specification", 1989; from memory), and OBJ (Wavefront, object files, appendix B1
// of its manual; from memory). Neither format has a unit that is written down; the numbers are taken for metres.
package mesh

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"strconv"
	"strings"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

const (
	header = 84      // bytes before the first triangle of a binary file
	record = 50      // bytes of a triangle
	most   = 200_000 // triangles
)

// Read reads a file with its name, whose ending tells an OBJ file. Corners at the very same place become one
// vertex. The error is a sentence.
func Read(name string, data []byte) (*plan.Mesh, error) {
	b := builder{seen: map[vec.V3]int{}}
	var err error
	if strings.HasSuffix(strings.ToLower(name), ".obj") {
		err = b.object(string(data))
	} else if n, ok := count(data); ok {
		err = b.binary(data, n)
	} else if bytes.HasPrefix(bytes.TrimSpace(data[:min(len(data), 512)]), []byte("solid")) {
		err = b.text(string(data))
	} else {
		err = errors.New("It is no STL file: it neither begins with the word solid nor has the length its header says.")
	}
	if err == nil && len(b.mesh.Triangles) == 0 {
		err = errors.New("It has no triangles.")
	}
	if err != nil {
		return nil, err
	}
	return &b.mesh, nil
}

// count is the number of triangles of a binary file, when its length agrees.
func count(data []byte) (int, bool) {
	if len(data) < header {
		return 0, false
	}
	n := int(binary.LittleEndian.Uint32(data[80:]))
	return n, n > 0 && len(data) == header+n*record
}

type builder struct {
	mesh plan.Mesh
	seen map[vec.V3]int
}

func (b *builder) vertex(v vec.V3) int {
	i, ok := b.seen[v]
	if !ok {
		i = len(b.mesh.Vertices)
		b.seen[v] = i
		b.mesh.Vertices = append(b.mesh.Vertices, v)
	}
	return i
}

// triangle adds a triangle; one without area is dropped.
func (b *builder) triangle(c [3]vec.V3) error {
	for _, v := range c {
		for _, x := range v {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return errors.New("Triangle " + strconv.Itoa(len(b.mesh.Triangles)+1) + " has a coordinate that is no number.")
			}
		}
	}
	if len(b.mesh.Triangles) == most {
		return errors.New("It has more than " + strconv.Itoa(most) + " triangles; make the mesh coarser, mass and balance hardly change.")
	}
	t := [3]int{b.vertex(c[0]), b.vertex(c[1]), b.vertex(c[2])}
	if t[0] != t[1] && t[1] != t[2] && t[2] != t[0] {
		b.mesh.Triangles = append(b.mesh.Triangles, t)
	}
	return nil
}

func (b *builder) binary(data []byte, n int) error {
	for i := range n {
		at := header + i*record + 12 // behind the normal, which the corners' order already says
		var c [3]vec.V3
		for k := range 9 {
			c[k/3][k%3] = float64(math.Float32frombits(binary.LittleEndian.Uint32(data[at+4*k:])))
		}
		if err := b.triangle(c); err != nil {
			return err
		}
	}
	return nil
}

func (b *builder) text(s string) error {
	var c [3]vec.V3
	k, line := 0, 0
	for row := range strings.Lines(s) {
		line++
		f := strings.Fields(row)
		switch {
		case len(f) == 0 || f[0] != "vertex":
			if len(f) > 0 && f[0] == "endloop" {
				if k != 3 {
					return errors.New("Line " + strconv.Itoa(line) + " ends a face of " + strconv.Itoa(k) + " corners; every face needs three.")
				}
				if err := b.triangle(c); err != nil {
					return err
				}
				k = 0
			}
			continue
		case len(f) != 4 || k == 3:
			return errors.New("Line " + strconv.Itoa(line) + " should be the word vertex and three numbers, three times in each face.")
		}
		for a := range 3 {
			x, err := strconv.ParseFloat(f[a+1], 64)
			if err != nil {
				return errors.New("Line " + strconv.Itoa(line) + " has “" + f[a+1] + "” where a number should be.")
			}
			c[k][a] = x
		}
		k++
	}
	if k != 0 {
		return errors.New("It ends in the middle of a face; the file was cut short.")
	}
	return nil
}
