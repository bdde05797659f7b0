package place

import "math"

// spot is a vehicle on an upright cable: it pulls up with a force between low and t thrust − own.
type spot struct {
	x, y   float64 // from the load's centre of mass, m
	thrust float64 // N, of all its rotors
	own    float64 // N, its weight
	low    float64 // N, least tension
	most   float64 // N, its line's working load; +Inf: none
}

// line is a linear function λ + a x + b y of places: how far the load is asked to rise there. It is
// the dual of an upright share.
type line struct{ l, a, b float64 }

func (y line) at(s *spot) float64 { return y.l + float64(y.a*s.x) + float64(y.b*s.y) }

// same is the part of the spots' extent within which they count as one place, or as in line.
const same = 1e-9

// upright finds the smallest worst utilisation of upright forces that balance a weight at the origin, (10.2),
// wherever the centre of mass is within off of it (across the spots too, when they are in line and across
// is asked). It returns the line that proves the answer; +Inf when nothing balances.
//
// The answer is the largest of the bounds (10.3) of all lines, and of those only lines through two of
// the spots (one, when they are in line) can be the largest.
func upright(spots []spot, weight, off float64, across bool) (float64, line) {
	worst, best := 0.0, line{}
	for _, s := range spots { // each must hold its own cable taut
		if s.low > s.most {
			return math.Inf(1), line{}
		}
		if t := (s.low + s.own) / s.thrust; t > worst {
			worst, best = t, line{}
		}
	}
	i, j, extent := farthest(spots)
	if extent == 0 {
		return single(spots, weight, off, worst)
	}
	ux, uy := (spots[j].x-spots[i].x)/extent, (spots[j].y-spots[i].y)/extent
	if inLine(spots, i, ux, uy, extent) {
		beside := float64(uy*spots[i].x) - float64(ux*spots[i].y) // of the line to the load's centre
		if math.Abs(beside) > same*extent || across && off > 0 {
			side := math.Copysign(1, beside)
			return math.Inf(1), line{beside * side, -uy * side, ux * side}
		}
		for _, s := range spots {
			y := line{-float64(ux*s.x) - float64(uy*s.y), ux, uy}
			worst, best = raise(spots, y, weight, off, extent, worst, best)
			worst, best = raise(spots, line{-y.l, -y.a, -y.b}, weight, off, extent, worst, best)
		}
		return worst, best
	}
	for i := range spots {
		for j := range i {
			a, b := spots[i].y-spots[j].y, spots[j].x-spots[i].x
			n := math.Sqrt(float64(a*a) + float64(b*b))
			if n <= same*extent {
				continue
			}
			a, b = a/n, b/n
			y := line{-float64(a*spots[i].x) - float64(b*spots[i].y), a, b}
			worst, best = raise(spots, y, weight, off, extent, worst, best)
			worst, best = raise(spots, line{-y.l, -y.a, -y.b}, weight, off, extent, worst, best)
		}
	}
	return worst, best
}

// raise is the bound (10.3) of a line of unit slope, kept when it is larger than worst. Where working loads are in
// the way it is solved again with the vehicles that have reached theirs, until no more have.
func raise(spots []spot, y line, weight, off, extent, worst float64, best line) (float64, line) {
	t := worst
	for last := math.Inf(-1); ; {
		need, give := weight*(y.l+off), 0.0
		for i := range spots {
			s := &spots[i]
			switch c := y.at(s); {
			case c > same*extent:
				if float64(last*s.thrust)-s.own > s.most {
					need -= float64(s.most * c)
					continue
				}
				need += float64(s.own * c)
				give += float64(s.thrust * c)
			case c < 0:
				need -= float64(s.low * c)
			}
		}
		switch {
		case give > 0 && need > float64(t*give):
			t = need / give
		case give <= 0 && need > same*weight*extent:
			return math.Inf(1), y
		}
		if t == last || math.IsInf(last, -1) && !capped(spots, t) {
			break
		}
		last = t
	}
	if t > worst {
		return t, y
	}
	return worst, best
}

// capped tells that a vehicle reaches its working load below utilisation t.
func capped(spots []spot, t float64) bool {
	for i := range spots {
		if float64(t*spots[i].thrust)-spots[i].own > spots[i].most {
			return true
		}
	}
	return false
}

// farthest finds two spots that lie far apart: the farthest from the first, and the farthest from that one.
func farthest(spots []spot) (i, j int, extent float64) {
	from := func(i int) (int, float64) {
		far, most := i, 0.0
		for k, s := range spots {
			if d := math.Hypot(s.x-spots[i].x, s.y-spots[i].y); d > most {
				far, most = k, d
			}
		}
		return far, most
	}
	i, _ = from(0)
	j, extent = from(i)
	return i, j, extent
}

func inLine(spots []spot, i int, ux, uy, extent float64) bool {
	for _, s := range spots {
		if math.Abs(float64(uy*(s.x-spots[i].x))-float64(ux*(s.y-spots[i].y))) > same*extent {
			return false
		}
	}
	return true
}

// single is for spots that all stand in one place, where the load hangs below them.
func single(spots []spot, weight, off, worst float64) (float64, line) {
	if d := math.Hypot(spots[0].x, spots[0].y); d > same {
		return math.Inf(1), line{d, -spots[0].x / d, -spots[0].y / d}
	}
	if off > 0 {
		return math.Inf(1), line{0, 1, 0}
	}
	return raise(spots, line{l: 1}, weight, 0, 1, worst, line{})
}
