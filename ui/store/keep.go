package store

import (
	"strings"

	"cohoist/core/plan"
)

// Where the plan and the units are kept between visits.
const (
	planKey  = "cohoist/plan"
	unitsKey = "cohoist/units"
)

// later saves the plan and its link when the person pauses.
func (s *Store) later() {
	s.due = true
	s.desk.Later("save", 250, s.Flush)
}

// Flush saves now what waits to be saved.
func (s *Store) Flush() {
	if !s.due {
		return
	}
	s.due = false
	s.link = fragment(s.plan)
	s.address.Replace(s.link)
	s.keep(planKey, text(s.plan))
}

// keep saves a text. That it cannot be saved is said once.
func (s *Store) keep(key, value string) {
	if err := s.keeper.Save(key, value); err != nil && !s.open["storage-said"] {
		s.open["storage-said"] = true
		s.Say("storage", "This browser does not let the page keep the plan ("+err.Error()+
			"). Everything else works; copy the link or save the file to keep it.")
	}
}

// restore brings back what an earlier visit left, or what the address holds. A link that cannot be
// opened is said, and what was there stays.
func (s *Store) restore() {
	if t, err := s.keeper.Load(unitsKey); err == nil {
		if f := strings.Fields(t); len(f) == 3 && known(f) {
			s.Units.Length, s.Units.Mass, s.Units.Force = f[0], f[1], f[2]
		}
	}
	if t, err := s.keeper.Load(planKey); err == nil && t != "" {
		if p, err := read(t); err == nil {
			s.plan = p
		} else {
			s.Say("file", "The plan kept from the last visit could not be read: "+err.Error())
		}
	}
	if at := s.address.Fragment(); at != "" && !local[at] {
		p, err := follow(at)
		switch {
		case err != nil:
			s.Say("link", badLink(err))
		case !same(p, s.plan):
			s.remember(s.plan) // one Undo away
			s.plan = p
		}
	}
	s.calculate()
	s.later()
}

// Follow opens the plan of the address, when Back, Forward or a new link has changed it.
func (s *Store) Follow() {
	at := s.address.Fragment()
	if at == "" || at == s.link || local[at] {
		return
	}
	p, err := follow(at)
	if err != nil {
		s.Say("link", badLink(err))
		s.address.Replace(fragment(s.plan))
		return
	}
	s.Dismiss("link")
	s.rest()
	if !same(p, s.plan) {
		s.remember(s.plan)
		s.future = nil
		s.become(p)
	}
	s.link = at
}

// Replace shows a whole other plan: an example, a file, a new one. Back and Undo lead to this one.
func (s *Store) Replace(p plan.Plan) {
	s.rest()
	s.Flush()
	s.Dismiss("file")
	s.Dismiss("link")
	s.Dismiss("edit")
	if same(p, s.plan) {
		return
	}
	s.remember(s.plan)
	s.future = nil
	s.arrangement = ""
	s.become(p)
	s.link = fragment(p)
	s.address.Push(s.link)
}

// local are fragments that lead to places of the page.
var local = map[string]bool{"lift": true}

func badLink(err error) string {
	return err.Error() + " The plan that was here is still here."
}
