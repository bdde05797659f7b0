//go:build !js

package browsertest

import (
	"strconv"
	"strings"
	"testing"
)

// drop drops a file on the page.
func (p *page) drop(name, text string) {
	p.t.Helper()
	eval[any](p, `(() => { const d = new DataTransfer(); d.items.add(new File([`+strconv.Quote(text)+`], `+strconv.Quote(name)+`)); document.body.dispatchEvent(new DragEvent("drop", {dataTransfer: d, bubbles: true, cancelable: true})) })()`)
}

// A plan that is dropped is opened, a mesh becomes a part, and what is neither is said and changes nothing.
func TestDroppingFiles(t *testing.T) {
	p := open(t, desktop, "")
	p.drop("x.liftplan.json", `{"format": "liftplan/1", "title": "Dropped", "payload": {"solids": [{"shape": "rod", "length_m": 2, "mass_kg": 1}]}, "vehicles": {}, "team": []}`)
	p.wait(`document.getElementById("notices").textContent !== ""`)
	if said := p.text("notices"); !strings.Contains(said, "team") { // a plan without a team is no plan, and its fault is said
		t.Errorf("said is %q", said)
	}
	good := eval[string](p, `JSON.stringify({format: "liftplan/1", title: "Dropped", payload: {solids: [{shape: "rod", length_m: 2, mass_kg: 1}]}, vehicles: {q: {mass_kg: 1, rotors: 4, arm_m: 0.2, rotor_radius_m: 0.1, rotor_thrust_max_n: 9}}, team: [{id: "A", vehicle: "q", attach_m: [0.5, 0, 0], hold: {kind: "cable", length_m: 2}}, {id: "B", vehicle: "q", attach_m: [-0.5, 0, 0], hold: {kind: "cable", length_m: 2}}]})`)
	p.drop("x.liftplan.json", good)
	p.wait(`document.getElementById("title").value === "Dropped"`)
	p.drop("tetra.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n")
	p.wait(`document.getElementById("payload-1-shape") !== null`)
	p.drop("letter.txt", "not a plan")
	p.wait(`document.getElementById("notice-file") !== null`)
	if p.text("notice-file") == "" {
		t.Error("a file that is no plan is not said")
	}
}
