package formation

import (
	"fmt"
	"math"
)

// hungReason says that nothing has to be done.
func (f *flock) hungReason() string {
	d, p := f.nearest()
	return fmt.Sprintf("As the cables hang, the nearest vehicles, %s and %s, are %.2f m apart; %.2f m must be kept.", f.id(p[0]), f.id(p[1]), d, f.apart)
}

// apartReason says why cables lean and what it costs.
func (f *flock) apartReason(o *Formation, near float64, pair [2]int) string {
	lean := 0.0
	for _, p := range o.Parts {
		if !math.IsNaN(p.CableAngle) {
			lean = math.Max(lean, p.CableAngle*180/math.Pi)
		}
	}
	s := f.nearReason(near, pair) + fmt.Sprintf(" Leant apart by up to %.1f° they keep it; the worst utilisation rises from %.1f %% to %.1f %%.", lean, 100*o.Free, 100*o.T)
	if o.Stacked {
		s += " Cables of different lengths hold one vehicle above another: watch the wakes."
	}
	return s
}

// noneReason says why there is no formation.
func (f *flock) noneReason(near float64, pair [2]int) string {
	s := f.nearReason(near, pair)
	i, j := pair[0], pair[1]
	room := flat(f.m.Craft[i].At.Sub(f.m.Craft[j].At)).Norm() + f.reach(i) + f.reach(j)
	if need := f.need(i, j); room < need {
		return s + fmt.Sprintf(" Within the cable cone of %.0f° they get no further than %.2f m apart.", f.m.Plan.Limits.Cone, room)
	}
	return s + " No way was found to lean the cables apart within their bounds; longer cables, a wider cone or attachments further apart would help."
}

func (f *flock) nearReason(near float64, pair [2]int) string {
	return fmt.Sprintf("As the cables hang, %s and %s come within %.2f m of each other; %.2f m must be kept.", f.id(pair[0]), f.id(pair[1]), near, f.apart)
}

func (f *flock) id(i int) string { return f.m.Craft[i].ID }
