package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"

	checks "cohoist/core/check"
	"cohoist/core/example"
	"cohoist/core/link"
	"cohoist/core/report"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

//go:embed handbook.html
var handbookText string

// handbook writes the handbook of the site from what the program itself knows: the checks with their words,
// restrictions, sources and worked examples, and the theory. root is the folder of the project.
func handbook(root string) ([]byte, error) {
	theory, err := os.ReadFile(filepath.Join(root, "core", "THEORY.md"))
	if err != nil {
		return nil, err
	}
	text, err := os.ReadFile(filepath.Join(root, "core", "references.bib"))
	if err != nil {
		return nil, err
	}
	sources := bibliography(string(text))
	var body bytes.Buffer
	if err := goldmark.New(goldmark.WithExtensions(extension.Table), goldmark.WithParserOptions(parser.WithAttribute())).Convert(lower(theory), &body); err != nil {
		return nil, err
	}
	p, _ := example.Plan("beam-pair")
	data := struct {
		Entries  []entry
		Cautions []string
		Groups   []talk.Group
		Theory   template.HTML
	}{Cautions: report.Build(p).Cautions, Groups: talk.Groups, Theory: template.HTML(roomy.Replace(body.String()))}
	for _, c := range checks.All {
		e, err := newEntry(c, sources)
		if err != nil {
			return nil, err
		}
		data.Entries = append(data.Entries, e)
	}
	t, err := template.New("handbook").Funcs(template.FuncMap{"number": number}).Parse(handbookText)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = t.Execute(&out, data)
	return out.Bytes(), err
}

// roomy lets wide tables be moved sideways, by keys too.
var roomy = strings.NewReplacer("<table>", `<div class="room" tabindex="0"><table>`, "</table>", "</table></div>")

// lower moves the headings of the theory down one, under the handbook's own, and gives chapters their ids.
func lower(theory []byte) []byte {
	s := regexp.MustCompile(`(?m)^# Theory\n`).ReplaceAllString(string(theory), "")
	return []byte(regexp.MustCompile(`(?m)^## (\d+) (.*)$`).ReplaceAllString(s, "### $1 $2 {#chapter-$1}"))
}

// entry is a check as the handbook shows it.
type entry struct {
	checks.Check
	Holds   []string // its restrictions in words
	Sources []string
	Worked  *worked
}

// worked is a check's worked example: a plan of the examples and what the check says of it.
type worked struct {
	Title, Link, Sentence, Against string
	Steps                          []checks.Step
}

func newEntry(c checks.Check, sources map[string]string) (entry, error) {
	e := entry{Check: c}
	for _, l := range c.Limits {
		e.Holds = append(e.Holds, l.Words())
	}
	for _, key := range c.Refs {
		if sources[key] == "" {
			return e, fmt.Errorf("check %s names the source %s, which core/references.bib does not have", c.ID, key)
		}
		e.Sources = append(e.Sources, sources[key])
	}
	for _, x := range c.Examples {
		p, faults := example.Plan(x.Plan)
		if len(faults) > 0 {
			continue
		}
		for _, row := range report.Build(p).Checks {
			if row.ID == c.ID {
				e.Worked = &worked{p.Title, link.Encode(p), row.Sentence, x.Source, row.Steps}
			}
		}
		break
	}
	return e, nil
}

// number writes a number of the working.
func number(x float64, unit string) string {
	if math.IsNaN(x) {
		return "–"
	}
	if unit == "Pa" {
		return format.SI.In(unit, x)
	}
	s := strconv.FormatFloat(x, 'g', 6, 64)
	if unit == "1" {
		return s
	}
	return s + "\u202f" + unit
}

var (
	bibEntry = regexp.MustCompile(`(?s)@\w+\{([\w-]+),(.*?)\n\}`)
	bibField = regexp.MustCompile(`(?m)^\s*(\w+)\s*=\s*\{(.*)\},?$`)
)

// bibliography is every source by its key, in a sentence.
func bibliography(text string) map[string]string {
	out := map[string]string{}
	for _, m := range bibEntry.FindAllStringSubmatch(text, -1) {
		f := map[string]string{}
		for _, v := range bibField.FindAllStringSubmatch(m[2], -1) {
			f[v[1]] = strings.NewReplacer(`\url{`, "", "{", "", "}", "", `\&`, "&", "--", "–").Replace(v[2])
		}
		var parts []string
		for _, k := range []string{"author", "title", "journal", "publisher", "institution", "year", "howpublished", "note"} {
			if f[k] != "" {
				parts = append(parts, strings.TrimSuffix(f[k], "."))
			}
		}
		out[m[1]] = strings.Join(parts, ". ") + "."
	}
	return out
}
