package plan

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// text reads a JSON text in quotes.
func (r *reader) text() string {
	r.at++
	var b strings.Builder
	bad := false
	for r.at < len(r.data) {
		c := r.data[r.at]
		switch {
		case c == '"':
			r.at++
			if bad {
				r.fault("holds text that is not Unicode (UTF-8)", "Save the file as UTF-8.")
			}
			return b.String()
		case c == '\\':
			r.escape(&b)
			if r.broken {
				return b.String()
			}
		case c < 0x20:
			r.stop("a line end or control character stands inside a text", `Close the quotes, or write \n for a new line.`)
			return b.String()
		default:
			x, n := utf8.DecodeRune(r.data[r.at:])
			bad = bad || x == utf8.RuneError && n == 1
			b.WriteRune(x)
			r.at += n
		}
	}
	r.stop("a text in quotes does not end", "Was the file cut? Open the whole file.")
	return b.String()
}

var escapes = map[byte]byte{'"': '"', '\\': '\\', '/': '/', 'b': '\b', 'f': '\f', 'n': '\n', 'r': '\r', 't': '\t'}

func (r *reader) escape(b *strings.Builder) {
	if r.at+1 >= len(r.data) {
		r.stop("a text in quotes does not end", "Was the file cut? Open the whole file.")
		return
	}
	if c, ok := escapes[r.data[r.at+1]]; ok {
		b.WriteByte(c)
		r.at += 2
		return
	}
	x, ok := r.unit16()
	if ok && utf16.IsSurrogate(x) {
		start := r.at
		low, paired := r.unit16()
		if y := utf16.DecodeRune(x, low); paired && y != utf8.RuneError {
			b.WriteRune(y)
			return
		}
		r.at = start
		r.fault(`holds half a character (\u escape without its pair)`, "Write the character itself.")
		x = utf8.RuneError
	}
	if !ok {
		r.stop(`a backslash is followed by neither a known letter nor u and four digits`, `Write \\ for a backslash.`)
		return
	}
	b.WriteRune(x)
}

// unit16 reads \uXXXX.
func (r *reader) unit16() (rune, bool) {
	if r.at+6 > len(r.data) || r.data[r.at] != '\\' || r.data[r.at+1] != 'u' {
		return 0, false
	}
	n, err := strconv.ParseUint(string(r.data[r.at+2:r.at+6]), 16, 32)
	if err != nil {
		return 0, false
	}
	r.at += 6
	return rune(n), true
}

// word reads what stands bare: a number, true, false, null, or something that is none of these.
func (r *reader) word() string {
	start := r.at
	for r.at < len(r.data) && !strings.ContainsRune(" \t\r\n,:[]{}\"", rune(r.data[r.at])) {
		r.at++
	}
	if r.at == start {
		r.stop("a value is missing before "+quote(string(r.data[r.at:min(r.at+12, len(r.data))])), "Write the value, or take the field out.")
	}
	return string(r.data[start:r.at])
}

func (r *reader) setWord(v reflect.Value, w string) {
	switch {
	case r.broken || w == "null":
	case w == "true" || w == "false":
		if v.IsValid() {
			r.fault("is "+w, "Write "+wanted(v)+".")
		}
	case isNumber(w):
		r.setNumber(v, w)
	default:
		fix := "Write a number such as 1.5, or a text in quotes."
		switch strings.ToLower(strings.TrimLeft(w, "+-")) {
		case "nan", "inf", "infinity", "undefined", "none":
			fix = "Leave the field out when the number is not known."
		}
		r.fault("is "+quote(w)+", which is no JSON value", fix)
	}
}

func (r *reader) setNumber(v reflect.Value, w string) {
	x, err := strconv.ParseFloat(w, 64)
	if !v.IsValid() {
		return // of unknown meaning: kept as it is written
	}
	if v.Kind() == reflect.Int || v.Kind() == reflect.Int64 {
		if n, e := strconv.ParseInt(w, 10, 64); e == nil {
			v.SetInt(n)
		} else if err == nil && x == math.Trunc(x) && math.Abs(x) < 1<<53 {
			v.SetInt(int64(x))
		} else {
			r.fault("is "+cut(w), "Write a whole number.")
		}
		return
	}
	switch {
	case v.Kind() != reflect.Float64:
		r.fault("is the number "+cut(w), "Write "+wanted(v)+".")
	case err != nil:
		r.fault("is "+cut(w)+", too large for a number", "Write a number below 1e308, or leave the field out.")
	default:
		v.SetFloat(x + 0) // + 0: minus zero is zero
	}
}

func (r *reader) setText(v reflect.Value, s string) {
	switch {
	case !v.IsValid() || r.broken:
	case v.Kind() == reflect.String:
		v.SetString(s)
	case isNumber(s):
		r.fault("is the text "+quote(s), "Write the number without quotes.")
	default:
		r.fault("is the text "+quote(s), "Write "+wanted(v)+".")
	}
}

// isNumber tells whether w is a JSON number (RFC 8259, section 6).
func isNumber(w string) bool {
	w = strings.TrimPrefix(w, "-")
	whole, rest := digits(w)
	if whole == 0 || whole > 1 && w[0] == '0' {
		return false
	}
	if strings.HasPrefix(rest, ".") {
		n, after := digits(rest[1:])
		if n == 0 {
			return false
		}
		rest = after
	}
	if rest != "" && (rest[0] == 'e' || rest[0] == 'E') {
		rest = rest[1:]
		if rest != "" && (rest[0] == '+' || rest[0] == '-') {
			rest = rest[1:]
		}
		n, after := digits(rest)
		return n > 0 && after == ""
	}
	return rest == ""
}

func digits(s string) (int, string) {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n, s[n:]
}

func cut(w string) string {
	if len(w) > 40 {
		return w[:40] + "…"
	}
	return w
}

// wanted says in words what belongs into v.
func wanted(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Float64:
		return "a number"
	case reflect.Int, reflect.Int64:
		return "a whole number"
	case reflect.String:
		return "a text in quotes"
	case reflect.Array:
		what := "numbers"
		if v.Type().Elem().Kind() == reflect.Int {
			what = "whole numbers"
		}
		return fmt.Sprintf("a list of %d %s", v.Len(), what)
	case reflect.Slice:
		return "a list in square brackets"
	}
	return "an object in braces"
}
