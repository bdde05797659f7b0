package study

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"cohoist/core/pattern"
	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/unit"
	"cohoist/ui/format"
	"cohoist/ui/talk"
)

// The table of how many goes so far, and searches so many nodes for each number, so that it ends within
// some seconds.
const (
	mostVehicles = 12
	manyNodes    = 20000
)

// counted is what teams of one, two, three … vehicles can do.
type counted struct {
	of    plan.Plan
	set   string
	asks  place.Question
	units format.Units
	like  int // index of the vehicle that all are like
	rows  []place.Row
	soFar place.Progress
	done  bool
	stop  bool
	fault string
}

// many works the table out.
func (w *where) many(t *Turn, c *choices) {
	w.frame(t, c, true)
	k := &counted{of: t.Plan, set: chosen(t), asks: c.asks, units: c.units}
	for i, free := range c.asks.Free {
		if free {
			k.like = i
			break
		}
	}
	w.table = k
	k.show(t, c)
	t.Send()
	r := c.request()
	r.Kind, r.Most, r.Budget = place.Table, mostVehicles, manyNodes
	reply := r.Run(w.tell(t, func(pr place.Progress) {
		k.soFar = pr
		k.show(t, c)
	}, &k.stop))
	k.rows, k.done = reply.Rows, true
	if reply.Fault != "" {
		k.fault = sentence(errors.New(reply.Fault))
	}
	if k.stop && len(k.rows) > 0 { // the last was not searched to its end
		k.rows = k.rows[:len(k.rows)-1]
	}
}

// team is the plan with so many vehicles.
func (k *counted) team(t *Turn, n int) (plan.Plan, bool) {
	if k == nil || n < 1 || n > len(k.rows) || !k.current(t) || k.rows[n-1].Answer.Places == nil {
		return plan.Plan{}, false
	}
	return k.plan(n), true
}

func (k *counted) plan(n int) plan.Plan {
	p := k.of.Clone()
	like := p.Team[k.like]
	p.Team = make([]plan.Member, n)
	for i := range p.Team {
		p.Team[i] = like
		p.Team[i].ID, p.Team[i].Extra = pattern.ID(i), nil
	}
	return placed(p, k.rows[n-1].Answer.Places)
}

// current tells that the plan is the one that was asked about, or one of its teams.
func (k *counted) current(t *Turn) bool {
	if same(k.of, t.Plan) {
		return true
	}
	for _, r := range k.rows {
		if r.Answer.Places != nil && r.Vehicles == len(t.Plan.Team) && same(k.plan(r.Vehicles), t.Plan) {
			return true
		}
	}
	return false
}

// show draws the table, or how far it is; nothing when nobody asked.
func (k *counted) show(t *Turn, c *choices) {
	const piece = talk.Where + "-table"
	switch {
	case k == nil:
		t.Show(piece, &WhereMany{Off: true, Lead: "Teams of 1 to " + strconv.Itoa(mostVehicles) + " vehicles of the class of the first that may move, each at its best places, are compared when asked for."})
	case !k.done:
		t.Show(piece, &WhereMany{Off: true, Running: true, Part: strconv.FormatFloat(k.soFar.Part, 'f', 3, 64),
			Lead: "Searching for " + strconv.Itoa(1+int(k.soFar.Part*mostVehicles)) + " of " + strconv.Itoa(mostVehicles) + " vehicles."})
	default:
		t.Show(piece, k.table(t))
	}
}

// manyRow is a number of vehicles as the table shows it.
type manyRow struct {
	N                              int
	Says, Class, Worst, Lost, Turn string
	Least, Place                   bool
}

func (k *counted) table(t *Turn) *WhereMany {
	m := &WhereMany{Fresh: k.current(t)}
	switch {
	case !m.Fresh:
		m.Standing, m.Off = "Of an earlier plan: ", true
	case k.set != chosen(t):
		m.Standing = "Found with other choices: "
	}
	if k.fault != "" {
		m.Lead = k.fault
		return m
	}
	least := place.Smallest(k.rows)
	for _, r := range k.rows {
		m.Rows = append(m.Rows, k.row(r, least))
	}
	class := strings.ReplaceAll(k.of.Team[k.like].Vehicle, "-", " ") + "s"
	switch {
	case least > 0:
		m.Lead = "The fewest " + class + " that hold every case within " + format.Share(k.asks.Plan.Limits.Utilisation) + ": " + strconv.Itoa(least) + "."
		if k.asks.Cases.Lost {
			m.Lead = strings.TrimSuffix(m.Lead, ".") + ", one of them lost too."
		}
	case k.stop:
		m.Lead = "Stopped early; none of these is enough."
	default:
		m.Lead = "No team of 1 to " + strconv.Itoa(len(k.rows)) + " " + class + " is enough on these points."
	}
	return m
}

func (k *counted) row(r place.Row, least int) manyRow {
	out := manyRow{N: r.Vehicles, Least: r.Vehicles == least, Place: r.Answer.Places != nil, Worst: unit.None, Lost: unit.None, Turn: unit.None}
	if !out.Place {
		out.Says, out.Class = "✕ does not hold", "is-fail"
		switch why, _, _ := strings.Cut(r.Fault, ":"); {
		case r.Fault == place.ErrFew.Error() || r.Fault == "" && r.Answer.Proof.Evaluated == 0:
			out.Says, out.Class = "✕ too few places", "is-none"
		case r.Fault != "":
			out.Says, out.Class = "✕ "+why, "is-none"
		}
		return out
	}
	worst := 0.0
	for _, c := range r.Answer.Cases {
		if !c.Lost {
			worst = math.Max(worst, c.Utilisation)
		}
	}
	limit := k.asks.Plan.Limits.Utilisation
	switch {
	case !r.Passes && worst <= limit*(1+1e-6):
		out.Says, out.Class = "✕ not with one lost", "is-fail"
	case !r.Passes:
		out.Says, out.Class = "✕ over "+format.Share(limit), "is-fail"
	case worst > 0.9*limit:
		out.Says, out.Class = "≈ passes, thin", "is-thin"
	default:
		out.Says, out.Class = "✓ passes", "is-ok"
	}
	if !r.Answer.Proof.Proved {
		out.Says += "; not proved best"
	}
	out.Worst, out.Lost = used(worst), used(r.OneLost)
	out.Turn = goalValue(k.units, place.Agility, r.Agility)
	return out
}
