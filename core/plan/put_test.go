package plan

import (
	"math"
	"testing"
)

// What Put sets Get gives, the written plan holds it, and nothing else changed.
func TestPutAndGet(t *testing.T) {
	text := `{"format":"liftplan/1","payload":{"solids":[{"shape":"rod","length_m":2,"mass_kg":3}]},` +
		`"vehicles":{"a.b":{"mass_kg":1}},"team":[{"id":"A","vehicle":"a.b","attach_m":[1,0,0],"hold":{"kind":"cable","length_m":2}}]}`
	for _, c := range []struct {
		path  string
		value any
		want  string // of the text
	}{
		{"payload.beam.material", "steel-s235", `"beam":{"material":"steel-s235"}`},
		{"payload.beam.second_moment_m4[1]", 2e-6, `"second_moment_m4":[null,0.000002]`},
		{"payload.com_m[2]", 0.5, `"com_m":[null,null,0.5]`},
		{"payload.solids[0].mass_kg", 4.0, `"mass_kg":4`},
		{"team[0].attach_m[1]", -1.0, `"attach_m":[1,-1,0]`},
		{"team[0].hold.stiffness_n_m", 100.0, `"stiffness_n_m":100`},
		{`vehicles["a.b"].rotors`, 6.0, `"rotors":6`},
	} {
		p, faults := Read([]byte(text))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if !Put(&p, c.path, c.value) {
			t.Errorf("%s is not set", c.path)
			continue
		}
		if got := Get(p, c.path); got != c.value {
			t.Errorf("%s is %v, want %v", c.path, got, c.value)
		}
		got, now := string(Compact(p)), 0
		for i := 0; i+len(c.want) <= len(got); i++ {
			if got[i:i+len(c.want)] == c.want {
				now++
			}
		}
		if now != 1 {
			t.Errorf("%s: %s stands %d times in %s", c.path, c.want, now, got)
		}
	}
}

func TestPutRefuses(t *testing.T) {
	p, _ := Read([]byte(`{"format":"liftplan/1","team":[{"id":"A"}]}`))
	for path, value := range map[string]any{"team[1].id": "B", "team[0].id": 3.0, "team[0].attach_m[3]": 1.0, "team[0].attach_m": 1.0,
		"payload.com_m": 1.0, "seed": 1.5, "nothing": "x", "team[x].id": "y", "": 1.0} {
		if Put(&p, path, value) {
			t.Errorf("%q took %v", path, value)
		}
	}
	if x, ok := Get(p, "team[0].hold.length_m").(float64); !ok || !math.IsNaN(x) {
		t.Error("a number left out is not NaN")
	}
}
