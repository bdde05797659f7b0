package near

import (
	"math"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Face is the upper side of a solid as a wake meets it: a rectangle that holds the solid's outline.
type Face struct {
	At   vec.V3  // its middle, payload frame, m
	A, B float64 // half its length and width, m
	Yaw  float64 // of its length from payload x, radians
}

// Faces are those of the payload's solids that have an area seen from above, (22.4).
func Faces(solids []plan.Solid) []Face {
	var out []Face
	for _, s := range solids {
		h, yaw := outline(s)
		if h[0] > 0 && h[1] > 0 {
			out = append(out, Face{At: s.At.Add(vec.V3{0, 0, h[2]}), A: h[0], B: h[1], Yaw: yaw})
		}
	}
	return out
}

// Lowest is the payload's lowest point held level, m in the payload frame.
func Lowest(solids []plan.Solid) float64 {
	low := math.Inf(1)
	for _, s := range solids {
		if s.Shape == plan.MeshBody && s.Mesh != nil {
			r := turned(s)
			for _, v := range s.Mesh.Vertices {
				low = math.Min(low, s.At[2]+r.Mul(v)[2])
			}
			continue
		}
		h, _ := outline(s)
		low = math.Min(low, s.At[2]-h[2])
	}
	if math.IsInf(low, 1) {
		return 0
	}
	return low
}

// outline is half the length, width and height of the box about a solid's own place that holds it, and the turn of the box about
// the vertical, radians. A tipped solid has the upright box around it.
func outline(s plan.Solid) (half vec.V3, yaw float64) {
	h := extent(s)
	if s.Turn[0] == 0 && s.Turn[1] == 0 {
		return h, s.Turn[2] * math.Pi / 180
	}
	r := turned(s)
	for i := range half {
		half[i] = math.Abs(r[i][0])*h[0] + math.Abs(r[i][1])*h[1] + math.Abs(r[i][2])*h[2]
	}
	return half, 0
}

func turned(s plan.Solid) vec.M3 {
	const deg = math.Pi / 180
	return vec.Euler(s.Turn[0]*deg, s.Turn[1]*deg, s.Turn[2]*deg)
}

// extent is outline of a solid that is not turned.
func extent(s plan.Solid) (h vec.V3) {
	switch s.Shape {
	case plan.Box:
		if len(s.Size) == 3 {
			return vec.V3{s.Size[0] / 2, s.Size[1] / 2, s.Size[2] / 2}
		}
	case plan.Plate:
		if len(s.Size) == 2 {
			return vec.V3{s.Size[0] / 2, s.Size[1] / 2, 0}
		}
	case plan.Rod:
		return vec.V3{s.Length / 2, 0, 0}
	case plan.Tube:
		return vec.V3{s.Length / 2, s.OuterRadius, s.OuterRadius}
	case plan.Cylinder:
		return vec.V3{s.OuterRadius, s.OuterRadius, s.Length / 2}
	case plan.MeshBody:
		if s.Mesh == nil {
			break
		}
		for _, v := range s.Mesh.Vertices {
			for i := range h {
				h[i] = math.Max(h[i], math.Abs(v[i]))
			}
		}
	}
	return h
}
