package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Two builds into two folders are the same bytes, and the list of sums tells so.
func TestTwoBuildsAreTheSame(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	var lists [2]string
	for i := range lists {
		dir := t.TempDir()
		if _, err := build(dir, true); err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(filepath.Join(dir, sums))
		if err != nil {
			t.Fatal(err)
		}
		lists[i] = string(text)
		check(t, dir, lists[i])
	}
	if lists[0] != lists[1] {
		t.Errorf("two builds differ:\n%s\n%s", lists[0], lists[1])
	}
}

// check holds every file of a folder against the list, both ways.
func check(t *testing.T, dir, list string) {
	t.Helper()
	listed := map[string]string{}
	for line := range strings.Lines(list) {
		hash, name, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		listed[name] = hash
	}
	err := filepath.WalkDir(dir, func(path string, f os.DirEntry, err error) error {
		if err != nil || f.IsDir() || f.Name() == sums {
			return err
		}
		name, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		name = filepath.ToSlash(name)
		data, err := os.ReadFile(path)
		if listed[name] != sum(data) {
			t.Errorf("%s is listed as %q", name, listed[name])
		}
		delete(listed, name)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(listed) > 0 {
		t.Errorf("listed but not there: %v", listed)
	}
}
