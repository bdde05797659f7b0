package scatter

import (
	"math/bits"
	"math/rand/v2"
)

// deal is a permutation of 0 … n−1, keyed by a seed, any place of which is computed on its own: a Feistel
// network on the next power of two, walked on until it falls below n, (16.4). So samples
// come out the same in whatever parts they are run.
type deal struct {
	n     uint64
	shift uint   // bits of the low half
	lo    uint64 // masks of the halves
	hi    uint64
	key   [6]uint64
}

// newDeal keys a permutation by a seed and a stream.
func newDeal(seed int64, stream, n int) deal {
	b := uint(max(2, bits.Len(uint(n-1))))
	d := deal{n: uint64(n), shift: b / 2, lo: 1<<(b/2) - 1, hi: 1<<(b-b/2) - 1}
	r := rand.NewPCG(uint64(seed), uint64(stream))
	for i := range d.key {
		d.key[i] = r.Uint64()
	}
	return d
}

// at is where place i of the permutation goes.
func (d *deal) at(i int) int {
	x := uint64(i)
	for {
		l, h := x&d.lo, x>>d.shift
		for k := 0; k < len(d.key); k += 2 {
			h ^= mix(l^d.key[k]) & d.hi
			l ^= mix(h^d.key[k+1]) & d.lo
		}
		if x = h<<d.shift | l; x < d.n {
			return int(x)
		}
	}
}

// mix scatters the bits of x; the finisher of SplitMix64.
func mix(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
