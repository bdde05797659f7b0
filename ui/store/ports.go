package store

import (
	"errors"

	"cohoist/core/plan"
	"cohoist/core/report"
)

// Ports are the store's ways to the world outside. Missing ones are replaced by ones that do
// nothing, as for the first view, which is drawn without a browser.
type Ports struct {
	Calculator Calculator
	Keeper     Keeper
	Address    Address
	Desk       Desk
	Studio     Studio
}

// Calculator turns plans into reports: at once, or later. A newer plan may replace one that waits.
type Calculator interface {
	Start(p plan.Plan, done func(report.Report, error))
}

// Keeper keeps texts between visits.
type Keeper interface {
	Load(key string) (string, error) // "" when there is none
	Save(key, text string) error
}

// Address is the fragment of the page's address.
type Address interface {
	Fragment() string
	Replace(fragment string) // the same place in the browser's history
	Push(fragment string)    // a new place, to which Back leads
	Link(fragment string) string
}

// Desk is the rest of what a browser can do.
type Desk interface {
	Later(key string, milliseconds int, f func()) // f once, after the last call with this key
	Focus(id string)                              // after the next drawing
	Copy(text string, done func(error))
	Print()
	Download(name, text string)
	Pick(accept string, done func(name, text string, err error)) // a file that the person chooses
}

// Still is the ports of a page that nobody can touch.
func Still() Ports { return Ports{}.whole() }

// whole puts ports that do nothing where there are none.
func (p Ports) whole() Ports {
	if p.Calculator == nil {
		p.Calculator = AtOnce{}
	}
	if p.Keeper == nil {
		p.Keeper = nowhere{}
	}
	if p.Address == nil {
		p.Address = nowhere{}
	}
	if p.Desk == nil {
		p.Desk = nowhere{}
	}
	if p.Studio == nil {
		p.Studio = nowhere{}
	}
	return p
}

// AtOnce calculates while the caller waits.
type AtOnce struct{}

// Start builds the report.
func (AtOnce) Start(p plan.Plan, done func(report.Report, error)) { done(Build(p)) }

// Build is report.Build that comes back from a panic with an error.
func Build(p plan.Plan) (r report.Report, err error) {
	defer func() {
		if x := recover(); x != nil {
			err = Fault(x)
		}
	}()
	return report.Build(p), nil
}

// Fault words what a panic left.
func Fault(x any) error {
	if err, ok := x.(error); ok {
		return errors.New("(" + err.Error() + ")")
	}
	if s, ok := x.(string); ok {
		return errors.New("(" + s + ")")
	}
	return errors.New("(unknown error)")
}

type nowhere struct{}

func (nowhere) Load(string) (string, error)                     { return "", nil }
func (nowhere) Save(string, string) error                       { return nil }
func (nowhere) Fragment() string                                { return "" }
func (nowhere) Replace(string)                                  {}
func (nowhere) Push(string)                                     {}
func (nowhere) Link(fragment string) string                     { return "#" + fragment }
func (nowhere) Later(string, int, func())                       {}
func (nowhere) Focus(string)                                    {}
func (nowhere) Copy(string, func(error))                        {}
func (nowhere) Print()                                          {}
func (nowhere) Download(string, string)                         {}
func (nowhere) Pick(string, func(name, text string, err error)) {}
