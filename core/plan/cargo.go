package plan

import (
	"reflect"
	"strings"

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

// rename lets those that name an item name it anew.
func (c *Cargo) rename(was, now string) {
	for i := range c.Items {
		it := &c.Items[i]
		if it.Like == was {
			it.Like = now
		}
		for _, list := range [][]string{it.On, it.Under} {
			for k := range list {
				if list[k] == was {
					list[k] = now
				}
			}
		}
	}
}

const inItem = "cargo.items[]."

// withPayloads adds the rows of the items' payloads: those of the plan's own, but nothing in them is assumed or asked for before the item
// is looked at, as the plan's own lift does not need it.
func withPayloads(rows []Field) []Field {
	for _, f := range rows {
		if strings.HasPrefix(f.Path, "payload.") {
			f.Path, f.Need, f.Default, f.Word = inItem+f.Path, Optional, 0, ""
			rows = append(rows, f)
		}
	}
	return rows
}

// payload is the payload that a field belongs to: an item's, or the plan's own.
func (c Context) payload() Payload {
	if c.Item != nil {
		return c.Item.Payload
	}
	return c.Plan.Payload
}

// validateCargo finds names that stand twice or name nothing, and items that wait for themselves.
func validateCargo(p Plan, fs *Faults) {
	at := path{}.key("cargo").key("items")
	var names, vehicles []string
	for _, m := range p.Team {
		vehicles = append(vehicles, m.ID)
	}
	for _, it := range p.Cargo.Items {
		names = append(names, it.ID)
	}
	for i, it := range p.Cargo.Items {
		say := func(key, name, wrong, fix string) { fs.add(at.index(i).key(key), "is "+quote(name)+wrong, fix) }
		if strings.TrimSpace(it.ID) == "" || strings.ContainsAny(it.ID, ",;") || has(names[:i], it.ID) {
			say("id", it.ID, "", "Give each item a name of its own, without commas.")
		}
		know := func(key, name string, names []string) {
			if has(names, name) {
				return
			}
			fix := "There is no such name."
			if near := nearest(name, names); near != "" {
				fix = "Did you mean " + quote(near) + "?"
			}
			say(key, name, "", fix)
		}
		for _, name := range it.On {
			know("on", name, names)
		}
		for _, name := range it.Under {
			know("under", name, names)
		}
		for _, h := range it.Hooks {
			know("hooks", h.ID, vehicles)
		}
		if it.Like == "" {
			continue
		}
		know("like", it.Like, names)
		if _, ok := p.Cargo.Source(i); !ok && has(names, it.Like) {
			say("like", it.Like, ", which is itself like another", "Name the item that has the payload.")
		}
	}
	if loop := p.Cargo.loop(); loop != "" {
		fs.add(at, "wait for themselves: "+loop, "Take one of these out of on or under.")
	}
}

// loop names items that wait for one another in a ring; empty: none. What is no item is not waited for.
func (c Cargo) loop() string {
	next, waits := map[string]string{}, map[string]bool{}
	for _, it := range c.Items {
		waits[it.ID] = true
	}
	for range c.Items {
		for _, it := range c.Items {
			next[it.ID] = ""
			for _, name := range append(it.On[:len(it.On):len(it.On)], it.Under...) {
				if waits[name] {
					next[it.ID] = name
				}
			}
			waits[it.ID] = next[it.ID] != ""
		}
	}
	for _, it := range c.Items {
		at := it.ID
		for range c.Items { // into the ring, if there is one
			at = next[at]
		}
		if at == "" {
			continue
		}
		text, end := quote(at), at
		for range c.Items {
			if at = next[at]; at == end {
				return text + " needs " + quote(end)
			}
			text += " needs " + quote(at)
		}
	}
	return ""
}

// BlankItem is an item of a cargo with nothing given.
func BlankItem() Item {
	var it Item
	blank(reflect.ValueOf(&it).Elem())
	return it
}
