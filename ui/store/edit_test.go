package store

import (
	"strings"
	"testing"

	"cohoist/core/plan"
)

func TestTeamEditing(t *testing.T) {
	s := open(t, &world{})
	n := len(s.Plan().Team)
	s.Duplicate(0)
	id := s.Plan().Team[1].ID
	if len(s.Plan().Team) != n+1 || id == "" || member(s.Plan(), id) != 1 {
		t.Errorf("the copy is called %q, the team is %d", id, len(s.Plan().Team))
	}
	s.Move(1, -1)
	if s.Plan().Team[0].ID != id {
		t.Errorf("first is %s", s.Plan().Team[0].ID)
	}
	for range 10 {
		s.Remove(0)
	}
	if n := len(s.Plan().Team); n != 1 {
		t.Errorf("%d vehicles are left", n)
	}
	if len(s.Notices()) == 0 {
		t.Error("that the last one stays is not said")
	}
	s.TypeCount(Count("s-count"), "1000")
	if s.Fault("s-count") == "" || len(s.Plan().Team) != 1 {
		t.Errorf("fault %q, team %d", s.Fault("s-count"), len(s.Plan().Team))
	}
	s.TypeCount(Count("s-count"), "6")
	if len(s.Plan().Team) != 6 || s.Fault("s-count") != "" {
		t.Errorf("fault %q, team %d", s.Fault("s-count"), len(s.Plan().Team))
	}
	for i, a := range s.Plan().Team {
		for _, b := range s.Plan().Team[:i] {
			if a.Attach == b.Attach || a.ID == b.ID {
				t.Errorf("%s and %s share a name or a place", a.ID, b.ID)
			}
		}
	}
	s.TypeWords(MemberID(1), s.Plan().Team[0].ID)
	if s.Fault("team-1-id") == "" {
		t.Error("two vehicles may have one name")
	}
}

func TestFileRoundTripAndBadFile(t *testing.T) {
	w := &world{}
	s := open(t, w)
	s.TypeWords(Title, "Lamp <b>& more</b>")
	s.SaveFile()
	name, body, _ := strings.Cut(w.file, "\n")
	if name != "lamp-b-more-b.liftplan.json" {
		t.Errorf("the file is called %s", name)
	}
	kept := s.Plan()
	w.picked = "{"
	s.OpenFile()
	if n := s.Notices(); len(n) != 1 || !same(kept, s.Plan()) {
		t.Errorf("a bad file: notices %v", n)
	}
	s.TypeWords(Title, "other")
	w.picked = body
	s.OpenFile()
	if !same(kept, s.Plan()) || len(s.Notices()) != 0 {
		t.Errorf("the plan did not come back from its file: %v", s.Notices())
	}
}

func TestLinks(t *testing.T) {
	w := &world{}
	s := open(t, w)
	s.Type(SolidMass("s-mass", 0), "5.5")
	w.rest()
	sent := w.Fragment()
	if sent == "" {
		t.Fatal("the address does not hold the plan")
	}
	s.CopyLink()
	if w.copied != "https://example.org/#"+sent {
		t.Errorf("copied %q", w.copied)
	}
	other := open(t, &world{at: []string{sent}})
	if !same(other.Plan(), s.Plan()) {
		t.Error("the link opens another plan")
	}
	if other.Undo(); same(other.Plan(), s.Plan()) {
		t.Error("the plan that was there before the link is not one step back")
	}
	for _, bad := range []string{sent[:len(sent)-5], "p9." + sent[3:], "hello", sent + "x"} {
		w.at = []string{bad}
		kept := s.Plan()
		s.Follow()
		n := s.Notices()
		if len(n) == 0 || n[len(n)-1].Kind != "link" || !same(kept, s.Plan()) {
			t.Errorf("link %q: notices %v", bad, n)
		}
		if w.Fragment() != sent {
			t.Errorf("after the bad link %q the address is not the plan's", bad)
		}
		s.Dismiss("link")
	}
}

func TestBackAndForward(t *testing.T) {
	w := &world{}
	s := open(t, w)
	w.rest()
	first := s.Plan()
	p := First()
	p.Title = "another"
	s.Replace(p)
	w.rest()
	if len(w.at) != 2 {
		t.Fatalf("a whole other plan made %d places in the browser's history", len(w.at))
	}
	w.at = w.at[:1] // Back
	s.Follow()
	if !same(s.Plan(), first) {
		t.Error("Back does not lead to the plan before")
	}
}

func TestPatternsAreKept(t *testing.T) {
	s := open(t, &world{})
	s.TypeCount(Count("s-count"), "4")
	s.Arrange("corners")
	if got := patternOf(s.Plan()); got != "corners" {
		t.Fatalf("after arranging at the corners the pattern is %q", got)
	}
	s.SetTeamHold(plan.Rigid)
	if got := patternOf(s.Plan()); got != "corners" {
		t.Errorf("after changing the holds the pattern is %q", got)
	}
	s.TypeCount(Count("s-count"), "3")
	if got := patternOf(s.Plan()); got != "corners" {
		t.Errorf("after changing the number the pattern is %q", got)
	}
}

func TestLibraryClassesComeAndGo(t *testing.T) {
	s := open(t, &world{})
	s.SetTeamClass("heavy-octo")
	if names := ClassNames(s.Plan()); len(names) != 1 || names[0] != "heavy-octo" {
		t.Errorf("classes %v", names)
	}
	s.NewClass("heavy-octo")
	if got := TeamClass(s.Plan()); got != "own-class" {
		t.Errorf("the team is of class %q", got)
	}
	s.Type(ClassFields(0)[0], "11")
	s.Rename(0, "crane <b>")
	s.SetTeamClass("field-quad")
	if c, ok := s.Plan().Vehicles["crane <b>"]; !ok || c.Mass != 11 {
		t.Error("own numbers were lost when no vehicle used them")
	}
}

func TestExamplesOpen(t *testing.T) {
	s := open(t, &world{})
	for i, e := range Examples() {
		s.OpenExample(i)
		if s.Plan().Title != e.Title || len(s.Notices()) > 0 {
			t.Errorf("%s: %q %v", e.Name, s.Plan().Title, s.Notices())
		}
	}
}
