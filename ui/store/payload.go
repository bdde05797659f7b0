package store

import (
	"math"
	"strconv"

	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/format"
)

// Shapes are the shapes a payload's part can have, with what each is called.
var Shapes = []struct{ Shape, Name string }{
	{plan.Box, "box"}, {plan.Plate, "thin plate"}, {plan.Rod, "thin rod"}, {plan.Tube, "tube"},
	{plan.Cylinder, "upright cylinder"}, {plan.Point, "point mass"}, {plan.MeshBody, "mesh"},
}

var axes = [3]string{"x", "y", "z"}

// SolidMass is the mass of part i.
func SolidMass(id string, i int) Field {
	return Field{ID: id, Name: "Mass", Q: format.Mass,
		Get: func(p plan.Plan) float64 { return p.Payload.Solids[i].Mass },
		Set: func(p *plan.Plan, x float64) { p.Payload.Solids[i].Mass = x }}
}

// SolidSizes are the measures that the shape of part i has.
func SolidSizes(prefix string, p plan.Plan, i int) []Field {
	side := func(k int, name string) Field {
		return Field{ID: prefix + "-" + axes[k], Name: name, Q: format.Length,
			Get: func(p plan.Plan) float64 { return at(p.Payload.Solids[i].Size, k) },
			Set: func(p *plan.Plan, x float64) {
				s := &p.Payload.Solids[i]
				for len(s.Size) <= k {
					s.Size = append(s.Size, math.NaN())
				}
				s.Size[k] = x
			}}
	}
	one := func(id, name string, of func(*plan.Solid) *float64) Field {
		return Field{ID: prefix + "-" + id, Name: name, Q: format.Length,
			Get: func(p plan.Plan) float64 { return *of(&p.Payload.Solids[i]) },
			Set: func(p *plan.Plan, x float64) { *of(&p.Payload.Solids[i]) = x }}
	}
	length := one("length", "Length", func(s *plan.Solid) *float64 { return &s.Length })
	outer := one("outer", "Outer radius", func(s *plan.Solid) *float64 { return &s.OuterRadius })
	inner := one("inner", "Inner radius", func(s *plan.Solid) *float64 { return &s.InnerRadius })
	switch p.Payload.Solids[i].Shape {
	case plan.Box:
		return []Field{side(0, "Length (x)"), side(1, "Width (y)"), side(2, "Height (z)")}
	case plan.Plate:
		return []Field{side(0, "Length (x)"), side(1, "Width (y)")}
	case plan.Rod:
		return []Field{length}
	case plan.Tube:
		return []Field{length, outer, inner}
	case plan.Cylinder:
		return []Field{length, outer}
	}
	return nil
}

// SolidPlaces are where part i stands and how it is turned.
func SolidPlaces(prefix string, i int) []Field {
	var list []Field
	for k := range axes {
		list = append(list, Field{ID: prefix + "-at-" + axes[k], Name: "At " + axes[k], Q: format.Length,
			Get: func(p plan.Plan) float64 { return p.Payload.Solids[i].At[k] },
			Set: func(p *plan.Plan, x float64) { p.Payload.Solids[i].At[k] = x }})
	}
	for k := range axes {
		list = append(list, Field{ID: prefix + "-turn-" + axes[k], Name: "Turned about " + axes[k], Q: format.Angle,
			Get: func(p plan.Plan) float64 { return p.Payload.Solids[i].Turn[k] },
			Set: func(p *plan.Plan, x float64) { p.Payload.Solids[i].Turn[k] = x }})
	}
	return list
}

