package plan

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// FuzzDecode: whatever the text, decoding ends without panic and with bounded faults, each one line;
// what decodes encodes to a fixed point; and judging and filling what was decoded does not panic.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(sample))
	for _, pattern := range []string{"../../testdata/plans/bad/*.json", "../../testdata/links/*.json"} {
		files, _ := filepath.Glob(pattern)
		for _, file := range files {
			if data, err := os.ReadFile(file); err == nil {
				f.Add(data)
			}
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, faults := Decode(data)
		checkFaults(t, faults)
		checkFaults(t, Validate(p))
		Missing(p)
		Wanted(p)
		once := Encode(p)
		filled, _ := Assume(p)
		checkFaults(t, Validate(filled))
		if string(Encode(p)) != string(once) {
			t.Fatal("judging the plan changed it")
		}
		if len(faults) > 0 {
			return
		}
		if !json.Valid(bytes.TrimPrefix(data, []byte("\ufeff"))) { // a second reader of JSON
			t.Fatalf("taken, but no JSON: %q", data)
		}
		q, faults := Decode(once)
		if len(faults) > 0 {
			t.Fatalf("the canonical text has faults: %s\n%s", faults, once)
		}
		if twice := Encode(q); string(twice) != string(once) {
			t.Fatalf("no fixed point:\n%s\n%s", once, twice)
		}
		if a, b := strings.Join(Unknown(p), "\n"), strings.Join(Unknown(q), "\n"); a != b {
			t.Fatalf("unknown fields %q became %q", a, b)
		}
	})
}

func checkFaults(t *testing.T, faults Faults) {
	if len(faults) > 2*mostFaults {
		t.Fatalf("%d faults", len(faults))
	}
	for _, f := range faults {
		if s := f.String(); strings.ContainsAny(s, "\n\r") || len(s) > 4000 || !strings.HasSuffix(s, ".") {
			t.Fatalf("no single line: %q", s)
		}
	}
}
