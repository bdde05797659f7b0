package plan

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
)

func TestDecodeRefusesTheHuge(t *testing.T) {
	member := `{"id":"v%d","vehicle":"q","hold":{"kind":"cable"}}`
	many := func(n int, format string) string {
		var b strings.Builder
		for i := range n {
			if i > 0 {
				b.WriteByte(',')
			}
			if strings.Contains(format, "%d") {
				fmt.Fprintf(&b, format, i)
			} else {
				b.WriteString(format)
			}
		}
		return b.String()
	}
	head := `{"format":"liftplan/1","vehicles":{"q":{}},`
	for _, c := range []struct{ name, text, says string }{
		{"10 000 vehicles", head + `"team":[` + many(10000, member) + `]}`, "team has 10000 vehicles; the most is 1000. Plan the lift with fewer vehicles."},
		{"100 classes", `{"format":"liftplan/1","vehicles":{` + many(100, `"c%d":{}`) + `}}`, "vehicles has 100 classes; the most is 64"},
		{"10 001 solids", head + `"payload":{"solids":[` + many(10001, `{"shape":"point"}`) + `]}}`, "payload.solids has 10001 solids; the most is 10000"},
		{"a large mesh", head + `"payload":{"solids":[{"shape":"mesh","mesh":{"triangles":[` + many(250000, "[0,1,2]") + `]}}]}}`,
			"payload.solids[0].mesh.triangles has 250000 triangles; the most is 200000. Make the mesh coarser"},
		{"more than 64 MB", head + strings.Repeat(" ", mostBytes) + "}", "the plan is 64 MB long; the most is 64 MB"},
		{"deep lists", head + `"x":` + strings.Repeat("[", 1e6), "lists and objects lie more than 64 deep"},
		{"deep objects", strings.Repeat(`{"payload":`, 1e5), "lists and objects lie more than 64 deep"},
		{"not UTF-8", head + "\"title\":\"\xff\"}", "title holds text that is not Unicode (UTF-8)"},
		{"UTF-16", "\xff\xfe{\x00", "the plan is UTF-16 text"},
		{"a control character", head + "\"title\":\"a\x00\"}", "control character"},
		{"a zero byte after the end", head + "\"title\":\"a\"}\x00", "more text follows the plan's closing brace"},
		{"a zero byte for a value", head + "\"title\":\x00}", `title is “\x00”, which is no JSON value`},
		{"a bad escape", head + `"title":"\q"}`, "a backslash is followed by"},
		{"a number without end", head + `"seed":` + strings.Repeat("9", 1e6) + `}`, "seed is 9999999999999999999999999999999999999999…"},
	} {
		_, faults := Decode([]byte(c.text))
		if len(faults) == 0 || !strings.Contains(faults.String(), c.says) {
			t.Errorf("%s: %.300s; want %q", c.name, faults.String(), c.says)
		}
		for _, f := range faults {
			if s := f.String(); len(s) > 600 || strings.ContainsAny(s, "\n\x00") || !strings.HasSuffix(s, ".") {
				t.Errorf("%s: no single line: %.200q", c.name, s)
			}
		}
	}
}

func TestManyFaultsAreCut(t *testing.T) {
	_, faults := Decode([]byte(`{"format":"liftplan/1","team":[` + strings.Repeat("1,", 500) + `1]}`))
	if len(faults) != mostFaults+1 || !strings.Contains(faults[mostFaults].Wrong, "more than 100 faults") {
		t.Errorf("%d faults, the last %v", len(faults), faults[len(faults)-1])
	}
}

func TestDecodeTakesWhatJSONAllows(t *testing.T) {
	p := mustDecode(t, "\ufeff {\"format\":\"liftplan/1\",\"seed\":4e0,\"title\":\"\\u00e9\\ud83d\\ude00\\/<i>&amp;\",\"site\":{\"wind_m_s\":-0,\"altitude_m\":1E2},\"team\":[],\"vehicles\":{}}\r\n")
	if p.Seed != 4 || p.Title != "é😀/<i>&amp;" || math.Signbit(p.Site.Wind) || p.Site.Altitude != 100 || p.Team != nil || p.Vehicles != nil {
		t.Errorf("%+v", p)
	}
	if got := string(Compact(p)); got != `{"format":"liftplan/1","title":"é😀/<i>&amp;","seed":4,"site":{"altitude_m":100,"wind_m_s":0}}` {
		t.Error(got)
	}
}

