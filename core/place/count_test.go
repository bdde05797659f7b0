package place

import (
	"errors"
	"math"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// The gangway's handrail beam of 6 m with holes every 150 mm: what a newcomer asks first.
func TestHandrail(t *testing.T) {
	p, faults := example.Plan("handrail-beam")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p, _ = plan.Assume(p)
	holes := InRow(vec.V3{-3, 0, 0.025}, vec.V3{3, 0, 0.025}, 0.15)
	q := Question{Plan: p, Cases: Cases{Off: 0.05}, Spacing: p.Limits.Separation}
	a, err := OnHoles(q, holes, nil)
	if err != nil {
		t.Fatal(err)
	}
	best, all := brute(t, q, holes)
	t.Logf("%g at holes %v, brute %g of %d, evaluated %d of %g", a.Value, a.Holes, best, all, a.Proof.Evaluated, a.Proof.Candidates)
	if !a.Proof.Proved || math.Abs(a.Value-best) > 1e-9*best || a.Proof.Candidates != 10660 {
		t.Errorf("%+v, by brute force %g", a, best)
	}
	q.Goal = Moment
	a, _ = OnHoles(q, holes, nil)
	best, _ = brute(t, q, holes)
	t.Logf("moment %g at holes %v, evaluated %d", a.Value, a.Holes, a.Proof.Evaluated)
	if !a.Proof.Proved || math.Abs(a.Value-best) > 1e-9*best {
		t.Errorf("moment %g, by brute force %g", a.Value, best)
	}
	q.Mirror[0] = true
	m, err := OnHoles(q, holes, nil)
	if err != nil || m.Value < best*(1-1e-9) || m.Proof.Candidates >= 200 {
		t.Errorf("mirrored: %+v %v", m, err)
	}
	sum := 0.0
	for _, p := range m.Places {
		sum += p[0]
	}
	if math.Abs(sum) > 1e-9 {
		t.Errorf("mirrored places %v", m.Places)
	}
	strip, err := Shift(Question{Plan: p}, 0, holes)
	if err != nil || len(strip) != len(holes) {
		t.Fatal(err)
	}
	v, cases, _ := Value(Question{Plan: p})
	p2 := p.Clone()
	for i, h := range holes { // moving the vehicle in the plan says the same
		p2.Team[0].Attach = h
		w, _, _ := Value(Question{Plan: p2})
		if w != strip[i] && math.Abs(w-strip[i]) > 1e-12 {
			t.Errorf("hole %d: %g on the strip, %g in the plan", i, strip[i], w)
		}
	}
	if len(cases) != 1 || cases[0].Utilisation != v {
		t.Errorf("cases %v of %g", cases, v)
	}
}

func TestHowMany(t *testing.T) {
	p, holes := beamOn(1)
	rows := HowMany(Question{Plan: p, Cases: Cases{Off: 0.05, Lost: true}, Spacing: 0.5}, 12, 200000, holes, nil)
	if len(rows) != 12 || Smallest(rows) == 0 {
		t.Fatalf("%d rows, smallest %d", len(rows), Smallest(rows))
	}
	last := math.Inf(1)
	for _, r := range rows {
		t.Logf("%d: %.4f lost %.4f agility %.4g N m passes %v, evaluated %d of %g, bound %.4f %v %v", r.Vehicles, r.Answer.Value, r.OneLost, r.Agility, r.Passes,
			r.Answer.Proof.Evaluated, r.Answer.Proof.Candidates, r.Answer.Proof.Bound, r.Answer.Proof.Proved, r.Fault)
		if r.Fault != "" {
			continue
		}
		if math.IsInf(r.OneLost, 1) { // asked with all there
			continue
		}
		if r.Answer.Value > last*(1+1e-6) {
			t.Errorf("%d vehicles: %g, worse than with one fewer, %g", r.Vehicles, r.Answer.Value, last)
		}
		last = r.Answer.Value
	}
	if rows[10].Fault != "" || rows[11].Fault != ErrFew.Error() { // 6 m take 11 that keep 0.5 m on holes every 0.15 m
		t.Errorf("11 and 12 vehicles: %v, %v", rows[10].Fault, rows[11].Fault)
	}
	if r := rows[1]; r.Passes || !(r.Answer.Value < 0.8) || !math.IsInf(r.OneLost, 1) {
		t.Errorf("two: %+v", r)
	}
	if Smallest(rows) != 4 {
		t.Errorf("the smallest number that passes is %d", Smallest(rows))
	}
	if r := rows[0]; r.Passes || r.Agility > 1e-6 {
		t.Errorf("one alone: %+v", r)
	}
}

func TestPareto(t *testing.T) {
	p, holes := beamOn(3)
	p.Payload.Solids = append(p.Payload.Solids, p.Payload.Solids[0])
	p.Payload.Solids[1] = plan.BlankSolid()
	p.Payload.Solids[1].Shape, p.Payload.Solids[1].Mass, p.Payload.Solids[1].At = plan.Point, 2, vec.V3{1.7, 0, 0}
	q, _ := plan.Assume(p)
	front, proof, err := Pareto(Question{Plan: q}, [2]Goal{Utilisation, Moment}, holes[:30], nil)
	if err != nil || !proof.Proved || proof.Evaluated != 4060 {
		t.Fatalf("%v %+v", err, proof)
	}
	for i, f := range front {
		t.Logf("%.5f %.4f N m at %v", f.Values[0], f.Values[1], f.Holes)
		if i > 0 && !(f.Values[0] > front[i-1].Values[0] && f.Values[1] < front[i-1].Values[1]) {
			t.Errorf("%v after %v is no trade", f.Values, front[i-1].Values)
		}
	}
	for k, g := range []Goal{Utilisation, Moment} {
		a, _ := OnHoles(Question{Plan: q, Goal: g}, holes[:30], nil)
		end := front[(len(front)-1)*k].Values[k]
		if math.Abs(end-a.Value) > 1e-6*a.Value {
			t.Errorf("end %d of the front %g, the best alone %g", k, end, a.Value)
		}
	}
}

func TestAgilityOnHoles(t *testing.T) {
	q := Question{Plan: panel(4), Goal: Agility}
	holes := forty()
	some := []vec.V3{holes[0], holes[4], holes[35], holes[39], holes[12], holes[22], holes[17], holes[27]}
	a, err := OnHoles(q, some, nil)
	if err != nil {
		t.Fatal(err)
	}
	best, _ := brute(t, q, some)
	if math.Abs(a.Value-best) > 1e-6*best || !(a.Value > 0) {
		t.Errorf("agility %g, by brute force %g", a.Value, best)
	}
}

func TestStopAndFaults(t *testing.T) {
	calls := 0
	a, err := OnHoles(Question{Plan: panel(4), Cases: Cases{Off: 0.05}}, forty(), func(p Progress) bool {
		calls++
		if p.Part < 0 || p.Part > 1 || p.Places == nil {
			t.Errorf("progress %+v", p)
		}
		return false
	})
	if err != nil || calls != 1 || a.Proof.Proved || a.Places == nil || !(a.Proof.Bound <= a.Value) {
		t.Errorf("stopped at once: %d calls, %+v, %v", calls, a, err)
	}
	for _, c := range []struct {
		name string
		q    Question
		n    int
		want error
	}{
		{"three holes", Question{Plan: panel(4)}, 3, ErrFew},
		{"nobody may move", Question{Plan: panel(2), Free: []bool{false, false}}, 9, ErrNone},
		{"no beam", Question{Plan: panel(2), Goal: Moment}, 9, ErrNotBeam},
		{"mirrored with one fixed", Question{Plan: panel(2), Mirror: [2]bool{true, false}, Free: []bool{true, false}}, 9, ErrMirror},
	} {
		if _, err := OnHoles(c.q, forty()[:c.n], nil); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}

func TestWordsAndMissing(t *testing.T) {
	for want, p := range map[string]Proof{
		"Proved: none of 91\u202f390 placements is better; 22 were solved, the others ruled out by a bound or by their spacing.": {Candidates: 91390, Evaluated: 22, Proved: true},
		"Stopped early, not proved: of 91\u202f390 placements one was solved. None needs less than 0.5.":                         {Candidates: 91390, Evaluated: 1, Bound: 0.5},
	} {
		if got := p.Words(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	p := panel(4)
	p.Team[1].Attach[0] = math.NaN() // to be chosen
	if a, err := OnHoles(Question{Plan: p}, forty(), nil); err != nil || math.IsInf(a.Value, 0) {
		t.Errorf("an attachment not given yet: %v %v", a.Value, err)
	}
	p.Payload.Solids[0].Mass = math.NaN()
	if _, err := OnHoles(Question{Plan: p}, forty(), nil); err == nil || err.Error() != "payload.solids[0].mass_kg is missing: give it before places are chosen" {
		t.Errorf("no mass: %v", err)
	}
}

func BenchmarkHover4(b *testing.B) {
	q := Question{Plan: panel(4)}
	holes := forty()
	s, _ := newBench(q, holes)
	posts := append([]vec.V3(nil), s.posts...)
	for i := 0; b.Loop(); i++ {
		for k := range posts {
			posts[k] = holes[(i*7+k*11+i/40)%40]
		}
		s.value(posts, math.Inf(1))
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "placements/s")
}

func BenchmarkFourOfForty(b *testing.B) {
	q := Question{Plan: panel(4), Cases: Cases{Off: 0.05}}
	for b.Loop() {
		OnHoles(q, forty(), nil)
	}
}

func BenchmarkFourOfFortyInWind(b *testing.B) {
	q := Question{Plan: panel(4), Cases: Cases{Winds: 8}}
	q.Plan.Site.Wind = 6
	for b.Loop() {
		OnHoles(q, forty(), nil)
	}
}

func BenchmarkFourOfFortyRigid(b *testing.B) {
	q := Question{Plan: panel(4)}
	for i := range q.Plan.Team {
		q.Plan.Team[i].Hold.Kind, q.Plan.Team[i].Hold.Lean = plan.Rigid, [2]float64{}
	}
	for b.Loop() {
		OnHoles(q, forty(), nil)
	}
}
