package handover_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/handover"
)

var update = flag.Bool("update", false, "write the golden files again; with COHOIST_ENGINE, run the scenes again too")

const golden = "../../testdata/golden/handover"

func lift(t *testing.T, name string) handover.Lift {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	l, err := handover.Of(p)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return l
}

// Golden files find changes: all files of a lift on cables in wind, of a rigid one, and of a beam. Ties are shared to about 1e-5
// of the thrust, which decides the tolerance; every other letter counts. The checks have golden files of their own.
func TestGolden(t *testing.T) {
	for _, name := range []string{"crate-ring", "sensor-plate", "handrail-beam"} {
		for _, f := range lift(t, name).Files() {
			if f.Name == "checks.csv" {
				continue
			}
			path := filepath.Join(golden, name, f.Name)
			if *update {
				if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(path, f.Data, 0o644); err != nil {
					t.Fatal(err)
				}
				continue
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if strings.HasSuffix(f.Name, ".npy") {
				want, f.Data = []byte(unpacked(t, want)), []byte(unpacked(t, f.Data))
			}
			if difference := unlike(string(want), string(f.Data), 1e-4); difference != "" {
				t.Errorf("%s changed (make golden writes it again; read the diff): %s", path, difference)
			}
		}
	}
}

var numeral = regexp.MustCompile(`-?\d+(\.\d+)?(e[-+]\d+)?`)

// unlike says where two texts differ: letters must be the same, numbers to tol of the larger and of 1.
func unlike(want, got string, tol float64) string {
	if w, g := numeral.ReplaceAllString(want, "0"), numeral.ReplaceAllString(got, "0"); w != g {
		a, b := strings.Split(w, "\n"), strings.Split(g, "\n")
		for i := range min(len(a), len(b)) {
			if a[i] != b[i] {
				return fmt.Sprintf("line %d was %.200q, is %.200q", i+1, a[i], b[i])
			}
		}
		return fmt.Sprintf("%d lines were %d", len(b), len(a))
	}
	w, g := numeral.FindAllString(want, -1), numeral.FindAllString(got, -1)
	for i := range w {
		x, _ := strconv.ParseFloat(w[i], 64)
		y, _ := strconv.ParseFloat(g[i], 64)
		if !(math.Abs(x-y) <= tol*math.Max(1, math.Max(math.Abs(x), math.Abs(y)))) {
			return fmt.Sprintf("number %d was %s, is %s", i+1, w[i], g[i])
		}
	}
	return ""
}

// unpack reads an .npy file of format 1.0 as NEP 1 describes it, apart from the code that writes it.
func unpack(t *testing.T, data []byte) (rows, columns int, values []float64) {
	t.Helper()
	if !bytes.HasPrefix(data, []byte("\x93NUMPY\x01\x00")) {
		t.Fatalf("begins with %q", data[:8])
	}
	size := int(data[8]) + int(data[9])<<8
	header := string(data[10 : 10+size])
	if n, err := fmt.Sscanf(header, "{'descr': '<f8', 'fortran_order': False, 'shape': (%d, %d), }", &rows, &columns); n != 2 {
		t.Fatalf("header %q: %v", header, err)
	}
	if (10+size)%64 != 0 || header[size-1] != '\n' {
		t.Errorf("data begin at %d after %q", 10+size, header[size-1])
	}
	rest := data[10+size:]
	if len(rest) != 8*rows*columns {
		t.Fatalf("%d bytes for %d × %d", len(rest), rows, columns)
	}
	for i := 0; i < len(rest); i += 8 {
		bits := uint64(0)
		for k := 7; k >= 0; k-- {
			bits = bits<<8 | uint64(rest[i+k])
		}
		values = append(values, math.Float64frombits(bits))
	}
	return rows, columns, values
}

func unpacked(t *testing.T, data []byte) string {
	rows, columns, values := unpack(t, data)
	return fmt.Sprint(rows, columns, values)
}
