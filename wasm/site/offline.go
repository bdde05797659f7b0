package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"strings"
)

// elsewhere are files for other programs and for people who read; the page works without them.
func elsewhere(name string) bool {
	switch name {
	case "library.wasm", "cohoist.mjs", "cohoist.d.mts", "sheet.png", "offline.js":
		return true
	}
	return strings.HasPrefix(name, "schema/")
}

// offline fills offline.js with the SHA-256 of every file that the page may want, so that a change in any of them is a new
// version of the service worker too.
func offline(files map[string][]byte) ([]byte, error) {
	hashes := map[string]string{}
	for name, data := range files {
		if !elsewhere(name) {
			hashes[name] = sum(data)
		}
	}
	list, err := json.Marshal(hashes) // sorted by name
	if err != nil {
		return nil, err
	}
	mark := []byte("{{files}}")
	if bytes.Count(files["offline.js"], mark) != 1 {
		return nil, errors.New("offline.js has no place for the list of files")
	}
	return bytes.Replace(files["offline.js"], mark, list, 1), nil
}

func sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}
