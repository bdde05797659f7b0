package plan

import (
	"bytes"
	"reflect"

	"cohoist/core/canon"
)

// Encode writes a plan as canonical JSON, indented for people: the same plan is the same text, and
// Decode gives the plan back. What is not given is left out.
func Encode(p Plan) []byte { return canon.Indented(p, canon.Omit) }

// Compact is Encode without blanks.
func Compact(p Plan) []byte { return canon.Compact(p, canon.Omit) }

// Same tells whether two plans say the same; numbers left out of both are equal.
func Same(a, b Plan) bool { return bytes.Equal(Compact(a), Compact(b)) }

// Clone returns a copy that shares nothing with p, for editing.
func (p Plan) Clone() Plan {
	var out Plan
	copyInto(reflect.ValueOf(&out).Elem(), reflect.ValueOf(&p).Elem())
	return out
}

func copyInto(to, from reflect.Value) {
	switch from.Kind() {
	case reflect.Pointer:
		if !from.IsNil() {
			to.Set(reflect.New(from.Type().Elem()))
			copyInto(to.Elem(), from.Elem())
		}
	case reflect.Slice:
		if from.IsNil() {
			return
		}
		to.Set(reflect.MakeSlice(from.Type(), from.Len(), from.Len()))
		if isFlat(from.Type().Elem()) {
			reflect.Copy(to, from)
			return
		}
		for i := range from.Len() {
			copyInto(to.Index(i), from.Index(i))
		}
	case reflect.Map:
		if from.IsNil() {
			return
		}
		to.Set(reflect.MakeMapWithSize(from.Type(), from.Len()))
		for _, k := range from.MapKeys() {
			e := reflect.New(from.Type().Elem()).Elem()
			copyInto(e, from.MapIndex(k))
			to.SetMapIndex(k, e)
		}
	case reflect.Struct:
		for i := range from.NumField() {
			copyInto(to.Field(i), from.Field(i))
		}
	default:
		to.Set(from)
	}
}

// isFlat tells whether values of a type hold no pointers, so that copying them shares nothing.
func isFlat(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Array:
		return isFlat(t.Elem())
	case reflect.Struct, reflect.Pointer, reflect.Slice, reflect.Map, reflect.Interface:
		return false
	}
	return true
}
