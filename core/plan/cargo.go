package plan

import (
	"fmt"
	"reflect"
	"strings"

	"cohoist/core/unit"
	"cohoist/core/vec"
)

// Cargo is several payloads for the same team, one after the other. Level axes as for a Way; a place is where the
// origin of the payload frame stands.
type Cargo struct {
	Items     []Item  `json:"items"`       // in the order in which the crew would take them
	Home      vec.V3  `json:"home_m"`      // where the team stands before, between and after; on the ground
	Clearance float64 `json:"clearance_m"` // kept free under what is carried and under empty cables, over all that stands
	Packs     int     `json:"packs"`       // full ones for each vehicle, with that in it; 0: as many as it takes
	Swap      float64 `json:"swap_s"`      // to change the packs of the whole team, landed at home
	Hook      float64 `json:"hook_s"`      // to hook an item up, and as long again to unhook it
	Extra     Extra   `json:"-"`
}

// Item is one payload of a cargo.
type Item struct {
	ID          string   `json:"id"`
	Like        string   `json:"like"` // an item whose payload, attach and hooks count here too
	Payload     Payload  `json:"payload"`
	Pick        vec.V3   `json:"pick_m"`
	PickHeading float64  `json:"pick_heading_deg"`
	Set         vec.V3   `json:"set_m"`
	SetHeading  float64  `json:"set_heading_deg"`
	On          []string `json:"on"`    // items that must be set before, for it stands on them
	Under       []string `json:"under"` // items that must be picked before, for they lie on it
	Attach      string   `json:"attach"`
	Hooks       []Hook   `json:"hooks"` // places of its own; they go before Attach
	Extra       Extra    `json:"-"`
}

// Where the team attaches to an item.
const (
	AsPlanned = "as-planned" // where the plan's payload is attached
	Scaled    = "scaled"     // there, stretched as the item is along x, y and z
)

// Hook is where a vehicle attaches to an item, payload frame.
type Hook struct {
	ID    string `json:"id"` // of the vehicle
	At    vec.V3 `json:"at_m"`
	Extra Extra  `json:"-"`
}

// Source is the item whose payload and attachments count for the item at an index; false: there is no such.
func (c Cargo) Source(i int) (Item, bool) {
	it := c.Items[i]
	if it.Like == "" {
		return it, true
	}
	for _, other := range c.Items {
		if other.ID == it.Like {
			return other, other.Like == ""
		}
	}
	return it, false
}

const inItem = "cargo.items[]."

// withCargo adds the rows of a cargo to those of all else. An item's payload has the rows of the plan's own, but nothing in it is
// assumed or asked for before the item is looked at, as the plan's own lift does not need it.
func withCargo(fields []Field) []Field {
	out := append(fields,
		Field{Path: inItem + "id", Title: "Item", Kind: unit.Text, Longest: mostID, Help: "Its name in the cargo list."},
		Field{Path: inItem + "like", Title: "The same as", Kind: unit.Text, Longest: mostID, Help: "An item whose payload and attachments count for this one too."})
	for _, f := range fields {
		if strings.HasPrefix(f.Path, "payload.") {
			f.Path, f.Need, f.Default, f.Word = inItem+f.Path, Optional, 0, ""
			out = append(out, f)
		}
	}
	place, turn := from(-1e5, 1e5), from(-3600, 3600)
	return append(out,
		Field{Path: inItem + "pick_m", Title: "Picked at", Kind: unit.Length, Unit: "m", In: place,
			Help: "Where the origin of its frame, the centre of its first solid, stands before."},
		Field{Path: inItem + "pick_heading_deg", Title: "Heading before", Kind: unit.Angle, Unit: "°", In: turn,
			Help: "Of its x axis, anticlockwise from above. Left out: 0."},
		Field{Path: inItem + "set_m", Title: "Set at", Kind: unit.Length, Unit: "m", In: place,
			Help: "Where the origin of its frame, the centre of its first solid, stands after."},
		Field{Path: inItem + "set_heading_deg", Title: "Heading after", Kind: unit.Angle, Unit: "°", In: turn,
			Help: "Of its x axis, anticlockwise from above; 360 is a full turn. Left out: as before."},
		Field{Path: inItem + "on", Title: "Stands on", Kind: unit.Text, Longest: mostID,
			Help: "Items that must be set before it, with commas between them."},
		Field{Path: inItem + "under", Title: "Lies under", Kind: unit.Text, Longest: mostID,
			Help: "Items that must be picked before it, as they lie on it, with commas between them."},
		Field{Path: inItem + "attach", Title: "Attached", Kind: unit.Text, Choices: []string{AsPlanned, Scaled},
			Help: "as-planned: where the plan's payload is attached. scaled: there, stretched as the item is along x, y and z."},
		Field{Path: inItem + "hooks[].id", Title: "Vehicle at the hook", Kind: unit.Text, Longest: mostID, Help: "Which vehicle attaches there."},
		Field{Path: inItem + "hooks[].at_m", Title: "Hook", Kind: unit.Length, Unit: "m", In: from(-1000, 1000),
			Help: "Where on the item that vehicle attaches, in the item's own frame."},
		Field{Path: "cargo.home_m", Title: "Home", Kind: unit.Length, Unit: "m", In: place,
			Help: "Where the team stands before, between and after, on the ground; packs are changed there."},
		Field{Path: "cargo.clearance_m", Title: "Clearance", Kind: unit.Length, Unit: "m", In: from(0, 1000),
			Help: "Kept free under what is carried, and under empty cables, over all that stands. Left out: 1 m."},
		Field{Path: "cargo.packs", Title: "Packs for each vehicle", Kind: unit.Count, In: from(1, 1000),
			Help: "Full ones, with that in the vehicle. Left out: as many as it takes."},
		Field{Path: "cargo.swap_s", Title: "Time to change packs", Kind: unit.Time, Unit: "s", In: from(0, 1e5),
			Help: "For the whole team, landed at home, ready to take off again."},
		Field{Path: "cargo.hook_s", Title: "Time to hook up", Kind: unit.Time, Unit: "s", In: from(0, 1e5),
			Help: "For one item, the team hovering above it; as long again to unhook it."})
}

