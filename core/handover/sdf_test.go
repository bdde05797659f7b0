package handover_test

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/handover"
	"cohoist/core/plan"
	"cohoist/core/vec"
)

// element is what the schema of SDF 1.9 says of an element: testdata/handover/sdf_schema.py wrote it from the schema itself
// (sdformat 12.3.0, https://github.com/gazebosim/sdformat).
type element struct {
	May        []string `json:"may"`
	Must       []string `json:"must"`
	Attributes []string `json:"attributes"`
	Free       bool     `json:"free"` // a plugin's own: ApplyLinkWrench.cc of https://github.com/gazebosim/gz-sim
}

func checkSDF(t *testing.T, root *node) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/handover/sdf-1.9.json")
	if err != nil {
		t.Fatal(err)
	}
	schema := map[string]element{}
	if err := json.Unmarshal(text, &schema); err != nil || len(schema) < 30 {
		t.Fatal(len(schema), err)
	}
	checkElement(t, schema, root.name, root)
}

func checkElement(t *testing.T, schema map[string]element, path string, n *node) {
	t.Helper()
	e, known := schema[path]
	if !known {
		t.Fatalf("<%s> is not on the list: run testdata/handover/sdf_schema.py again", path)
	}
	for _, a := range e.Attributes {
		if n.attr[a] == "" {
			t.Errorf("<%s> has no %s", path, a)
		}
	}
	if e.Free {
		return
	}
	for _, child := range e.Must {
		if n.first(child).name == "" && n.name != "world" { // a world's scene, air and magnetic field have defaults
			t.Errorf("<%s> has no <%s>", path, child)
		}
	}
	names := map[string]bool{}
	for _, s := range n.sub {
		if !slices.Contains(e.May, s.name) {
			t.Errorf("<%s> in <%s>", s.name, path)
			continue
		}
		// Links and joints of a model are frames, of which no two may have one name; :: and names in __ are the format's.
		if name := s.attr["name"]; name != "" && s.name != "plugin" {
			if names[name] || strings.Contains(name, "::") || strings.HasPrefix(name, "__") {
				t.Errorf("the name %q in <%s>", name, path)
			}
			names[name] = true
		}
		checkElement(t, schema, path+"/"+s.name, s)
	}
	if len(e.May) == 0 && n.text == "" {
		t.Errorf("<%s> is empty", path)
	}
}

func floats(t *testing.T, s string) (out []float64) {
	t.Helper()
	for _, f := range strings.Fields(s) {
		x, err := strconv.ParseFloat(f, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, x)
	}
	return out
}

// Everything in the world adds up to nothing: gravity at the centres of mass and the wrenches, about the origin; to the
// nine figures that are written. So the scene stays, if the simulator does what SDF says.
func TestSDFBalances(t *testing.T) {
	windy, _ := example.Plan("lattice-panel")
	windy.Site.Wind, windy.Site.WindTo = 5, 130
	lifts := map[string]handover.Lift{}
	for _, e := range example.All {
		lifts[e.Name] = lift(t, e.Name)
	}
	leaning, err := handover.Of(windy)
	if err != nil {
		t.Fatal(err)
	}
	lifts["leaning"] = leaning
	for name, l := range lifts {
		root := parse(t, l.SDF())
		checkSDF(t, root)
		if root.attr["version"] != "1.9" {
			t.Error("version", root.attr["version"])
		}
		wrench := map[string][2]vec.V3{}
		for _, p := range root.all("persistent") {
			f, m := floats(t, p.first("force").text), floats(t, p.first("torque").text)
			wrench[p.first("entity_name").text] = [2]vec.V3{{f[0], f[1], f[2]}, {m[0], m[1], m[2]}}
		}
		var force, moment vec.V3
		weight := 0.0
		for _, link := range root.all("link") {
			pose, inertial := floats(t, link.first("pose").text), link.first("inertial")
			com := floats(t, inertial.first("pose").text)
			at := vec.V3{pose[0], pose[1], pose[2]}.Add(vec.Euler(pose[3], pose[4], pose[5]).Mul(vec.V3{com[0], com[1], com[2]}))
			w := wrench["team::"+link.attr["name"]]
			delete(wrench, "team::"+link.attr["name"])
			f := w[0]
			if link.first("gravity").text != "false" {
				heavy := floats(t, inertial.first("mass").text)[0] * 9.80665
				f[2] -= heavy
				weight += heavy
			}
			force, moment = force.Add(f), moment.Add(at.Cross(f)).Add(w[1])
		}
		if len(wrench) > 0 {
			t.Errorf("%s: wrenches for links that are not there: %v", name, wrench)
		}
		if force.Norm() > 1e-7*weight || moment.Norm() > 1e-7*weight {
			t.Errorf("%s: %v N and %v N m are left of %v N", name, force, moment, weight)
		}
	}
}

