package class

import (
	"strings"
	"testing"

	"cohoist/core/plan"
)

func TestLibrary(t *testing.T) {
	last := 0.0
	for _, e := range Library() {
		c := e.Class
		if r := ThrustToWeight(c); r < 1.8 || r > 2.5 {
			t.Errorf("%s: thrust over weight %.2f, want 1.8 to 2.5 (common practice, no source)", e.Name, r)
		}
		if TipGap(c) <= 0 {
			t.Errorf("%s: rotors overlap by %.3f m", e.Name, -TipGap(c))
		}
		if c.Mass <= last {
			t.Errorf("%s is not heavier than the one before", e.Name)
		}
		last = c.Mass
		if !strings.HasSuffix(e.Line, "invented") {
			t.Errorf("%s does not say that it is invented", e.Name)
		}
		p := plan.Blank()
		p.Vehicles = map[string]plan.Class{e.Name: c}
		for _, f := range plan.Validate(p) {
			if strings.HasPrefix(f.Path, "vehicles") {
				t.Error(f)
			}
		}
	}
	if Library()[0].Class.Mass != 0.075 || last != 10 {
		t.Error("the library goes from 75 g to 10 kg")
	}
}
