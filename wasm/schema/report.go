package main

import (
	"reflect"

	"cohoist/core/canon"
	"cohoist/core/check"
	"cohoist/core/report"
)

// reportSchema is the schema of liftreport/1. Every key is there; null is what was not computed.
func reportSchema(words *comments) object {
	r := reporter{words: words}
	root := r.object(reflect.TypeFor[report.Report]())
	o := object{{"$schema", draft}, {"$id", "urn:cohoist:liftreport:1"}, {"title", report.Format},
		{"description", words.of(reflect.TypeFor[report.Report](), "")}}
	return append(append(o, root...), entry{"$defs", r.defs})
}

// reporter describes types, each named one once.
type reporter struct {
	words *comments
	defs  object
	done  map[reflect.Type]string
}

// words that a text may be, by its type.
var verdicts = map[reflect.Type]any{
	reflect.TypeFor[report.Verdict](): []report.Verdict{report.Lifts, report.ThinLift, report.Fails, report.NeedsInput, report.OutsideModel, report.Unsolved},
	reflect.TypeFor[check.Status](): []check.Status{check.OK, check.Thin, check.Fail, check.NotApplicable, check.NeedsInput,
		check.OutsideModel, check.Unsolved},
}

func (r *reporter) object(t reflect.Type) object {
	var required []string
	properties := object{}
	for _, f := range canon.Fields(t) {
		field := t.Field(f.Index)
		v := r.value(field.Type)
		if t == reflect.TypeFor[report.Report]() && f.Key == "format" {
			v = v.with("const", report.Format)
		}
		properties = properties.with(f.Key, v.with("description", r.words.of(t, field.Name)))
		if !f.OmitEmpty {
			required = append(required, f.Key)
		}
	}
	return object{{"type", "object"}, {"properties", properties}, {"required", required}}
}

func (r *reporter) value(t reflect.Type) object {
	switch t.Kind() {
	case reflect.Pointer:
		return object{{"anyOf", []object{r.value(t.Elem()), {{"type", "null"}}}}}
	case reflect.Struct:
		return object{{"$ref", "#/$defs/" + r.define(t)}}
	case reflect.Slice:
		return object{{"type", "array"}, {"items", r.value(t.Elem())}}
	case reflect.Array:
		return object{{"type", "array"}, {"items", r.value(t.Elem())}, {"minItems", t.Len()}, {"maxItems", t.Len()}}
	case reflect.String:
		return object{{"type", "string"}}.with("enum", verdicts[t])
	case reflect.Bool:
		return object{{"type", "boolean"}}
	case reflect.Float64:
		return object{{"type", []string{"number", "null"}}}
	case reflect.Int, reflect.Uint8:
		return object{{"type", "integer"}}
	}
	panic("schema: a report has a " + t.String())
}

// define notes a struct under $defs and returns its name there; a name that two packages use gets its package before it.
func (r *reporter) define(t reflect.Type) string {
	if name, ok := r.done[t]; ok {
		return name
	}
	name := t.Name()
	for _, d := range r.defs {
		if d.key == name {
			name = t.String()
		}
	}
	if r.done == nil {
		r.done = map[reflect.Type]string{}
	}
	r.done[t] = name
	at := len(r.defs)
	r.defs = append(r.defs, entry{name, nil})
	r.defs[at].value = object{}.with("description", r.words.of(t, ""))
	o := r.object(t)
	r.defs[at].value = append(r.defs[at].value.(object), o...)
	return name
}
