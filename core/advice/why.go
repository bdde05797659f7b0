package advice

import (
	"cohoist/core/check"
	"cohoist/core/report"
)

// Why lists what stands in the way of a lift, in the report's own words: what has no balance, what
// fails, what is missing or beyond the model, and, when nothing is, what is thin.
func Why(r report.Report) []string {
	var list []string
	said := map[string]bool{}
	add := func(text string) {
		if text != "" && !said[text] {
			said[text] = true
			list = append(list, text)
		}
	}
	for _, row := range bad(r) {
		if row.Sentence != "" {
			add(row.Title + ": " + row.Sentence)
		}
	}
	if r.Verdict == report.NeedsInput || r.Verdict == report.OutsideModel || r.Verdict == report.Unsolved {
		add(r.Sentence)
	}
	return list
}

// bad are the rows that keep a plan from its lift: those that fail; when none does, those that are thin.
func bad(r report.Report) []check.Row {
	for _, status := range [2]check.Status{check.Fail, check.Thin} {
		var rows []check.Row
		for _, row := range r.Checks {
			if row.Status == status {
				rows = append(rows, row)
			}
		}
		if len(rows) > 0 {
			return rows
		}
	}
	return nil
}
