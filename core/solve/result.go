package solve

import "cohoist/core/vec"

// Status says how a solve ended. The zero value is "not run".
type Status uint8

// The ways a solve ends.
const (
	NotRun     Status = iota
	Optimal           // T and the forces hold, Bound proves how good they are
	Infeasible        // no forces balance at any t: Y and the duals multiply out to the proof
	Unbounded         // t may go for ever in the wanted direction
	Unsolved          // no answer, Reason says why
)

func (s Status) String() string {
	if int(s) >= len(statusNames) {
		return "unknown"
	}
	return statusNames[s]
}

var statusNames = [...]string{"not run", "optimal", "infeasible", "unbounded", "unsolved"}

// Result is an answer with its evidence. Its slices belong to the Solver and hold until its next call.
//
// The duals satisfy, for Lines and Pulls with y = Y = (y_F, y_M), (6.4):
//
//	Columnᵀ y + LineLo − LineHi = 0
//	y_F + y_M × At + PullZ ẑ + Σ (V + Z A ẑ) = 0   over the cones (V, A) of the Pull
//
// with LineLo, LineHi, PullZ, A ≥ 0 and |V| ≤ A, and prove (6.5)
//
//	γ t ≥ y·Wrench + Σ Lo LineLo − Σ Hi LineHi + Σ MinZ PullZ − Σ (C A + B·V)
//	γ = −y·WrenchT + Σ HiT LineHi + Σ (T A + D·V)
//
// for every answer. Optimal: γ = Goal, so that Goal·Y is how t moves per N and N m of the wanted
// wrench. Infeasible: γ = 0 and the right-hand side is positive; Y has length 1 when moments are
// counted by Arm.
type Result struct {
	Status   Status
	Reason   string    // of Unsolved
	T        float64   // the optimal shared scalar; NaN unless Optimal
	U        []float64 // N, along every Line
	F        []vec.V3  // N, of every Pull
	Residual float64   // largest imbalance over the program's own force, and over force × Arm
	Bound    float64   // proven: ≤ T for Goal +1, ≥ T for −1
	Y        Wrench    // dual of the balance; of Infeasible the direction that runs out
	LineLo   []float64 // dual of Lo ≤ u
	LineHi   []float64 // dual of u ≤ Hi + HiT t
	PullZ    []float64 // dual of F_z ≥ MinZ
	Cones    []Dual    // duals of the cones of all Pulls, one after the other
	Arm      float64   // m, the length scale of the moments
	// Iterations counts the Newton systems that were factored.
	Iterations int
}

// Dual is the dual of one cone: |V| ≤ A. V_z is 0 when the cone is Flat.
type Dual struct {
	A float64
	V vec.V3
}
