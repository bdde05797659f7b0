package mass

import (
	"fmt"

	"cohoist/core/plan"
)

// CheckMesh tells why a mesh is not a closed surface with its triangles counter-clockwise seen from
// outside, naming the edge; nil when it is.
func CheckMesh(m plan.Mesh) error {
	if len(m.Triangles) < 4 {
		return fmt.Errorf("the mesh has %d triangles; a closed body needs at least 4", len(m.Triangles))
	}
	type edge [2]int
	seen := make(map[edge]int, 3*len(m.Triangles))
	for n, t := range m.Triangles {
		for i := range 3 {
			if t[i] < 0 || t[i] >= len(m.Vertices) {
				return fmt.Errorf("triangle %d names vertex %d of %d; vertices count from 0", n, t[i], len(m.Vertices))
			}
			a, b := t[i], t[(i+1)%3]
			if a == b {
				return fmt.Errorf("triangle %d uses vertex %d twice; remove it", n, a)
			}
			if first, ok := seen[edge{a, b}]; ok {
				return fmt.Errorf("%s runs the same way in triangles %d and %d; turn one of them round", edgeName(m, a, b), first, n)
			}
			seen[edge{a, b}] = n
		}
	}
	for n, t := range m.Triangles { // in the order of the file, so that the message is always the same
		for i := range 3 {
			a, b := t[i], t[(i+1)%3]
			if _, ok := seen[edge{b, a}]; !ok {
				return fmt.Errorf("the mesh is open: %s of triangle %d has no neighbour; close the hole there", edgeName(m, a, b), n)
			}
		}
	}
	return nil
}
