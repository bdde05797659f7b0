package study

import (
	"math"
	"strconv"
	"strings"

	"cohoist/core/cargo"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/talk"
)

// cargoes is several payloads for the same team.
type cargoes struct {
	of    int // the plan that was asked about
	found *cargo.Study
}

func (c *cargoes) See(t *Turn) {
	t.Say(talk.Cargo+"-gist", c.gist(t))
	if !t.Opened(talk.Cargo) {
		return
	}
	c.form(t)
	switch {
	case len(t.Plan.Cargo.Items) == 0:
		t.Say(talk.Cargo, "")
	case c.of == t.Gen:
		c.show(t)
	case c.found == nil:
		t.Show(talk.Cargo, &WayGoing{Says: "Being worked out …"})
	}
}

// Rest works the cargo out when the plan rests.
func (c *cargoes) Rest(t *Turn) {
	if c.of == t.Gen || !t.Opened(talk.Cargo) || len(t.Plan.Cargo.Items) == 0 || !t.Rested() {
		return
	}
	found, ok := cargo.Of(t.Plan, t.GoOn)
	if !ok {
		return
	}
	c.found, c.of = found, t.Gen
	t.Say(talk.Cargo+"-gist", c.gist(t))
	c.show(t)
}

func (c *cargoes) show(t *Turn) {
	v := newCargo(c.found, t)
	t.Show(talk.Cargo, v)
	for _, choice := range []Choice{v.itemChoice()} {
		t.Value(settingID(talk.Cargo, choice.Name), t.word(choice))
	}
}

// gist is the section in a sentence.
func (c *cargoes) gist(t *Turn) string {
	n := len(t.Plan.Cargo.Items)
	switch {
	case n == 0:
		return talk.Of(talk.Cargo).Closed
	case c.of != t.Gen || c.found == nil:
		return several(n, "item", "items") + ", not worked out yet."
	}
	return newCargo(c.found, t).gist()
}

// Do edits the list.
func (c *cargoes) Do(t *Turn, what string) {
	words := strings.Fields(what + " - -")
	p := t.Plan.Clone()
	list := &p.Cargo.Items
	i, err := strconv.Atoi(words[1])
	known := err == nil && i >= 0 && i < len(*list)
	jump := ""
	switch {
	case words[0] == "add":
		if len(*list) == 0 && math.IsNaN(p.Cargo.Home.Norm()) {
			p.Cargo.Home = vec.V3{}
		}
		*list = append(*list, nextItem(p))
		jump = id(itemPath(len(*list)-1) + "id")
	case words[0] == "take" && c.of == t.Gen && c.found != nil && c.found.Found:
		*list = reordered(*list, c.found.Best.Stops)
	case !known:
		return
	case words[0] == "remove":
		*list = stripped(p.Cargo, i)
	case words[0] == "up" && i > 0:
		(*list)[i], (*list)[i-1] = (*list)[i-1], (*list)[i]
	case words[0] == "down" && i+1 < len(*list):
		(*list)[i], (*list)[i+1] = (*list)[i+1], (*list)[i]
	case words[0] == "own":
		source, _ := p.Cargo.Source(i)
		if len(source.Payload.Solids) == 0 {
			source.Payload = p.Payload
		}
		(*list)[i].Payload, (*list)[i].Like = source.Payload, ""
		p = p.Clone() // two items share no solids
	case words[0] == "shape" && len((*list)[i].Payload.Solids) > 0:
		reshape(&(*list)[i].Payload.Solids[0], words[2])
	default:
		return
	}
	t.Take(p, jump)
}

// itemPath is where the fields of an item begin.
func itemPath(i int) string { return "cargo.items[" + strconv.Itoa(i) + "]." }

// nextItem is one more item to begin with: like the last one, a metre beside it; the first is like the plan's payload, and goes 5 m.
func nextItem(p plan.Plan) plan.Item {
	it, list := plan.BlankItem(), p.Cargo.Items
	used := map[string]bool{}
	for _, other := range list {
		used[other.ID] = true
	}
	for n := len(list) + 1; it.ID == "" || used[it.ID]; n++ {
		it.ID = "item " + strconv.Itoa(n)
	}
	if len(list) == 0 {
		it.Payload = p.Payload
		it.Pick, it.Set = vec.V3{}, vec.V3{5, 0, 0}
		return it
	}
	last := list[len(list)-1]
	source, _ := p.Cargo.Source(len(list) - 1)
	it.Like = source.ID
	it.Pick, it.Set = last.Pick.Add(vec.V3{0, 1, 0}), last.Set.Add(vec.V3{0, 1, 0})
	it.PickHeading, it.SetHeading = last.PickHeading, last.SetHeading
	return it
}

// stripped is a list without an item; who is like it gets its payload, and who stands on it no longer does.
func stripped(c plan.Cargo, i int) []plan.Item {
	gone, heir := c.Items[i], ""
	var out []plan.Item
	for k, it := range c.Items {
		if k == i {
			continue
		}
		if it.Like == gone.ID {
			if it.Like = heir; heir == "" {
				it.Payload, it.Attach, it.Hooks = gone.Payload, gone.Attach, gone.Hooks
				heir = it.ID
			}
		}
		it.On, it.Under = others(it.On, gone.ID), others(it.Under, gone.ID)
		out = append(out, it)
	}
	return out
}

func others(names []string, gone string) (out []string) {
	for _, name := range names {
		if name != gone {
			out = append(out, name)
		}
	}
	return out
}

// reordered puts the items of an order first, in its order.
func reordered(list []plan.Item, stops []cargo.Stop) (out []plan.Item) {
	done := make([]bool, len(list))
	for _, stop := range stops {
		out, done[stop.Item] = append(out, list[stop.Item]), true
	}
	for i, it := range list {
		if !done[i] {
			out = append(out, it)
		}
	}
	return out
}

// reshape makes a solid another shape that is about as long, wide and high.
func reshape(s *plan.Solid, shape string) {
	size := []float64{math.NaN(), math.NaN(), math.NaN()}
	switch s.Shape {
	case plan.Box, plan.Plate:
		copy(size, s.Size)
	case plan.Rod:
		size[0] = s.Length
	case plan.Tube:
		size[0], size[1], size[2] = s.Length, 2*s.OuterRadius, 2*s.OuterRadius
	case plan.Cylinder:
		size[0], size[1], size[2] = 2*s.OuterRadius, 2*s.OuterRadius, s.Length
	}
	n := math.NaN()
	s.Shape, s.Size, s.Length, s.OuterRadius, s.InnerRadius = shape, nil, n, n, n
	switch shape {
	case plan.Box:
		s.Size = size
	case plan.Plate:
		s.Size = size[:2]
	case plan.Rod:
		s.Length = size[0]
	case plan.Tube:
		s.Length, s.OuterRadius = size[0], size[1]/2
	case plan.Cylinder:
		s.Length, s.OuterRadius = size[2], size[0]/2
	}
}
