package plan

import (
	"reflect"
	"sort"
	"sync"

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
	Item   *Item // of the cargo
}

// leaf is one field of a plan in its place: a number, a text, a list of numbers, or an unknown field.
type leaf struct {
	Context
	where   path   // holds until the visit ends: one path grows and shrinks
	pattern string // with [] for any index and * for any class: the Path of a Field
	row     *Field // of Fields; nil when there is none
	v       reflect.Value
	unknown bool
	edit    bool // visits set values: classes, which are copies in a map, are written back
}

// walk visits every field in the order of the document, classes by name.
func walk(p *Plan, visit func(leaf)) {
	walkValue(leaf{Context: Context{Plan: p}, where: make(path, 0, mostSteps), v: reflect.ValueOf(p).Elem()}, visit)
}

// walkEdit is walk for visits that set values.
func walkEdit(p *Plan, visit func(leaf)) {
	walkValue(leaf{Context: Context{Plan: p}, where: make(path, 0, mostSteps), v: reflect.ValueOf(p).Elem(), edit: true}, visit)
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
		each := l.pattern + "[]"
		for i := range v.Len() {
			n := l
			n.Index, n.where, n.pattern, n.v = i, append(l.where, step{i: i}), each, v.Index(i)
			switch e := n.v.Addr().Interface().(type) {
			case *Solid:
				n.Solid = e
			case *Member:
				n.Member = e
			case *Item:
				n.Item = e
			}
			walkValue(n, visit)
		}
	default:
		visit(l)
		if v.Kind() != reflect.Pointer {
			return
		}
		if m, ok := v.Interface().(*Mesh); ok && m != nil {
			walkExtra(l, m.Extra, visit)
		}
	}
}

func walkStruct(l leaf, visit func(leaf)) {
	s := shapeOf(l.v.Type(), l.pattern)
	for i := range s.fields {
		f := &s.fields[i]
		n := l
		n.where, n.v, n.pattern, n.row = append(l.where, step{name: f.key}), l.v.Field(f.index), f.pattern, f.row
		walkValue(n, visit)
	}
	if s.extra >= 0 {
		walkExtra(l, l.v.Field(s.extra).Interface().(Extra), visit)
	}
}

// shape is what a struct type has in one place of a plan.
type shape struct {
	fields []shapeField
	extra  int // index of its unknown fields; −1: none
}

type shapeField struct {
	key, pattern string
	index        int
	row          *Field
}

type place struct {
	t       reflect.Type
	pattern string
}

// shapes are those seen so far: to ask the types again for every plan takes long.
var shapes sync.Map // place → *shape

func shapeOf(t reflect.Type, pattern string) *shape {
	at := place{t, pattern}
	if s, ok := shapes.Load(at); ok {
		return s.(*shape)
	}
	s := &shape{extra: -1}
	for _, f := range canon.Fields(t) {
		p := f.Key
		if pattern != "" {
			p = pattern + "." + f.Key
		}
		row := (*Field)(nil)
		if i, ok := fieldIndex[p]; ok {
			row = &Fields[i]
		}
		s.fields = append(s.fields, shapeField{f.Key, p, f.Index, row})
	}
	if f, ok := t.FieldByName("Extra"); ok && f.Type == reflect.TypeFor[Extra]() {
		s.extra = f.Index[0]
	}
	shapes.Store(at, s)
	return s
}

func walkExtra(l leaf, extra Extra, visit func(leaf)) {
	if len(extra) == 0 {
		return
	}
	keys := make([]string, 0, len(extra))
	for k := range extra {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	for _, k := range keys {
		n := l
		n.where, n.row, n.unknown = l.where.key(k), nil, true
		visit(n)
	}
}
