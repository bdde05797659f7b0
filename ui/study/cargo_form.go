package study

import (
	"strings"

	"cohoist/core/plan"
	"cohoist/ui/talk"
)

// itemForm is an item of the cargo in the form.
type itemForm struct {
	Place   int
	ID      string
	Shape   string // of its first solid; empty: it has none of its own
	More    string // what of its payload stands in the file alone
	Bare    bool   // it has no payload, not even another's
	Entries []Entry
}

// shapes are what an item can be made of in the form; a mesh comes from a file.
var itemShapes = []string{plan.Box, plan.Tube, plan.Cylinder, plan.Plate, plan.Rod}

func (c *cargoes) form(t *Turn) {
	f := &CargoForm{Units: t.Units, Crew: crewEntries()}
	t.fill(f.Crew)
	items := t.Plan.Cargo.Items
	for i, it := range items {
		one := itemForm{Place: i, ID: it.ID}
		at := itemPath(i)
		one.Entries = []Entry{{Path: at + "id"}}
		if len(items) > 1 {
			one.Entries = append(one.Entries, Entry{Path: at + "like", Words: likes(items, i)})
		}
		if it.Like == "" {
			one.Entries = append(one.Entries, solidEntries(it.Payload, at)...)
			one.Entries = append(one.Entries, Entry{Path: at + "attach", Words: []Word{{"", "as the plan’s payload is"}, {plan.Scaled, "as there, stretched to its size"}}})
			if one.Bare = len(it.Payload.Solids) == 0; !one.Bare {
				one.Shape = it.Payload.Solids[0].Shape
			}
		}
		one.More = inFile(it)
		for _, spot := range []string{"pick", "set"} {
			for k, axis := range []string{"x", "y", "z"} {
				one.Entries = append(one.Entries, Entry{Path: at + spot + "_m[" + digits(k) + "]", Name: map[string]string{"pick": "Picked at ", "set": "Set at "}[spot] + axis})
			}
			one.Entries = append(one.Entries, Entry{Path: at + spot + "_heading_deg", Until: map[string]string{"pick": "0", "set": "as before"}[spot]})
		}
		one.Entries = append(one.Entries, Entry{Path: at + "on", Until: "the ground"}, Entry{Path: at + "under", Until: "nothing"})
		t.fill(one.Entries)
		f.Items = append(f.Items, one)
	}
	t.Show(talk.Cargo+"-form", f)
}

// crewEntries are the fields of all items together.
func crewEntries() []Entry {
	return []Entry{{Path: "cargo.home_m[0]", Name: "Home at x"}, {Path: "cargo.home_m[1]", Name: "Home at y"}, {Path: "cargo.home_m[2]", Name: "Home at z"},
		{Path: "cargo.clearance_m", Until: "1"}, {Path: "cargo.hook_s", Until: "needed"}, {Path: "cargo.swap_s", Until: "needed for a change"},
		{Path: "cargo.packs", Until: "as many as it takes"}, {Path: "limits.reserve_ratio", Until: "0.2"}, {Path: "way.speed_max_m_s", Until: "no limit"}}
}

// likes are the items that one can be like.
func likes(items []plan.Item, own int) []Word {
	words := []Word{{"", "no other"}}
	for i, it := range items {
		if i != own && it.Like == "" {
			words = append(words, Word{it.ID, it.ID})
		}
	}
	return words
}

// solidEntries are the fields of a payload's first solid.
func solidEntries(p plan.Payload, at string) []Entry {
	if len(p.Solids) == 0 {
		return nil
	}
	at += "payload.solids[0]."
	list := []Entry{{Path: at + "mass_kg"}}
	switch s := p.Solids[0]; s.Shape {
	case plan.Box, plan.Plate:
		for k := range s.Size {
			list = append(list, Entry{Path: at + "size_m[" + digits(k) + "]", Name: []string{"Length (x)", "Width (y)", "Height (z)"}[min(k, 2)]})
		}
	case plan.Rod:
		list = append(list, Entry{Path: at + "length_m"})
	case plan.Tube:
		list = append(list, Entry{Path: at + "length_m"}, Entry{Path: at + "outer_radius_m"}, Entry{Path: at + "inner_radius_m"})
	case plan.Cylinder:
		list = append(list, Entry{Path: at + "length_m"}, Entry{Path: at + "outer_radius_m"})
	}
	return append(list, Entry{Path: at + "turn_deg[1]", Name: "Turned about y", Until: "0"})
}

// inFile says what of an item has no inputs here.
func inFile(it plan.Item) string {
	var list []string
	if n := len(it.Payload.Solids) - 1; n > 0 {
		list = append(list, several(n, "more part", "more parts"))
	}
	if it.Payload.COM != nil || it.Payload.Inertia != nil || it.Payload.DragArea != nil {
		list = append(list, "measured values")
	}
	if n := len(it.Hooks); n > 0 {
		list = append(list, several(n, "hook", "hooks")+" of its own")
	}
	if len(list) == 0 {
		return ""
	}
	return "In the plan’s file also: " + strings.Join(list, ", ") + "."
}

// name is the summary of an item in the form.
func (f itemForm) name() string { return digits(f.Place+1) + "  " + f.ID }

func itemID(i int, what string) string { return "cargo-" + digits(i) + "-" + what }
