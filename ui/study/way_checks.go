package study

import (
	"math"

	"cohoist/core/rehearse"
	"cohoist/ui/format"
)

// flightCheck is a row of what a flight comes to beside what is accepted.
type flightCheck struct{ Name, Seen, Accepted, Class, Says string }

// against compares what was seen with the most that is accepted; NaN: the plan does not say, and minus infinity: there is nothing to say.
func against(name string, seen, most float64, show func(float64) string, who string) flightCheck {
	r := flightCheck{Name: name, Seen: show(seen), Accepted: "up to " + show(most), Class: "ck-ok", Says: "✓ kept"}
	if who != "" {
		r.Seen += ", " + who
	}
	switch {
	case math.IsInf(most, -1):
		r.Accepted, r.Class, r.Says = "–", "ck-none", "–"
	case math.IsNaN(most):
		r.Accepted, r.Class, r.Says = "not given", "ck-none", "not checked"
	case !(seen <= most):
		r.Class, r.Says = "ck-fail", "✕ not kept"
	}
	return r
}

// checks is the flight as checks. What has no limit of the plan is only shown.
func (f *flight) checks() []flightCheck {
	p, u := f.result.Peaks, f.units
	none := math.Inf(-1)
	force := func(x float64) string { return u.Show(format.Force, x) }
	worst, who := f.most(func(i int) float64 { return p.Used[i] })
	list := []flightCheck{against("Thrust of a vehicle, of what it has", worst, f.limits.Utilisation, used, who)}
	if x, who := f.most(func(i int) float64 { return f.tilts(i) - f.model.Craft[i].Vehicle.TiltMax }); who != "" {
		i := f.member(who)
		list = append(list, against("Tilt of a vehicle", x+f.model.Craft[i].Vehicle.TiltMax, f.model.Craft[i].Vehicle.TiltMax, inDegrees, who))
	}
	list = append(list, against("Payload off its way, seen from above", p.Off, astray, u.Small, ""),
		against("Payload below its way", p.Sink, astray, u.Small, ""),
		against("Payload tilts", p.Swing, none, inDegrees, ""))
	if f.model.Cables {
		list = append(list, f.lines(force)...)
	}
	if f.model.Rigid {
		list = append(list, f.grips(force)...)
	}
	if figureOf(p.Separation) {
		least := f.model.Plan.Limits.Separation
		r := against("Nearest two vehicles", -p.Separation, -least, func(x float64) string { return u.Small(-x) }, "")
		r.Accepted = "at least " + u.Small(least)
		list = append(list, r)
	}
	if f.failed != nil {
		list = append(list, f.recovers())
	}
	return list
}

// lines are the rows of the cables: pull against working load where it is nearest, the least pull, and the lean.
func (f *flight) lines(force func(float64) string) []flightCheck {
	p := f.result.Peaks
	load := func(i int) float64 { return f.model.Craft[i].WorkingLoad }
	_, who := f.most(func(i int) float64 { return p.Tension[i] / load(i) })
	if who == "" { // no working load is given
		_, who = f.most(func(i int) float64 { return p.Tension[i] })
	}
	var list []flightCheck
	if who != "" {
		i := f.member(who)
		list = append(list, against("Pull of a cable", p.Tension[i], load(i), force, who))
	}
	if least, who := f.most(func(i int) float64 { return -p.Least[i] }); who != "" && figureOf(least) {
		r := against("Least pull of a cable", least, -f.model.Plan.Limits.TensionMin, func(x float64) string { return force(max(0, -x)) }, who)
		r.Accepted = "at least " + force(f.model.Plan.Limits.TensionMin)
		list = append(list, r)
	}
	most := math.NaN()
	for _, i := range f.frames {
		if x := f.lean(i); !(x <= most) && !math.IsNaN(x) {
			most = x
		}
	}
	return append(list, against("Lean of a cable", most, f.model.Plan.Limits.Cone*math.Pi/180, inDegrees, ""))
}

// grips are the rows of the rigid holds.
func (f *flight) grips(force func(float64) string) []flightCheck {
	p, team := f.result.Peaks, f.model.Plan.Team
	moment := func(x float64) string { return amount(x, "N m") }
	var list []flightCheck
	for _, k := range []struct {
		name string
		seen []float64
		most func(i int) float64
		show func(float64) string
	}{
		{"Force on a grip", p.Force, func(i int) float64 { return team[i].Hold.GripForceMax }, force},
		{"Moment on a grip", p.Moment, func(i int) float64 { return team[i].Hold.GripMomentMax }, moment},
	} {
		_, who := f.most(func(i int) float64 { return k.seen[i] / k.most(i) })
		if who == "" {
			_, who = f.most(func(i int) float64 { return k.seen[i] })
		}
		i := f.member(who)
		list = append(list, against(k.name, k.seen[i], k.most(i), k.show, who))
	}
	return list
}

// recovers is the row of what follows a loss.
func (f *flight) recovers() flightCheck {
	r := flightCheck{Name: "Steady again within " + f.units.Show(format.Length, rehearse.Near), Accepted: "before the end", Class: "ck-ok", Says: "✓ kept"}
	switch p := f.result.Peaks; {
	case !math.IsNaN(p.Crash):
		r.Seen, r.Class, r.Says = "never: it falls", "ck-fail", "✕ not kept"
	case math.IsNaN(p.Recovery):
		r.Seen, r.Class, r.Says = "not before the end", "ck-fail", "✕ not kept"
	default:
		r.Seen = lasts(p.Recovery) + " after the loss"
	}
	return r
}

// most is the largest of the vehicles' figures and whose it is; of vehicles that have one.
func (f *flight) most(of func(i int) float64) (float64, string) {
	most, who := math.NaN(), ""
	for i, c := range f.model.Craft {
		if x := of(i); !math.IsNaN(x) && !(x <= most) {
			most, who = x, c.ID
		}
	}
	return most, who
}

func (f *flight) member(id string) int {
	for i, c := range f.model.Craft {
		if c.ID == id {
			return i
		}
	}
	return 0
}

// tilts is how far a vehicle's thrust axis is from the vertical at most while it flies, radians.
func (f *flight) tilts(i int) float64 {
	most := 0.0
	for _, s := range f.result.Samples {
		if i != f.lost(s.Time-f.lead) {
			most = max(most, math.Acos(min(1, max(-1, s.Ups[i][2]))))
		}
	}
	return most
}
