package report_test

import (
	"math"
	"math/rand"
	"testing"

	"cohoist/core/air"
	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/core/vec"
)

// Laws that hold for every plan, on the examples, on nearly degenerate plans and on random ones.

// law is the accuracy that the solver's answers and the numbers derived from them are held to.
const law = 1e-7

func close(a, b float64) bool {
	return math.Abs(a-b) <= law*(1+math.Abs(a)) || math.IsNaN(a) && math.IsNaN(b)
}

// each runs a law on every example, on each with attachments jittered by up to 5 mm, and on each
// with all attachments drawn together to within 1 mm. Cables hang as they like: leaning them apart
// is not convex, and has its own test.
func each(t *testing.T, run func(t *testing.T, p plan.Plan)) {
	const seed = 20
	for _, e := range example.All {
		given, faults := example.Plan(e.Name)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		given.Limits.Separation = 1e-9
		t.Run(e.Name, func(t *testing.T) { run(t, given.Clone()) })
		t.Run(e.Name+"/jittered", func(t *testing.T) {
			rnd := rand.New(rand.NewSource(seed))
			t.Logf("seed %d", seed)
			p := given.Clone()
			for i := range p.Team {
				for j := range 3 {
					p.Team[i].Attach[j] += 0.01 * (rnd.Float64() - 0.5)
				}
			}
			run(t, p)
		})
		t.Run(e.Name+"/1 mm", func(t *testing.T) {
			p := given.Clone()
			for i := range p.Team {
				p.Team[i].Attach = p.Team[i].Attach.Scale(0.001 / (1e-9 + p.Team[i].Attach.Norm()))
			}
			run(t, p)
		})
	}
}

// Forces and moments on the payload add up, recomputed from the report's numbers alone.
func TestBalanceFromTheReport(t *testing.T) {
	each(t, func(t *testing.T, p plan.Plan) {
		r := report.Build(p)
		if math.IsNaN(r.Team.Utilisation) {
			t.Skip("no balance")
		}
		const g = 9.80665
		body := vec.Rot(r.Team.Lean.Scale(math.Pi / 180)).T()
		sin, cos := math.Sincos(p.Site.WindTo * math.Pi / 180)
		wind := vec.V3{}
		if p.Site.Wind > 0 {
			wind = vec.V3{p.Site.Wind * cos, p.Site.Wind * sin, 0}
		}
		force := air.Drag(r.Team.Density, r.Payload.DragArea, body.Mul(wind)).Sub(body.Mul(vec.V3{0, 0, r.Payload.Mass * g}))
		var moment vec.V3
		for i, v := range r.Vehicles {
			force = force.Add(v.Force)
			moment = moment.Add(p.Team[i].Attach.Sub(r.Payload.COM).Cross(v.Force)).Add(v.Moment)
			force, moment = force.Add(v.Download), moment.Add(v.DownloadAt.Sub(r.Payload.COM).Cross(v.Download))
		}
		weight := r.Team.Mass * g
		if force.Norm() > 1e-8*weight || moment.Norm() > 1e-8*weight {
			t.Errorf("left over: force %v, moment %v", force, moment)
		}
		if r.Team.Residual > 1e-9 {
			t.Errorf("residual %g", r.Team.Residual)
		}
		if r.Team.DualBound > r.Team.Utilisation+1e-12 || r.Team.DualBound < r.Team.Utilisation-1e-7 {
			t.Errorf("bound %.12g of utilisation %.12g", r.Team.DualBound, r.Team.Utilisation)
		}
		for i, v := range r.Vehicles {
			if p.Team[i].Hold.Kind == plan.Cable && v.Force[2] < -1e-9 {
				t.Errorf("the cable of %s pushes", v.ID)
			}
		}
	})
}

