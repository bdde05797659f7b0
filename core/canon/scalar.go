package canon

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"unicode/utf8"
)

// AppendFloat appends the shortest decimal that reads back as x: plain from 1e-6 up to 1e21, with an
// exponent beyond (the form of ECMAScript's Number::toString, ECMA-262 section 6.1.6.1.20). Minus zero is 0; NaN and the infinities are null.
func AppendFloat(b []byte, x float64) []byte {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return append(b, "null"...)
	case x == 0:
		return append(b, '0')
	}
	if a := math.Abs(x); a >= 1e-6 && a < 1e21 {
		return strconv.AppendFloat(b, x, 'f', -1, 64)
	}
	b = strconv.AppendFloat(b, x, 'e', -1, 64)
	if n := len(b); b[n-4] == 'e' && b[n-2] == '0' { // e-09 is e-9
		b = append(b[:n-2], b[n-1])
	}
	return b
}

func appendInt(b []byte, v reflect.Value) []byte {
	switch {
	case v.CanInt():
		return strconv.AppendInt(b, v.Int(), 10)
	case v.CanUint():
		return strconv.AppendUint(b, v.Uint(), 10)
	}
	panic(fmt.Sprintf("canon: %s is not plain data", v.Type()))
}

const hex = "0123456789abcdef"

// AppendString appends s as a JSON text with no more escapes than JSON demands. What is not UTF-8
// becomes U+FFFD.
func AppendString(b []byte, s string) []byte {
	b = append(b, '"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b = append(b, '\\', byte(r))
		case r == '\n':
			b = append(b, '\\', 'n')
		case r == '\r':
			b = append(b, '\\', 'r')
		case r == '\t':
			b = append(b, '\\', 't')
		case r < 0x20:
			b = append(b, '\\', 'u', '0', '0', hex[r>>4], hex[r&15])
		default:
			b = utf8.AppendRune(b, r)
		}
	}
	return append(b, '"')
}
