package place

import "cohoist/core/vec"

// Kind is a kind of request.
type Kind int

// The kinds.
const (
	BestHoles  Kind = iota // Holes: OnHoles
	BestRegion             // Region: InRegion
	Table                  // Holes, Most: HowMany
	Strip                  // Member, Holes: Shift
	Front                  // Goals, Holes: Pareto
)

// Request is any question of this package as plain data, for a page that asks a worker.
type Request struct {
	Kind     Kind
	Question Question
	Holes    []vec.V3
	Region   Region
	Most     int     // of Table: up to so many vehicles
	Budget   int     // of BestHoles and Table: nodes of search; 0: until it is proved
	Member   int     // of Strip: who moves
	Goals    [2]Goal // of Front
}

// Reply is the answer to a Request: the fields of its kind, or Fault in a sentence.
type Reply struct {
	Kind   Kind
	Answer Answer
	Rows   []Row
	Values []float64
	Front  []Pair
	Proof  Proof
	Fault  string
}

// Run answers a request. Tell hears of the progress of all kinds but Strip.
func (r Request) Run(tell Tell) Reply {
	out := Reply{Kind: r.Kind}
	var err error
	switch {
	case r.Kind != BestRegion && len(r.Holes) == 0:
		err = ErrFew
	case r.Kind == BestHoles:
		out.Answer, err = onHoles(r.Question, r.Holes, r.Budget, tell)
		out.Proof = out.Answer.Proof
	case r.Kind == BestRegion:
		out.Answer, err = InRegion(r.Question, r.Region, tell)
		out.Proof = out.Answer.Proof
	case r.Kind == Table:
		out.Rows = HowMany(r.Question, min(max(r.Most, 1), 12), r.Budget, r.Holes, tell)
	case r.Kind == Strip:
		out.Values, err = Shift(r.Question, r.Member, r.Holes)
	case r.Kind == Front:
		out.Front, out.Proof, err = Pareto(r.Question, r.Goals, r.Holes, tell)
	}
	if err != nil {
		out.Fault = err.Error()
	}
	return out
}
