package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
)

// comments finds what stands beside fields of types in the sources.
type comments struct {
	root  string
	known map[string]map[string]string // folder → "Type.Field", or "Type" → words
	err   error                        // the first that was met
}

// nothing is how the sources call what a document says as null.
var nothing = regexp.MustCompile(`\b(nil|NaN)\b`)

// of is the comment of a field, or of the type when field is empty.
func (c *comments) of(t reflect.Type, field string) string {
	folder, ours := strings.CutPrefix(t.PkgPath(), "cohoist/")
	if !ours {
		return ""
	}
	if c.known[folder] == nil {
		c.known[folder] = map[string]string{}
		c.read(folder)
	}
	if field == "" {
		return c.known[folder][t.Name()]
	}
	return c.known[folder][t.Name()+"."+field]
}

// read goes through the sources of a package.
func (c *comments) read(folder string) {
	source := func(f fs.FileInfo) bool { return !strings.HasSuffix(f.Name(), "_test.go") }
	packages, err := parser.ParseDir(token.NewFileSet(), filepath.Join(c.root, filepath.FromSlash(folder)), source, parser.ParseComments)
	if err != nil && c.err == nil {
		c.err = err
	}
	for _, p := range packages {
		ast.Inspect(p, func(n ast.Node) bool {
			d, ok := n.(*ast.GenDecl)
			if !ok {
				return true
			}
			for _, s := range d.Specs {
				if t, ok := s.(*ast.TypeSpec); ok {
					c.note(folder, t, d.Doc)
				}
			}
			return true
		})
	}
}

func (c *comments) note(folder string, t *ast.TypeSpec, doc *ast.CommentGroup) {
	words := func(g *ast.CommentGroup) string {
		return nothing.ReplaceAllString(strings.Join(strings.Fields(g.Text()), " "), "null")
	}
	c.known[folder][t.Name.Name] = words(doc)
	s, ok := t.Type.(*ast.StructType)
	if !ok {
		return
	}
	for _, f := range s.Fields.List {
		for _, name := range f.Names {
			c.known[folder][t.Name.Name+"."+name.Name] = strings.TrimSpace(words(f.Doc) + " " + words(f.Comment))
		}
	}
}
