package mass

import (
	"errors"
	"fmt"
	"slices"
	"sort"

	"cohoist/core/plan"
)

// CheckMesh tells why a mesh is not a closed surface with its triangles counter-clockwise seen from
// outside, naming the edge by its vertices, counted from 0, and where they are; nil when it is.
func CheckMesh(m plan.Mesh) error {
	_, err := shells(m)
	return err
}

// partners finds the neighbour of every edge. Edge 3n+i of a mesh runs from vertex i of triangle n to
// the next; on a closed surface exactly one other edge joins the same two vertices, the other way.
func partners(m plan.Mesh) ([]int, error) {
	if len(m.Triangles) == 0 {
		return nil, errors.New("the mesh has no triangles; a closed body needs at least 4")
	}
	count := make([]int, len(m.Vertices)+1)
	for n, t := range m.Triangles {
		for i := range 3 {
			if t[i] < 0 || t[i] >= len(m.Vertices) {
				return nil, fmt.Errorf("triangle %d names vertex %d of %d; vertices count from 0", n, t[i], len(m.Vertices))
			}
			if t[i] == t[(i+1)%3] {
				return nil, fmt.Errorf("triangle %d uses vertex %d twice; remove it", n, t[i])
			}
			count[min(t[i], t[(i+1)%3])+1]++
		}
	}
	for v := range m.Vertices {
		count[v+1] += count[v]
	}
	// Edges by their lower vertex, then by their upper one, then as they stand in the file.
	sorted := make([]int, 3*len(m.Triangles))
	next := slices.Clone(count)
	for e := range sorted {
		a, b := ends(m, e)
		low := min(a, b)
		sorted[next[low]] = e
		next[low]++
	}
	upper := func(e int) int { a, b := ends(m, e); return max(a, b) }
	other, clash := make([]int, len(sorted)), [2]int{-1, -1}
	for v := range m.Vertices {
		group := sorted[count[v]:count[v+1]]
		sort.SliceStable(group, func(i, j int) bool { return upper(group[i]) < upper(group[j]) })
		for len(group) > 0 {
			k := 1
			for k < len(group) && upper(group[k]) == upper(group[0]) {
				k++
			}
			pair(m, group[:k], other, &clash)
			group = group[k:]
		}
	}
	if clash[0] >= 0 {
		return nil, fmt.Errorf("%s runs the same way in triangles %d and %d; turn one of them round", edgeName(m, clash[1]), clash[0]/3, clash[1]/3)
	}
	for e, f := range other {
		if f < 0 {
			return nil, fmt.Errorf("the mesh is open: %s of triangle %d has no neighbour; close the hole there", edgeName(m, e), e/3)
		}
	}
	return other, nil
}

// pair joins the edges between the same two vertices. Two that run the same way are a clash; the one
// that shows first in the file is kept.
func pair(m plan.Mesh, group, other []int, clash *[2]int) {
	first := [2]int{-1, -1} // the first edge each way
	for _, e := range group {
		other[e] = -1
		a, b := ends(m, e)
		way := 0
		if a > b {
			way = 1
		}
		if first[way] < 0 {
			first[way] = e
		} else if clash[0] < 0 || e < clash[1] {
			*clash = [2]int{first[way], e}
		}
	}
	if first[0] >= 0 && first[1] >= 0 {
		other[first[0]], other[first[1]] = first[1], first[0]
	}
}

// ends are the vertices from which and to which an edge runs.
func ends(m plan.Mesh, e int) (from, to int) {
	t := m.Triangles[e/3]
	return t[e%3], t[(e%3+1)%3]
}

// edgeName names an edge by its vertices, from 0, and where they are.
func edgeName(m plan.Mesh, e int) string {
	a, b := ends(m, e)
	p, q := m.Vertices[a], m.Vertices[b]
	return fmt.Sprintf("edge %d–%d from (%g, %g, %g) to (%g, %g, %g)", a, b, p[0], p[1], p[2], q[0], q[1], q[2])
}
