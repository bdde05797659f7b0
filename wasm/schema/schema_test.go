package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"cohoist/core/canon"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
)

const project = "../.."

// compiled is a schema as a general validator reads it: github.com/santhosh-tekuri/jsonschema v6.0.3, which also holds the
// schema itself against that of draft 2020-12.
func compiled(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(project, "public", "schema", name))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("file:///"+name, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("file:///" + name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func valid(t *testing.T, s *jsonschema.Schema, text []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(doc)
}

func TestFilesAreCurrent(t *testing.T) {
	files, err := schemas(project)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range files {
		if got, err := os.ReadFile(filepath.Join(project, "public", "schema", name)); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not current: make generate (%v)", name, err)
		}
	}
}

// plans are the shipped, the golden and the linked ones; without the library's own bounds they would be read all the same.
func plans(t *testing.T) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	for _, e := range example.All {
		out[e.Name] = example.JSON(e.Name)
	}
	for _, pattern := range []string{"testdata/golden/*.plan.json", "testdata/links/*.json"} {
		files, err := filepath.Glob(filepath.Join(project, pattern))
		if err != nil || len(files) < 5 {
			t.Fatal(pattern, len(files), err)
		}
		for _, f := range files {
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			out[filepath.Base(f)] = text
		}
	}
	return out
}

// Every plan that validates, and what the program itself writes of it, is one by the schema; so is its report.
func TestPlansAndReportsValidate(t *testing.T) {
	planSchema, reportSchema := compiled(t, "liftplan-1.json"), compiled(t, "liftreport-1.json")
	n := 0
	for name, text := range plans(t) {
		p, faults := plan.Read(text)
		if len(faults) > 0 {
			continue // an old link's plan that is read, but whose numbers nobody could mean
		}
		n++
		for _, doc := range [][]byte{text, plan.Encode(p)} {
			if err := valid(t, planSchema, doc); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		if err := valid(t, reportSchema, report.JSON(report.Build(p))); err != nil {
			t.Errorf("report of %s: %v", name, err)
		}
	}
	if n < 20 {
		t.Errorf("only %d plans were tried", n)
	}
	blank := report.Build(plan.Blank())
	if err := valid(t, reportSchema, canon.Indented(blank, canon.Null)); err != nil {
		t.Errorf("report of an empty plan: %v", err)
	}
}

// What the reader refuses for a type or a bound, the schema refuses too.
func TestFaultyDocumentsDoNotValidate(t *testing.T) {
	planSchema, reportSchema := compiled(t, "liftplan-1.json"), compiled(t, "liftreport-1.json")
	good := string(example.JSON("beam-pair"))
	for _, change := range [][2]string{{`"liftplan/1"`, `"liftplan/2"`}, {`"mass_kg": 4`, `"mass_kg": -4`}, {`"mass_kg": 4`, `"mass_kg": "4"`},
		{`"shape": "box"`, `"shape": "ball"`}, {`"rotors": 4`, `"rotors": 4.5`}, {`"id": "A",`, ``}, {`"utilisation": 0.8`, `"utilisation": 80`},
		{`"kind": "cable"`, `"kind": "rope"`}, {`"separation_m": 1.4`, `"separation_m": -1.4`}} {
		bad := strings.Replace(good, change[0], change[1], 1)
		if bad == good {
			t.Fatalf("%s is not in the example", change[0])
		}
		if _, faults := plan.Read([]byte(bad)); len(faults) == 0 {
			t.Errorf("the reader takes %s", change[1])
		}
		if err := valid(t, planSchema, []byte(bad)); err == nil {
			t.Errorf("the schema takes %s", change[1])
		}
	}
	p, _ := example.Plan("beam-pair")
	whole := string(report.JSON(report.Build(p)))
	for _, change := range [][2]string{{`"verdict": "lifts"`, `"verdict": "yes"`}, {`"governing":`, `"governed":`}, {`"status": "ok"`, `"status": 1`}} {
		if bad := strings.Replace(whole, change[0], change[1], 1); bad == whole || valid(t, reportSchema, []byte(bad)) == nil {
			t.Errorf("the schema takes %s in a report", change[1])
		}
	}
}

// Every row of the table of fields stands in the schema, with its unit.
func TestEveryFieldIsDescribed(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(project, "public", "schema", "liftplan-1.json"))
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	for _, f := range plan.Fields {
		at := root
		for _, step := range strings.Split(f.Path, ".") {
			key, list := strings.CutSuffix(step, "[]")
			if key == "*" {
				at, _ = at["additionalProperties"].(map[string]any)
			} else {
				properties, _ := at["properties"].(map[string]any)
				at, _ = properties[key].(map[string]any)
			}
			if list {
				at, _ = at["items"].(map[string]any)
			}
		}
		unit, _ := at["x-unit"].(string)
		if at["title"] != f.Title || at["description"] != f.Help || unit != f.Unit {
			t.Errorf("%s is described as %v", f.Path, at)
		}
	}
}
