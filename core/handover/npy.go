package handover

import (
	"encoding/binary"
	"fmt"
	"math"
	"strings"
)

// NPY is the matrix as a file for NumPy, format version 1.0: float64, low byte first, row after row (C order). Axis 0 are the
// rows, axis 1 the columns, in the order of the CSV form of the same matrix, which has their names.
// Format: NumPy Enhancement Proposal 1, "A simple file format for NumPy arrays".
func (b Matrix) NPY() []byte {
	const lead, align = 10, 64 // magic number, version, length of the header; data begin at a multiple of 64
	header := fmt.Sprintf("{'descr': '<f8', 'fortran_order': False, 'shape': (%d, %d), }", len(b.Rows), len(b.Columns))
	size := (lead + len(header) + 1 + align - 1) / align * align
	out := append([]byte("\x93NUMPY\x01\x00"), byte((size-lead)&0xff), byte((size-lead)>>8))
	out = append(out, header...)
	out = append(out, strings.Repeat(" ", size-len(out)-1)+"\n"...)
	for _, x := range b.Data {
		out = binary.LittleEndian.AppendUint64(out, math.Float64bits(x))
	}
	return out
}
