package plan

import (
	"fmt"
	"math"
	"reflect"
	"strings"
)

// Missing lists the paths of the fields without which the balance cannot be computed and that have no
// honest default: they were left out, or a number in their list was.
func Missing(p Plan) []string {
	out := lacking(p, Required)
	if len(p.Payload.Solids) == 0 {
		out = append([]string{"payload.solids"}, out...)
	}
	return out
}

// Wanted lists the paths of the fields left out that only single checks need; those checks are needs-input.
func Wanted(p Plan) []string { return lacking(p, OneCheck) }

func lacking(p Plan, need Need) []string {
	var out []string
	walk(&p, func(l leaf) {
		f := l.row
		switch {
		case f == nil:
		case f.Need == need && (f.When == nil || f.When(l.Context)) && lacks(l.v):
			out = append(out, l.where.String())
		case need == Required && l.Item == nil && l.v.Kind() == reflect.Pointer && !l.v.IsNil() && lacks(l.v): // half an override
			out = append(out, l.where.String())
		}
	})
	return out
}

// lacks tells whether a field, or part of it, is not given.
func lacks(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.String, reflect.Int, reflect.Int64:
		return v.IsZero()
	}
	if m, ok := v.Interface().(*Mesh); ok {
		return m == nil || len(m.Triangles) == 0
	}
	xs, _ := numbers(v)
	for _, x := range xs {
		if math.IsNaN(x) {
			return true
		}
	}
	return len(xs) == 0
}

// Assume returns a copy with every default of the table filled in, and a plain sentence for each
// kind of assumption made, in the order of the document.
func Assume(p Plan) (Plan, []string) {
	q := p.Clone()
	who := map[string][]string{} // who lacked the field, by pattern
	walkEdit(&q, func(l leaf) {
		if l.row == nil || l.row.Need != Assumed || l.row.When != nil && !l.row.When(l.Context) || !lacks(l.v) {
			return
		}
		f := *l.row
		if l.pattern == "limits.separation_m" {
			if f.Default = separation(q); math.IsNaN(f.Default) {
				return
			}
		}
		fill(l.v, f)
		who[l.pattern] = append(who[l.pattern], l.owner())
	})
	var sentences, near []string
	for _, f := range Fields {
		switch names := who[f.Path]; {
		case names == nil:
		case f.Word == LeftOut:
			near = append(near, strings.ToLower(f.Title[:1])+f.Title[1:])
		default:
			sentences = append(sentences, f.assumption(names, q))
		}
	}
	if near != nil {
		sentences = append(sentences, "Left out of the thrust needed: "+strings.Join(near, ", ")+".")
	}
	return q, sentences
}

func fill(v reflect.Value, f Field) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(f.Word)
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(f.Default))
	case reflect.Float64:
		v.SetFloat(f.Default)
	case reflect.Array:
		for i := range v.Len() {
			if math.IsNaN(v.Index(i).Float()) {
				v.Index(i).SetFloat(f.Default)
			}
		}
	}
}

// owner names whose field it is: a solid, a class, a vehicle, or nobody's.
func (l leaf) owner() string {
	switch {
	case l.Solid != nil:
		return fmt.Sprintf("solid %d", l.Index+1)
	case l.Class != nil:
		return said(l.Name)
	case l.Member != nil:
		return said(l.Member.ID)
	}
	return ""
}

func (f Field) assumption(who []string, q Plan) string {
	value := Number(f.Default, f.Unit)
	switch {
	case f.Path == "limits.separation_m":
		value = Number(q.Limits.Separation, f.Unit) + ", 1.25 times what the two widest vehicles need not to touch"
	case f.Word != "":
		value = f.Word
	}
	if who[0] == "" {
		return f.Title + " left out: taken as " + value + "."
	}
	if n := len(who); n > 8 {
		who = append(who[:6:6], fmt.Sprintf("%d more", n-6))
	}
	return f.Title + " of " + strings.Join(who, ", ") + " left out: taken as " + value + "."
}

// separation is 1.25 times the largest sum of two vehicles' arm and rotor radius, m; NaN for a
// single vehicle, or when arms or radii are not known. The quarter is air between the discs (common practice,
// no source).
func separation(p Plan) float64 {
	first, second := math.NaN(), math.NaN()
	for _, m := range p.Team {
		c := p.Vehicles[m.Vehicle]
		switch r := c.Arm + c.RotorRadius; {
		case math.IsNaN(r):
			return math.NaN()
		case !(r <= first):
			first, second = r, first
		case !(r <= second):
			second = r
		}
	}
	return 1.25 * (first + second)
}
