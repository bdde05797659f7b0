package formation

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/share"
	"cohoist/core/vec"
	"cohoist/core/vehicle"
)

// The distance of random segments, a tenth of them points, against a scan of both with 100 steps: never above it, and below by no
// more than a step of each can give.
func TestBetween(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	point := func() vec.V3 { return vec.V3{r.Float64(), r.Float64(), r.Float64()} }
	for n := range 200 {
		a, b, c, d := point(), point(), point(), point()
		switch n % 10 {
		case 0:
			b = a
		case 1:
			d = c.Add(b.Sub(a).Scale(0.7)) // parallel
		}
		const steps = 100
		scan := math.Inf(1)
		for i := range steps + 1 {
			p := a.Add(b.Sub(a).Scale(float64(i) / steps))
			for k := range steps + 1 {
				scan = math.Min(scan, p.Sub(c.Add(d.Sub(c).Scale(float64(k)/steps))).Norm())
			}
		}
		got, step := between(a, b, c, d), (b.Sub(a).Norm()+d.Sub(c).Norm())/steps/2
		if got > scan+1e-12 || got < scan-step {
			t.Errorf("%d: %v, a scan gives %v", n, got, scan)
		}
	}
}

// Two cables that cross like an X, 1 m above each other where they do, and a vehicle beside the other's cable. By hand.
func TestCables(t *testing.T) {
	v := vehicle.Vehicle{Reach: 0.45}
	parts := []share.Part{{Position: vec.V3{1, 0, 3}}, {Position: vec.V3{0.5, 0.5, 5}}}
	craft := []share.Craft{{ID: "A", Vehicle: v, At: vec.V3{0, 0, 3}}, {ID: "B", Vehicle: v, At: vec.V3{0.5, -0.5, 3}}}
	got := Cables(parts, craft) // B's cable rises by 2 m in 1 m: 1 m/√(1 + 2²) … nearest points lie aside
	want := 1 / math.Sqrt(1+4.0)
	if len(got) != 1 || got[0].Kind != Crossing || math.Abs(got[0].Below-want) > 1e-12 {
		t.Errorf("%+v, want them %v apart", got, want)
	}
	parts[1].Position = vec.V3{0.5, -0.4, 5}
	if got := Cables(parts, craft); len(got) != 0 {
		t.Errorf("side by side: %+v", got)
	}
	parts[0].Position = vec.V3{0.9, -0.5, 4}
	if got := Cables(parts, craft); len(got) != 1 || got[0].Kind != Reached || got[0].Upper != "A" || got[0].Lower != "B" {
		t.Errorf("beside its cable: %+v", got)
	}
}
