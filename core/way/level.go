package way

import "math"

// power makes the largest of many reaches smooth: the power mean with it is within a twentieth of the largest.
const power = 24

// light is the part of the heaviest instant's weight below which one does not count in the change of the mean.
const light = 1e-4

// level moves time between the legs so that as many as can come close to the limits at once: the least power mean of
// the reach by its cuts, the total kept, (20.14).
func (f *search) level(durations []float64) []float64 {
	free := f.groups[len(f.groups)-1]
	return descent(f.groups, durations, 15, 1e-4, func(d []float64) (float64, []float64) {
		p, err := f.Path(d)
		if err != nil || f.stopped() {
			return math.NaN(), make([]float64, len(d))
		}
		each := coarse(p)
		list, most := make([]instant, 0, len(d)*each), 0.0
		for leg := range d {
			for k := range each {
				i := f.look(p, leg, (float64(k)+0.5)/float64(each))
				list, most = append(list, i), math.Max(most, i.reach)
			}
		}
		sum := 0.0
		heavy := list[:0]
		for _, i := range list {
			w := d[i.leg] * math.Pow(i.reach/most, power)
			sum += w
			if w > light*d[i.leg] {
				heavy = append(heavy, i)
			}
		}
		value := math.Log(most) + math.Log(sum/p.Duration())/power
		return value, f.change(d, free, heavy, sum)
	})
}

// change is how the logarithm of the power mean moves with every free duration: by differences over the instants that
// weigh, each by the cut that it stands at.
func (f *search) change(d []float64, free group, heavy []instant, sum float64) []float64 {
	out := make([]float64, len(d))
	moved := append([]float64(nil), d...)
	most := 0.0
	for _, i := range heavy {
		most = math.Max(most, i.reach)
	}
	for k := free.from; k < free.to; k++ {
		h := 1e-6 * d[k]
		moved[k] = d[k] + h
		p, err := f.Path(moved)
		moved[k] = d[k]
		if err != nil {
			return out
		}
		for _, i := range heavy {
			reach := f.again(p, i)
			weight := d[i.leg] * math.Pow(i.reach/most, power) / sum
			out[k] += weight * (reach - i.reach) / (i.reach * h)
		}
	}
	return out
}

// again is the reach of an instant on another path, by what it stands at.
func (f *search) again(p *Path, i instant) float64 {
	if p.held != nil && i.most.reach >= i.reach {
		return p.held.again(i.at, p, i, f.limits)
	}
	v, x := motion(f.m, p, i.leg, i.s)
	if i.by < 0 {
		return f.plain(v, x)
	}
	return dot(f.cuts[i.by], f.load(v))
}
