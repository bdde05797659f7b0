package place

import (
	"math"
	"testing"

	"cohoist/core/vec"
)

// Where the load lies in the middle of an even pattern, many placements share it equally; the one taken is its own mirror
// image, no worse than any, and stands as wide as the pattern lets mirror images stand.
func TestTiesGoToMirrorImages(t *testing.T) {
	for _, k := range []int{2, 4, 6} {
		p := panel(k)
		p.Payload.Solids[1].At = vec.V3{}
		holes := forty()
		a, err := OnHoles(Question{Plan: p}, holes, nil)
		if err != nil || !a.Proof.Proved {
			t.Fatalf("%d: %v, %+v", k, err, a.Proof)
		}
		for _, at := range a.Places {
			image, found := vec.V3{at[0], -at[1], at[2]}, false
			for _, other := range a.Places {
				found = found || other.Sub(image).Norm() < 1e-6
			}
			if !found {
				t.Errorf("%d: %v has no image in %v", k, at, a.Places)
			}
		}
		plain, err := OnHoles(Question{Plan: p, Mirror: [2]bool{false, true}}, holes, nil)
		if err == nil && a.Value > plain.Value+3e-9*math.Abs(plain.Value) {
			t.Errorf("%d: %g is worse than %g", k, a.Value, plain.Value)
		}
	}
}
