package plan

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
)

// cargoOf is a plan with a team of A and B and the items given as JSON.
func cargoOf(items string) string {
	return `{"format":"liftplan/1","vehicles":{"q":{}},"team":[{"id":"A","vehicle":"q"},{"id":"B","vehicle":"q"}],"cargo":{"items":[` + items + `]}}`
}

func TestCargoFaults(t *testing.T) {
	for _, c := range []struct{ name, items, says string }{
		{"no name", `{"id":" "}`, "cargo.items[0].id is “ ”. Give each item a name of its own, without commas."},
		{"a comma", `{"id":"a, b"}`, "cargo.items[0].id is “a, b”. Give each item a name of its own, without commas."},
		{"twice", `{"id":"a"},{"id":"a"}`, "cargo.items[1].id is “a”. Give each item a name of its own, without commas."},
		{"no such support", `{"id":"north"},{"id":"a","on":["noth"]}`, "cargo.items[1].on is “noth”. Did you mean “north”?"},
		{"itself", `{"id":"a","on":["a"]}`, "cargo.items wait for themselves: “a” needs “a”. Take one of these out of on or under."},
		{"no such above", `{"id":"a","under":["b c"]}`, "cargo.items[0].under is “b c”. There is no such name."},
		{"like none", `{"id":"a","like":"bcd"}`, "cargo.items[0].like is “bcd”. There is no such name."},
		{"like a like", `{"id":"a"},{"id":"b","like":"a"},{"id":"c","like":"b"}`, "cargo.items[2].like is “b”, which is itself like another. Name the item that has the payload."},
		{"a loop", `{"id":"z","on":["b"]},{"id":"a","on":["b"]},{"id":"b","under":["c"]},{"id":"c","on":["y","a"]},{"id":"y"}`,
			"cargo.items wait for themselves: “c” needs “a” needs “b” needs “c”. Take one of these out of on or under."},
		{"no such vehicle", `{"id":"a","hooks":[{"id":"AB","at_m":[0,0,0]}]}`, "cargo.items[0].hooks is “AB”. Did you mean “A”?"},
		{"a bad word", `{"id":"a","attach":"scale"}`, "cargo.items[0].attach is “scale”, which is not known. Did you mean “scaled”?"},
		{"a bad tube", `{"id":"a","payload":{"solids":[{"shape":"tube","outer_radius_m":1,"inner_radius_m":2}]}}`,
			"cargo.items[0].payload.solids[0].inner_radius_m is 2 m, not smaller than the outer radius of 1 m."},
		{"a list of lists", `{"id":"a","on":[["b"]]}`, "cargo.items[0].on[0] is a list."},
		{"too many", strings.TrimSuffix(strings.Repeat(`{"id":"a"},`, 41), ","), "cargo.items has 41 items; the most is 40. Plan the cargo in parts."},
	} {
		_, faults := Read([]byte(cargoOf(c.items)))
		if len(faults) == 0 || !strings.Contains(faults.String(), c.says) {
			t.Errorf("%s: %s; want %q", c.name, faults.String(), c.says)
		}
	}
	if _, faults := Read([]byte(cargoOf(`{"id":"a"},{"id":"b","on":["a"]},{"id":"c","on":["a","b"],"under":["a"]}`))); len(faults) > 0 {
		t.Errorf("a stack without a loop: %s", faults)
	}
}

// The plan's own lift does not need what its cargo leaves out, and assumes nothing of it.
func TestCargoNeedsNothing(t *testing.T) {
	bare := mustDecode(t, cargoOf(``))
	p := mustDecode(t, cargoOf(`{"id":"a","payload":{"solids":[{"shape":"box"},{"shape":"tube"},{"shape":"mesh"}],"com_m":[0,null,0],"beam":{"material":"bamboo"}}}`))
	if got, want := Missing(p), Missing(bare); !reflect.DeepEqual(got, want) {
		t.Errorf("missing %q, want %q", got, want)
	}
	if got, want := Wanted(p), Wanted(bare); !reflect.DeepEqual(got, want) {
		t.Errorf("wanted %q, want %q", got, want)
	}
	if _, said := Assume(p); fmt.Sprint(said) != fmt.Sprint(func() []string { _, s := Assume(bare); return s }()) {
		t.Errorf("assumed %q", said)
	}
}

func TestCargoSource(t *testing.T) {
	c := mustDecode(t, cargoOf(`{"id":"a","attach":"scaled"},{"id":"b","like":"a"},{"id":"c","like":"b"}`)).Cargo
	for i, want := range []string{"a", "a", "b"} {
		if it, ok := c.Source(i); it.ID != want || ok != (i < 2) {
			t.Errorf("source of %d is %s, %v", i, it.ID, ok)
		}
	}
}

// A list of names is typed as a text, and read as one.
func TestNames(t *testing.T) {
	p := mustDecode(t, cargoOf(`{"id":"a"},{"id":"b c"},{"id":"d"}`))
	if !Put(&p, "cargo.items[2].on", " a ; b c,, ") || !reflect.DeepEqual(p.Cargo.Items[2].On, []string{"a", "b c"}) {
		t.Errorf("on is %q", p.Cargo.Items[2].On)
	}
	if got := Get(p, "cargo.items[2].on"); got != "a, b c" {
		t.Errorf("got %v", got)
	}
	found := false
	for _, v := range Values(p) {
		found = found || v == Value{"cargo.items[2].on", "a, b c"}
	}
	if !found {
		t.Error("the values have no list of names")
	}
	if !Put(&p, "cargo.items[2].on", "") || p.Cargo.Items[2].On != nil || Put(&p, "cargo.items[2].on", 1.0) {
		t.Errorf("on is %q", p.Cargo.Items[2].On)
	}
	p = mustDecode(t, cargoOf(`{"id":"a"},{"id":"b","like":"a","on":["c","a"]},{"id":"c","under":["a"]}`))
	if !Put(&p, "cargo.items[0].id", "post") || p.Cargo.Items[1].Like != "post" || p.Cargo.Items[1].On[1] != "post" || p.Cargo.Items[2].Under[0] != "post" {
		t.Errorf("renamed: %+v", p.Cargo.Items)
	}
	if !Put(&p, "cargo.packs", 3.0) || p.Cargo.Packs != 3 || !Put(&p, "cargo.packs", math.NaN()) || p.Cargo.Packs != 0 {
		t.Errorf("packs %d", p.Cargo.Packs)
	}
	if it := BlankItem(); !math.IsNaN(it.Pick[0]) || !math.IsNaN(it.SetHeading) || it.On != nil {
		t.Errorf("a blank item is %+v", it)
	}
}
