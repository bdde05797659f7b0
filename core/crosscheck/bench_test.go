package crosscheck

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sort"
	"testing"
	"time"

	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/solve"
)

// answer is what a solver said to a problem and how long it took, in seconds: the median of runs.
type answer struct {
	T      float64 `json:"t"`
	Second float64 `json:"s"`
}

// median runs f until a fifth of a second is over, five times at least, and gives the middle.
func median(f func()) float64 {
	var took []float64
	for start := time.Now(); len(took) < 5 || time.Since(start) < time.Second/5 && len(took) < 4000; {
		from := time.Now()
		f()
		took = append(took, time.Since(from).Seconds())
	}
	return middle(took)
}

func middle(list []float64) float64 {
	s := slices.Clone(list)
	sort.Float64s(s)
	return s[len(s)/2]
}

// TestBench is one step of testdata/peers/bench.sh, which names the folder and the step; without
// them there is nothing to time.
func TestBench(t *testing.T) {
	dir := os.Getenv("COHOIST_BENCH")
	if dir == "" {
		t.Skip("run by make bench-peers")
	}
	switch step := os.Getenv("COHOIST_BENCH_STEP"); step {
	case "write":
		save(t, dir, "problems.json", problems())
	case "native", "wasm":
		save(t, dir, step+".json", kernel(t))
	case "simplex":
		save(t, dir, "simplex.json", simplexes(t))
	case "table":
		table(t, dir)
	default:
		t.Fatalf("no step %q", step)
	}
}

func save(t *testing.T, dir, name string, v any) {
	text, err := json.Marshal(v)
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, name), text, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// kernel times this project's solver: one Solver for all, problems one after the other so that each
// is fresh to it, and a whole report.
func kernel(t *testing.T) map[string]answer {
	out := map[string]answer{}
	s := solve.NewSolver()
	list := problems()
	for i, p := range list {
		other := list[(i+1)%len(list)].Program // so that p is never what was solved last
		if i+1 >= len(list) || list[i+1].K != p.K || list[i+1].Kind != p.Kind {
			other = list[i-1].Program
		}
		r := s.Solve(p.Program)
		most := r.T // r belongs to the solver
		if r.Status != solve.Optimal {
			t.Errorf("%s: %v %s", p.Name, r.Status, r.Reason)
		}
		if n := testing.AllocsPerRun(3, func() { s.Solve(p.Program) }); n != 0 {
			t.Errorf("%s: %v allocations in a solve of a size seen before", p.Name, n)
		}
		out[p.Name] = answer{most, alternate(s, p.Program, other)}
	}
	text, err := os.ReadFile("../example/deck-of-eight.json")
	if err != nil {
		t.Fatal(err)
	}
	doc, faults := plan.Decode(text)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	out["report-8"] = answer{report.Build(doc).Team.Utilisation, median(func() { report.Build(doc) })}
	return out
}

// alternate times p with another problem of its size solved before each run, untimed.
func alternate(s *solve.Solver, p, other *solve.Program) float64 {
	var took []float64
	for start := time.Now(); len(took) < 5 || time.Since(start) < time.Second/4 && len(took) < 3000; {
		s.Solve(other)
		from := time.Now()
		s.Solve(p)
		took = append(took, time.Since(from).Seconds())
	}
	return middle(took)
}

// table prints medians over the problems of a size, and checks that all solvers agree.
func table(t *testing.T, dir string) {
	all := map[string]map[string]answer{}
	for _, name := range []string{"native", "wasm", "peers", "simplex"} {
		text, err := os.ReadFile(filepath.Join(dir, name+".json"))
		m := map[string]answer{}
		if err == nil {
			err = json.Unmarshal(text, &m)
		}
		if err != nil {
			t.Fatal(err)
		}
		all[name] = m
	}
	fmt.Printf("medians in µs, %s/%s; general solver: cables cvxopt conelp, rigid HiGHS by scipy\n", runtime.GOOS, runtime.GOARCH)
	fmt.Println("| problem | native | wasm, Node | general solver | gonum simplex | general/native | general/wasm |")
	fmt.Println("|---|---|---|---|---|---|---|")
	own := map[string]float64{}
	for _, kind := range []string{"cable", "rigid"} {
		for _, s := range benchSizes {
			us := map[string]float64{}
			for name, m := range all {
				var took []float64
				for i := range s.problems {
					key := fmt.Sprintf("%s-%d-%d", kind, s.k, i)
					if a, ok := m[key]; ok {
						took = append(took, a.Second*1e6)
						tol := agreeTol
						if name == "wasm" {
							tol = sameTol
						}
						if d := math.Abs(a.T-all["native"][key].T) / all["native"][key].T; !(d < tol) {
							t.Errorf("%s: %s says %.10g, this solver %.10g", key, name, a.T, all["native"][key].T)
						}
					}
				}
				us[name] = math.NaN()
				if len(took) > 0 {
					us[name] = middle(took)
				}
			}
			own[fmt.Sprint(kind, s.k)] = us["native"]
			fmt.Printf("| %s, k = %d | %s | %s | %s | %s | %s | %s |\n", kind, s.k, cell(us["native"]), cell(us["wasm"]), cell(us["peers"]), cell(us["simplex"]), cell(us["peers"]/us["native"]), cell(us["peers"]/us["wasm"]))
		}
	}
	fmt.Printf("growth, native: time(1000)/time(100) is %s on cables, %s rigid\n", cell(own["cable1000"]/own["cable100"]), cell(own["rigid1000"]/own["rigid100"]))
	fmt.Printf("whole report of the eight-vehicle example: native %s µs, wasm %s µs\n", cell(all["native"]["report-8"].Second*1e6), cell(all["wasm"]["report-8"].Second*1e6))
}

// agreeTol is for general solvers at their own default tolerances, 1e-7 and 1e-6; sameTol for this
// solver on another machine's arithmetic.
const (
	agreeTol = 1e-5
	sameTol  = 1e-9
)

func cell(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	if v < 100 {
		return fmt.Sprintf("%.3g", v)
	}
	return fmt.Sprintf("%.0f", v)
}
