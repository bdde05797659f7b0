package plan

import (
	"math"
	"reflect"
	"strconv"
	"strings"
)

// Put sets the field at a path, such as team[2].hold.length_m or payload.beam.second_moment_m4[0], to a number
// in the field's unit or to a text; a list of names to a text with commas between them. A list that was left out becomes one of numbers left out. Who names an item of
// the cargo by its name goes on naming it. It tells
// whether there is such a field for such a value; what the value is worth Validate says.
func Put(p *Plan, path string, value any) bool {
	path, entry := entryOf(path)
	done, was := false, ""
	walkEdit(p, func(l leaf) {
		if !l.unknown && !done && l.where.String() == path {
			if l.pattern == inItem+"id" {
				was = l.Item.ID
			}
			done = set(l.v, entry, value)
		}
	})
	if now, ok := value.(string); was != "" && ok {
		p.Cargo.rename(was, now)
	}
	return done
}

// entryOf splits the number of an entry off the end of a path; −1: none.
func entryOf(path string) (field string, entry int) {
	at := strings.LastIndex(path, "[")
	if at <= strings.LastIndex(path, ".") || !strings.HasSuffix(path, "]") {
		return path, -1
	}
	n, err := strconv.Atoi(path[at+1 : len(path)-1])
	if err != nil {
		return path, -1
	}
	return path[:at], n
}

func set(v reflect.Value, entry int, value any) bool {
	if v.Kind() == reflect.Pointer {
		if entry < 0 {
			return false
		}
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
			blankNumbers(v.Elem())
		}
		v = v.Elem()
	}
	if entry >= 0 {
		if v.Kind() != reflect.Array && v.Kind() != reflect.Slice || entry >= v.Len() {
			return false
		}
		v = v.Index(entry)
	}
	switch x := value.(type) {
	case float64:
		switch v.Kind() {
		case reflect.Float64:
			v.SetFloat(x)
			return true
		case reflect.Int, reflect.Int64:
			if math.IsNaN(x) { // left out
				x = 0
			}
			if x != math.Trunc(x) || math.Abs(x) > 1<<53 {
				return false
			}
			v.SetInt(int64(x))
			return true
		}
	case string:
		switch {
		case v.Kind() == reflect.String:
			v.SetString(x)
			return true
		case isNames(v):
			v.Set(reflect.ValueOf(split(x)))
			return true
		}
	}
	return false
}

func isNames(v reflect.Value) bool { return v.Type() == reflect.TypeFor[[]string]() }

// split parts a list of names at commas and semicolons; nil: none.
func split(text string) (names []string) {
	for _, name := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }) {
		if name = strings.TrimSpace(name); name != "" {
			names = append(names, name)
		}
	}
	return names
}

func joined(v reflect.Value) string { return strings.Join(v.Interface().([]string), ", ") }

func blankNumbers(v reflect.Value) {
	if v.Kind() != reflect.Array {
		return
	}
	for i := range v.Len() {
		v.Index(i).SetFloat(math.NaN())
	}
}

// Get is the number or text of the field at a path as Put takes it; nil when there is none.
func Get(p Plan, path string) any {
	path, entry := entryOf(path)
	var out any
	walk(&p, func(l leaf) {
		if l.unknown || out != nil || l.where.String() != path {
			return
		}
		v := l.v
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				return
			}
			v = v.Elem()
		}
		if entry >= 0 {
			if v.Kind() != reflect.Array && v.Kind() != reflect.Slice || entry >= v.Len() {
				return
			}
			v = v.Index(entry)
		}
		if isNames(v) {
			out = joined(v)
			return
		}
		switch v.Kind() {
		case reflect.Float64:
			out = v.Float()
		case reflect.Int, reflect.Int64:
			out = float64(v.Int())
		case reflect.String:
			out = v.String()
		}
	})
	return out
}

// Value is one number or text of a plan in its place.
type Value struct {
	Path  string
	Value any // float64 or string
}

// Values are all numbers and texts of a plan, in the order of the document, entries of lists one by one;
// fields left out are not among them, and meshes are not taken apart.
func Values(p Plan) []Value {
	var list []Value
	walk(&p, func(l leaf) {
		if l.unknown {
			return
		}
		v := l.v
		if v.Kind() == reflect.Pointer && !v.IsNil() {
			v = v.Elem()
		}
		path := l.where.String()
		if isNames(v) {
			if names := joined(v); names != "" {
				list = append(list, Value{path, names})
			}
			return
		}
		switch v.Kind() {
		case reflect.Float64:
			if !math.IsNaN(v.Float()) {
				list = append(list, Value{path, v.Float()})
			}
		case reflect.Int, reflect.Int64:
			list = append(list, Value{path, float64(v.Int())})
		case reflect.String:
			if v.String() != "" {
				list = append(list, Value{path, v.String()})
			}
		case reflect.Array, reflect.Slice:
			for i := range v.Len() {
				if e := v.Index(i); e.Kind() == reflect.Float64 && !math.IsNaN(e.Float()) {
					list = append(list, Value{path + "[" + strconv.Itoa(i) + "]", e.Float()})
				}
			}
		}
	})
	return list
}
