package scatter

import (
	"testing"

	"cohoist/core/plan"
)

// BenchmarkSamples times samples with everything that a study does: draws, program, solve, sums.
func BenchmarkSamples(b *testing.B) {
	for _, c := range []struct {
		name  string
		rigid bool
		k     int
		wind  float64
	}{{"cable/4", false, 4, 0}, {"cable/8", false, 8, 0}, {"cable/8/wind", false, 8, 6}, {"rigid/4", true, 4, 0}, {"rigid/8", true, 8, 0}, {"rigid/8/wind", true, 8, 6}} {
		p := ring(c.k, c.rigid)
		p.Site.Wind = c.wind
		s := study(b, p, 100000)
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i += 1000 {
				s.Run(i%s.N, min(s.N, i%s.N+min(1000, b.N-i)))
			}
		})
	}
	for _, name := range []string{"deck-of-eight", "crate-ring", "lattice-panel"} {
		s := study(b, given(b, name, func(p *plan.Plan) {}), 100000)
		b.Run(name, func(b *testing.B) {
			for i := 0; i < b.N; i += 1000 {
				s.Run(i%s.N, min(s.N, i%s.N+min(1000, b.N-i)))
			}
		})
	}
}

// BenchmarkWorst times the worst corner with its bound, BenchmarkSummary the picture of 100 000 samples.
func BenchmarkWorst(b *testing.B) {
	s := study(b, given(b, "deck-of-eight", nil), 1000)
	for range b.N {
		s.Worst()
	}
}

func BenchmarkSummary(b *testing.B) {
	s := study(b, given(b, "sensor-plate", nil), 100000)
	p := s.Run(0, s.N)
	b.ResetTimer()
	for range b.N {
		s.Summary(p)
	}
}
