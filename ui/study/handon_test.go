package study

import (
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// Every file that a section lists is handed out under a name of the plan, and none is empty.
func TestFilesAreHandedOut(t *testing.T) {
	for _, e := range example.All {
		p := newPage(talk.Live)
		var got *File
		p.Send = func(a Answer) {
			if a.File != nil {
				got = a.File
			}
		}
		q := named(t, e.Name)
		p.ask(q, talk.HandOn)
		p.settle()
		for _, f := range handed(q, p.now.Report) {
			got = nil
			p.Hear(Message{Do: "hand-on file " + f.Name})
			p.settle()
			if got == nil || len(got.Data) == 0 || !strings.HasSuffix(got.Name, f.Name) {
				t.Errorf("%s: %s came as %+v", e.Name, f.Name, got)
			}
			if got != nil && f.Name == "plan.json" {
				if back, faults := plan.Read(got.Data); len(faults) > 0 || !plan.Same(back, q) {
					t.Errorf("%s: the plan's file reads back another plan: %v", e.Name, faults)
				}
			}
		}
	}
	if n := format.FileName("  Größe & Länge/../x  "); strings.ContainsAny(n, "/.& ") || n == "" {
		t.Errorf("a file is called %q", n)
	}
}
