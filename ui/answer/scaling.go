package answer

import (
	"math"

	"github.com/vugu/vugu"

	"cohoist/core/agility"
	"cohoist/ui/chart"
	"cohoist/ui/format"
)

// number is the chart of turning against the number of vehicles.
func (c *Agility) number() vugu.Builder {
	r := c.Store.Report()
	c.byNumber = chart.Line{
		Title:   "Turning, by number of vehicles",
		Summary: "Angular acceleration of roll, pitch and yaw for teams of 1 to 12 vehicles of the commonest class on a ring, each with the same load.",
		X:       chart.Axis{Title: "vehicles, each with the same load", Whole: true},
		Y:       chart.Axis{Title: "rad/s²", Log: true},
		Series:  series(r.Scaling.Number, func(s agility.Scaled) float64 { return float64(s.Vehicles) }),
		Now:     float64(len(c.Store.Plan().Team)), NowName: "now",
	}
	return &c.byNumber
}

// size is the chart of turning against the size of everything.
func (c *Agility) size() vugu.Builder {
	c.bySize = chart.Line{
		Title:   "Turning, by size of everything",
		Summary: "Angular acceleration of roll, pitch and yaw when vehicles and payload are all made larger or smaller in proportion: it falls as they grow.",
		X:       chart.Axis{Title: "size, of the plan's own", Log: true},
		Y:       chart.Axis{Title: "rad/s²", Log: true},
		Series:  series(c.Store.Report().Scaling.Size, func(s agility.Scaled) float64 { return s.Size }),
		Now:     1, NowName: "now",
	}
	return &c.bySize
}

// scales says whether there is anything to draw.
func (c *Agility) scales() bool { return len(c.Store.Report().Scaling.Number) > 0 }

// series are roll, pitch and yaw over what of gives.
func series(points []agility.Scaled, of func(agility.Scaled) float64) []chart.Series {
	list := []chart.Series{{Name: "roll"}, {Name: "pitch"}, {Name: "yaw"}}
	for _, p := range points {
		for i, y := range [3]float64{p.RollAcc, p.PitchAcc, p.YawAcc} {
			list[i].X = append(list[i].X, of(p))
			list[i].Y = append(list[i].Y, y)
		}
	}
	return list
}

// lead says in a sentence what the team loses.
func (c *Agility) lead() string {
	r := c.Store.Report().Agility.Ratio
	worst, name := math.Inf(1), ""
	for _, m := range []struct {
		name string
		pair [2]float64
	}{{"roll", r.RollAcc}, {"pitch", r.PitchAcc}, {"yaw", r.YawAcc}} {
		if x := math.Min(m.pair[0], m.pair[1]); x < worst {
			worst, name = x, m.name
		}
	}
	text := "What the team can still do about hover, beside one vehicle alone without payload."
	switch {
	case name == "" || worst >= 1:
	case worst < 0.005:
		text += " In " + name + " it has nothing left to turn with."
	default:
		text += " It loses most in " + name + ": " + format.Share(worst) + " of one vehicle's turning is left."
	}
	return text
}
