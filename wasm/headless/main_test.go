package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const good = `{"format": "liftplan/1", "payload": {"solids": [{"shape": "box", "size_m": [2.4, 0.3, 0.05], "mass_kg": 4}]},
 "vehicles": {"field-quad": {"mass_kg": 3.4, "rotors": 4, "arm_m": 0.33, "rotor_radius_m": 0.19, "rotor_thrust_max_n": 19}},
 "team": [{"id": "A", "vehicle": "field-quad", "attach_m": [1.1, 0, 0.03], "hold": {"kind": "cable", "length_m": 3}},
  {"id": "B", "vehicle": "field-quad", "attach_m": [-1.1, 0, 0.03], "hold": {"kind": "cable", "length_m": 3}}]}`

func headless(args []string, in string) (status int, out, errs string) {
	var o, e bytes.Buffer
	status = run(args, strings.NewReader(in), &o, &e)
	return status, o.String(), e.String()
}

func TestReport(t *testing.T) {
	status, out, errs := headless([]string{"-"}, good)
	if status != 0 || errs != "" {
		t.Fatalf("status %d, %s", status, errs)
	}
	var r struct {
		Format   string
		Verdict  string
		Checks   []struct{ ID, Status string }
		Vehicles []struct {
			Tension float64 `json:"tension_n"`
		}
	}
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err)
	}
	if r.Format != "liftreport/1" || r.Verdict != "lifts" || len(r.Checks) < 10 {
		t.Errorf("format %s, verdict %s, %d checks", r.Format, r.Verdict, len(r.Checks))
	}
	for _, v := range r.Vehicles { // 4 kg on two vertical cables, by hand: 19.6133 N each
		if d := v.Tension - 19.6133; d > 1e-6 || d < -1e-6 {
			t.Errorf("tension %g", v.Tension)
		}
	}
	if !strings.Contains(out, "\n  \"verdict\"") {
		t.Error("the report is not indented")
	}
}

// The verdict does not change the exit status.
func TestFailsEndsWithZero(t *testing.T) {
	status, out, _ := headless([]string{"-"}, strings.Replace(good, `"mass_kg": 4`, `"mass_kg": 40`, 1))
	if status != 0 || !strings.Contains(out, `"verdict": "fails"`) {
		t.Errorf("status %d, %.200s", status, out)
	}
}

func TestFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "plan.json")
	if err := os.WriteFile(name, []byte(good), 0o600); err != nil {
		t.Fatal(err)
	}
	_, fromFile, _ := headless([]string{name}, "")
	_, fromInput, _ := headless([]string{"-"}, good)
	if fromFile != fromInput || fromFile == "" {
		t.Error("a file and standard input give different reports")
	}
}

func TestFaults(t *testing.T) {
	bad := strings.Replace(strings.Replace(good, `"mass_kg": 4`, `"mass_kg": -4`, 1), `"id": "B"`, `"id": "A"`, 1)
	for _, c := range []struct {
		name  string
		args  []string
		in    string
		lines int
		has   string
	}{
		{"two faults, a line each", []string{"-"}, bad, 2, "payload.solids[0].mass_kg"},
		{"not JSON", []string{"-"}, "{", 1, ""},
		{"no such file", []string{"/nowhere/plan.json"}, "", 1, "/nowhere/plan.json"},
		{"no argument", nil, "", 2, "usage"},
		{"two arguments", []string{"a", "b"}, "", 2, "usage"},
	} {
		status, out, errs := headless(c.args, c.in)
		if status != 2 || out != "" || strings.Count(errs, "\n") != c.lines || !strings.Contains(errs, c.has) {
			t.Errorf("%s: status %d, output %q, errors %q", c.name, status, out, errs)
		}
	}
}

func TestAdvice(t *testing.T) {
	heavy := strings.Replace(good, `"mass_kg": 4}`, `"mass_kg": 40}`, 1)
	status, out, errs := headless([]string{"-advice", "-"}, heavy)
	if status != 0 || errs != "" {
		t.Fatalf("status %d, %s", status, errs)
	}
	var r struct {
		Verdict string
		Advice  struct {
			Why      []string
			Remedies []struct {
				Verdict string
				Plan    json.RawMessage
			}
			Moves []struct{ Sentence string }
		}
	}
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err)
	}
	if r.Verdict != "fails" || len(r.Advice.Why) == 0 || len(r.Advice.Remedies) == 0 || len(r.Advice.Moves) == 0 {
		t.Fatalf("verdict %s, advice %+v", r.Verdict, r.Advice)
	}
	for _, x := range r.Advice.Remedies { // its plan is one that this command reads
		status, out, errs := headless([]string{"-"}, string(x.Plan))
		if status != 0 || !strings.Contains(out, `"verdict": "`+x.Verdict+`"`) {
			t.Errorf("status %d, %s, wanted the verdict %s", status, errs, x.Verdict)
		}
	}
}
