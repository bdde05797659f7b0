package study

import (
	"strings"

	"cohoist/core/canon"
	"cohoist/core/handover"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// handOn hands the lift to other programs and people as files.
type handOn struct{}

// See has nothing to show while the plan moves: to know which files there are takes making them.
func (*handOn) See(*Turn) {}

// Rest lists the files.
func (*handOn) Rest(t *Turn) {
	if t.Opened(talk.HandOn) && t.Rested() {
		t.Show(talk.HandOn, &Handed{Files: handed(t.Plan, t.Report), Title: t.Plan.Title})
	}
}

func (*handOn) Do(t *Turn, what string) {
	name, ok := strings.CutPrefix(what, "file ")
	if !ok {
		return
	}
	for _, f := range files(t.Plan, t.Report) {
		if f.Name == name {
			t.Save(File{Name: format.FileName(t.Plan.Title) + "-" + f.Name, Type: kind(f.Name), Data: f.Data})
		}
	}
}

// files are all documents of a plan: those of its forces only when it has some.
func files(p plan.Plan, r report.Report) []handover.File {
	list := []handover.File{
		{Name: "report.json", Line: "the whole report, liftreport/1", Data: canon.Indented(r, canon.Null)},
		{Name: "plan.json", Line: "the plan, liftplan/1", Data: plan.Encode(p)},
	}
	l, err := handover.Of(p)
	if err != nil {
		return append(list, handover.File{Name: "checks.csv", Line: "the checks: demand, capacity, utilisation", Data: handover.ChecksCSV(r)})
	}
	return append(list, l.Files()...)
}

// handed is files without their contents.
func handed(p plan.Plan, r report.Report) []handover.File {
	list := files(p, r)
	for i := range list {
		list[i].Data = nil
	}
	return list
}

// kind is the media type of a document.
func kind(name string) string {
	switch {
	case strings.HasSuffix(name, ".csv"):
		return "text/csv;charset=utf-8"
	case strings.HasSuffix(name, ".json"):
		return "application/json"
	case strings.HasSuffix(name, ".npy"):
		return "application/octet-stream"
	}
	return "application/xml"
}

// drawings are the pictures of the page that can be saved, by what finds them.
var drawings = []struct{ Name, Find, Line string }{
	{"elevation-and-plan.svg", ".dw-sheet .dw-svg", "elevation and plan, to scale"},
	{"turned.svg", ".dw-turnable", "the lift from where the turned view is seen"},
	{"beam.svg", ".bm-svg", "diagrams of the payload as a beam, while its section stands open"},
}

// drawn are the pictures that there are.
func (c *Handed) drawn() []struct{ Name, Find, Line string } { return drawings }

func (c *Handed) name(file string) string { return format.FileName(c.Title) + "-" + file }
