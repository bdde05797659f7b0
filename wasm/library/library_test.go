//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/link"
	"cohoist/core/plan"
	"cohoist/core/report"
)

type failure struct {
	Ours    bool     `json:"ours"`
	Lines   []string `json:"lines"`
	Message string   `json:"message"`
}

// used is what testdata/use.mjs prints.
type used struct {
	Report   string `json:"report"`
	AsObject string `json:"asObject"`
	Fragment string `json:"fragment"`
	Plan     string `json:"plan"`
	Advice   string `json:"advice"`
	Files    []struct {
		Name  string `json:"name"`
		Bytes int    `json:"bytes"`
		Head  string `json:"head"`
	} `json:"files"`
	Faulty   failure  `json:"faulty"`
	Foreign  failure  `json:"foreign"`
	NoForces failure  `json:"noForces"`
	Still    bool     `json:"still"`
	Left     []string `json:"left"`
}

// TestUnderNode builds the library and uses it from Node as another program would; the answers are those of the same Go
// code run natively.
func TestUnderNode(t *testing.T) {
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("there is no node here to use the library from")
	}
	dir := t.TempDir()
	build := exec.Command("go", "build", "-o", filepath.Join(dir, "library.wasm"), ".")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, from := range []string{filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"), "../../public/cohoist.mjs"} {
		text, err := os.ReadFile(from)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, filepath.Base(from)), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	run := exec.Command("node", "testdata/use.mjs", dir)
	run.Stdin = bytes.NewReader(example.JSON("beam-pair"))
	var complaints bytes.Buffer
	run.Stderr = &complaints
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, complaints.String())
	}
	var u used
	if err := json.Unmarshal(out, &u); err != nil {
		t.Fatal(err)
	}
	judge(t, u)
}

func judge(t *testing.T, u used) {
	p, _ := example.Plan("beam-pair")
	want := report.Build(p)
	for name, text := range map[string]string{"report": u.Report, "report of an object": u.AsObject, "advice": u.Advice} {
		var r struct {
			Format  string
			Verdict report.Verdict
			Team    struct{ Utilisation float64 }
			Advice  *struct{ Moves []any }
		}
		if err := json.Unmarshal([]byte(text), &r); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if r.Format != report.Format || r.Verdict != want.Verdict || math.Abs(r.Team.Utilisation-want.Team.Utilisation) > 1e-9 {
			t.Errorf("%s: %+v, natively %s %v", name, r, want.Verdict, want.Team.Utilisation)
		}
		if (name == "advice") != (r.Advice != nil && len(r.Advice.Moves) > 0) {
			t.Errorf("%s has advice %v", name, r.Advice)
		}
	}
	if u.Fragment != link.Encode(p) || u.Plan != string(plan.Encode(p)) {
		t.Errorf("the link is %s and opens as %s", u.Fragment, u.Plan)
	}
	heads := map[string]string{"checks.csv": "id,ti", "allocation.npy": "\ufffdNUMP", "lift.sdf": "<?xml"}
	for _, f := range u.Files {
		if head, asked := heads[f.Name]; asked && f.Head == head && f.Bytes > 100 {
			delete(heads, f.Name)
		}
	}
	if len(heads) > 0 {
		t.Errorf("files that are not there or begin otherwise: %q, got %+v", heads, u.Files)
	}
	_, faults := plan.Read([]byte(`{"format":"liftplan/1","seed":"x","team":[]}`))
	if !u.Faulty.Ours || len(u.Faulty.Lines) != len(faults) || len(faults) < 2 || u.Faulty.Message != faults.String() {
		t.Errorf("a faulty plan throws %+v, natively %s", u.Faulty, faults)
	}
	if !u.Foreign.Ours || !strings.Contains(u.Foreign.Message, "not made by this program") {
		t.Errorf("a foreign link throws %+v", u.Foreign)
	}
	if !u.NoForces.Ours {
		t.Errorf("files without forces throw %+v", u.NoForces)
	}
	if !u.Still || len(u.Left) > 0 {
		t.Errorf("two libraries differ, or leave %q in the global object", u.Left)
	}
}
