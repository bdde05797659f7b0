// Package canon writes plain data as JSON in exactly one way, so that the same data is the same
// text, natively and as WebAssembly, today and in years.
//
// Objects keep the order of the struct's fields; maps are sorted by key. Numbers have the shortest
// decimal that reads back as the same float64, in one form. Unknown fields (a map named Extra,
// tagged json:"-") follow the known ones, sorted. JSON has no word for NaN and the infinities:
// a plan leaves such a field out, a report says null.
package canon

import (
	"math"
	"reflect"
	"sort"
	"strings"
	"sync"
)

// Mode says what becomes of things that are not there.
type Mode int

// The modes.
const (
	// Omit leaves out every field that says nothing: a number that is NaN or infinite, an integer 0, an
	// empty text, list, map or object, a nil pointer, an array with nothing but NaN. Inside a
	// list or array NaN is null. Plans are written so.
	Omit Mode = iota
	// Null writes every field: null for NaN, the infinities and nil pointers, [] for a nil list. Reports
	// are written so. A field tagged omitempty is left out when empty.
	Null
)

// Compact returns v on one line without blanks. v is plain data: structs, maps with text keys,
// lists, arrays, pointers, numbers, texts, booleans. Anything else is a programmer's error and panics.
func Compact(v any, m Mode) []byte {
	w := writer{mode: m}
	w.value(reflect.ValueOf(v))
	return w.out
}

// Indented returns v for people to read and edit: two blanks a level, lists of numbers on one line,
// a line end at the end.
func Indented(v any, m Mode) []byte { return append(Indent(Compact(v, m)), '\n') }

type writer struct {
	out  []byte
	mode Mode
}

func (w *writer) value(v reflect.Value) {
	switch v.Kind() {
	case reflect.Invalid:
		w.text("null")
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			w.text("null")
			return
		}
		w.value(v.Elem())
	case reflect.Struct:
		w.object(v)
	case reflect.Map:
		w.mapping(v)
	case reflect.Slice, reflect.Array:
		if isRaw(v.Type()) {
			w.out = append(w.out, Raw(v.Bytes())...)
			return
		}
		w.list(v)
	case reflect.Float64, reflect.Float32:
		w.out = AppendFloat(w.out, v.Float())
	case reflect.String:
		w.out = AppendString(w.out, v.String())
	case reflect.Bool:
		w.text(map[bool]string{true: "true", false: "false"}[v.Bool()])
	default:
		w.out = appendInt(w.out, v)
	}
}

func (w *writer) text(s string) { w.out = append(w.out, s...) }

func (w *writer) list(v reflect.Value) {
	w.out = append(w.out, '[')
	for i := range v.Len() {
		if i > 0 {
			w.out = append(w.out, ',')
		}
		w.value(v.Index(i))
	}
	w.out = append(w.out, ']')
}

func (w *writer) mapping(v reflect.Value) {
	keys := make([]string, 0, v.Len())
	for _, k := range v.MapKeys() {
		keys = append(keys, k.String())
	}
	sort.Strings(keys)
	w.out = append(w.out, '{')
	for i, k := range keys {
		w.key(k, i == 0)
		w.value(v.MapIndex(reflect.ValueOf(k).Convert(v.Type().Key())))
	}
	w.out = append(w.out, '}')
}

func (w *writer) key(k string, first bool) {
	if !first {
		w.out = append(w.out, ',')
	}
	w.out = append(AppendString(w.out, k), ':')
}

func (w *writer) object(v reflect.Value) {
	w.out = append(w.out, '{')
	first := true
	for _, f := range Fields(v.Type()) {
		fv := v.Field(f.Index)
		if (w.mode == Omit || f.OmitEmpty) && nothing(fv, w.mode) {
			continue
		}
		before := len(w.out)
		w.key(f.Key, first)
		start := len(w.out)
		w.value(fv)
		if w.mode == Omit && string(w.out[start:]) == "{}" {
			w.out = w.out[:before]
			continue
		}
		first = false
	}
	w.extra(v, first)
	w.out = append(w.out, '}')
}

// extra writes the unknown fields; one that bears the name of a known field would be a twin, so it
// is not written.
func (w *writer) extra(v reflect.Value, first bool) {
	x := v.FieldByName("Extra")
	if !x.IsValid() || x.Kind() != reflect.Map || !isRaw(x.Type().Elem()) {
		return
	}
	known := map[string]bool{}
	for _, f := range Fields(v.Type()) {
		known[f.Key] = true
	}
	keys := []string{}
	for _, k := range x.MapKeys() {
		if !known[k.String()] {
			keys = append(keys, k.String())
		}
	}
	sort.Strings(keys)
	for _, k := range keys {
		w.key(k, first)
		w.value(x.MapIndex(reflect.ValueOf(k)))
		first = false
	}
}

// nothing tells whether a field says nothing. In reports only an omitempty field is asked.
func nothing(v reflect.Value, m Mode) bool {
	switch v.Kind() {
	case reflect.Float64, reflect.Float32:
		x := v.Float()
		return math.IsNaN(x) || math.IsInf(x, 0) || m == Null && x == 0
	case reflect.Pointer:
		return v.IsNil() || m == Omit && v.Elem().Kind() == reflect.Array && nothing(v.Elem(), m)
	case reflect.Interface:
		return v.IsNil()
	case reflect.Slice, reflect.Map, reflect.String:
		return v.Len() == 0
	case reflect.Array:
		for i := range v.Len() {
			if !nothing(v.Index(i), m) {
				return false
			}
		}
		return true
	case reflect.Bool:
		return m == Null && !v.Bool()
	case reflect.Struct:
		return false
	}
	return v.IsZero()
}

// Field is one known key of an object.
type Field struct {
	Key       string
	Index     int
	OmitEmpty bool
}

// known are the fields of the types seen so far: to read tags takes long.
var known sync.Map // reflect.Type → []Field

// Fields returns the keys of a struct type in the order they are written. The list is not to be changed.
func Fields(t reflect.Type) []Field {
	if f, ok := known.Load(t); ok {
		return f.([]Field)
	}
	f := fields(t)
	known.Store(t, f)
	return f
}

func fields(t reflect.Type) []Field {
	out := []Field{}
	for i := range t.NumField() {
		f := t.Field(i)
		key, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if key == "-" || !f.IsExported() {
			continue
		}
		if key == "" {
			key = f.Name
		}
		out = append(out, Field{key, i, strings.Contains(rest, "omitempty")})
	}
	return out
}

func isRaw(t reflect.Type) bool {
	return t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.Uint8
}
