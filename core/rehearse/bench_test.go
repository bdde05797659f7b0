package rehearse

import "testing"

// Ten seconds of six vehicles in gusts.
func BenchmarkSix(b *testing.B) {
	m, a := liftOf(b, "crate-ring")
	for b.Loop() {
		r, err := New(m, Hover(m, a.Parts, 10), Options{Gusts: true})
		if err != nil {
			b.Fatal(err)
		}
		r.Fly()
	}
}
