package main

import (
	"os"
	"strings"
	"testing"

	checks "cohoist/core/check"
	"cohoist/core/link"
	"cohoist/ui/talk"
)

// The handbook has every check with its words, working and an example whose link opens, and every chapter of
// the theory; nothing in it is fetched from elsewhere.
func TestHandbook(t *testing.T) {
	text, err := handbook("../..")
	if err != nil {
		t.Fatal(err)
	}
	page := string(text)
	for _, c := range checks.All {
		if !strings.Contains(page, `<article id="check-`+c.ID+`">`) {
			t.Errorf("check %s has no article", c.ID)
		}
		if len(c.Examples) > 0 && !strings.Contains(page[strings.Index(page, `id="check-`+c.ID+`"`):], "Worked example") {
			t.Errorf("check %s has no worked example", c.ID)
		}
	}
	for _, s := range talk.Sections {
		if !strings.Contains(page, "<strong>"+s.Title+"</strong>") {
			t.Errorf("nothing is said of %q", s.Title)
		}
	}
	for _, l := range strings.Split(page, `href="#`)[1:] {
		if id := l[:strings.IndexByte(l, '"')]; !strings.Contains(page, `id="`+id+`"`) {
			t.Errorf("a link leads to #%s, which is not there", id)
		}
	}
	links := strings.Split(page, `href="./#`)[1:]
	if len(links) < len(checks.All)/2 {
		t.Errorf("%d worked examples can be opened", len(links))
	}
	for _, l := range links {
		if _, err := link.Decode(l[:strings.IndexByte(l, '"')]); err != nil {
			t.Error(err)
		}
	}
	theory, err := os.ReadFile("../../core/THEORY.md")
	if err != nil {
		t.Fatal(err)
	}
	if want, got := strings.Count(string(theory), "\n## "), strings.Count(page[strings.Index(page, `id="theory"`):], "<h3"); got < want {
		t.Errorf("%d of %d chapters", got, want)
	}
	for _, bad := range []string{"<script", "src=", "style=", "<link rel=\"stylesheet\" href=\"http"} {
		if strings.Contains(page, bad) {
			t.Errorf("the handbook holds %s", bad)
		}
	}
}

func TestBibliography(t *testing.T) {
	b := bibliography("@book{a-1,\n  author = {A, B.},\n  title = {The {X} Book},\n  year = {1999},\n}\n\n@misc{b,\n  title = {Z},\n  howpublished = {\\url{https://z.example}},\n}\n")
	if b["a-1"] != "A, B. The X Book. 1999." || b["b"] != "Z. https://z.example." {
		t.Errorf("%q", b)
	}
}
