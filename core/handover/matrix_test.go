package handover_test

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"cohoist/core/example"
	"cohoist/core/handover"
)

// times is a product of matrices.
func times(a, b handover.Matrix) handover.Matrix {
	n, m, k := len(a.Rows), len(b.Columns), len(b.Rows)
	out := handover.Matrix{Rows: a.Rows, Columns: b.Columns, Data: make([]float64, n*m)}
	for i := range n {
		for j := range m {
			for l := range k {
				out.Data[i*m+j] += a.Data[i*k+l] * b.Data[l*m+j]
			}
		}
	}
	return out
}

func column(rows []string, x []float64) handover.Matrix {
	return handover.Matrix{Rows: rows, Columns: []string{"1"}, Data: x}
}

// B times the report's own forces is the wrench that is wanted, to rounding: 1e-9 of the weight, as the balance check
// asks. It goes another way than core/share's residual: from the numbers of the report.
func TestAllocationOfTheReportBalances(t *testing.T) {
	for _, e := range example.All {
		l := lift(t, e.Name)
		b := l.Allocation()
		var u []float64
		for i, v := range l.Report.Vehicles {
			if l.Plan.Team[i].Hold.Kind == "rigid" {
				u = append(u, v.RotorThrust...)
			} else {
				u = append(u, v.Force[:]...)
			}
		}
		if len(u) != len(b.Columns) || len(b.Rows) != 6 {
			t.Fatalf("%s: %d × %d for %d forces", e.Name, len(b.Rows), len(b.Columns), len(u))
		}
		got, want := times(b, column(b.Columns, u)).Data, l.Wanted()
		for i := range want {
			if math.Abs(got[i]-want[i]) > 1e-9*l.Model.Weight() {
				t.Errorf("%s: %s is %v, wanted %v", e.Name, b.Rows[i], got[i], want[i])
			}
		}
	}
}

// The four conditions that have one solution, the pseudo-inverse: R. Penrose, A generalized inverse for matrices,
// 1955 (from memory). Tolerance: rounding times the condition of B, below 1e3 here.
func TestPenrose(t *testing.T) {
	for _, e := range example.All {
		b := lift(t, e.Name).Allocation()
		p, rank := b.Inverse()
		bp, pb := times(b, p), times(p, b)
		near := func(what string, x, y []float64) {
			for i := range x {
				if !(math.Abs(x[i]-y[i]) < 1e-12) {
					t.Fatalf("%s: %s: %v and %v", e.Name, what, x[i], y[i])
				}
			}
		}
		near("B P B = B", times(bp, b).Data, b.Data)
		scale := 0.0
		for _, x := range p.Data {
			scale = math.Max(scale, math.Abs(x))
		}
		again := times(pb, p).Data
		for i := range again {
			again[i] /= scale
		}
		for i, x := range p.Data {
			near("P B P = P", again[i:i+1], []float64{x / scale})
		}
		near("B P symmetric", bp.Data, transposed(bp))
		near("P B symmetric", pb.Data, transposed(pb))
		trace := 0.0
		for i := range bp.Rows {
			trace += bp.Data[i*len(bp.Columns)+i]
		}
		if math.Abs(trace-float64(rank)) > 1e-9 {
			t.Errorf("%s: rank %d, trace of B P %v", e.Name, rank, trace)
		}
	}
}

func transposed(m handover.Matrix) []float64 {
	n := len(m.Columns)
	out := make([]float64, len(m.Data))
	for i := range m.Rows {
		for j := range n {
			out[j*len(m.Rows)+i] = m.Data[i*n+j]
		}
	}
	return out
}

// Two cables in a line leave the moment about that line without a hold: rank 5.
func TestRank(t *testing.T) {
	for name, want := range map[string]int{"beam-pair": 5, "crate-ring": 6, "sensor-plate": 4} {
		if _, rank := lift(t, name).Allocation().Inverse(); rank != want {
			t.Errorf("%s: rank %d, want %d", name, rank, want)
		}
	}
}

// NumPy 1.24.2 wrote the answers: testdata/handover/numpy_check.py.
func TestNumPy(t *testing.T) {
	text, err := os.ReadFile("../../testdata/handover/numpy.json")
	if err != nil {
		t.Fatal(err)
	}
	var answers struct {
		Save    map[string]string      `json:"save"`
		Inverse map[string][][]float64 `json:"inverse"`
	}
	if err := json.Unmarshal(text, &answers); err != nil || len(answers.Save) < 4 || len(answers.Inverse) < 3 {
		t.Fatal(err, len(answers.Save), len(answers.Inverse))
	}
	for shape, want := range answers.Save {
		var rows, columns int
		fmt.Sscan(shape, &rows, &columns)
		m := handover.Matrix{Rows: make([]string, rows), Columns: make([]string, columns)}
		for i := range rows * columns {
			m.Data = append(m.Data, float64(i)/8-3)
		}
		sum := sha256.Sum256(m.NPY())
		if got := hex.EncodeToString(sum[:]); got != want {
			t.Errorf("%s: SHA-256 %s, numpy.save gives %s", shape, got, want)
		}
		if r, c, x := unpack(t, m.NPY()); r != rows || c != columns || x[len(x)-1] != m.Data[len(x)-1] {
			t.Errorf("%s reads back as %d × %d", shape, r, c)
		}
	}
	for name, want := range answers.Inverse {
		p, _ := lift(t, name).Allocation().Inverse()
		scale := 0.0
		for _, x := range p.Data {
			scale = math.Max(scale, math.Abs(x))
		}
		for i := range want {
			for j, x := range want[i] {
				if got := p.Data[i*6+j]; math.Abs(got-x) > 1e-12*scale {
					t.Errorf("%s: row %d, column %d is %v, numpy.linalg.pinv has %v", name, i, j, got, x)
				}
			}
		}
	}
}
