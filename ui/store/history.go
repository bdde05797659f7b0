package store

import "cohoist/core/plan"

// depth is how many steps can be undone.
const depth = 200

func (s *Store) remember(p plan.Plan) {
	s.past = append(s.past, p)
	if len(s.past) > depth {
		s.past = s.past[len(s.past)-depth:]
	}
}

// CanUndo says whether there is a step to take back.
func (s *Store) CanUndo() bool { return len(s.past) > 0 }

// CanRedo says whether a step was taken back.
func (s *Store) CanRedo() bool { return len(s.future) > 0 }

// Undo takes the newest step back.
func (s *Store) Undo() {
	s.rest()
	if len(s.past) == 0 {
		return
	}
	n := len(s.past) - 1
	p := s.past[n]
	s.past = s.past[:n]
	s.future = append(s.future, s.plan)
	s.become(p)
}

// Redo takes the newest undone step again.
func (s *Store) Redo() {
	s.rest()
	if len(s.future) == 0 {
		return
	}
	n := len(s.future) - 1
	p := s.future[n]
	s.future = s.future[:n]
	s.remember(s.plan)
	s.become(p)
}

// rest ends what is going on: a run of typing, texts that have not become numbers.
func (s *Store) rest() {
	s.run = ""
	clear(s.raw)
	clear(s.faults)
}
