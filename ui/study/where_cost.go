package study

import (
	"fmt"
	"math"
	"time"

	"cohoist/core/place"
	"cohoist/core/plan"
	"cohoist/core/vec"
	"cohoist/ui/talk"
)

// How finely the cost of a shift is worked out: at once, and when the plan has rested; the finer one takes no
// longer than about patience.
const (
	coarseLine, fineLine = 31, 121
	coarseMap, fineMap   = 60, 480
	patience             = 1500 * time.Millisecond
	atOnce               = 50 * time.Millisecond // what takes longer waits until the plan rests
	chunk                = 10                    // places between two looks at whether the work still counts
)

// shifted is what it costs to move one vehicle's point.
type shifted struct {
	key    string
	fine   bool
	who    int
	line   bool
	axis   int    // of a line
	nx, ny int    // cells
	side   vec.V3 // m, of a cell
	from   vec.V3 // m, of the first cell's middle
	values []float64
	limit  float64
	tops   []float64 // largest utilisation of each band
	names  []string  // of the bands
	fault  string
}

// shift shows the cost of a shift: a first picture at once, a finer one when the plan rests.
func (w *where) shift(t *Turn, c *choices) {
	who := c.mover(t)
	if who < 0 {
		return
	}
	key := fmt.Sprint(string(plan.Compact(t.Plan)), c.asks.Cases, who)
	if w.cost.key == key && w.cost.fine {
		w.cost.show(t, c)
		return
	}
	if w.slow && !t.Rested() {
		return
	}
	began := time.Now()
	s := c.cells(who, coarseLine, coarseMap)
	s.key = key
	if !s.work(t, c) {
		return
	}
	w.cost, w.slow = s, time.Since(began) > atOnce
	s.show(t, c)
	if s.fault != "" {
		w.cost.fine = true
		return
	}
	t.Send()
	part := float64(patience) / float64(time.Since(began)+1) * float64(len(s.values))
	if !t.Rested() {
		return
	}
	s = c.cells(who, min(fineLine, max(coarseLine, int(part))), min(fineMap, max(coarseMap, int(part))))
	s.key, s.fine = key, true
	if s.work(t, c) {
		w.cost = s
		s.show(t, c)
	}
}

// mover is who is moved: the one chosen here, else the one picked on the sheet, else the first; −1: nobody.
func (c *choices) mover(t *Turn) int {
	for _, id := range []string{c.word("who", ""), t.Selected} {
		for i, m := range c.plan.Team {
			if id != "" && m.ID == id {
				return i
			}
		}
	}
	return min(0, len(c.plan.Team)-1)
}

// cells lays out the places to try: along a bar, or over a plate.
func (c *choices) cells(who, line, plate int) shifted {
	s := shifted{who: who, nx: 1, ny: 1, limit: c.plan.Limits.Utilisation, line: c.slender()}
	long, across, axis := c.size()
	s.axis = axis
	at := c.plan.Team[who].Attach
	if s.line {
		n := line
		s.side[axis], s.side[1-axis] = long/float64(n-1), long/30
		s.from = at
		s.from[axis] = c.lo[axis]
		if axis == 0 {
			s.nx = n
		} else {
			s.ny = n
		}
		return s
	}
	side := math.Sqrt(long * across / float64(plate))
	x, y := c.hi[0]-c.lo[0], c.hi[1]-c.lo[1]
	s.nx, s.ny = max(2, int(math.Round(x/side))), max(2, int(math.Round(y/side)))
	s.side = vec.V3{x / float64(s.nx), y / float64(s.ny), 0}
	s.from = vec.V3{c.lo[0] + s.side[0]/2, c.lo[1] + s.side[1]/2, at[2]}
	return s
}

// at is the place of a cell's middle.
func (s *shifted) at(i int) vec.V3 {
	return s.from.Add(vec.V3{float64(i%s.nx) * s.side[0], float64(i/s.nx) * s.side[1], 0})
}

// work values the cells; false: something newer came.
func (s *shifted) work(t *Turn, c *choices) bool {
	q := place.Question{Plan: c.plan, Cases: c.asks.Cases}
	n := s.nx * s.ny
	for i := 0; i < n; i += chunk {
		if i > 0 && !t.GoOn() {
			return false
		}
		var some []vec.V3
		for k := i; k < min(n, i+chunk); k++ {
			some = append(some, s.at(k))
		}
		v, err := place.Shift(q, s.who, some)
		if err != nil {
			s.fault = sentence(err)
			return true
		}
		s.values = append(s.values, v...)
	}
	s.grade()
	return true
}

// show draws it.
func (s *shifted) show(t *Turn, c *choices) {
	w := &WhereCost{Who: c.plan.Team[s.who].ID, cost: s, c: c}
	for _, m := range c.plan.Team {
		w.IDs = append(w.IDs, m.ID)
	}
	w.Lead = s.fault
	if s.fault == "" {
		w.Lead = s.words(c)
	}
	t.Show(talk.Where+"-cost", w)
	t.Value("where-who", "")
	if c.word("who", "") == w.Who {
		t.Value("where-who", w.Who)
	}
}
