package advice

import (
	"encoding/json"

	"cohoist/core/canon"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// JSON writes a report with advice beside it, under "advice": canonical, null for what was not
// computed, and every remedy with its plan as a plan is written.
func JSON(r report.Report, a Advice) []byte {
	list := make([]json.RawMessage, len(a.Remedies))
	for i, x := range a.Remedies {
		list[i] = with(canon.Compact(x, canon.Null), "plan", plan.Compact(x.Plan))
	}
	rest := struct {
		Why   []string `json:"why"`
		Moves []Move   `json:"moves"`
	}{a.Why, a.Moves}
	own := with(canon.Compact(rest, canon.Null), "remedies", canon.Compact(list, canon.Null))
	return append(canon.Indent(with(canon.Compact(r, canon.Null), "advice", own)), '\n')
}

// with is a JSON object with one more key.
func with(object []byte, key string, value []byte) []byte {
	out := append([]byte(nil), object[:len(object)-1]...)
	out = append(out, `,"`+key+`":`...)
	return append(append(out, value...), '}')
}
