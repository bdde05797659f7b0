package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

const crashing = `package main

import (
	"fmt"
	"os"
	"strings"
)

type node struct{ left, right *node }

func grow(depth int) *node {
	if depth == 0 {
		return &node{}
	}
	return &node{grow(depth - 1), grow(depth - 1)}
}

func (n *node) count() int {
	if n == nil {
		return 0
	}
	return 1 + n.left.count() + n.right.count()
}

func main() {
	total := 0
	for range 40 { // enough for collections of garbage, and for stacks that are moved
		total += grow(12).count()
	}
	done := make(chan int)
	go func() { done <- total }()
	fmt.Println(strings.Repeat("x", 3), <-done)
	defer func() {
		if r := recover(); r != nil {
			fmt.Println("recovered", r)
			var n *node
			if len(os.Args) > 1 {
				n.left = nil
			}
		}
	}()
	panic("of its own")
}
`

// A program without line numbers collects, recovers and crashes as one with them, only that its trace names
// no lines and functions.
func TestAProgramWithoutLinesRuns(t *testing.T) {
	dir := t.TempDir()
	source, plain, bare := filepath.Join(dir, "main.go"), filepath.Join(dir, "a.wasm"), filepath.Join(dir, "b.wasm")
	if err := os.WriteFile(source, []byte(crashing), 0o644); err != nil {
		t.Fatal(err)
	}
	if text, err := compile([]string{"build", "-trimpath", "-ldflags=-s -w", "-o", plain, source}); err != nil {
		t.Fatal(text)
	}
	data, err := os.ReadFile(plain)
	if err != nil {
		t.Fatal(err)
	}
	out, err := withoutLines(data)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(bare, out, 0o644); err != nil {
		t.Fatal(err)
	}
	run := func(args ...string) string {
		root, err := goOutput("env", "GOROOT")
		if err != nil {
			t.Fatal(err)
		}
		text, _ := exec.Command(filepath.Join(root, "lib", "wasm", "go_js_wasm_exec"), args...).CombinedOutput()
		return string(text)
	}
	const want = "xxx 327640\nrecovered of its own\n"
	if a, b := run(plain), run(bare); a != want || b != want {
		t.Errorf("with lines %q, without %q", a, b)
	}
	a, b := run(plain, "crash"), run(bare, "crash")
	if !strings.Contains(a, "main.go:") || strings.Contains(b, "main.go:") || strings.Contains(b, "main.main") || !strings.Contains(b, "nil pointer dereference") {
		t.Errorf("the traces are\n%s\nand\n%s", a, b)
	}
}

func TestOtherProgramsStayAsTheyAre(t *testing.T) {
	for _, p := range []string{"", "\x00asm\x01\x00\x00\x00", "\x00asm\x01\x00\x00\x00\x0b\x09\x01\x00\x41\x00\x0b\x03abc", "\x00asm\x01\x00\x00\x00\x0b\x7f"} {
		if out, err := withoutLines([]byte(p)); err == nil || string(out) != p {
			t.Errorf("%q became %q, %v", p, out, err)
		}
	}
}
