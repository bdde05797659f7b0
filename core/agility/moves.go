// Package agility answers what the team can still do beyond hover (THEORY chapter 7).
//
// Restriction: the strongest steady moments, forces and accelerations about hover at full thrust
// (utilisation 1, not the crew's limit); motors answer at once; turning times are from rest to rest
// with full moment one way, then the other. On cables the cables stay within their bounds and every
// vehicle shares the acceleration of its attachment.
// Geometry: body axes; roll, pitch and yaw are about x, y and z through the body's centre of mass.
// Calculation: a linear (rigid) or conic (cable) program for each motion, (7.1).
// Verification: closed cases by hand, inertia ∝ size⁵ and acceleration ∝ 1/size in the tests.
// References: THEORY chapter 7.
package agility

import (
	"math"

	"cohoist/core/share"
	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Moves are the strongest motions about hover, all magnitudes; pairs are the two ways, + and −.
// NaN: not computed, or not to be had (the time of a turn that cannot be made).
type Moves struct {
	Roll      [2]float64 `json:"roll_n_m"` // largest pure moment, the rest of the wrench as in hover
	RollAcc   [2]float64 `json:"roll_rad_s2"`
	Pitch     [2]float64 `json:"pitch_n_m"`
	PitchAcc  [2]float64 `json:"pitch_rad_s2"`
	Yaw       [2]float64 `json:"yaw_n_m"`
	YawAcc    [2]float64 `json:"yaw_rad_s2"`
	Climb     float64    `json:"climb_n"` // largest extra upward force, mass in motion times ClimbAcc
	ClimbAcc  float64    `json:"climb_m_s2"`
	SideAcc   float64    `json:"side_m_s2"`  // worst of ±x, ±y
	TurnSmall [3]float64 `json:"turn_30_s"`  // roll, pitch, yaw: time to turn 30° from rest to rest
	TurnFull  [3]float64 `json:"turn_360_s"` // the same through 360°; NaN about x and y on cables
}

// Blank is Moves with nothing computed.
func Blank() Moves {
	n := math.NaN()
	pair, three := [2]float64{n, n}, [3]float64{n, n, n}
	return Moves{Roll: pair, RollAcc: pair, Pitch: pair, PitchAcc: pair, Yaw: pair, YawAcc: pair,
		Climb: n, ClimbAcc: n, SideAcc: n, TurnSmall: three, TurnFull: three}
}

// Of answers for a model that hovers as in a; Blank when it cannot.
func Of(m *share.Model, a share.Answer, s *solve.Solver) Moves {
	v := Blank()
	if a.Status != solve.Optimal || !(a.Even.T <= 1+tolerance) {
		return v
	}
	p := m.Within(1)
	moment := [3]*[2]float64{&v.Roll, &v.Pitch, &v.Yaw}
	acc := [3]*[2]float64{&v.RollAcc, &v.PitchAcc, &v.YawAcc}
	for axis := range 3 {
		var e vec.V3
		e[axis] = 1
		*moment[axis] = ways(s, p, m.Weight(), func(sign float64) { m.Push(p, vec.V3{}, e.Scale(sign)) }) // (7.1)
		if !m.Cables && lonely(m.Body.Inertia, axis) {
			for way := range acc[axis] {
				acc[axis][way] = moment[axis][way] / m.Body.Inertia[axis][axis] // (7.2), no cross terms
			}
		} else {
			*acc[axis] = ways(s, p, m.Weight(), func(sign float64) { m.Accelerate(p, vec.V3{}, e.Scale(sign)) }) // (7.2)
		}
		v.TurnSmall[axis] = Turn(math.Pi/6, *acc[axis])
		if axis == 2 || !m.Cables {
			v.TurnFull[axis] = Turn(2*math.Pi, *acc[axis])
		}
	}
	if m.Cables {
		hung(m, a, s, p, &v)
	} else {
		leaning(m, s, p, &v)
	}
	return v
}

// tolerance is what counts as nothing, relative: the solver's answers are good to about 1e-9.
const tolerance = 1e-7

// most is the largest t of a program of share's Within; 0 when hover is all the team can do.
func most(s *solve.Solver, p *solve.Program, weight float64) float64 {
	r := s.Solve(p)
	switch {
	case r.Status != solve.Optimal:
		return math.NaN()
	case r.T*size(p) <= tolerance*weight:
		return 0
	}
	return r.T
}

// ways is most both ways of a question that ask puts to the program. A team that looks the same from
// both sides is asked once.
func ways(s *solve.Solver, p *solve.Program, weight float64, ask func(sign float64)) (both [2]float64) {
	ask(1)
	both[0] = most(s, p, weight)
	ask(-1)
	if p.Reversible() {
		both[1] = both[0]
	} else {
		both[1] = most(s, p, weight)
	}
	return both
}

// size is how much a program asks for per unit of t: the wrench on the body, or, when the body
// weighs nothing, the force that moves the vehicle that needs most.
func size(p *solve.Program) float64 {
	sum := 0.0
	for _, x := range p.WrenchT {
		sum = math.Hypot(sum, x)
	}
	for _, pull := range p.Pulls {
		sum = math.Max(sum, pull.Cones[0].D.Norm())
	}
	return sum
}

// lonely tells that the inertia has no products with axis, so that moment is inertia times acceleration.
func lonely(inertia vec.M3, axis int) bool {
	off := math.Abs(inertia[axis][(axis+1)%3]) + math.Abs(inertia[axis][(axis+2)%3])
	return off <= 1e-12*inertia[axis][axis]
}

// Turn is the least time to turn through angle (rad) from rest to rest with the accelerations of
// the two ways: full one way, then full the other, (7.6). NaN when it cannot turn.
func Turn(angle float64, acc [2]float64) float64 {
	if !(acc[0] > 0 && acc[1] > 0) {
		return math.NaN()
	}
	return math.Sqrt(2 * angle * (1/acc[0] + 1/acc[1]))
}
