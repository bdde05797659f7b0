package main

import (
	"fmt"
	"strings"

	"github.com/vugu/vugu"

	"cohoist/ui/markup"
	"cohoist/ui/paint"
	"cohoist/ui/root"
)

// page fills index.html: the first view, drawn natively by the very components that take it over in
// the browser, and the hashes that make a changed file a new address.
func page(files map[string][]byte) ([]byte, error) {
	env, err := vugu.NewBuildEnv()
	if err != nil {
		return nil, err
	}
	build := env.RunBuild(root.FirstView())
	view := markup.Element(build, "app")
	text := string(files["index.html"])
	for key, name := range map[string]string{"css": "sheet.css", "drawing": "drawing.css", "studies": "studies.css", "print": "print.css", "where": "where.css", "study": "study.wasm", "asks": "studies.js", "wasm": "cohoist.wasm", "exec": "wasm_exec.js",
		"helper": "vugu-helper.js", "boot": "boot.js"} {
		text = strings.ReplaceAll(text, "{{"+key+"}}", sum(files[name])[:12])
	}
	text = strings.Replace(text, "{{stands}}", paint.Sum(build), 1)
	text = strings.Replace(text, "{{view}}", view, 1)
	if i := strings.Index(text, "{{"); i >= 0 && i < strings.Index(text, "<body>") {
		return nil, fmt.Errorf("index.html has an unknown placeholder near %q", text[i:i+20])
	}
	return []byte(text), nil
}