func TestMissing(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
		wanted     []string
	}{
		{"nothing", `{"note":""}`, []string{"payload.solids"}, nil},
		{"a cable", `{"payload":{"solids":[{"shape":"box"}]},"vehicles":{"q":{},"spare":{}},"team":[{"id":"A","vehicle":"q","hold":{"kind":"cable"}}]}`,
			[]string{"payload.solids[0].size_m", "payload.solids[0].mass_kg", "vehicles.q.mass_kg", "vehicles.q.rotors", "vehicles.q.arm_m",
				"vehicles.q.rotor_radius_m", "vehicles.q.rotor_thrust_max_n", "team[0].attach_m", "team[0].hold.length_m"},
			[]string{"team[0].hold.working_load_n"}},
		{"a grip", `{"payload":{"solids":[{"shape":"tube","mass_kg":1,"length_m":2}],"com_m":[0,null,0]},
		  "vehicles":{"q":{"mass_kg":1,"rotors":4,"arm_m":1,"rotor_radius_m":1,"rotor_thrust_max_n":1}},"team":[{"id":"A","vehicle":"q","attach_m":[0,null,1],"hold":{"kind":"rigid"}}]}`,
			[]string{"payload.solids[0].outer_radius_m", "payload.solids[0].inner_radius_m", "payload.com_m", "vehicles.q.torque_per_thrust_m", "team[0].attach_m"},
			[]string{"team[0].hold.grip_force_max_n", "team[0].hold.grip_moment_max_n_m"}},
		{"a measured payload, no hold", `{"payload":{"solids":[{"shape":"box","mass_kg":1},{"shape":"mesh","mass_kg":1},{"shape":"point","mass_kg":0}],
		  "com_m":[0,0,0],"inertia_kg_m2":[1,1,1,0,0,0],"drag_area_m2":[0,0,0]},"team":[{"id":"A","vehicle":"q","attach_m":[0,0,0]}]}`,
			[]string{"payload.solids[1].mesh", "team[0].hold.kind"}, nil},
	} {
		p := mustDecode(t, `{"format":"liftplan/1","seed":1`+strings.TrimPrefix(strings.Replace(c.text, "{", "{,", 1), "{"))
		if got := Missing(p); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: missing %q, want %q", c.name, got, c.want)
		}
		if got := Wanted(p); !reflect.DeepEqual(got, c.wanted) {
			t.Errorf("%s: wanted %q, want %q", c.name, got, c.wanted)
		}
	}
}

