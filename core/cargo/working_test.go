package cargo

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"testing"

	"cohoist/core/example"
)

// value evaluates the arithmetic of a line of working; NaN: it is none.
func value(e ast.Expr, names map[string]float64) float64 {
	switch e := e.(type) {
	case *ast.BasicLit:
		x, err := strconv.ParseFloat(e.Value, 64)
		if err == nil {
			return x
		}
	case *ast.ParenExpr:
		return value(e.X, names)
	case *ast.UnaryExpr:
		return -value(e.X, names)
	case *ast.Ident:
		if x, ok := names[e.Name]; ok {
			return x
		}
	case *ast.BinaryExpr:
		a, b := value(e.X, names), value(e.Y, names)
		switch e.Op {
		case token.ADD:
			return a + b
		case token.SUB:
			return a - b
		case token.MUL:
			return a * b
		case token.QUO:
			return a / b
		}
	case *ast.CallExpr:
		a := value(e.Args[0], names)
		switch e.Fun.(*ast.Ident).Name {
		case "sqrt":
			return math.Sqrt(a)
		case "min":
			return math.Min(a, value(e.Args[1], names))
		case "max":
			return math.Max(a, value(e.Args[1], names))
		}
	}
	return math.NaN()
}

// Every line of working evaluates to what it says, to rounding, and the last are the item's time and energy with the flight to it.
func TestWorkingIsTrue(t *testing.T) {
	frame, _ := example.Plan("landing-frame")
	for _, s := range []*Study{study(t, one(3, 100)), study(t, frame)} {
		sum, energy := 0.0, 0.0
		for i := range s.Items {
			names := map[string]float64{}
			for _, step := range s.Working(i) {
				e, err := parser.ParseExpr(step.Expression)
				if err != nil {
					t.Fatal(err)
				}
				close(t, s.Items[i].ID+" "+step.Symbol+" = "+step.Expression, value(e, names), step.Value, 1e-12)
				if _, twice := names[step.Symbol]; twice || step.Unit == "" || step.Source == "" {
					t.Errorf("%s is twice, or lacks unit or source", step.Symbol)
				}
				names[step.Symbol] = step.Value
			}
			sum, energy = sum+names["t"], energy+names["E"]
		}
		home, last := 0.0, -1
		for _, x := range s.Spans(s.Best.Stops) {
			if x.Kind == Changing || x.Kind == Flying && x.Item < 0 {
				home, last = home+x.Time, x.Item
				energy += x.Energy
			}
		}
		close(t, "all items with what is flown home and changed", sum+home, s.Best.Time, 1e-12)
		close(t, "their energy", energy, s.Best.Energy, 1e-12)
		if last != -1 {
			t.Errorf("the last is no way home")
		}
	}
	heavy := one(2, 1000)
	heavy.Cargo.Items[1].Payload.Solids[0].Mass = 9
	if w := study(t, heavy).Working(1); w != nil {
		t.Errorf("an item that is not set has a working: %v", w)
	}
}
