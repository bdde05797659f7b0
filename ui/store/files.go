package store

import (
	"cohoist/core/plan"
	"cohoist/ui/format"
)

// CopyLink puts the plan's link on the clipboard.
func (s *Store) CopyLink() {
	s.Flush()
	f := fragment(s.plan)
	if f == "" {
		s.Say("copied", "This plan is too large for a link; save it as a file.")
		return
	}
	at := s.address.Link(f)
	s.desk.Copy(at, func(err error) {
		if err != nil {
			s.Say("copied", "The link could not be copied ("+err.Error()+"). It stands in the address bar, and here: "+at)
			return
		}
		s.Say("copied", "The link is copied. It holds the whole plan.")
		s.desk.Later("copied", 4000, func() { s.Dismiss("copied") })
	})
}

// SaveFile hands the plan out as a file.
func (s *Store) SaveFile() {
	s.desk.Download(format.FileName(s.plan.Title)+".liftplan.json", string(plan.Encode(s.plan))+"\n")
}

// OpenFile shows a plan from a file. A file that is no plan is said, and the plan stays.
func (s *Store) OpenFile() { s.desk.Pick(".json,.liftplan", s.opened) }

func (s *Store) opened(name, text string, err error) {
	var p plan.Plan
	if err == nil {
		p, err = read(text)
	}
	if err != nil {
		s.Say("file", "The file "+name+" could not be opened: "+err.Error()+" The plan that was here is still here.")
		return
	}
	s.Replace(p)
}

// Fresh starts a new plan: one class, two vehicles, a box, to be changed.
func (s *Store) Fresh() {
	p := First()
	p.Title, p.Note = "", ""
	s.Replace(p)
}

// Options are the classes to choose for n vehicles: the plan's, then the library's.
func ClassOptions(p plan.Plan, n int) []Option {
	var list []Option
	for _, name := range ClassNames(p) {
		list = append(list, Option{name, many(ClassLabel(name), n)})
	}
	for _, l := range Library() {
		if _, have := p.Vehicles[l.Name]; !have {
			list = append(list, Option{l.Name, many(ClassLabel(l.Name), n)})
		}
	}
	return list
}
