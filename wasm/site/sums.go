package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// sums is the name of the list of all files with their SHA-256, as sha256sum -c reads it.
const sums = "SHA256SUMS"

// list writes the sums of the files of the folder that are of the site, compressed forms included, sorted by name.
func list(out string, keep map[string]bool) error {
	names := make([]string, 0, len(keep))
	for name := range keep {
		names = append(names, name)
	}
	slices.Sort(names)
	var b bytes.Buffer
	for _, name := range names {
		data, err := os.ReadFile(filepath.Join(out, filepath.FromSlash(name)))
		if err != nil {
			return err
		}
		fmt.Fprintf(&b, "%s  %s\n", sum(data), name)
	}
	keep[sums] = true
	return os.WriteFile(filepath.Join(out, sums), b.Bytes(), 0o644)
}
