package cargo

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/plan"
	"cohoist/core/share"
)

func close(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Max(1, math.Abs(want))) {
		t.Errorf("%s is %.10g, want %.10g within %g", what, got, want, tol)
	}
}

// one vehicle of 2 kg on a cable of 3 m above a point of 1 kg, in calm air without drag: everything about it can be worked out by hand.
// Items are points that go from x = 10k to x = 10k + 20 on the ground; home is at the origin.
func one(items int, wh float64) plan.Plan {
	text := `{"format":"liftplan/1","seed":1,"payload":{"solids":[{"shape":"point","mass_kg":1}],"drag_area_m2":[0,0,0]},
	 "vehicles":{"q":{"mass_kg":2,"rotors":4,"layout":"cross","arm_m":0.3,"rotor_radius_m":0.15,"rotor_thrust_max_n":15,"torque_per_thrust_m":0.016,"drag_area_m2":0,
	  "tilt_max_deg":30,"figure_of_merit":0.6,"drive_efficiency":0.8,"avionics_w":12,"battery":{"energy_wh":WH}}},
	 "team":[{"id":"A","vehicle":"q","attach_m":[0,0,0],"hold":{"kind":"cable","length_m":3,"working_load_n":100}}],
	 "limits":{"utilisation":0.8,"cone_deg":30,"tension_min_n":0.5,"com_error_m":0,"turn_rad_s2":0,"reserve_ratio":0.2},
	 "cargo":{"home_m":[0,0,0],"clearance_m":2,"swap_s":100,"hook_s":20,"items":[ITEMS]}}`
	list := make([]string, items)
	for k := range list {
		list[k] = fmt.Sprintf(`{"id":"p%d","payload":{"solids":[{"shape":"point","mass_kg":1}],"drag_area_m2":[0,0,0]},"pick_m":[%d,0,0],"set_m":[%d,0,0]}`, k, 10*k, 10*k+20)
	}
	p, faults := plan.Read([]byte(strings.NewReplacer("WH", fmt.Sprint(wh), "ITEMS", strings.Join(list, ",")).Replace(text)))
	if len(faults) > 0 {
		panic(faults)
	}
	return p
}

func study(t *testing.T, p plan.Plan) *Study {
	t.Helper()
	s, ok := Of(p, nil)
	if !ok {
		t.Fatal("nobody stopped it")
	}
	return s
}

// By hand: the ways of one vehicle with and without a payload, their times, energies and packs.
func TestByHand(t *testing.T) {
	const g = share.Gravity
	p := one(2, 1000)
	s := study(t, p)
	if len(s.Needs)+len(s.Wants)+len(s.Cautions) > 0 || !s.Found || s.Short != nil {
		t.Fatalf("needs %v, wants %v, cautions %v", s.Needs, s.Wants, s.Cautions)
	}
	// Straight from rest to rest the acceleration is at most 84/(5√5) d/T². Up it is what 48 N leave of 3 kg; over, the lean of 30° (cone and
	// tilt) is less than what thrust leaves. A way is found to 2e-5 of its time.
	k := 84 / (5 * math.Sqrt(5))
	up := math.Sqrt(k * 2 / (48.0/3 - g))
	across := math.Sqrt(k * 20 / math.Min(g*math.Tan(math.Pi/6), math.Sqrt(16*16-g*g)))
	if n := len(s.Items[0].Carry); n != 3 {
		t.Fatalf("carried in %d parts", n)
	}
	close(t, "up", s.Items[0].Carry[0].Path.Duration(), up, 3e-5)
	close(t, "over", s.Items[0].Carry[1].Path.Duration(), across, 3e-5)
	close(t, "down", s.Items[0].Carry[2].Path.Duration(), up, 3e-5)
	close(t, "an item's own time", s.Items[0].Own.Time, 40+2*up+across, 3e-5)
	// Alone: from home it climbs 5 m, so that its cable's end is 2 m above all, and comes down to 3 m above the item.
	half, lean := g/2, g*math.Tan(math.Pi/6)
	solo := func(h float64) float64 { return math.Sqrt(k * h / math.Min(48.0/2-g, half)) }
	f := s.Flight(-1, 1)
	close(t, "climb from home", f.Up, solo(5), 1e-9)
	close(t, "over to the second", f.Over, math.Sqrt(k*10/lean), 1e-8)
	close(t, "down to it", f.Down, solo(2), 1e-9)
	// Power of 2 g in four rotors by momentum theory; 1.225 kg/m³ is the standard density to 7e-9.
	power := func(mass float64) float64 {
		thrust := mass * g / 4
		return 4*thrust*math.Sqrt(thrust/(2*1.225*math.Pi*0.15*0.15))/(0.6*0.8) + 12
	}
	close(t, "power alone", s.work.team[0].power, power(2), 1e-8)
	// The lift needs no less than hovering with it, and little more: it speeds up and slows down.
	carried := 0.0
	for _, c := range s.Items[0].Carry {
		carried += c.Spent[0].Energy
	}
	if hover := power(3) * (2*up + across); !(carried > 0.95*hover && carried < 1.15*hover) {
		t.Errorf("carrying takes %g J, hovering as long %g J", carried, hover)
	}
	close(t, "an item's own energy", s.Items[0].Own.Energy, carried+40*power(2), 1e-8)
	// The whole: first p1, which is set 20 m from where p0 is picked … or p0 first, set where p1 is not: both are added up.
	t01, t10 := s.Flight(-1, 0).Time+s.Flight(0, 1).Time+s.Flight(1, -1).Time, s.Flight(-1, 1).Time+s.Flight(1, 0).Time+s.Flight(0, -1).Time
	close(t, "in all", s.Best.Time, math.Min(t01, t10)+s.Items[0].Own.Time+s.Items[1].Own.Time, 1e-12)
	spans := s.Spans(s.Best.Stops)
	sum, energy := 0.0, 0.0
	for _, x := range spans {
		close(t, "start of "+x.Kind, x.Start, sum, 1e-12)
		sum, energy = sum+x.Time, energy+x.Energy
	}
	close(t, "the spans' time", sum, s.Best.Time, 1e-12)
	close(t, "the spans' energy", energy, s.Best.Energy, 1e-12)
}

