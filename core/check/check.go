// Package check asks the questions of the sheet. A check is a value in a list: a new one is one
// file here and one line in all.go.
package check

// Status is the answer of one check. The zero value is "not run".
type Status string

// The statuses, from the design of the report.
const (
	NotRun        Status = ""
	OK            Status = "ok"
	Thin          Status = "thin" // passes with less than a tenth of the capacity left
	Fail          Status = "fail"
	NotApplicable Status = "not-applicable"
	NeedsInput    Status = "needs-input"
	OutsideModel  Status = "outside-model"
	Unsolved      Status = "unsolved"
)

// Step is one line of working. Expression is a valid Go expression over the symbols of earlier
// steps and the numbers of the plan; a test evaluates it again.
type Step struct {
	Symbol     string  `json:"symbol"`
	Expression string  `json:"expression"`
	Value      float64 `json:"value"`
	Unit       string  `json:"unit"`
	Source     string  `json:"source"`
}

// Row is the answer of a check at its worst place, SI, NaN where a number was not computed.
type Row struct {
	ID          string  `json:"id"`
	Title       string  `json:"title"`
	Status      Status  `json:"status"`
	Where       string  `json:"where"` // id of the vehicle (or "A B" for a pair), or ""
	Demand      float64 `json:"demand"`
	Capacity    float64 `json:"capacity"`
	Utilisation float64 `json:"utilisation"` // demand / capacity
	Unit        string  `json:"unit"`
	Sentence    string  `json:"sentence"`
	Steps       []Step  `json:"steps"`
}

// Ask asks one check; a zero Row when there is none of that id.
func Ask(id string, f Facts) Row {
	for _, c := range All {
		if c.ID == id {
			return c.ask(f)
		}
	}
	return Row{}
}
