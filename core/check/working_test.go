package check_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"cohoist/core/check"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// Every expression of every working is evaluated again as Go, so that the text cannot lie.

// stepTolerance is how near an expression must come to its value: both are the same few products
// and roots of numbers written in full, so a few units in the last place.
const stepTolerance = 1e-9

func TestWorkingIsTrue(t *testing.T) {
	steps := 0
	for name, p := range plans(t) {
		for _, row := range report.Build(p).Checks {
			names := map[string]float64{"pi": math.Pi}
			for _, s := range row.Steps {
				got, scale, err := evaluate(s.Expression, names)
				if err != nil {
					t.Errorf("%s, %s: %s = %s: %v", name, row.ID, s.Symbol, s.Expression, err)
					continue
				}
				if !(math.Abs(got-s.Value) <= stepTolerance*math.Abs(s.Value)+1e-15*scale) {
					t.Errorf("%s, %s: %s = %s is %.17g, the sheet says %.17g", name, row.ID, s.Symbol, s.Expression, got, s.Value)
				}
				if s.Source == "" || s.Symbol == "" {
					t.Errorf("%s, %s: a step lacks its symbol or its source: %+v", name, row.ID, s)
				}
				names[s.Symbol] = s.Value
				steps++
			}
			if n := len(row.Steps); n > 0 && (row.Status == check.OK || row.Status == check.Thin) {
				lastIs(t, name, row, row.Steps[n-1].Value)
			}
		}
	}
	if steps < 100 {
		t.Errorf("only %d steps were evaluated", steps)
	}
}

// lastIs asks that the working of a passing check ends in its utilisation, or residual.
func lastIs(t *testing.T, name string, row check.Row, last float64) {
	want := row.Utilisation
	if row.ID == "balance" {
		want = row.Demand
	}
	if math.Abs(last-want) > 1e-12*math.Abs(want) {
		t.Errorf("%s, %s: the working ends in %g, the row says %g", name, row.ID, last, want)
	}
}

// plans are the examples and every plan with a golden report.
func plans(t *testing.T) map[string]plan.Plan {
	t.Helper()
	out := map[string]plan.Plan{}
	for _, e := range example.All {
		p, faults := example.Plan(e.Name)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		out[e.Name] = p
		p.Site.TemperatureOffset, p.Site.Humidity = 10, 0.8
		out[e.Name+", moist"] = p
	}
	files, err := filepath.Glob("../../testdata/golden/*.plan.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no golden plans: %v", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, faults := plan.Decode(text)
		if len(faults) > 0 {
			t.Fatalf("%s: %v", file, faults)
		}
		out[file] = p
	}
	return out
}

var functions = map[string]func(x []float64) float64{
	"sqrt":  func(x []float64) float64 { return math.Sqrt(x[0]) },
	"pow":   func(x []float64) float64 { return math.Pow(x[0], x[1]) },
	"hypot": func(x []float64) float64 { return math.Hypot(x[0], x[1]) },
	"sin":   func(x []float64) float64 { return math.Sin(x[0]) },
	"cos":   func(x []float64) float64 { return math.Cos(x[0]) },
	"tan":   func(x []float64) float64 { return math.Tan(x[0]) },
	"atan2": func(x []float64) float64 { return math.Atan2(x[0], x[1]) },
	"min":   func(x []float64) float64 { return math.Min(x[0], x[1]) },
	"max":   func(x []float64) float64 { return math.Max(x[0], x[1]) },
	"exp":   func(x []float64) float64 { return math.Exp(x[0]) },
	"abs":   func(x []float64) float64 { return math.Abs(x[0]) },
}

// evaluate gives the value of a Go expression over names, and its largest intermediate, by which
// the rounding of a difference is judged.
func evaluate(text string, names map[string]float64) (value, scale float64, err error) {
	e, err := parser.ParseExpr(text)
	if err != nil {
		return 0, 0, err
	}
	value, err = eval(e, names, &scale)
	return value, scale, err
}

func eval(e ast.Expr, names map[string]float64, scale *float64) (x float64, err error) {
	defer func() { *scale = math.Max(*scale, math.Abs(x)) }()
	switch e := e.(type) {
	case *ast.BasicLit:
		return strconv.ParseFloat(e.Value, 64)
	case *ast.ParenExpr:
		return eval(e.X, names, scale)
	case *ast.Ident:
		x, ok := names[e.Name]
		if !ok {
			return 0, fmt.Errorf("no symbol %s before this step", e.Name)
		}
		return x, nil
	case *ast.UnaryExpr:
		x, err := eval(e.X, names, scale)
		if e.Op != token.SUB {
			return 0, fmt.Errorf("operator %v", e.Op)
		}
		return -x, err
	case *ast.BinaryExpr:
		a, err := eval(e.X, names, scale)
		if err != nil {
			return 0, err
		}
		b, err := eval(e.Y, names, scale)
		switch e.Op {
		case token.ADD:
			return a + b, err
		case token.SUB:
			return a - b, err
		case token.MUL:
			return a * b, err
		case token.QUO:
			return a / b, err
		}
		return 0, fmt.Errorf("operator %v", e.Op)
	case *ast.CallExpr:
		return call(e, names, scale)
	}
	return 0, fmt.Errorf("%T is not arithmetic", e)
}

func call(e *ast.CallExpr, names map[string]float64, scale *float64) (float64, error) {
	id, ok := e.Fun.(*ast.Ident)
	if !ok || functions[id.Name] == nil {
		return 0, fmt.Errorf("no such function")
	}
	args := make([]float64, len(e.Args))
	for i, a := range e.Args {
		x, err := eval(a, names, scale)
		if err != nil {
			return 0, err
		}
		args[i] = x
	}
	want := 2
	switch id.Name {
	case "sqrt", "exp", "sin", "cos", "tan", "abs":
		want = 1
	}
	if len(args) != want {
		return 0, fmt.Errorf("%s takes %d numbers", id.Name, want)
	}
	return functions[id.Name](args), nil
}

func TestEvaluate(t *testing.T) {
	for text, want := range map[string]float64{"2*(3 - 1)/4": 1, "hypot(3, -4)": 5, "max(abs(-2), sqrt(9))": 3, "atan2(1, 1)*180/pi": 45} {
		if got, _, err := evaluate(text, map[string]float64{"pi": math.Pi}); err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%s = %g, %v, want %g", text, got, err, want)
		}
	}
	for _, text := range []string{"x", "2 % 3", "f(1)", "hypot(1)", "\"a\"", "2*"} {
		if _, _, err := evaluate(text, nil); err == nil {
			t.Errorf("%s was evaluated", text)
		}
	}
}