// Packs by hand: a pack of energy alone gives 80 % of it. With room for two items and the way home, but not three, four items take two
// packs, five take three, and what one pack does not hold is said.
func TestPacksByHand(t *testing.T) {
	s := study(t, one(5, 1000))
	trip := 0.0
	for i := range s.Items {
		for j := range s.Items {
			whole := s.empty(s.Flight(-1, i), nil).Energy + s.Items[i].Own.Energy + s.empty(s.Flight(j, -1), nil).Energy
			trip = math.Max(trip, whole)
		}
	}
	wh := 2.2 * trip / 0.8 / 3600 // a trip with its ways is more than its own part, so that three never fit in 2.2 of the largest
	for _, c := range []struct{ items, packs, want int }{{1, 0, 1}, {2, 0, 1}, {4, 0, 2}, {5, 0, 3}, {5, 3, 3}, {5, 2, 0}} {
		p := one(c.items, wh)
		p.Cargo.Packs = c.packs
		s := study(t, p)
		if s.Found != (c.want > 0) || s.Found && s.Best.Packs != c.want || s.Short != nil {
			t.Errorf("%d items and %d packs: found %v with %d, want %d", c.items, c.packs, s.Found, s.Best.Packs, c.want)
		}
		if s.Found && !(s.Left[0] >= s.work.floor[0]) {
			t.Errorf("%d items: a pack comes to %g, below %g", c.items, s.Left[0], s.work.floor[0])
		}
	}
	// Where the packs change, energy from full to the lowest charge is that of the spans between.
	s = study(t, one(4, wh))
	used, most := 0.0, 0.0
	for _, x := range s.Spans(s.Best.Stops) {
		if used += x.Energy; x.Kind == Changing {
			used = 0
		}
		most = math.Max(most, used)
	}
	pack := s.work.team[0].pack
	close(t, "energy from the fullest used pack", (1-pack.Left(s.Left[0]))*pack.Energy, most, 1e-9)
	small := study(t, one(1, 0.3*trip/0.8/3600))
	if !strings.Contains(small.Items[0].Why, "takes more than one pack: that of A ends first") || small.Found && len(small.Best.Stops) > 0 {
		t.Errorf("a pack too small: %q", small.Items[0].Why)
	}
}

