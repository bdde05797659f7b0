package check

import (
	"math"

	"cohoist/core/momentum"
	"cohoist/core/near"
	"cohoist/core/plan"
	"cohoist/core/share"
)

// Near asks whether what is counted of what stands near the rotors is within what its formulas were made for.
var Near = Check{
	ID: "near", Title: "What is near the rotors",
	Doc:      "Ground effect, wash on the payload and wakes on each other enter the thrust needed when the plan counts them. Each of their formulas has a range: the term that is farthest into its own is shown. Beyond it the other checks still tell their numbers, but the model does not vouch for them.",
	Limits:   []Limit{air},
	Refs:     []string{"cheeseman-bennett-1955", "heli-air-download", "heli-air-penalty", "bauersfeld-2024", "cushman-roisin"},
	Examples: []Example{{Plan: "sensor-plate", Utilisation: 0, Tol: 1e-9, Source: "by hand: its rotors' wakes of 0.71 R pass the plate"}},
	Run:      nearby,
}

// nearTerm is a term of a vehicle against its range.
type nearTerm struct {
	at               int // vehicle
	demand, capacity float64
	kind             int
}

// Kinds of terms.
const (
	wash = iota
	wake
	ground
)

// over is how far a term is into its range.
func (t nearTerm) over() float64 { return t.demand / t.capacity }

func nearby(f Facts) Outcome {
	n := f.Plan.Near
	switch {
	case n.Ground != plan.Counted && n.Download != plan.Counted && n.Wakes != plan.Counted:
		return none(NotApplicable, "Ground effect, wash on the payload and wakes on each other are left out of the thrust needed.")
	case !f.Model.NearSettled:
		return none(OutsideModel, "Where the vehicles fly and what their wakes do there depend on each other, and that does not settle. Hang the vehicles farther apart or at heights that differ less.")
	case f.Answer.Parts == nil:
		return noBalance()
	}
	t := nearTerm{demand: -1, capacity: 1}
	for i := range f.Model.Craft {
		c := &f.Model.Craft[i]
		for k, x := range [3]nearTerm{{demand: c.Near.Share(), capacity: near.DownloadRange.High}, {demand: 1 - c.Near.Worst(), capacity: near.WakeRange.High},
			{demand: near.GroundRange.Low * radius(f, i), capacity: math.Max(c.Near.Height, 1e-9)}} {
			if x.over() > t.over()+1e-6 { // NaN: the ground is left out
				t = x
				t.at, t.kind = i, k
			}
		}
	}
	c := &f.Model.Craft[t.at]
	o := Outcome{Status: OK, Where: c.ID, Demand: t.demand, Capacity: t.capacity, Unit: "1", Steps: nearSteps(f, t)}
	var beyond string
	switch part := percent(t.demand) + " of its thrust"; t.kind {
	case wash:
		o.Sentence = "The wake of " + c.ID + " presses on the payload with " + part + "."
		beyond = " The model of download holds up to 10 %. Put the vehicles farther out, so that less of the payload is below their rotors; longer cables spread the wakes."
	case wake:
		o.Sentence = c.ID + " loses " + part + " in the wake of " + f.Model.Craft[max(0, c.Near.Blower)].ID + "."
		beyond = " The mean flow that is counted says nothing of how it shakes, and is kept to 10 %. Put them farther apart or at one height."
	default:
		o.Unit = "m"
		o.Sentence = c.ID + "'s rotors are " + say(c.Near.Height, "m") + " above the ground, which gives " + percent(c.Near.Ground-1) + " more thrust."
		beyond = " Nearer than half a rotor radius no formula holds. Lift higher before you rely on it, or leave ground effect out."
	}
	switch {
	case t.demand == 0:
		o.Where, o.Sentence = "", "Nothing is near any rotor."
	case t.over() > 1+Edge:
		o.Status = OutsideModel
		o.Sentence += beyond
	}
	return o
}

func radius(f Facts, i int) float64 { return f.Plan.Vehicles[f.Model.Craft[i].Class].RotorRadius }