// Names that strangers chose break neither format; no two bodies get one name.
func TestHostileNames(t *testing.T) {
	p, _ := example.Plan("beam-pair")
	p.Title = `</world> & "quotes" <!-- -->` + "\x01"
	p.Team[0].ID, p.Team[1].ID = `pay"load<&>`, "payload"
	third := p.Team[1]
	third.ID, third.Attach = "__a::b__", vec.V3{0, 0, 0.025}
	p.Team = append(p.Team, third)
	l, err := handover.Of(p)
	if err != nil {
		t.Fatal(err)
	}
	checkSDF(t, parse(t, l.SDF()))
	scene := parse(t, l.MJCF())
	seen := map[string]bool{}
	for _, b := range scene.all("body") {
		if seen[b.attr["name"]] {
			t.Errorf("two bodies are called %q", b.attr["name"])
		}
		seen[b.attr["name"]] = true
	}
	if len(seen) != 4 || !seen[`pay"load<&>`] {
		t.Errorf("the bodies are %v", seen)
	}
}

// A place and turn read back as they were, straight up and down too.
func TestTurnedSolidsStandWhereTheyShould(t *testing.T) {
	for _, turn := range []vec.V3{{0, 0, 0}, {10, 20, 30}, {0, 90, 0}, {40, 90, 0}, {25, -90, 0}, {170, 5, -120}, {0, 0, 180}, {180, 0, 0}} {
		p, _ := example.Plan("beam-pair")
		box := plan.BlankSolid()
		box.Shape, box.Size, box.Mass, box.At, box.Turn = plan.Box, []float64{0.1, 0.2, 0.3}, 0, vec.V3{0, 0, -1}, turn
		p.Payload.Solids = append(p.Payload.Solids, box)
		l, err := handover.Of(p)
		if err != nil {
			t.Fatal(err)
		}
		const deg = math.Pi / 180
		want := vec.Euler(turn[0]*deg, turn[1]*deg, turn[2]*deg)
		pose := floats(t, parse(t, l.SDF()).all("visual")[1].first("pose").text)
		q := floats(t, parse(t, l.MJCF()).all("geom")[2].attr["quat"]) // after the default and the beam
		got := vec.Euler(pose[3], pose[4], pose[5])
		for i := range 3 {
			unit := vec.Identity[i]
			if d := got.Mul(unit).Sub(want.Mul(unit)).Norm(); d > 1e-8 {
				t.Errorf("turn %v: SDF is %.1e off", turn, d)
			}
			if d := byQuaternion(q, unit).Sub(want.Mul(unit)).Norm(); d > 1e-8 {
				t.Errorf("turn %v: MJCF is %.1e off", turn, d)
			}
		}
	}
}

// byQuaternion turns v: v + 2 w (n × v) + 2 n × (n × v).
func byQuaternion(q []float64, v vec.V3) vec.V3 {
	n := vec.V3{q[1], q[2], q[3]}
	c := n.Cross(v)
	return v.Add(c.Scale(2 * q[0])).Add(n.Cross(c).Scale(2))
}