// What waits, what is too heavy, and what stands on it.
func TestSupports(t *testing.T) {
	p := one(4, 1000)
	c := &p.Cargo
	c.Items[0].On, c.Items[1].Under = []string{"p2"}, []string{"p0"}
	s := study(t, p)
	at := map[int]int{}
	for k, stop := range s.Best.Stops {
		at[stop.Item] = k
	}
	if len(at) != 4 || at[2] > at[0] || at[0] > at[1] {
		t.Errorf("order %v", s.Best.Stops)
	}
	if s.OwnFound || s.Broken == nil || *s.Broken != (Broken{0, 2, false}) {
		t.Errorf("the list's order: %+v", s.Broken)
	}
	c.Items[0].On, c.Items[1].Under, c.Items[0].Under = nil, nil, []string{"p3"}
	if s := study(t, p); s.Broken == nil || *s.Broken != (Broken{0, 3, true}) {
		t.Errorf("under: %+v", s.Broken)
	}
	c.Items[0].Under = nil
	if s := study(t, p); !s.OwnFound || s.Own.Time < s.Best.Time*(1-1e-12) || len(s.Own.Stops) != 4 {
		t.Errorf("a list without supports: %+v", s.Own)
	}
	c.Items[2].Payload.Solids[0].Mass = 5
	c.Items[1].On, c.Items[3].Under = []string{"p2"}, []string{"p1"}
	s = study(t, p)
	if len(s.Best.Stops) != 1 || s.Best.Stops[0].Item != 0 || s.Items[2].Lifts() || s.Items[2].Why != s.Items[2].Report.Sentence {
		t.Errorf("too heavy: %q, order %v", s.Items[2].Why, s.Best.Stops)
	}
	if s.Items[1].Why != "It stands on p2, which is not set." || s.Items[3].Why != "p1 lies on it and is not taken away." {
		t.Errorf("what waits: %q, %q", s.Items[1].Why, s.Items[3].Why)
	}
}

// What is not said is asked for, of the item or of all; what can be taken is said.
func TestNeeds(t *testing.T) {
	p := one(3, 1000)
	p.Cargo.Home[0], p.Cargo.Hook, p.Cargo.Clearance, p.Cargo.Swap = math.NaN(), math.NaN(), math.NaN(), math.NaN()
	p.Cargo.Items[1].Payload.Solids[0].Mass = math.NaN()
	p.Cargo.Items[2].Set[1] = math.NaN()
	s := study(t, p)
	if fmt.Sprint(s.Needs) != "[cargo.home_m cargo.hook_s]" || s.Found || s.Has.Clearance != 1 || len(s.Assumed) < 2 {
		t.Errorf("needs %v, assumed %v", s.Needs, s.Assumed)
	}
	if s.Items[0].Why != "" || s.Items[1].Why != "Not said: payload.solids[0].mass_kg." || s.Items[2].Why != "Not said: where it is picked or where it is set." {
		t.Errorf("%q, %q, %q", s.Items[0].Why, s.Items[1].Why, s.Items[2].Why)
	}
	p = one(4, 1000)
	p.Cargo.Swap = math.NaN()
	if s := study(t, p); !s.Found || len(s.Needs) > 0 {
		t.Errorf("no change of packs, but needs %v", s.Needs)
	}
	q := p.Vehicles["q"]
	q.Battery.Energy = 20
	p.Vehicles["q"] = q
	if s := study(t, p); s.Found || fmt.Sprint(s.Needs) != "[cargo.swap_s]" {
		t.Errorf("packs are changed: needs %v, packs %d", s.Needs, s.Best.Packs)
	}
	q.Battery.Energy = math.NaN()
	p.Vehicles["q"] = q
	if s := study(t, p); !s.Found || fmt.Sprint(s.Wants) != "[vehicles.q.battery.energy_wh]" || s.Left != nil || s.Best.Packs != 1 {
		t.Errorf("without packs: %v, %v, %+v", s.Wants, s.Left, s.Best)
	}
	if s := study(t, one(0, 1)); len(s.Items)+len(s.Needs) > 0 || s.Found {
		t.Errorf("no items: %+v", s)
	}
	if _, ok := Of(one(3, 1000), func() bool { return false }); ok {
		t.Error("it goes on although it may not")
	}
}

