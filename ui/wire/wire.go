// Package wire carries plain data between the page and its worker, which are the same program: so
// the layout is the Go type's, numbers keep every bit, and NaN stays NaN.
package wire

import (
	"encoding/binary"
	"errors"
	"math"
	"reflect"
)

// Encode writes plain data: structs, lists, maps by text, pointers, texts, numbers.
func Encode(v any) []byte { return put(nil, reflect.ValueOf(v)) }

// Decode reads what Encode wrote of the same type into the value that v points to.
func Decode(data []byte, v any) (err error) {
	defer func() {
		if recover() != nil {
			err = errors.New("the message between page and worker is damaged")
		}
	}()
	r := reader{data}
	r.get(reflect.ValueOf(v).Elem())
	if len(r.data) > 0 {
		return errors.New("the message between page and worker is too long")
	}
	return nil
}

func put(b []byte, v reflect.Value) []byte {
	switch v.Kind() {
	case reflect.Bool:
		if v.Bool() {
			return append(b, 1)
		}
		return append(b, 0)
	case reflect.Int, reflect.Int64, reflect.Int32:
		return binary.AppendVarint(b, v.Int())
	case reflect.Uint8:
		return append(b, byte(v.Uint()))
	case reflect.Float64:
		return binary.LittleEndian.AppendUint64(b, math.Float64bits(v.Float()))
	case reflect.String:
		b = binary.AppendUvarint(b, uint64(v.Len()))
		return append(b, v.String()...)
	case reflect.Slice:
		if v.IsNil() {
			return binary.AppendUvarint(b, 0)
		}
		b = binary.AppendUvarint(b, uint64(v.Len())+1)
		fallthrough
	case reflect.Array:
		for i := range v.Len() {
			b = put(b, v.Index(i))
		}
		return b
	case reflect.Struct:
		for i := range v.NumField() {
			b = put(b, v.Field(i))
		}
		return b
	case reflect.Pointer:
		if v.IsNil() {
			return append(b, 0)
		}
		return put(append(b, 1), v.Elem())
	case reflect.Map:
		if v.IsNil() {
			return binary.AppendUvarint(b, 0)
		}
		b = binary.AppendUvarint(b, uint64(v.Len())+1)
		for _, k := range v.MapKeys() {
			b = put(put(b, k), v.MapIndex(k))
		}
		return b
	}
	panic("wire: cannot carry " + v.Type().String())
}

type reader struct{ data []byte }

func (r *reader) count() int {
	n, k := binary.Uvarint(r.data)
	if k <= 0 || n > uint64(len(r.data))+1 {
		panic("short")
	}
	r.data = r.data[k:]
	return int(n)
}

func (r *reader) take(n int) []byte {
	b := r.data[:n]
	r.data = r.data[n:]
	return b
}

func (r *reader) get(v reflect.Value) {
	switch v.Kind() {
	case reflect.Bool:
		v.SetBool(r.take(1)[0] == 1)
	case reflect.Int, reflect.Int64, reflect.Int32:
		n, k := binary.Varint(r.data)
		r.take(k)
		v.SetInt(n)
	case reflect.Uint8:
		v.SetUint(uint64(r.take(1)[0]))
	case reflect.Float64:
		v.SetFloat(math.Float64frombits(binary.LittleEndian.Uint64(r.take(8))))
	case reflect.String:
		v.SetString(string(r.take(r.count())))
	case reflect.Slice:
		n := r.count()
		if n == 0 {
			v.SetZero()
			return
		}
		v.Set(reflect.MakeSlice(v.Type(), n-1, n-1))
		fallthrough
	case reflect.Array:
		for i := range v.Len() {
			r.get(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			r.get(v.Field(i))
		}
	case reflect.Pointer:
		if r.take(1)[0] == 0 {
			v.SetZero()
			return
		}
		v.Set(reflect.New(v.Type().Elem()))
		r.get(v.Elem())
	case reflect.Map:
		n := r.count()
		if n == 0 {
			v.SetZero()
			return
		}
		v.Set(reflect.MakeMapWithSize(v.Type(), n-1))
		for range n - 1 {
			k, e := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
			r.get(k)
			r.get(e)
			v.SetMapIndex(k, e)
		}
	default:
		panic("wire: cannot carry " + v.Type().String())
	}
}