func TestAssume(t *testing.T) {
	p := mustDecode(t, `{"format":"liftplan/1","payload":{"solids":[{"shape":"point","mass_kg":1,"at_m":[1,null,0]}]},
	  "vehicles":{"q":{"arm_m":0.3,"rotor_radius_m":0.1},"w":{"arm_m":0.5,"rotor_radius_m":0.2,"layout":"plus","drag_area_m2":0,"tilt_max_deg":20},"spare":{}},
	  "team":[{"id":"A","vehicle":"q","hold":{"kind":"rigid"}},{"id":"B","vehicle":"w","yaw_deg":5,"hold":{"kind":"cable"}},{"id":"C","vehicle":"q","yaw_deg":5}],
	  "site":{"altitude_m":7,"temperature_offset_k":0},"limits":{"cone_deg":20,"tension_min_n":0}}`)
	before := string(Encode(p))
	q, said := Assume(p)
	if string(Encode(p)) != before {
		t.Error("Assume changed the plan it was given")
	}
	want := []string{
		"Seed left out: taken as 1.",
		"Place of solid 1 left out: taken as 0 m.",
		"Turn of solid 1 left out: taken as 0°.",
		"Layout of q left out: taken as cross.",
		"Vehicle drag area of q left out: taken as 0 m².",
		"Largest tilt of q left out: taken as 30°.",
		"Heading of A left out: taken as 0°.",
		"Lean of A left out: taken as 0°.",
		"Wind left out: taken as 0 m/s.",
		"Wind direction left out: taken as 0°.",
		"Utilisation limit left out: taken as 0.8.",
		"Separation left out: taken as 1.375 m, 1.25 times what the two widest vehicles need not to touch.",
		"Centre of mass error left out: taken as 0.02 m.",
		"Turn reserve left out: taken as 1 rad/s².",
		"Lost vehicle on a cable left out: taken as dead-weight.",
		"Policy left out: taken as even-effort.",
		"Left out of the thrust needed: ground effect, wash on the payload, wakes on each other.",
	}
	if !reflect.DeepEqual(said, want) {
		t.Errorf("said\n%s", strings.Join(said, "\n"))
	}
	// 1.25 × ((0.5 + 0.2) + (0.3 + 0.1)) = 1.375: the contract's rule, by hand
	if math.Abs(q.Limits.Separation-1.375) > 1e-12 || q.Payload.Solids[0].At != [3]float64{1, 0, 0} || q.Vehicles["q"].TiltMax != 30 ||
		q.Limits.Cone != 20 || q.Site.Altitude != 7 || q.Team[1].Yaw != 5 || !math.IsNaN(q.Team[1].Hold.Lean[0]) || q.Policy != EvenEffort {
		t.Errorf("filled %s", Encode(q))
	}
	if r, again := Assume(q); len(again) != 0 || !Same(q, r) {
		t.Errorf("assuming twice says %q", again)
	}
	if one, _ := Assume(Plan{Team: p.Team[:1], Vehicles: p.Vehicles}); !math.IsNaN(one.Limits.Separation) && one.Limits.Separation != 0 {
		t.Errorf("one vehicle alone has a separation of %v", one.Limits.Separation)
	}
}

func TestCloneSharesNothing(t *testing.T) {
	p := mustDecode(t, sample)
	before := string(Encode(p))
	q := p.Clone()
	if !Same(p, q) {
		t.Fatal("the clone differs")
	}
	q.Payload.Solids[0].Size[0] = 9
	q.Payload.Solids[2].Mesh.Vertices[0][0] = 9
	q.Payload.Solids[2].Mesh.Triangles[0][0] = 3
	q.Payload.Solids[2].Mesh.Extra["glow"][0] = 'x'
	q.Payload.COM[0], q.Payload.Inertia[0], q.Payload.DragArea[0] = 9, 9, 9
	q.Vehicles["field-quad"].Inertia[0] = 9
	q.Vehicles["new"] = BlankClass()
	q.Team[1].ID, q.Team[1].Extra["colour"][0] = "Z", 'x'
	q.Extra["more"] = nil
	if string(Encode(p)) != before {
		t.Error("editing the clone changed the plan")
	}
}

// Every field of the plan has a row, and every row a field.
func TestFieldsCoverThePlan(t *testing.T) {
	p := mustDecode(t, sample)
	seen := map[string]bool{}
	walk(&p, func(l leaf) {
		if !l.unknown {
			seen[l.pattern] = true
			if _, ok := FieldAt(l.pattern); !ok {
				t.Errorf("%s has no row in Fields", l.pattern)
			}
		}
	})
	for _, f := range Fields {
		if !seen[f.Path] {
			t.Errorf("%s is a row, but no field", f.Path)
		}
		if f.Title == "" || f.Help == "" || strings.ContainsAny(f.Help, "\n") {
			t.Errorf("%s lacks title or help", f.Path)
		}
		if f.Need == Assumed && f.Word == "" && !f.In.Holds(f.Default) && f.Path != "limits.separation_m" {
			t.Errorf("%s: its default %v is out of bounds", f.Path, f.Default)
		}
	}
}

