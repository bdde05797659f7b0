package plan

import (
	"math"
	"reflect"

	"cohoist/core/vec"
)

// Caps: more is refused with a sentence. They are far above any lift, and low enough that a page
// stays alive.
const (
	mostVehicles  = 1000
	mostClasses   = 64
	mostSolids    = 10000
	mostTriangles = 200000
	mostSizes     = 3
	mostRows      = 1000 // of a static test
	mostRotors    = 16
	mostPoints    = 100 // of a way
	mostBoxes     = 400
	mostOpenings  = 20
	mostItems     = 40   // of a cargo, and that one stands on
	mostID        = 64   // characters of an id or a class name
	mostTitle     = 200  // characters
	mostNote      = 4000 // characters
)

func mostOf(elem reflect.Type) int {
	switch elem {
	case reflect.TypeFor[Member]():
		return mostVehicles
	case reflect.TypeFor[Solid]():
		return mostSolids
	case reflect.TypeFor[Bench]():
		return mostRows
	case reflect.TypeFor[Waypoint]():
		return mostPoints
	case reflect.TypeFor[Corridor]():
		return mostBoxes
	case reflect.TypeFor[Opening]():
		return mostOpenings
	case reflect.TypeFor[Item](), reflect.TypeFor[string]():
		return mostItems
	case reflect.TypeFor[Hook]():
		return mostVehicles
	case reflect.TypeFor[float64]():
		return mostSizes
	}
	return mostTriangles
}

func nounOf(elem reflect.Type) string {
	switch elem {
	case reflect.TypeFor[Member]():
		return "vehicles"
	case reflect.TypeFor[Solid]():
		return "solids"
	case reflect.TypeFor[Bench]():
		return "rows"
	case reflect.TypeFor[Waypoint]():
		return "points"
	case reflect.TypeFor[Corridor]():
		return "boxes"
	case reflect.TypeFor[Opening]():
		return "openings"
	case reflect.TypeFor[Item]():
		return "items"
	case reflect.TypeFor[string]():
		return "names"
	case reflect.TypeFor[Hook]():
		return "hooks"
	case reflect.TypeFor[float64]():
		return "numbers"
	case reflect.TypeFor[vec.V3]():
		return "vertices"
	}
	return "triangles"
}

func fixMany(elem reflect.Type) string {
	switch elem {
	case reflect.TypeFor[Member]():
		return "Plan the lift with fewer vehicles."
	case reflect.TypeFor[float64]():
		return "Write the sizes along x, y and z."
	case reflect.TypeFor[Solid]():
		return "Join small solids into larger ones."
	case reflect.TypeFor[Waypoint](), reflect.TypeFor[Corridor](), reflect.TypeFor[Opening]():
		return "Plan the way in parts."
	case reflect.TypeFor[Item](), reflect.TypeFor[string]():
		return "Plan the cargo in parts."
	case reflect.TypeFor[Hook]():
		return "Keep one for each vehicle."
	case reflect.TypeFor[Bench]():
		return "Keep every tenth row; the curve between them is smooth."
	}
	return "Make the mesh coarser; mass and balance hardly change."
}

// Blank returns a plan in which nothing is given: every number NaN, every text and list empty.
func Blank() Plan {
	var p Plan
	blank(reflect.ValueOf(&p).Elem())
	p.Format = Format
	return p
}

// BlankSolid, BlankClass and BlankMember are the parts of a plan with nothing given.
func BlankSolid() Solid {
	var s Solid
	blank(reflect.ValueOf(&s).Elem())
	return s
}

// BlankClass is a class of vehicle with nothing given.
func BlankClass() Class {
	var c Class
	blank(reflect.ValueOf(&c).Elem())
	return c
}

// BlankMember is a vehicle of the team with nothing given.
func BlankMember() Member {
	var m Member
	blank(reflect.ValueOf(&m).Elem())
	return m
}

// blank makes every number under v NaN and everything else empty.
func blank(v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(math.NaN())
	case reflect.Array:
		for i := range v.Len() {
			blank(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			blank(v.Field(i))
		}
	default:
		v.SetZero()
	}
}

// allBlank tells whether an array holds nothing but NaN.
func allBlank(v reflect.Value) bool {
	for i := range v.Len() {
		if e := v.Index(i); e.Kind() != reflect.Float64 || !math.IsNaN(e.Float()) {
			return false
		}
	}
	return true
}