// SetShape gives part i another shape, and keeps the measures that both have.
func (s *Store) SetShape(i int, shape string) {
	s.Do(func(p *plan.Plan) {
		b := &p.Payload.Solids[i]
		long, wide := b.Length, math.NaN()
		if len(b.Size) > 0 {
			long = b.Size[0]
		}
		if len(b.Size) > 1 {
			wide = b.Size[1] / 2
		}
		if math.IsNaN(b.OuterRadius) {
			b.OuterRadius = wide
		}
		if math.IsNaN(b.Length) {
			b.Length = long
		}
		height := 2 * b.OuterRadius
		b.Shape = shape
		switch shape {
		case plan.Box:
			for n := len(b.Size); n < 3; n++ {
				b.Size = append(b.Size, []float64{long, height, height}[n])
			}
		case plan.Plate:
			b.Size = append(b.Size, long, height)[:2]
		default:
			b.Size = nil
		}
		if shape != plan.Tube {
			b.InnerRadius = math.NaN()
		} else if math.IsNaN(b.InnerRadius) {
			b.InnerRadius = 0.9 * b.OuterRadius
		}
		if shape != plan.Tube && shape != plan.Cylinder {
			b.OuterRadius = math.NaN()
		}
		if shape != plan.Tube && shape != plan.Cylinder && shape != plan.Rod {
			b.Length = math.NaN()
		}
		if shape != plan.MeshBody {
			b.Mesh = nil
		}
	})
}

// AddSolid adds a point mass at the payload's origin.
func (s *Store) AddSolid() {
	s.Do(func(p *plan.Plan) {
		b := plan.BlankSolid()
		b.Shape, b.Mass, b.At, b.Turn = plan.Point, 0.5, vec.V3{}, vec.V3{}
		p.Payload.Solids = append(p.Payload.Solids, b)
	})
	s.open["payload"] = true
	s.desk.Focus("payload-" + strconv.Itoa(len(s.plan.Payload.Solids)-1) + "-mass")
}

// RemoveSolid takes part i away.
func (s *Store) RemoveSolid(i int) {
	s.Do(func(p *plan.Plan) { p.Payload.Solids = append(p.Payload.Solids[:i], p.Payload.Solids[i+1:]...) })
}

// Measured are the fields that override what the solids give. Empty ones are computed.
func Measured(kind string) []Field {
	var list []Field
	switch kind {
	case "com":
		for k := range axes {
			list = append(list, Field{ID: "measured-com-" + axes[k], Name: "Centre of mass " + axes[k], Q: format.Length, Must: true,
				Get: func(p plan.Plan) float64 { return of(p.Payload.COM, k) },
				Set: func(p *plan.Plan, x float64) { p.Payload.COM[k] = x }})
		}
	case "drag":
		for k := range axes {
			list = append(list, Field{ID: "measured-drag-" + axes[k], Name: "Drag area along " + axes[k], Q: format.Area, Must: true,
				Get: func(p plan.Plan) float64 { return of(p.Payload.DragArea, k) },
				Set: func(p *plan.Plan, x float64) { p.Payload.DragArea[k] = x }})
		}
	case "inertia":
		for k, name := range [6]string{"xx", "yy", "zz", "xy", "xz", "yz"} {
			list = append(list, Field{ID: "measured-inertia-" + name, Name: "Inertia " + name, Q: format.Inertia, Must: true,
				Get: func(p plan.Plan) float64 {
					if p.Payload.Inertia == nil {
						return math.NaN()
					}
					return p.Payload.Inertia[k]
				},
				Set: func(p *plan.Plan, x float64) { p.Payload.Inertia[k] = x }})
		}
	}
	return list
}

// Measure switches an override on, starting from what is computed, or off.
func (s *Store) Measure(kind string, on bool) {
	r := s.report.Payload
	s.Do(func(p *plan.Plan) {
		switch kind {
		case "com":
			p.Payload.COM = given(on, r.COM)
		case "drag":
			p.Payload.DragArea = given(on, r.DragArea)
		case "inertia":
			p.Payload.Inertia = nil
			if on {
				i := r.Inertia
				for k := range i {
					i[k] = zero(i[k])
				}
				p.Payload.Inertia = &i
			}
		}
	})
}

func given(on bool, v vec.V3) *vec.V3 {
	if !on {
		return nil
	}
	for k := range v {
		v[k] = zero(v[k])
	}
	return &v
}

func at(list []float64, k int) float64 {
	if k < len(list) {
		return list[k]
	}
	return math.NaN()
}

func of(v *vec.V3, k int) float64 {
	if v == nil {
		return math.NaN()
	}
	return v[k]
}
