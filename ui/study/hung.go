package study

import (
	"cohoist/core/hang"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// hung is a plan on cables as it hangs when its vehicles keep their places.
type hung struct {
	model *share.Model
	rig   hang.Rig
	rest  hang.State // undisturbed, let go from the level pose
}

// hungOf hangs a plan up. The reason is empty unless it does not hang.
func hungOf(p plan.Plan, r report.Report) (*hung, string) {
	rigid, cables := 0, 0
	for _, m := range p.Team {
		if m.Hold.Kind == plan.Rigid {
			rigid++
		} else {
			cables++
		}
	}
	switch {
	case len(r.Missing) > 0:
		return nil, "The plan lacks a number that this needs; the checks say which."
	case cables == 0:
		return nil, "Not applicable: every vehicle holds rigidly, so that payload and team move as one body and nothing hangs."
	case rigid > 0:
		return nil, "Not applicable: the payload hangs partly on rigid holds, which do not let it swing; this is for teams on cables only."
	}
	m, err := share.Of(p)
	if err != nil {
		return nil, "The plan is outside the model; the checks say why."
	}
	parts := make([]share.Part, len(r.Vehicles))
	for i, v := range r.Vehicles {
		parts[i] = share.Part{Position: v.Position, Tension: v.Tension}
	}
	rig, ok := hang.Of(m, parts)
	if !ok {
		return nil, "There is no balance to hang in; the checks say why."
	}
	rest, err := rig.Rest(hang.Level)
	if err != nil {
		return nil, "It does not hang: " + err.Error() + "."
	}
	return &hung{m, rig, rest}, ""
}

// Kinds of what goes wrong.
const (
	outOfPlace = "place"
	shortLine  = "short"
	lostOne    = "lost"
)

// upset is one thing that went wrong, and what follows.
type upset struct {
	kind  string
	who   int
	by    vec.V3  // out of place, m
	short float64 // m
	rig   hang.Rig
	state hang.State
	lost  bool         // no rest was found
	parts []share.Part // what each vehicle then gives; that of a lost one does not count
	most  int          // the vehicle that works hardest
}

// upset lets something go wrong, and the payload come to rest from where it hung.
func (h *hung) upset(u upset) upset {
	switch u.kind {
	case outOfPlace:
		u.rig = h.rig.Displaced(u.who, u.by)
	case shortLine:
		u.rig = h.rig.Short(u.who, u.short)
	default:
		u.rig = h.rig.Without(u.who)
	}
	state, err := u.rig.Rest(h.rest.Pose)
	u.state, u.lost = state, err != nil
	if u.lost {
		return u
	}
	u.parts = h.parts(u.rig, state)
	u.most = -1
	for i, q := range u.parts {
		if (u.kind != lostOne || i != u.who) && (u.most < 0 || q.Utilisation > u.parts[u.most].Utilisation*(1+1e-9)) {
			u.most = i
		}
	}
	return u
}

// parts are what the vehicles give in a state.
func (h *hung) parts(r hang.Rig, s hang.State) []share.Part {
	force := make([]vec.V3, len(r.Lines))
	for i, l := range r.Lines {
		force[i] = l.Top.Sub(s.Pose.Place(l.At)).Unit().Scale(s.Tension[i])
	}
	return h.model.Placed(solve.Result{F: force})
}

// asks is how hard the hardest-working vehicle of an upset works; 0 when nobody is left.
func (u upset) asks() float64 {
	if u.lost || u.most < 0 {
		return 0
	}
	return u.parts[u.most].Utilisation
}

// wrongs are the upsets of a kind: of one vehicle, or of each when who is negative.
func (h *hung) wrongs(kind string, who int, by vec.V3, far, short float64) []upset {
	var list []upset
	for i := range h.rig.Lines {
		if who >= 0 && i != who {
			continue
		}
		if kind != outOfPlace || by != (vec.V3{}) {
			list = append(list, upset{kind: kind, who: i, by: by, short: short})
			continue
		}
		for k := range 6 { // up and down first
			var d vec.V3
			d[2-k/2] = far * float64(1-2*(k%2))
			list = append(list, upset{kind: kind, who: i, by: d})
		}
	}
	return list
}

// worst are the upset that tilts the payload most, and the one that asks most of a vehicle.
func worst(list []upset) (tilts, asks upset) {
	tilts, asks = list[0], list[0]
	for _, u := range list[1:] {
		if u.lost || tilts.lost {
			if u.lost && !tilts.lost {
				tilts = u
			}
			continue
		}
		if u.state.Tilt > tilts.state.Tilt+1e-4 { // of those alike the first
			tilts = u
		}
		if u.asks() > asks.asks()*(1+1e-6) {
			asks = u
		}
	}
	return tilts, asks
}
