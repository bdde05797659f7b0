package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// working collects the lines of a check's working.
type working []Step

// add writes one line. Every %v of the expression takes one number, written so that it reads back
// exactly; the value is what the code computed, and a test evaluates the expression again.
func (w *working) add(symbol string, value float64, unit, source, expression string, numbers ...float64) float64 {
	if len(numbers) > 0 {
		args := make([]any, len(numbers))
		for i, x := range numbers {
			args[i] = literal(x)
		}
		expression = fmt.Sprintf(expression, args...)
	}
	*w = append(*w, Step{Symbol: symbol, Expression: expression, Value: value, Unit: unit, Source: source})
	return value
}

// literal writes a number as a Go expression that reads back exactly.
func literal(x float64) string {
	s := strconv.FormatFloat(x, 'g', -1, 64)
	if x < 0 || strings.HasPrefix(s, "-") {
		return "(" + s + ")"
	}
	return s
}

// say writes a number for a sentence: three figures, and its unit.
func say(x float64, unit string) string {
	s := "no number"
	switch {
	case math.IsInf(x, 0):
		s = "no end of"
	case math.Abs(x) < 5e-7:
		s = "0"
	case !math.IsNaN(x):
		digits := 2 - int(math.Floor(math.Log10(math.Abs(x))))
		scale := math.Pow(10, float64(max(0, min(digits, 12))))
		s = strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64)
	}
	if unit != "" {
		s += " " + unit
	}
	return s
}

// percent writes a fraction for a sentence.
func percent(x float64) string { return say(math.Round(100*x), "") + " %" }

// Where the numbers of the working come from.
const (
	given = "the plan"
	exact = "ISO 80000-3, exact"
	trade = "common practice, no source"
)

func degrees(rad float64) float64 { return rad * 180 / math.Pi }
