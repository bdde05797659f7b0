package scatter

import (
	"encoding/binary"
	"math"
)

// Bytes writes a part for another worker: numbers of 8 bytes, little endian.
func (p Part) Bytes() []byte {
	var out []byte
	add := func(x int64) { out = binary.LittleEndian.AppendUint64(out, uint64(x)) }
	add(int64(p.From))
	add(int64(p.To))
	add(int64(len(p.Errors)))
	for _, t := range p.T {
		add(int64(math.Float64bits(t)))
	}
	for _, n := range p.Why {
		add(int64(n))
	}
	for i := range p.Errors {
		e := &p.Errors[i]
		add(e.TX)
		add(e.X)
		add(e.XX)
		for b := range bins {
			add(e.N[b])
			add(e.T[b])
		}
	}
	return out
}

// ReadPart reads what Bytes wrote; false for anything else.
func ReadPart(data []byte) (Part, bool) {
	next := func() int64 {
		if len(data) < 8 {
			return 0
		}
		x := binary.LittleEndian.Uint64(data)
		data = data[8:]
		return int64(x)
	}
	whole := int64(len(data))
	p := Part{From: int(next()), To: int(next())}
	n, k := int64(p.To)-int64(p.From), next()
	if n < 0 || n > Most || k < 0 || k > whole || whole != 8*(3+n+int64(causes)+k*(3+2*bins)) {
		return Part{}, false
	}
	p.T, p.Errors = make([]float64, n), make([]Sums, k)
	for i := range p.T {
		p.T[i] = math.Float64frombits(uint64(next()))
	}
	for i := range p.Why {
		p.Why[i] = int(next())
	}
	for i := range p.Errors {
		e := &p.Errors[i]
		e.TX, e.X, e.XX = next(), next(), next()
		for b := range bins {
			e.N[b], e.T[b] = next(), next()
		}
	}
	return p, true
}
