package canon

import (
	"bytes"
	"encoding/json"
	"sort"
)

// Raw returns a JSON value of unknown meaning in canonical compact form: no blanks, keys sorted, texts
// with the fewest escapes. Numbers keep their own digits, since what they mean is not known.
// What is not JSON comes back as null.
func Raw(raw []byte) []byte {
	d := json.NewDecoder(bytes.NewReader(raw))
	d.UseNumber()
	var v any
	if d.Decode(&v) != nil {
		return []byte("null")
	}
	return appendAny(nil, v)
}

func appendAny(b []byte, v any) []byte {
	switch v := v.(type) {
	case nil:
		return append(b, "null"...)
	case bool:
		if v {
			return append(b, "true"...)
		}
		return append(b, "false"...)
	case string:
		return AppendString(b, v)
	case json.Number:
		return append(b, v...)
	case []any:
		b = append(b, '[')
		for i, x := range v {
			if i > 0 {
				b = append(b, ',')
			}
			b = appendAny(b, x)
		}
		return append(b, ']')
	case map[string]any:
		return appendMap(b, v)
	}
	return append(b, "null"...)
}

func appendMap(b []byte, m map[string]any) []byte {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	b = append(b, '{')
	for i, k := range keys {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(AppendString(b, k), ':')
		b = appendAny(b, m[k])
	}
	return append(b, '}')
}

// Indent lays out compact JSON for reading: two blanks a level, a list that holds no list or object
// on one line. It changes nothing but blanks.
func Indent(compact []byte) []byte {
	out := make([]byte, 0, 2*len(compact))
	depth, flat := 0, false // flat: inside a list that stays on one line
	line := func() {
		out = append(out, '\n')
		for range depth {
			out = append(out, ' ', ' ')
		}
	}
	for i := 0; i < len(compact); i++ {
		c := compact[i]
		switch {
		case c == '"':
			end := stringEnd(compact, i)
			out = append(out, compact[i:end]...)
			i = end - 1
		case (c == '{' || c == '[') && i+1 < len(compact) && compact[i+1] == c+2: // {} or []
			out = append(out, c, c+2)
			i++
		case c == '[' && isFlat(compact, i):
			flat = true
			out = append(out, c)
		case c == ']' && flat:
			flat = false
			out = append(out, c)
		case c == '{' || c == '[':
			depth++
			out = append(out, c)
			line()
		case c == '}' || c == ']':
			depth--
			line()
			out = append(out, c)
		case c == ',' && flat:
			out = append(out, ',', ' ')
		case c == ',':
			out = append(out, c)
			line()
		case c == ':':
			out = append(out, ':', ' ')
		default:
			out = append(out, c)
		}
	}
	return out
}

// isFlat tells whether the list that starts at i holds neither list nor object.
func isFlat(b []byte, i int) bool {
	for i++; i < len(b); i++ {
		switch b[i] {
		case '"':
			i = stringEnd(b, i) - 1
		case '[', '{':
			return false
		case ']':
			return true
		}
	}
	return true
}

// stringEnd returns the index after the text that starts at i.
func stringEnd(b []byte, i int) int {
	for i++; i < len(b); i++ {
		if b[i] == '\\' {
			i++
		} else if b[i] == '"' {
			return i + 1
		}
	}
	return len(b)
}