// Other names and another order of the team change nothing but names and order.
func TestRenaming(t *testing.T) {
	each(t, func(t *testing.T, p plan.Plan) {
		before := report.Build(p)
		q := p.Clone()
		n := len(q.Team)
		for i := range q.Team {
			q.Team[i] = p.Team[n-1-i]
			q.Team[i].ID = "renamed " + p.Team[n-1-i].ID
		}
		after := report.Build(q)
		same(t, before, after)
		for i := range before.Vehicles {
			a, b := before.Vehicles[i], after.Vehicles[n-1-i]
			if !close(a.Utilisation, b.Utilisation) && math.Abs(a.Utilisation-b.Utilisation) > ties || !near3(a.Force, b.Force, ties*a.ThrustMax) {
				t.Errorf("%s: %v and %v", a.ID, a, b)
			}
		}
	})
}

// ties is how near the vehicles' own parts come, of their thrust: forces that leave the worst
// utilisation as it is move with the square root of its accuracy.
const ties = 1e-3

func near3(a, b vec.V3, tol float64) bool { return !(a.Sub(b).Norm() > tol) }

// same asks that two reports say the same of the team.
func same(t *testing.T, a, b report.Report) {
	t.Helper()
	if a.Verdict != b.Verdict {
		t.Errorf("verdict %s and %s", a.Verdict, b.Verdict)
	}
	pairs := map[string][2]float64{
		"utilisation":     {a.Team.Utilisation, b.Team.Utilisation},
		"largest payload": {a.Team.LargestPayload, b.Team.LargestPayload},
		"climb":           {a.Agility.Team.ClimbAcc, b.Agility.Team.ClimbAcc},
	}
	for what, x := range pairs {
		if !close(x[0], x[1]) {
			t.Errorf("%s %.10g and %.10g", what, x[0], x[1])
		}
	}
}

// Turning payload, team and wind together by a quarter about the vertical turns the answer.
func TestTurning(t *testing.T) {
	quarter := func(v vec.V3) vec.V3 { return vec.V3{-v[1], v[0], v[2]} }
	each(t, func(t *testing.T, p plan.Plan) {
		before := report.Build(p)
		q := p.Clone()
		com, area, j := quarter(before.Payload.COM), before.Payload.DragArea, before.Payload.Inertia
		turned := [6]float64{j[1], j[0], j[2], -j[3], -j[5], j[4]}
		area[0], area[1] = area[1], area[0]
		q.Payload.COM, q.Payload.DragArea, q.Payload.Inertia = &com, &area, &turned
		for i := range q.Payload.Solids { // what the wakes meet
			s := &q.Payload.Solids[i]
			for k := range 3 {
				if math.IsNaN(s.At[k]) {
					s.At[k] = 0
				}
				if math.IsNaN(s.Turn[k]) {
					s.Turn[k] = 0
				}
			}
			s.At, s.Turn[2] = quarter(s.At), s.Turn[2]+90
		}
		if math.IsNaN(q.Site.WindTo) {
			q.Site.WindTo = 0
		}
		q.Site.WindTo += 90
		for i := range q.Team {
			m := &q.Team[i]
			m.Attach = quarter(m.Attach)
			if math.IsNaN(m.Yaw) {
				m.Yaw = 0
			}
			m.Yaw += 90
			lean := quarter(vec.V3{m.Hold.Lean[0], m.Hold.Lean[1], 0})
			m.Hold.Lean = [2]float64{lean[0], lean[1]}
		}
		after := report.Build(q)
		same(t, before, after)
		if !close(before.Agility.Team.RollAcc[0], after.Agility.Team.PitchAcc[0]) {
			t.Errorf("roll %g became pitch %g", before.Agility.Team.RollAcc[0], after.Agility.Team.PitchAcc[0])
		}
		for i := range before.Vehicles {
			if a, b := quarter(before.Vehicles[i].Force), after.Vehicles[i].Force; !near3(a, b, ties*before.Vehicles[i].ThrustMax) {
				t.Errorf("%s: %v became %v", before.Vehicles[i].ID, a, b)
			}
		}
	})
}
