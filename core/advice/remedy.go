package advice

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/check"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/share"
)

// Kinds of remedies.
const (
	Payload     = "payload"      // a lighter payload
	Balance     = "centre"       // the centre of mass moved
	Stronger    = "stronger"     // one vehicle with more thrust
	AllStronger = "all-stronger" // every vehicle with more thrust
	Another     = "another"      // one more vehicle
	Calmer      = "calmer"       // less wind
	Relaxed     = "relaxed"      // a limit that the crew itself set
	Line        = "line"         // stronger lines
	Longer      = "longer"       // longer cables
)

// Remedy is one change of the plan, verified by the report of the changed plan.
type Remedy struct {
	Kind     string         `json:"kind"`
	Who      string         `json:"who"`  // vehicle, class or limit that changes
	From     float64        `json:"from"` // SI; of a moved centre of mass 0; NaN of one more vehicle
	To       float64        `json:"to"`
	Unit     string         `json:"unit"`
	Size     float64        `json:"size"` // the change relative to the whole, by which the list is ordered
	Sentence string         `json:"sentence"`
	Cures    []string       `json:"cures"` // ids of the checks that held back and hold now
	Still    []string       `json:"still"` // ids of the checks that fail even so
	Verdict  report.Verdict `json:"verdict"`
	Plan     plan.Plan      `json:"-"` // with the change; JSON writes it as "plan"
}

// Remedies are the smallest single changes that make a plan lift which fails or only just lifts.
// Changes of the lift itself come before those that only relax what the crew wants, each the smaller
// first. Empty when the plan lifts, lacks input or is beyond the model.
func Remedies(p plan.Plan) []Remedy { return remedies(p, report.Build(p), always) }

func remedies(p plan.Plan, r report.Report, going func() bool) []Remedy {
	if r.Verdict != report.Fails && r.Verdict != report.ThinLift {
		return nil
	}
	l := newLift(p, going)
	if l == nil {
		return nil
	}
	d := &doctor{lift: l, given: p, report: r, thin: r.Verdict == report.ThinLift}
	for _, row := range bad(r) {
		d.ids = append(d.ids, row.ID)
	}
	for _, c := range d.dials() {
		d.try(c)
	}
	if len(p.Team) <= many {
		d.moveCentre()
		d.addVehicle()
	}
	var sorted []Remedy
	for _, i := range order(len(d.found), func(i, j int) bool {
		a, b := &d.found[i], &d.found[j]
		if x, y := group(a), group(b); x != y {
			return x < y
		}
		return a.Size < b.Size*(1-1e-9)
	}) {
		sorted = append(sorted, d.found[i])
	}
	return merge(sorted)
}

// group puts whole cures before partial ones, and changes of the lift before those of the limits.
func group(r *Remedy) int {
	g := 0
	if len(r.Still) > 0 {
		g += 2
	}
	if r.Kind == Relaxed {
		g++
	}
	return g
}

// doctor looks for remedies.
type doctor struct {
	*lift
	given  plan.Plan // as the crew wrote it
	report report.Report
	ids    []string // of the checks to cure
	thin   bool
	found  []Remedy
}

// aims are what to try for, the whole first: every check that holds the plan back, then only the
// one that governs.
func (d *doctor) aims() []aim {
	list := []aim{newAim(d.lift, d.ids, d.thin)}
	if len(d.ids) > 1 {
		list = append(list, newAim(d.lift, []string{d.report.Governing}, d.thin))
	}
	return list
}

// search runs find for the whole aim, once more with what the change itself broke, and when there is
// nothing that reaches it for the governing check alone. find returns a change that reaches the aim.
func (d *doctor) search(find func(aim) (Remedy, bool)) {
	for part, a := range d.aims() {
		var kept *Remedy
		for range 2 - part {
			r, ok := find(a)
			if !ok {
				break
			}
			broken, ok := d.verify(&r, a)
			if !ok {
				break
			}
			if kept == nil || len(r.Still) < len(kept.Still) {
				kept = &r
			}
			if len(broken) == 0 {
				break
			}
			a = newAim(d.lift, append(broken, a.ids...), d.thin)
		}
		if kept != nil {
			d.found = append(d.found, *kept)
			return
		}
	}
}

