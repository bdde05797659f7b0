package plan

import (
	"reflect"
	"sort"

	"cohoist/core/canon"
)

// Context is where in a plan a field stands; what does not apply is nil or empty.
type Context struct {
	Plan   *Plan
	Solid  *Solid
	Name   string // of the class
	Class  *Class
	Index  int // of the solid or vehicle
	Member *Member
}

// leaf is one field of a plan in its place: a number, a text, a list of numbers, or an unknown field.
type leaf struct {
	Context
	where   path
	pattern string // with [] for any index and * for any class: the Path of a Field
	v       reflect.Value
	unknown bool
	edit    bool // visits set values: classes, which are copies in a map, are written back
}

// walk visits every field in the order of the document, classes by name.
func walk(p *Plan, visit func(leaf)) {
	walkValue(leaf{Context: Context{Plan: p}, v: reflect.ValueOf(p).Elem()}, visit)
}

// walkEdit is walk for visits that set values.
func walkEdit(p *Plan, visit func(leaf)) {
	walkValue(leaf{Context: Context{Plan: p}, v: reflect.ValueOf(p).Elem(), edit: true}, visit)
}

func walkValue(l leaf, visit func(leaf)) {
	v := l.v
	switch {
	case v.Kind() == reflect.Struct:
		walkStruct(l, visit)
	case v.Kind() == reflect.Map:
		keys := make([]string, 0, v.Len())
		for _, k := range v.MapKeys() {
			keys = append(keys, k.String())
		}
		sort.Strings(keys)
		for _, k := range keys {
			c := l.Plan.Vehicles[k]
			n := l
			n.Name, n.Class, n.where, n.pattern = k, &c, l.where.key(k), l.pattern+".*"
			n.v = reflect.ValueOf(&c).Elem()
			walkValue(n, visit)
			if l.edit {
				l.Plan.Vehicles[k] = c
			}
		}
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		for i := range v.Len() {
			n := l
			n.Index, n.where, n.pattern, n.v = i, l.where.index(i), l.pattern+"[]", v.Index(i)
			switch e := n.v.Addr().Interface().(type) {
			case *Solid:
				n.Solid = e
			case *Member:
				n.Member = e
			}
			walkValue(n, visit)
		}
	default:
		visit(l)
		if m, ok := v.Interface().(*Mesh); ok && m != nil {
			walkExtra(l, m.Extra, visit)
		}
	}
}

func walkStruct(l leaf, visit func(leaf)) {
	for _, f := range canon.Fields(l.v.Type()) {
		n := l
		n.where, n.v, n.pattern = l.where.key(f.Key), l.v.Field(f.Index), f.Key
		if l.pattern != "" {
			n.pattern = l.pattern + "." + f.Key
		}
		walkValue(n, visit)
	}
	extra, _ := l.v.FieldByName("Extra").Interface().(Extra)
	walkExtra(l, extra, visit)
}

func walkExtra(l leaf, extra Extra, visit func(leaf)) {
	keys := make([]string, 0, len(extra))
	for k := range extra {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	for _, k := range keys {
		n := l
		n.where, n.unknown = l.where.key(k), true
		visit(n)
	}
}
