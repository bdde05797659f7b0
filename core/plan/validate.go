package plan

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"unicode/utf8"
)

// Validate reports everything in a plan that cannot be meant: numbers outside their bounds, names
// that stand twice or name nothing, more than the stated most of anything, an inertia no body can
// have, a mesh that points at vertices it has not. A number left out is no fault; see Missing.
// Whether a mesh is closed is checked where its mass is computed, in core/mass.
func Validate(p Plan) Faults {
	var fs Faults
	validateCounts(p, &fs)
	ids := map[string]int{}
	walk(&p, func(l leaf) {
		f, ok := FieldAt(l.pattern)
		if l.unknown || !ok {
			return
		}
		switch v := l.v.Interface().(type) {
		case string:
			validateText(l, f, v, &fs)
		case int:
			if v != 0 && !f.In.Holds(float64(v)) {
				fs.add(l.where, fmt.Sprintf("is %d", v), "Write a whole number "+f.In.Text("")+".")
			}
		case *Mesh:
			validateMesh(l, v, &fs)
		default:
			validateNumbers(l, f, &fs)
		}
		if l.pattern == "team[].id" && l.Member.ID != "" {
			if first, twice := ids[l.Member.ID]; twice {
				fs.add(l.where, fmt.Sprintf("is %s, as team[%d] is", quote(l.Member.ID), first), "Give each vehicle a name of its own.")
			} else {
				ids[l.Member.ID] = l.Index
			}
		}
	})
	validateCargo(p, &fs)
	return fs
}

func validateCounts(p Plan, fs *Faults) {
	if len(p.Team) == 0 {
		fs.add(path{}.key("team"), "has no vehicles", "Add at least one vehicle.")
	}
	over := func(where path, n, most int, what, fix string) {
		if n > most {
			fs.add(where, fmt.Sprintf("has %d %s; the most is %d", n, what, most), fix)
		}
	}
	over(path{}.key("team"), len(p.Team), mostVehicles, "vehicles", fixMany(reflect.TypeFor[Member]()))
	over(path{}.key("vehicles"), len(p.Vehicles), mostClasses, "classes", "Take out those that no vehicle uses.")
	over(path{}.key("payload").key("solids"), len(p.Payload.Solids), mostSolids, "solids", fixMany(reflect.TypeFor[Solid]()))
	if _, ok := p.Vehicles[""]; ok {
		fs.add(path{}.key("vehicles"), "has a class without a name", "Give the class a name.")
	}
	for _, name := range classNames(&p) {
		if utf8.RuneCountInString(name) > mostID {
			fs.add(path{}.key("vehicles").key(name), fmt.Sprintf("has a name longer than %d characters", mostID), "Give the class a shorter name.")
		}
	}
}

func validateText(l leaf, f Field, s string, fs *Faults) {
	choices, what := f.Choices, ""
	if len(choices) > 2 {
		what = "one of "
	}
	if l.pattern == "team[].vehicle" {
		choices, what = classNames(l.Plan), "a class of the plan: "
	}
	must := l.pattern == "team[].id" || l.pattern == "team[].vehicle" || l.pattern == "payload.solids[].shape"
	switch n := utf8.RuneCountInString(s); {
	case l.pattern == "team[].vehicle" && len(choices) == 0:
		fs.add(l.where, "names a class, but the plan has none", "Add the class under vehicles.")
	case s == "" && !must:
	case must && choices == nil && strings.TrimSpace(s) == "":
		fs.add(l.where, "is empty", "Give it a name.")
	case s == "":
		fs.add(l.where, "is missing", "Write "+what+list(choices)+".")
	case f.Longest > 0 && n > f.Longest:
		fs.add(l.where, fmt.Sprintf("has %d characters; the most is %d", n, f.Longest), "Shorten it.")
	case choices != nil && !has(choices, s):
		fix := "Write " + what + list(choices) + "."
		if near := nearest(s, choices); near != "" {
			fix = "Did you mean " + quote(near) + "? " + fix
		}
		fs.add(l.where, "is "+quote(s)+", which is not known", fix)
	}
}

// validateNumbers checks a number or a list of numbers against the row of the table.
func validateNumbers(l leaf, f Field, fs *Faults) {
	xs, isList := numbers(l.v)
	for i, x := range xs {
		where := l.where
		if isList {
			where = where.index(i)
		}
		switch {
		case math.IsInf(x, 0):
			fs.add(where, "is infinite", "Write a number "+f.In.Text(f.Unit)+", or leave it out.")
		case !math.IsNaN(x) && !f.In.Holds(x):
			fs.add(where, "is "+Number(x, f.Unit), "Write a number "+f.In.Text(f.Unit)+".")
		}
	}
	switch strings.TrimPrefix(l.pattern, inItem) {
	case "payload.solids[].size_m":
		need := map[string]int{Box: 3, Plate: 2}[l.Solid.Shape]
		if need > 0 && len(xs) > 0 && len(xs) != need {
			fs.add(l.where, fmt.Sprintf("has %d numbers; a %s needs %d", len(xs), l.Solid.Shape, need), map[bool]string{
				true: "Write its sizes along x, y and z.", false: "Write its sizes along x and y."}[need == 3])
		}
	case "payload.solids[].inner_radius_m":
		if l.Solid.Shape == Tube && l.Solid.InnerRadius >= l.Solid.OuterRadius {
			fs.add(l.where, "is "+Number(l.Solid.InnerRadius, "m")+", not smaller than the outer radius of "+Number(l.Solid.OuterRadius, "m"),
				"Write the inner radius of the tube, smaller than the outer.")
		}
	case "payload.inertia_kg_m2":
		validateInertia(l, xs, fs)
	case "vehicles.*.inertia_kg_m2":
		if len(xs) == 3 {
			validateInertia(l, append(xs, 0, 0, 0), fs)
		}
	}
}

func validateMesh(l leaf, m *Mesh, fs *Faults) {
	if m == nil {
		return
	}
	if nv, nt := len(m.Vertices), len(m.Triangles); nv > mostTriangles || nt > mostTriangles {
		fs.add(l.where, fmt.Sprintf("has %d vertices and %d triangles; the most is %d of each", nv, nt, mostTriangles), fixMany(nil))
		return
	}
	for i, v := range m.Vertices {
		for _, x := range v {
			if math.IsNaN(x) || math.Abs(x) > 1e4 {
				fs.add(l.where.key("vertices_m").index(i), "has a coordinate that is no number within 10000 m", "Write vertices in metres.")
				break
			}
		}
	}
	for i, t := range m.Triangles {
		for _, j := range t {
			if j < 0 || j >= len(m.Vertices) {
				fs.add(l.where.key("triangles").index(i), fmt.Sprintf("points at vertex %d; the mesh has %d, counted from 0", j, len(m.Vertices)), "Export the mesh again.")
				break
			}
		}
	}
}
