package main

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"path"
	"path/filepath"
	"strings"

	"github.com/andybalholm/brotli"
)

// first lists what a first visit loads.
var first = []string{"index.html", "sheet.css", "drawing.css", "print.css", "wasm_exec.js", "vugu-helper.js", "boot.js", "studies.js", "cohoist.wasm", "icon.svg", "manifest.webmanifest"}

// write puts the files and their compressed forms into the folder and removes what is not of the site.
func write(out string, files map[string][]byte, plain bool) error {
	keep := map[string]bool{}
	for name, data := range files {
		keep[name] = true
		file := filepath.Join(out, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(file, data, 0o644); err != nil {
			return err
		}
		if plain || len(data) < 500 || !pressable(name) {
			continue
		}
		keep[name+".br"], keep[name+".gz"] = true, true
		if err := press(file, data); err != nil {
			return err
		}
	}
	if err := list(out, keep); err != nil {
		return err
	}
	return tidy(out, keep)
}

// tidy removes what is not of the site from the folders that the site has, but no other folder and no dot-file.
func tidy(out string, keep map[string]bool) error {
	folders := map[string]bool{".": true}
	for name := range keep {
		folders[path.Dir(name)] = true
	}
	for folder := range folders {
		old, err := os.ReadDir(filepath.Join(out, filepath.FromSlash(folder)))
		if err != nil {
			return err
		}
		for _, f := range old {
			name := path.Join(folder, f.Name())
			if keep[name] || strings.HasPrefix(f.Name(), ".") || f.IsDir() {
				continue
			}
			if err := os.Remove(filepath.Join(out, filepath.FromSlash(name))); err != nil {
				return err
			}
		}
	}
	return nil
}

func pressable(name string) bool {
	switch filepath.Ext(name) {
	case ".html", ".css", ".js", ".mjs", ".mts", ".wasm", ".svg", ".json", ".webmanifest":
		return true
	}
	return false
}

// press writes path.gz and path.br, unless they already hold this very text.
func press(path string, data []byte) error {
	if holds(path+".br", data) && holds(path+".gz", data) {
		return nil
	}
	var b bytes.Buffer
	w := brotli.NewWriterOptions(&b, brotli.WriterOptions{Quality: 11, LGWin: 24})
	if _, err := w.Write(data); err != nil {
		return err
	}
	if err := w.Close(); err != nil {
		return err
	}
	if err := os.WriteFile(path+".br", b.Bytes(), 0o644); err != nil {
		return err
	}
	b.Reset()
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return err
	}
	if _, err := z.Write(data); err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	return os.WriteFile(path+".gz", b.Bytes(), 0o644)
}

// holds says whether a compressed file inflates to the data.
func holds(path string, data []byte) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	var r io.Reader = brotli.NewReader(f)
	if strings.HasSuffix(path, ".gz") {
		if r, err = gzip.NewReader(f); err != nil {
			return false
		}
	}
	got, err := io.ReadAll(io.LimitReader(r, int64(len(data))+1))
	return err == nil && bytes.Equal(got, data)
}

// weigh adds up what files take, compressed where there is a compressed form.
func weigh(out string, names ...string) (int, error) {
	total := 0
	for _, name := range names {
		i, err := os.Stat(filepath.Join(out, name+".br"))
		if err != nil {
			if i, err = os.Stat(filepath.Join(out, name)); err != nil {
				return 0, err
			}
		}
		total += int(i.Size())
	}
	return total, nil
}