func TestInertiaOfBodies(t *testing.T) {
	for _, c := range []struct {
		name string
		j    [6]float64
		says string // "" when a body can have it
	}{
		{"a point", [6]float64{}, ""},
		{"a thin rod along x", [6]float64{0, 1, 1, 0, 0, 0}, ""},
		{"a thin plate: zz = xx + yy", [6]float64{1, 2, 3, 0, 0, 0}, ""},
		{"a thin plate, rounded to three figures", [6]float64{0.123, 0.456, 0.580, 0, 0, 0}, ""},
		{"a rod along x = y: by hand, J = 1 − n nᵀ", [6]float64{0.5, 0.5, 1, -0.5, 0, 0}, ""},
		{"two thirds too much about z", [6]float64{1, 1, 3, 0, 0, 0}, "larger than the sum"},
		{"the same, turned by 45° about x", [6]float64{1, 2, 2, 0, 0, 1}, "larger than the sum"},
		{"negative", [6]float64{-1, 1, 1, 0, 0, 0}, "negative about some axis"},
		{"products too large", [6]float64{1, 1, 1, 2, 0, 0}, "negative about some axis"},
		{"products without moments", [6]float64{0, 0, 0, 1, 0, 0}, "negative about some axis"},
	} {
		p := mustDecode(t, sample)
		p.Payload.Inertia = &c.j
		got := Validate(p).String()
		if c.says == "" && got != "" || c.says != "" && !strings.Contains(got, c.says) {
			t.Errorf("%s: %q, want %q", c.name, got, c.says)
		}
	}
}

func TestValidateFromCode(t *testing.T) {
	p := mustDecode(t, sample)
	p.Payload.Solids[0].Mass = math.Inf(1)
	p.Team = append(p.Team, make([]Member, 2000)...)
	got := Validate(p).String()
	for _, says := range []string{"payload.solids[0].mass_kg is infinite", "team has 2002 vehicles; the most is 1000", "team[2].id is empty"} {
		if !strings.Contains(got, says) {
			t.Errorf("no %q in %.500s", says, got)
		}
	}
}

func TestRemarks(t *testing.T) {
	p := mustDecode(t, `{"format":"liftplan/1","polici":"equal","vehicles":{"q":{"tilt_deg":4,"zzz":1}},"team":[{"id":"A\n","hold":{"lenght_m":3}}],"limits":{"utilization":0.5}}`)
	want := []string{
		"vehicles.q.tilt_deg is not a field this version knows; it is kept. Did you mean tilt_max_deg?",
		"vehicles.q.zzz is not a field this version knows; it is kept.",
		"team[0].hold.lenght_m is not a field this version knows; it is kept. Did you mean length_m?",
		"limits.utilization is not a field this version knows; it is kept. Did you mean utilisation?",
		"polici is not a field this version knows; it is kept. Did you mean policy?",
	}
	if got := Remarks(p); !reflect.DeepEqual(got, want) {
		t.Errorf("%s", strings.Join(got, "\n"))
	}
	if _, said := Assume(p); !strings.Contains(strings.Join(said, " "), `Heading of “A\n” left out`) {
		t.Errorf("a name with a line end is said raw: %q", said)
	}
}

// The reserve is assumed where a vehicle of the team has a battery, and only there; rows of a static test have their own cap.
func TestBatteryAndBench(t *testing.T) {
	p := mustDecode(t, `{"format":"liftplan/1","vehicles":{"q":{"battery":{"energy_wh":40}},"w":{"battery":{"cells":6}}},"team":[{"id":"A","vehicle":"w"}]}`)
	said := func(p Plan) bool {
		_, s := Assume(p)
		return strings.Contains(strings.Join(s, "\n"), "Energy reserve left out: taken as 0.2.")
	}
	if said(p) {
		t.Error("a reserve of nothing")
	}
	p.Team[0].Vehicle = "q"
	if !said(p) {
		t.Error("no reserve")
	}
	rows := strings.Repeat(`{"thrust_n":1},`, 1001)
	_, faults := Decode([]byte(`{"format":"liftplan/1","vehicles":{"a b":{"bench":[` + strings.TrimSuffix(rows, ",") + `]}}}`))
	if want := `vehicles["a b"].bench has 1001 rows; the most is 1000. Keep every tenth row; the curve between them is smooth.`; !strings.Contains(faults.String(), want) {
		t.Errorf("%s, want %s", faults, want)
	}
	if got := ClassPath("a b"); got != `vehicles["a b"]` {
		t.Error(got)
	}
}