// nearSteps works out a term, and where it stands in its range.
func nearSteps(f Facts, t nearTerm) working {
	var w working
	c := &f.Model.Craft[t.at]
	r := w.add("R", radius(f, t.at), "m", given, "%v", radius(f, t.at))
	switch t.kind {
	case ground:
		nearGround(&w, c)
		w.add("n", t.over(), "1", "THEORY (22.1): half a radius at least", "%v*R/z", near.GroundRange.Low)
	case wash:
		nearWash(&w, c, r)
		w.add("n", t.over(), "1", "THEORY (22.2): up to a tenth", "phi/%v", t.capacity)
	default:
		nearWake(&w, f, c, r)
		w.add("l", t.demand, "1", "THEORY (22.7): thrust lost", "1 - x")
		w.add("n", t.over(), "1", "kept to a tenth, "+trade, "l/%v", t.capacity)
	}
	return w
}

// NearWorking is how everything that is counted near vehicle i comes about.
func NearWorking(f Facts, i int) []Step {
	var w working
	c := &f.Model.Craft[i]
	r := w.add("R", radius(f, i), "m", given, "%v", radius(f, i))
	if !math.IsNaN(c.Near.Height) {
		nearGround(&w, c)
	}
	if c.Near.Shadows != nil {
		nearWash(&w, c, r)
	}
	if c.Near.Lift != nil {
		nearWake(&w, f, c, r)
	}
	return w
}

// nearGround works out what the ground gives.
func nearGround(w *working, c *share.Craft) {
	w.add("z", c.Near.Height, "m", "its rotors above the ground: the plan's height and (5.16)", "%v", c.Near.Height)
	if !c.Near.Beyond {
		w.add("r_g", c.Near.Ground, "1", "THEORY (22.1)", "1/(1 - R/(4*z)*(R/(4*z)))")
	}
}

// nearWash works out the part of its thrust with which a vehicle's wakes press on the payload.
func nearWash(w *working, c *share.Craft, r float64) {
	rotors, blocked := float64(len(c.Near.Shadows)), 0.0
	source := "THEORY (22.4): payload in its contracted wakes"
	for _, s := range c.Near.Shadows {
		blocked += s.Share / near.Flat * math.Pi * r * r
		if s.Jet {
			source = "THEORY (22.6): payload in the jet of its wakes, as an area of contracted wakes with as much momentum"
		}
	}
	if rotors == 0 {
		w.add("phi", 0, "1", "left out", "0")
		return
	}
	phi := c.Near.Share()
	w.add("S", blocked, "m²", source, "%v", blocked)
	w.add("f", near.Flat*blocked, "m²", "flat plate, Data Book (C. Matthews) fig. 5.13(b)", "%v*S", near.Flat)
	w.add("A", rotors*math.Pi*r*r, "m²", "its discs", "%v*pi*R*R", rotors)
	w.add("phi", phi, "1", "THEORY (22.2)", "f/A")
	w.add("r_d", 1/(1-phi), "1", "THEORY (22.2): thrust over what it lifts", "1/(1 - phi)")
}

// nearWake works out the thrust that a vehicle has in the wakes of others, at the rotor that loses most.
func nearWake(w *working, f Facts, c *share.Craft, r float64) {
	at, x := 0, c.Near.Worst()
	for j, lift := range c.Near.Lift {
		if lift == x {
			at = j
		}
	}
	if len(c.Near.Lift) == 0 || !(c.Near.Flow[at] > 0) {
		w.add("x", 1, "1", "no wake reaches it", "1")
		return
	}
	merit := f.Plan.Vehicles[c.Class].FigureOfMerit
	if math.IsNaN(merit) {
		merit = 1 / momentum.InducedFactor
	}
	most := c.Rotors[at].Max / x
	w.add("w", c.Near.Flow[at], "m/s", "THEORY (22.5), (22.6): mean air down through the rotor that loses most", "%v", c.Near.Flow[at])
	h := w.add("v_h", momentum.Hover(most, math.Pi*r*r, f.Model.Density), "m/s", "THEORY (18.1), at its most out of the wakes", "sqrt(%v/(2*%v*pi*R*R))", most, f.Model.Density)
	v, _ := momentum.Induced(h*math.Sqrt(x), 0, c.Near.Flow[at])
	w.add("v", v, "m/s", "THEORY (18.4), put back into itself", "%v*v_h*v_h/(w + %v)", x, v)
	k := math.Min(momentum.InducedFactor, 1/merit)
	w.add("x", h/merit/(k*v+(1/merit-k)*h*math.Sqrt(x)+c.Near.Flow[at]), "1", "THEORY (22.7), put back into itself", "v_h/%v/(%v*v + %v*v_h*sqrt(%v) + w)", merit, k, 1/merit-k, x)
}
