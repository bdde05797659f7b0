// Command schema writes the JSON Schemas (draft 2020-12, https://json-schema.org/draft/2020-12/schema) of plan and report into
// public/schema: types and keys from the Go types, titles, units, bounds and choices from the table of fields, words from the
// comments beside the fields. Run it in the project's folder.
package main

import (
	"bytes"
	"encoding/json"
	"log"
	"os"
	"path/filepath"
)

const draft = "https://json-schema.org/draft/2020-12/schema"

func main() {
	log.SetFlags(0)
	files, err := schemas(".")
	if err != nil {
		log.Fatal("schema: ", err)
	}
	for name, text := range files {
		path := filepath.Join("public", "schema", name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			log.Fatal("schema: ", err)
		}
		if err := os.WriteFile(path, text, 0o644); err != nil {
			log.Fatal("schema: ", err)
		}
	}
}

// schemas are the files by name; root is the project's folder, whose sources have the comments.
func schemas(root string) (map[string][]byte, error) {
	words := comments{root: root, known: map[string]map[string]string{}}
	out := map[string][]byte{}
	for name, s := range map[string]object{"liftplan-1.json": planSchema(&words), "liftreport-1.json": reportSchema(&words)} {
		if words.err != nil {
			return nil, words.err
		}
		text, err := s.text()
		if err != nil {
			return nil, err
		}
		out[name] = text
	}
	return out, nil
}

// object is a JSON object that keeps the order of its keys.
type object []entry

type entry struct {
	key   string
	value any
}

// with returns the object with one more key; one without a value is left out.
func (o object) with(key string, value any) object {
	if value == nil || value == "" {
		return o
	}
	return append(o, entry{key, value})
}

// MarshalJSON writes the keys in their order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, e := range o {
		key, err := json.Marshal(e.key)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(e.value)
		if err != nil {
			return nil, err
		}
		if i > 0 {
			b.WriteByte(',')
		}
		b.Write(append(append(key, ':'), value...))
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// text is the object for people to read too.
func (o object) text() ([]byte, error) {
	flat, err := json.Marshal(o)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, flat, "", " "); err != nil {
		return nil, err
	}
	b.WriteByte('\n')
	return b.Bytes(), nil
}
