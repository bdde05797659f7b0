package advice

import (
	"cohoist/core/plan"
	"cohoist/core/report"
)

// Remedy is one change with which a plan lifts.
type Remedy struct{}

func remedies(p plan.Plan, r report.Report) []Remedy { return nil }
