package store

import (
	"cohoist/core/example"
	"cohoist/core/plan"
)

// Example is an example to open.
type Example struct{ Name, Title, Line string }

// Examples are the examples that come with the page.
func Examples() []Example {
	if examples == nil {
		for _, e := range example.All {
			p, _ := example.Plan(e.Name)
			examples = append(examples, Example{e.Name, p.Title, e.Line})
		}
	}
	return examples
}

var examples []Example

// OpenExample shows example i.
func (s *Store) OpenExample(i int) {
	s.open["examples"] = false
	p, faults := example.Plan(Examples()[i].Name)
	if len(faults) > 0 {
		s.Say("file", "The example could not be opened: "+faults.String())
		return
	}
	s.Replace(p)
	s.desk.Focus("lift")
}

// First is the plan that a new visitor sees.
func First() plan.Plan {
	p, _ := example.Plan(example.All[0].Name)
	return p
}