// payload is the payload that a field belongs to: an item's, or the plan's own.
func (c Context) payload() Payload {
	if c.Item != nil {
		return c.Item.Payload
	}
	return c.Plan.Payload
}

// validateCargo finds names that stand twice or name nothing.
func validateCargo(p Plan, fs *Faults) {
	at := path{}.key("cargo").key("items")
	names, known := []string{}, map[string]int{}
	for i, it := range p.Cargo.Items {
		switch first, twice := known[it.ID]; {
		case strings.TrimSpace(it.ID) == "":
			fs.add(at.index(i).key("id"), "is empty", "Give it a name.")
		case strings.ContainsAny(it.ID, ",;"):
			fs.add(at.index(i).key("id"), "is "+quote(it.ID)+", with a comma or semicolon in it", "Lists of items have them between names: take it out.")
		case twice:
			fs.add(at.index(i).key("id"), fmt.Sprintf("is %s, as cargo.items[%d] is", quote(it.ID), first), "Give each item a name of its own.")
		default:
			known[it.ID] = i
			names = append(names, it.ID)
		}
	}
	named := func(where path, name string, own int) {
		other, ok := known[name]
		switch {
		case !ok:
			fix := "Write the name of an item of the cargo."
			if near := nearest(name, names); near != "" {
				fix = "Did you mean " + quote(near) + "? " + fix
			}
			fs.add(where, "is "+quote(name)+", which is no item of the cargo", fix)
		case other == own:
			fs.add(where, "is the item itself", "Name another item.")
		}
	}
	for i, it := range p.Cargo.Items {
		for k, name := range it.On {
			named(at.index(i).key("on").index(k), name, i)
		}
		for k, name := range it.Under {
			named(at.index(i).key("under").index(k), name, i)
		}
		if it.Like != "" {
			named(at.index(i).key("like"), it.Like, i)
			if j, ok := known[it.Like]; ok && p.Cargo.Items[j].Like != "" {
				fs.add(at.index(i).key("like"), "is "+quote(it.Like)+", which is itself like another", "Name the item that has the payload.")
			}
		}
		validateHooks(p, it, at.index(i).key("hooks"), fs)
	}
	if loop := p.Cargo.loop(); loop != nil {
		said := make([]string, len(loop))
		for k, i := range loop {
			said[k] = quote(p.Cargo.Items[i].ID)
		}
		fs.add(at.index(loop[0]), "waits for itself: "+strings.Join(said, " needs ")+" needs "+said[0], "Take one of these out of on or under.")
	}
}

func validateHooks(p Plan, it Item, where path, fs *Faults) {
	seen := map[string]bool{}
	for k, h := range it.Hooks {
		ok := false
		for _, m := range p.Team {
			ok = ok || m.ID == h.ID
		}
		switch {
		case !ok:
			fs.add(where.index(k).key("id"), "is "+quote(h.ID)+", which is no vehicle of the team", "Write the name of a vehicle of the team.")
		case seen[h.ID]:
			fs.add(where.index(k).key("id"), "is "+quote(h.ID)+" again", "Give each vehicle one hook.")
		}
		seen[h.ID] = true
	}
}

// loop finds items that wait for one another in a ring, each for the next; nil: none.
func (c Cargo) loop() []int {
	index := map[string]int{}
	for i, it := range c.Items {
		index[it.ID] = i
	}
	state := make([]int, len(c.Items)) // 1: on the way down, 2: done
	var trail, found []int
	var visit func(i int)
	visit = func(i int) {
		state[i] = 1
		trail = append(trail, i)
		for _, list := range [][]string{c.Items[i].On, c.Items[i].Under} {
			for _, name := range list {
				j, ok := index[name]
				switch {
				case !ok || found != nil || j == i: // the item itself is a fault of its own
				case state[j] == 0:
					visit(j)
				case state[j] == 1:
					for k, t := range trail {
						if t == j {
							found = append([]int(nil), trail[k:]...)
						}
					}
				}
			}
		}
		trail = trail[:len(trail)-1]
		state[i] = 2
	}
	for i := range c.Items {
		if state[i] == 0 && found == nil {
			visit(i)
		}
	}
	return found
}

// BlankItem is an item of a cargo with nothing given.
func BlankItem() Item {
	var it Item
	blank(reflect.ValueOf(&it).Elem())
	return it
}
