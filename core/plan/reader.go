package plan

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"

	"cohoist/core/canon"
)

// The reader goes through JSON once, puts values straight into a Plan, and carries on after
// whatever can be carried on after, so that all faults are found at once. Where a fault is, the field stays
// as if left out. A value of unknown meaning is read into the zero reflect.Value: checked, not kept.

const (
	mostBytes = 64 << 20 // of a plan's text
	mostDepth = 64       // lists and objects inside one another
)

type reader struct {
	data   []byte
	at     int
	depth  int
	where  path
	faults Faults
	broken bool // what follows cannot be read as JSON
}

func (r *reader) fault(wrong, fix string) { r.faults.add(r.where, wrong, fix) }

// stop reports that the text is not JSON from here on.
func (r *reader) stop(wrong, fix string) {
	if r.broken {
		return
	}
	line, column := 1, 1
	for _, c := range r.data[:min(r.at, len(r.data))] {
		if column++; c == '\n' {
			line, column = line+1, 1
		}
	}
	r.fault(fmt.Sprintf("cannot be read on from line %d, column %d: %s", line, column, wrong), fix)
	r.broken = true
}

// peek skips blanks and returns the next byte, 0 at the end.
func (r *reader) peek() byte {
	for ; r.at < len(r.data); r.at++ {
		switch c := r.data[r.at]; c {
		case ' ', '\t', '\n', '\r':
		case 0: // a zero byte is not the end
			return 0xff
		default:
			return c
		}
	}
	return 0
}

func (r *reader) value(v reflect.Value) {
	c := r.peek()
	if r.broken {
		return
	}
	if v.Kind() == reflect.Pointer {
		r.pointer(v)
		return
	}
	switch c {
	case 0:
		r.stop("the text ends too early", "Was the file cut? Open the whole file.")
	case '{':
		r.nest(func() { r.object(v) })
	case '[':
		r.nest(func() { r.list(v) })
	case '"':
		s := r.text()
		r.setText(v, s)
	default:
		r.setWord(v, r.word())
	}
}

func (r *reader) nest(read func()) {
	if r.depth++; r.depth > mostDepth {
		r.stop(fmt.Sprintf("lists and objects lie more than %d deep", mostDepth), "A plan needs no more than 8; write a plain plan.")
	} else {
		r.at++
		read()
	}
	r.depth--
}

// pointer reads what may be left out as a whole.
func (r *reader) pointer(v reflect.Value) {
	n := reflect.New(v.Type().Elem())
	blank(n.Elem())
	before, start := len(r.faults), r.at
	r.value(n.Elem())
	isNull := r.at-start == 4 && string(r.data[start:r.at]) == "null"
	isArray := n.Elem().Kind() == reflect.Array
	if !isNull && !(isArray && (len(r.faults) > before || allBlank(n.Elem()))) {
		v.Set(n)
	}
}

// items calls read for every entry up to the closing bracket.
func (r *reader) items(close byte, read func()) {
	if r.peek() == close {
		r.at++
		return
	}
	for !r.broken {
		read()
		switch c := r.peek(); {
		case r.broken:
		case c == close:
			r.at++
			return
		case c == 0:
			r.stop("the text ends too early", "Was the file cut? Open the whole file.")
		case c != ',':
			r.stop("a comma or "+string(close)+" is missing before "+quote(string(r.data[r.at:min(r.at+12, len(r.data))])), "Put it there.")
		default:
			r.at++
			if r.peek() == close {
				r.fault("has a comma after its last entry", "Take the comma away.")
				r.at++
				return
			}
		}
	}
}

func (r *reader) object(v reflect.Value) {
	known, into := map[string]int{}, v.Kind() == reflect.Struct
	switch {
	case into:
		for _, f := range canon.Fields(v.Type()) {
			known[f.Key] = f.Index
		}
	case v.Kind() == reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
	case v.IsValid():
		r.fault("is an object in braces", "Write "+wanted(v)+".")
	}
	seen, outer := map[string]bool{}, r.where
	r.items('}', func() {
		if c := r.peek(); c != '"' {
			fix := `Write the field's name in quotes, such as "mass_kg".`
			if c >= '0' && c <= '9' {
				fix = "A decimal comma is no JSON: write 1.5, not 1,5."
			}
			r.stop("a field's name in quotes is missing", fix)
			return
		}
		key := r.text()
		r.where = append(outer, step{name: key})
		if key == "" {
			r.where = outer.key(key)
		}
		if seen[key] {
			r.fault("is there twice", "Keep one of the two.")
		}
		seen[key] = true
		if r.peek() != ':' {
			r.stop("a colon is missing after "+quote(key), "Put it there.")
			return
		}
		r.at++
		r.entry(v, key, known)
		r.where = outer
	})
	if v.Kind() == reflect.Map && v.Len() == 0 {
		v.SetZero()
	}
	if v.Kind() == reflect.Map && len(seen) > mostClasses {
		r.fault(fmt.Sprintf("has %d classes; the most is %d", len(seen), mostClasses), "Take out those that no vehicle uses.")
	}
}

// entry reads the value of one key of an object.
func (r *reader) entry(v reflect.Value, key string, known map[string]int) {
	if i, ok := known[key]; ok {
		r.value(v.Field(i))
		return
	}
	switch v.Kind() {
	case reflect.Map:
		n := reflect.New(v.Type().Elem()).Elem()
		blank(n)
		r.value(n)
		if v.Len() < mostClasses {
			v.SetMapIndex(reflect.ValueOf(key), n)
		}
	case reflect.Struct:
		r.peek()
		start := r.at
		r.value(reflect.Value{})
		if x := v.FieldByName("Extra"); x.IsValid() && !r.broken {
			if x.IsNil() {
				x.Set(reflect.ValueOf(Extra{}))
			}
			x.SetMapIndex(reflect.ValueOf(key), reflect.ValueOf(json.RawMessage(canon.Raw(r.data[start:r.at]))))
		}
	default:
		r.value(reflect.Value{})
	}
}

func (r *reader) list(v reflect.Value) {
	n, outer, most := 0, r.where, math.MaxInt
	switch {
	case v.Kind() == reflect.Array:
		most = v.Len()
	case v.Kind() == reflect.Slice:
		most = mostOf(v.Type().Elem())
	case v.IsValid():
		r.fault("is a list", "Write "+wanted(v)+".")
	}
	r.items(']', func() {
		r.where = append(outer, step{i: n}) // on the spare room of outer: one path grows and shrinks
		var e reflect.Value
		switch {
		case n >= most:
		case v.Kind() == reflect.Array:
			e = v.Index(n)
		case v.Kind() == reflect.Slice:
			v.Grow(1)
			v.SetLen(n + 1)
			e = v.Index(n)
			blank(e)
		}
		r.peek()
		start := r.at
		r.value(e)
		if e.Kind() == reflect.Int && string(r.data[start:r.at]) == "null" { // no number here would be vertex 0
			r.fault("is null", "Write "+wanted(e)+".")
		}
		r.where = outer
		n++
	})
	switch {
	case r.broken:
	case v.Kind() == reflect.Array && n != most:
		r.fault(fmt.Sprintf("has %d numbers", n), "Write "+wanted(v)+".")
		blank(v)
	case v.Kind() == reflect.Slice && n > most:
		r.fault(fmt.Sprintf("has %d %s; the most is %d", n, nounOf(v.Type().Elem()), most), fixMany(v.Type().Elem()))
	case v.Kind() == reflect.Slice && n == 0:
		v.SetZero()
	}
}