// The invented landing frame: everything lifts, what carries is set before what it carries, and the crew's own order is no quicker.
func TestLandingFrame(t *testing.T) {
	p, _ := example.Plan("landing-frame")
	s := study(t, p)
	if len(s.Needs)+len(s.Wants)+len(s.Cautions) > 0 || !s.Found || !s.OwnFound || s.Short != nil {
		t.Fatalf("needs %v, wants %v, cautions %v, short %v", s.Needs, s.Wants, s.Cautions, s.Short)
	}
	at := map[int]int{}
	for k, stop := range s.Best.Stops {
		at[stop.Item] = k
	}
	for i, it := range s.Items {
		if !it.Lifts() || it.Why != "" {
			t.Errorf("%s: %s", it.ID, it.Why)
		}
		for _, j := range append(append([]int(nil), it.On...), it.Under...) {
			if at[j] > at[i] {
				t.Errorf("%s comes before %s", it.ID, s.Items[j].ID)
			}
		}
		for _, c := range it.Carry {
			if !(c.Reach <= 1) {
				t.Errorf("%s %s is beyond its limits by %g", it.ID, c.Name, c.Reach)
			}
		}
	}
	if len(at) != 9 || !s.Best.Exact || !(s.Own.Time >= s.Best.Time) || s.Best.Packs != 2 {
		t.Errorf("best %+v, own %+v", s.Best, s.Own)
	}
	// Turned as a whole, in calm air, nothing changes: places to rounding, ways to the 2e-5 that they are found to.
	q := p.Clone()
	turn := func(v *[3]float64) { v[0], v[1] = -v[1], v[0] }
	turn((*[3]float64)(&q.Cargo.Home))
	for i := range q.Cargo.Items {
		it := &q.Cargo.Items[i]
		turn((*[3]float64)(&it.Pick))
		turn((*[3]float64)(&it.Set))
		for _, h := range []*float64{&it.PickHeading, &it.SetHeading} {
			if math.IsNaN(*h) {
				*h = 0
			}
			*h += 90
		}
	}
	for i := range q.Cargo.Items { // a set heading left out is that of the pick
		if math.IsNaN(p.Cargo.Items[i].SetHeading) {
			q.Cargo.Items[i].SetHeading = math.NaN()
		}
	}
	r := study(t, q)
	for i := range s.Items {
		close(t, "turned, "+s.Items[i].ID, r.Items[i].Own.Time, s.Items[i].Own.Time, 5e-5)
	}
}

// Attachments: stretched inside, at the same distance outside; a hook of its own goes before.
func TestAttach(t *testing.T) {
	close(t, "in the middle", stretched(0.5, -1, 1, 0, 4), 3, 1e-15)
	close(t, "above", stretched(1.25, -1, 1, 0, 4), 4.25, 1e-15)
	close(t, "below", stretched(-3, -1, 1, 0, 4), -2, 1e-15)
	p := one(1, 1000)
	it := p.Cargo.Items[0]
	p.Team[0].Attach = [3]float64{0.2, 0, 0.1}
	if q := itemPlan(p, it); q.Team[0].Attach != p.Team[0].Attach {
		t.Errorf("as planned: %v", q.Team[0].Attach)
	}
	it.Attach, it.Hooks = plan.Scaled, []plan.Hook{{ID: "A", At: [3]float64{9, 8, 7}}}
	if q := itemPlan(p, it); q.Team[0].Attach != [3]float64{9, 8, 7} {
		t.Errorf("a hook: %v", q.Team[0].Attach)
	}
}

// Packs whose voltage sags: the order found holds by the exact reckoning, and smaller packs are changed at least as often.
func TestSaggingPacks(t *testing.T) {
	p, _ := example.Plan("landing-frame")
	before := 1
	for _, ah := range []float64{9, 5, 3} {
		q := p.Clone()
		quad := q.Vehicles["field-quad"]
		quad.Battery.Charge, q.Cargo.Packs = ah, 0
		q.Vehicles["field-quad"] = quad
		s := study(t, q)
		if !s.Found || s.Short != nil || s.Best.Packs < before {
			t.Errorf("%g Ah: found %v with %d packs after %d, short %v", ah, s.Found, s.Best.Packs, before, s.Short)
		}
		before = s.Best.Packs
		for v, floor := range s.work.floor {
			if !(s.Left[v] >= floor) {
				t.Errorf("%g Ah: the pack of vehicle %d comes to %g, below %g", ah, v, s.Left[v], floor)
			}
		}
	}
}

// Nine items, from the plan to the best order.
func BenchmarkLandingFrame(b *testing.B) {
	p, _ := example.Plan("landing-frame")
	for b.Loop() {
		if s, _ := Of(p, nil); !s.Found {
			b.Fatal("no order")
		}
	}
}
