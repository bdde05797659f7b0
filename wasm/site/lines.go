package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

// withoutLines takes the line numbers and the names of files and functions out of a compiled program, which only traces of a crash
// show: a tenth of what a first visit loads. By its name the runtime else tells only which goroutines are its own, for the
// report of a deadlock, which a program in a browser does not have: there it waits for events. The tables stay where they are, their bytes become 0, which
// compress to nothing, and every function says that it has none, which the runtime knows (an offset of 0,
// runtime/symtab.go of Go 1.20 to 1.26). A program of another layout comes back as it was, with an error.
func withoutLines(program []byte) (out []byte, err error) {
	defer func() {
		if r := recover(); r != nil {
			out, err = program, fmt.Errorf("its tables are not where they are expected: %v", r)
		}
	}()
	parts, err := segments(program)
	if err != nil {
		return program, err
	}
	var m memory
	for _, s := range parts {
		m.put(s.at, program[s.from:s.to])
	}
	t, err := m.table()
	if err != nil {
		return program, err
	}
	t.clear()
	out = bytes.Clone(program)
	for _, s := range parts {
		copy(out[s.from:s.to], m.data[s.at:])
	}
	return out, nil
}

// segment is a part of the program's data: where it stands in the file, and in memory.
type segment struct{ from, to, at int }

// segments lists the data of a WebAssembly module (section 11 of the core specification 1.0).
func segments(p []byte) ([]segment, error) {
	var list []segment
	r := &reader{data: p, at: 8}
	for r.at < len(p) {
		id := r.byte()
		size := r.number()
		end := r.at + size
		if id == 11 {
			for range r.number() {
				if r.number() != 0 || r.byte() != 0x41 { // memory 0, i32.const
					return nil, errors.New("a segment of its data is not at a fixed place")
				}
				at := r.number()
				r.byte() // end
				n := r.number()
				list = append(list, segment{r.at, r.at + n, at})
				r.at += n
			}
		}
		r.at = end
	}
	return list, nil
}

type reader struct {
	data []byte
	at   int
}

func (r *reader) byte() byte {
	r.at++
	return r.data[r.at-1]
}

// number reads an unsigned LEB128; the addresses of a small program are so written too.
func (r *reader) number() int {
	x := 0
	for shift := 0; ; shift += 7 {
		b := r.byte()
		x |= int(b&0x7f) << shift
		if b < 0x80 {
			return x
		}
	}
}

// memory is the program's memory as it starts.
type memory struct{ data []byte }

func (m *memory) put(at int, b []byte) {
	if n := at + len(b); n > len(m.data) {
		m.data = append(m.data, make([]byte, n-len(m.data))...)
	}
	copy(m.data[at:], b)
}

func (m *memory) u32(at int) int { return int(binary.LittleEndian.Uint32(m.data[at:])) }

// table is the runtime's table of functions: its header, and the places of its parts.
type table struct {
	*memory
	functions                      int
	names, units, values, firstRow int
}

// table finds the header: its magic number, two zeros, instructions of one byte, pointers of eight.
func (m *memory) table() (table, error) {
	at := bytes.Index(m.data, []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8})
	if at < 0 {
		return table{}, errors.New("it has no table of functions of the layout that is known")
	}
	word := func(i int) int { return int(binary.LittleEndian.Uint64(m.data[at+8+8*i:])) }
	return table{memory: m, functions: word(0), names: at + word(3), units: at + word(4), values: at + word(6), firstRow: at + word(7)}, nil
}

// Offsets in a function's row: its name, its tables of stack depth, file and line, the number of further tables, its
// unit and first line; the further tables follow.
const (
	rowName, rowStack, rowFile, rowLine, rowMore, rowUnit, rowFirst, rowTables = 4, 16, 20, 24, 28, 32, 36, 44
)

func (t table) clear() {
	used := make([]bool, t.firstRow-t.values)
	used[0] = true
	for i := range t.functions {
		row := t.firstRow + t.u32(t.firstRow+8*i+4)
		t.mark(used, t.u32(row+rowStack))
		for j := range t.u32(row + rowMore) {
			t.mark(used, t.u32(row+rowTables+4*j))
		}
		for _, field := range []int{rowName, rowFile, rowLine, rowUnit, rowFirst} {
			clear(t.data[row+field : row+field+4])
		}
	}
	for k, u := range used {
		if !u {
			t.data[t.values+k] = 0
		}
	}
	clear(t.data[t.names:t.values]) // names of functions and files, and which unit has which
}

// mark notes the bytes of a table of values: pairs of numbers, until a first number of a pair is 0.
func (t table) mark(used []bool, from int) {
	if from == 0 {
		return
	}
	at := t.values + from
	number := func() {
		for t.data[at] >= 0x80 {
			at++
		}
		at++
	}
	for first := true; first || t.data[at] != 0; first = false {
		number()
		number()
	}
	for k := from; k <= at-t.values; k++ {
		used[k] = true
	}
}
