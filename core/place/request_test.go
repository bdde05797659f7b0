package place

import (
	"math"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

// Every kind of request answers, or says in a sentence why not; nothing a page can send panics.
func TestRequests(t *testing.T) {
	p, holes := beamOn(3)
	q := Question{Plan: p, Free: []bool{}} // as it comes through a message
	line := Region{Path: []vec.V3{holes[0], holes[40]}}
	for _, kind := range []Kind{BestHoles, BestRegion, Table, Strip, Front} {
		r := Request{Kind: kind, Question: q, Holes: holes[10:31], Region: line, Most: 3, Goals: [2]Goal{Utilisation, Moment}}.Run(nil)
		some := len(r.Answer.Places) + len(r.Rows) + len(r.Values) + len(r.Front)
		if r.Fault != "" || some == 0 {
			t.Errorf("kind %d: %+v", kind, r)
		}
		nothing := p
		nothing.Team = nil
		lacks := p.Clone()
		lacks.Payload.Solids[0].Mass = math.NaN()
		heavy := p.Clone()
		heavy.Payload.Solids[0].Mass = 1e4
		for name, bad := range map[string]Request{
			"no holes, no region": {Kind: kind, Question: q},
			"no team":             {Kind: kind, Question: Question{Plan: nothing}, Holes: holes, Region: line},
			"no mass":             {Kind: kind, Question: Question{Plan: lacks}, Holes: holes, Region: line},
			"blank":               {Kind: kind, Question: Question{Plan: plan.Blank()}, Holes: holes, Region: line},
			"too heavy":           {Kind: kind, Question: Question{Plan: heavy}, Holes: holes, Region: line, Goals: [2]Goal{Utilisation, Agility}},
			"one spot":            {Kind: kind, Question: q, Holes: []vec.V3{{}, {}, {}}, Region: Region{Path: []vec.V3{{}, {}}}},
			"all kept out":        {Kind: kind, Question: q, Holes: holes, Region: Region{Path: line.Path, KeepOut: []Zone{{Points: []vec.V3{{}}, Radius: 99}}}},
			"nobody":              {Kind: kind, Question: Question{Plan: p, Free: []bool{false, false, false}}, Holes: holes, Region: line, Member: 7},
		} {
			r := bad.Run(nil)
			if math.IsNaN(r.Answer.Value) {
				t.Errorf("kind %d, %s: %+v", kind, name, r)
			}
			for _, v := range r.Values {
				if math.IsNaN(v) {
					t.Errorf("kind %d, %s: %v", kind, name, r.Values)
				}
			}
		}
	}
}
