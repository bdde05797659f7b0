package main

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"log"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// collect returns the files of the site by name, except the page: the programs, the runtime's loader, vugu's
// helper, and what stands in public/.
func collect(out string) (map[string][]byte, error) {
	files := map[string][]byte{}
	var err error
	for name, from := range map[string]string{"cohoist.wasm": "./wasm", "study.wasm": "./wasm/study", "library.wasm": "./wasm/library"} {
		if files[name], err = program(filepath.Join(out, name), from); err != nil {
			return nil, err
		}
	}
	root, err := goOutput("env", "GOROOT")
	if err != nil {
		return nil, err
	}
	if files["wasm_exec.js"], err = os.ReadFile(filepath.Join(root, "lib", "wasm", "wasm_exec.js")); err != nil {
		return nil, err
	}
	if files["vugu-helper.js"], err = helper(); err != nil {
		return nil, err
	}
	err = filepath.WalkDir("public", func(path string, f fs.DirEntry, err error) error {
		if err != nil || f.IsDir() || strings.HasPrefix(f.Name(), ".") {
			return err
		}
		name, err := filepath.Rel("public", path)
		if err == nil {
			files[filepath.ToSlash(name)], err = os.ReadFile(path)
		}
		return err
	})
	if err != nil {
		return nil, err
	}
	drawn, err := icons(files["icon.svg"])
	maps.Copy(files, drawn)
	return files, err
}

// small are compiler flags: without inlining the program is a tenth smaller (measured as brotli). What
// the solver runs keeps it, as its speed counts.
var small = []string{"-gcflags=all=-l", "-gcflags=cohoist/core/solve=", "-gcflags=cohoist/core/share=",
	"-gcflags=cohoist/core/vec=", "-gcflags=cohoist/core/way=", "-gcflags=cohoist/core/rehearse="}

// program compiles a program for the browser.
func program(path, from string) ([]byte, error) {
	args := append([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", path}, small...)
	text, err := compile(append(args, from), "GOEXPERIMENT=nogreenteagc")
	if err != nil && strings.Contains(text, "GOEXPERIMENT") { // a Go that knows no such choice
		text, err = compile(append(args, from))
	}
	if err != nil {
		return nil, errors.New("the program does not compile: " + text)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	if data, err = withoutLines(data); err != nil {
		log.Printf("site: the program keeps its line numbers: %v", err)
	}
	return data, nil
}

// compile runs the compiler for the browser. The older of Go 1.26's two garbage collectors is a hundredth
// of the whole program smaller, and the page's heap is small.
func compile(args []string, env ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Env = append(append(os.Environ(), "GOOS=js", "GOARCH=wasm"), env...)
	text, err := cmd.CombinedOutput()
	return string(text), err
}

// helper takes the script that vugu would evaluate at run time out of its source: a page without
// unsafe-eval has to load it as a file.
func helper() ([]byte, error) {
	dir, err := goOutput("list", "-m", "-f", "{{.Dir}}", "github.com/vugu/vugu")
	if err != nil {
		return nil, err
	}
	f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(dir, "domrender", "renderer-js-script.go"), nil, 0)
	if err != nil {
		return nil, err
	}
	for _, d := range f.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok {
			continue
		}
		for _, s := range g.Specs {
			v, ok := s.(*ast.ValueSpec)
			if !ok || v.Names[0].Name != "jsHelperScript" {
				continue
			}
			if lit, ok := v.Values[0].(*ast.BasicLit); ok {
				text, err := strconv.Unquote(lit.Value)
				return []byte(text), err
			}
		}
	}
	return nil, errors.New("vugu's helper script was not found in its source")
}

func goOutput(args ...string) (string, error) {
	b, err := exec.Command("go", args...).Output()
	return strings.TrimSpace(string(b)), err
}
