package core_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// level orders the packages of core: a package may import only what has a lower number. The flow is
// report → check → chapters → solve, canon, plan → vec.
var level = map[string]int{
	"vec": 0, "unit": 0, "canon": 0, "momentum": 0,
	"plan": 1, "solve": 1,
	"certify": 2, "mass": 2, "air": 2, "class": 2, "link": 2, "pattern": 2, "bench": 2, "near": 2,
	"vehicle": 3, "example": 3, "beam": 3,
	"share":   4,
	"agility": 5, "energy": 5, "scatter": 5, "formation": 5, "hang": 5, "lost": 5, "patch": 5, "gust": 5,
	"way": 6, "rehearse": 7,
	"check": 6, "place": 6,
	"report": 7, "advice": 8, "cargo": 8, "crosscheck": 9, "handover": 8,
}

// forbidden is what the core must not see: files, clocks, the network, the browser, true chance.
var forbidden = []string{"os", "io/fs", "time", "net", "syscall", "os/exec", "crypto/rand", "unsafe"}

// seeded is what the core may use of chance: generators that a plan's seed starts.
var seeded = map[string]bool{"New": true, "NewPCG": true, "NewChaCha8": true, "NewSource": true, "Rand": true, "PCG": true, "ChaCha8": true, "Source": true}

func TestImportDirections(t *testing.T) {
	files := 0
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		own := filepath.ToSlash(filepath.Dir(path))
		mine, known := level[own]
		if !known {
			t.Errorf("%s: package %s has no place in the order of the core", path, own)
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		files++
		ast.Inspect(f, func(n ast.Node) bool {
			if call, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := call.X.(*ast.Ident); ok && x.Name == "rand" && chance(f) && !seeded[call.Sel.Name] {
					t.Errorf("%s uses rand.%s, which no seed of a plan starts", path, call.Sel.Name)
				}
			}
			return true
		})
		for _, spec := range f.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			judge(t, path, own, name, mine)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 20 {
		t.Errorf("only %d files were read", files)
	}
}

// chance tells that a file imports a generator of random numbers.
func chance(f *ast.File) bool {
	for _, spec := range f.Imports {
		if strings.HasPrefix(spec.Path.Value, `"math/rand`) {
			return true
		}
	}
	return false
}

func judge(t *testing.T, path, own, name string, mine int) {
	for _, bad := range forbidden {
		if name == bad || strings.HasPrefix(name, bad+"/") {
			t.Errorf("%s imports %s, which the core must not see", path, name)
		}
	}
	if !strings.HasPrefix(name, "cohoist/") {
		return
	}
	other, ok := strings.CutPrefix(name, "cohoist/core/")
	if !ok {
		t.Errorf("%s imports %s, which is above the core", path, name)
		return
	}
	if theirs, known := level[other]; !known || theirs >= mine {
		t.Errorf("%s: %s must not import %s", path, own, other)
	}
}
