package main

import (
	"math"
	"reflect"

	"cohoist/core/canon"
	"cohoist/core/plan"
)

// must are the fields without which a plan is not read.
var must = map[string]bool{"format": true, "team": true, "team[].id": true, "team[].vehicle": true, "payload.solids[].shape": true}

// planSchema is the schema of liftplan/1: what a document must be to be read. A number left out (or null) is no
// fault: the report then assumes it, or says that it needs it. Keys that are not known are kept.
func planSchema(words *comments) object {
	o := object{{"$schema", draft}, {"$id", "urn:cohoist:liftplan:1"}, {"title", plan.Format},
		{"description", words.of(reflect.TypeFor[plan.Plan](), "") + " SI; z up; payload frame: origin at the centre of the first solid, x its long side, y left."}}
	return append(o, planObject(reflect.TypeFor[plan.Plan](), "", words)...)
}

// planObject describes a struct that stands at a path of the table of fields.
func planObject(t reflect.Type, path string, words *comments) object {
	var required []string
	properties := object{}
	for _, f := range canon.Fields(t) {
		own := f.Key
		if path != "" {
			own = path + "." + f.Key
		}
		field := t.Field(f.Index)
		v := planValue(field.Type, own, words)
		if _, ok := plan.FieldAt(own); !ok {
			v = v.with("description", words.of(t, field.Name))
		}
		properties = properties.with(f.Key, v)
		if must[own] {
			required = append(required, f.Key)
		}
	}
	o := object{{"type", "object"}, {"properties", properties}}
	if required != nil {
		o = o.with("required", required)
	}
	return o
}

// planValue describes what stands at a path.
func planValue(t reflect.Type, path string, words *comments) object {
	row, known := plan.FieldAt(path)
	switch t.Kind() {
	case reflect.Pointer:
		return planValue(t.Elem(), path, words)
	case reflect.Struct:
		return append(about(row, known), planObject(t, path, words)...)
	case reflect.Map:
		return object{{"type", "object"}, {"additionalProperties", planValue(t.Elem(), path+".*", words)}}
	case reflect.Slice, reflect.Array:
		return planList(t, path, words)
	case reflect.String:
		return about(row, known).with("type", "string").with("enum", choices(row)).with("maxLength", most(row)).with("default", row.Word)
	}
	return number(about(row, known), t, row)
}

// planList describes a list; an array has exactly its length, its numbers the bounds of the row.
func planList(t reflect.Type, path string, words *comments) object {
	row, known := plan.FieldAt(path)
	o := about(row, known).with("type", "array")
	if e := t.Elem(); e.Kind() == reflect.Float64 || e.Kind() == reflect.Int {
		o = o.with("items", number(object{}, e, plan.Field{In: row.In}))
	} else {
		o = o.with("items", planValue(e, path+"[]", words))
	}
	if t.Kind() == reflect.Array {
		return o.with("minItems", t.Len()).with("maxItems", t.Len())
	}
	if path == "team" {
		o = o.with("minItems", 1)
	}
	return o
}

// about is what the table of fields says in words.
func about(row plan.Field, known bool) object {
	if !known {
		return object{}
	}
	return object{}.with("title", row.Title).with("description", row.Help).with("x-unit", row.Unit)
}

func choices(row plan.Field) any {
	if row.Choices == nil {
		return nil
	}
	return row.Choices
}

func most(row plan.Field) any {
	if row.Longest == 0 {
		return nil
	}
	return row.Longest
}

// number describes a number within the bounds of a row; a row without any has none.
func number(o object, t reflect.Type, row plan.Field) object {
	kinds := []string{"number", "null"}
	if t.Kind() == reflect.Int || t.Kind() == reflect.Int64 {
		kinds[0] = "integer"
	}
	o = o.with("type", kinds)
	if row.In != (plan.Range{}) && !math.IsInf(row.In.Low, 0) && !math.IsInf(row.In.High, 0) {
		low, high := "minimum", "maximum"
		if row.In.LowOpen {
			low = "exclusiveMinimum"
		}
		if row.In.HighOpen {
			high = "exclusiveMaximum"
		}
		o = o.with(low, row.In.Low).with(high, row.In.High)
	}
	if row.Need == plan.Assumed {
		o = o.with("default", row.Default)
	}
	return o
}
