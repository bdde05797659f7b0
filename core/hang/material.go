package hang

import (
	"math"

	"cohoist/core/plan"
)

// Fibre is what a line may be made of. Modulus and strength are of the yarn, N/tex (MN per kg/m), approximate.
type Fibre struct {
	Name     string // as the plan says it
	Title    string // in words
	Modulus  float64
	Strength float64
}

// Fibres is the table. Values of yarns: "Synthetic fibre yarn properties", table 1,
// https://tensiontech.cn/papers/deep-mor/synthetic-fibre-yarn-properties-table-1 (approximate, so says the table).
var Fibres = []Fibre{
	{"polyamide", "polyamide (nylon)", 4, 0.84},
	{"polyester", "polyester", 10, 0.84},
	{"aramid", "aramid", 49, 2.03},
	{"hmpe", "high-modulus polyethylene", 124, 2.65},
	{"steel", "steel wire", 26, 0.18},
}

// DesignFactor is breaking strength over working load: 5 in general for slings, DOE-STD-1090-96 (Rev. 1), 11.3.1.3.
const DesignFactor = 5

// laid is the stiffness of a laid or braided rope over that of its yarns at the same strength
// (common practice, no source); ropes differ by half of it, so measure yours.
const laid = 0.7

// Axial is the axial stiffness E A of a line, N: measured, or by its fibre and working load, (12.15). +Inf: the plan says
// neither, and the line counts as one that does not stretch.
func Axial(h plan.Hold) float64 {
	if h.LineStiffness > 0 {
		return h.LineStiffness
	}
	for _, f := range Fibres {
		if f.Name == h.LineMaterial && h.WorkingLoad > 0 {
			return laid * f.Modulus / f.Strength * DesignFactor * h.WorkingLoad // (12.15)
		}
	}
	return math.Inf(1)
}
