package plan

import (
	"fmt"
	"testing"
)

// eight is the sample with eight vehicles, as large as plans get while somebody drags.
func eight(b *testing.B) Plan {
	p, faults := Decode([]byte(sample))
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	p.Payload.Solids = p.Payload.Solids[:2]
	for i := range 6 {
		m := p.Team[0]
		m.ID = fmt.Sprint(i)
		p.Team = append(p.Team, m)
	}
	return p
}

func BenchmarkEight(b *testing.B) {
	p := eight(b)
	text := Encode(p)
	for _, c := range []struct {
		name string
		run  func()
	}{
		{"Decode", func() { Decode(text) }},
		{"Validate", func() { Validate(p) }},
		{"Missing", func() { Missing(p) }},
		{"Assume", func() { Assume(p) }},
		{"Clone", func() { p.Clone() }},
		{"Compact", func() { Compact(p) }},
		{"Encode", func() { Encode(p) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				c.run()
			}
		})
	}
}
