package drawing

import (
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Outlines are the outlines of a payload's solids seen from above, in metres along payload x and y: for each the
// hull of its points, two for a rod along the plane, one for a point.
func Outlines(solids []plan.Solid) [][]Point {
	var list [][]Point
	for _, b := range placeSolids(nil, solids, vec.Identity).bodies {
		points := make([]Point, len(b.points))
		for i, p := range b.points {
			points[i] = Point{p[0], p[1]}
		}
		list = append(list, outline(points))
	}
	return list
}
