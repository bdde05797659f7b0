package hang

import (
	"math"

	"cohoist/core/vec"
)

// What may go wrong with one line. Each returns a new rig with the lines in the same order, so that
// member i is line i before and after; Rest from the old pose tells what follows.

// Displaced is the rig with a member's vehicle out of place, level axes, m.
func (r Rig) Displaced(member int, by vec.V3) Rig {
	return r.with(member, func(l *Line) { l.Top = l.Top.Add(by) })
}

// Short is the rig with a member's line shorter at rest by so much, m; negative: longer. It is the same line, so that
// stiffness times length stays.
func (r Rig) Short(member int, by float64) Rig {
	return r.with(member, func(l *Line) {
		length := math.Max(0, l.Length-by)
		if length > 0 {
			l.Stiffness *= l.Length / length
		}
		l.Length = length
	})
}

// Without is the rig after a member's line let go. Its place in the list stays, and carries nothing.
func (r Rig) Without(member int) Rig {
	return r.with(member, func(l *Line) { l.Stiffness = 0 })
}

func (r Rig) with(member int, change func(*Line)) Rig {
	lines := append([]Line(nil), r.Lines...)
	change(&lines[member])
	return Rig{r.Load, lines}
}