// verify builds the whole report of the changed plan. It returns the checks that fail in it, and
// false when those that the change is for do not hold.
func (d *doctor) verify(r *Remedy, a aim) (broken []string, ok bool) {
	if len(plan.Validate(r.Plan)) > 0 {
		return nil, false
	}
	after := report.Build(r.Plan)
	status := map[string]check.Status{}
	r.Still, r.Cures = []string{}, []string{}
	var titles []string
	for _, row := range after.Checks {
		status[row.ID] = row.Status
		if row.Status == check.Fail || row.Status == check.Unsolved {
			r.Still = append(r.Still, row.ID)
			titles = append(titles, row.Title)
			if !held(a.ids, row.ID) {
				broken = append(broken, row.ID)
			}
		}
	}
	for _, id := range a.ids {
		if !a.enough(status[id]) {
			return nil, false
		}
		if held(d.ids, id) {
			r.Cures = append(r.Cures, id)
		}
	}
	r.Verdict = after.Verdict
	if d.thin && r.Verdict != report.Lifts && r.Verdict != report.ThinLift { // worse than before
		return nil, false
	}
	if d.thin && after.Verdict == report.ThinLift {
		r.Sentence += " It then still only just lifts."
	}
	if len(titles) > 0 {
		r.Sentence += " Even then this fails: " + strings.Join(titles, "; ") + "."
	}
	return broken, true
}

func held(list []string, id string) bool {
	for _, x := range list {
		if x == id {
			return true
		}
	}
	return false
}

// dial is a number of the plan that a remedy turns, from what it is as far as most.
type dial struct {
	kind, who, unit string
	from, most      float64
	grain           func(to float64) float64
	size            func(to float64) float64
	cures           []string // checks that it can help; nil: any
	set             func(p *plan.Plan, to float64)
	say             func(to float64) string
}

// try looks for the smallest turn of a dial.
func (d *doctor) try(c dial) {
	if math.IsNaN(c.from) || math.Abs(c.most-c.from) <= 1e-9*math.Abs(c.from) {
		return
	}
	with := func(p plan.Plan, to float64) plan.Plan {
		p = edit(p)
		c.set(&p, to)
		return p
	}
	d.search(func(a aim) (Remedy, bool) {
		if !c.helps(a, d.ids) {
			return Remedy{}, false
		}
		good := func(to float64) bool { return a.good(with(d.plan, to)) }
		at := func(x float64) float64 { return c.from + (c.most-c.from)*x }
		x, ok := least(func(x float64) bool { return a.likely(with(d.plan, at(x))) }, func(x float64) bool { return good(at(x)) }, 1)
		if !ok {
			return Remedy{}, false
		}
		found := at(x)
		to := safe(good, c.from, found, c.grain(found))
		return Remedy{Kind: c.kind, Who: c.who, Unit: c.unit, From: c.from, To: to, Size: c.size(to), Sentence: c.say(to), Plan: with(d.given, to)}, true
	})
}

// helps tells that a dial acts on every check of an aim that holds the plan back.
func (c dial) helps(a aim, back []string) bool {
	for _, id := range a.ids {
		if c.cures != nil && held(back, id) && !held(c.cures, id) {
			return false
		}
	}
	return true
}

// merge joins remedies that ask the same of alike vehicles: any one of them would do.
func merge(list []Remedy) []Remedy {
	var out []Remedy
	same := map[string][]string{}
	for _, r := range list {
		key := r.Kind + " " + strconv.FormatFloat(r.To, 'g', -1, 64) + strings.Join(r.Still, " ")
		if r.Kind != Stronger {
			out = append(out, r)
			continue
		}
		if same[key] == nil {
			out = append(out, r)
		}
		same[key] = append(same[key], r.Who)
	}
	for i := range out {
		r := &out[i]
		key := r.Kind + " " + strconv.FormatFloat(r.To, 'g', -1, 64) + strings.Join(r.Still, " ")
		if who := same[key]; len(who) > 1 {
			r.Sentence += " " + share.List(who[1:]) + " would do as well: one is enough."
		}
	}
	return out
}
