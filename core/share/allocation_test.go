package share_test

import (
	"testing"

	"cohoist/core/solve"
	"cohoist/core/vec"
)

// Six actuators, four wanted numbers: the pseudo-inverse that a plain mixer uses. Matrix and wanted
// vector: github paparazzi/paparazzi, sw/airborne/test/test_alloc.c; pinv(B) v with numpy. Two of
// its answers are beyond the actuators' limits, which is why (5.11) is only checked afterwards.
func TestPseudoInverse(t *testing.T) {
	b := [4][6]float64{
		{0, -.015, .015, 0, -.015, .015},
		{.015, -.010, -.010, .015, -.010, -.010},
		{.103, .103, .103, -.103, -.103, -.103},
		{-.0009, -.0009, -.0009, -.0009, -.0009, -.0009},
	}
	wanted := [4]float64{240, -240.5658, 600, 1.8532}
	p := &solve.Program{Wrench: solve.Wrench{0, 0, wanted[3], wanted[0], wanted[1], wanted[2]}, Goal: 1}
	for j := range 6 {
		p.Lines = append(p.Lines, solve.Line{Column: solve.Wrench{0, 0, b[3][j], b[0][j], b[1][j], b[2][j]}, HiT: 9600})
	}
	r := solve.LeastSquares(p)
	if len(r.U) != 6 {
		t.Fatalf("status %v", r.Status)
	}
	for j, want := range []float64{-4252.264, -932.335, 7067.665, -6194.012, -2874.083, 5125.918} {
		near(t, "actuator", r.U[j], want, 1e-3) // printed to three decimals
	}
}

// Uniform beam of total length L on two supports b apart, overhangs a and c: R1 = w L (L − 2c)/(2b),
// piping-designer.com, overhanging beam, uniformly distributed load. Here w = 120 N/m, a = 0.5,
// b = 2, c = 1.5 m, so R1 = 120 × 4 × 1/4 = 120 N and R2 = 360 N.
func TestOverhangs(t *testing.T) {
	m := model(team(class(light, 1000), cable(-1.5, 0), cable(0.5, 0)), weighing(480, vec.V3{}))
	a := answer(t, m)
	near(t, "R1", a.Parts[0].Tension, 120, 1e-5)
	near(t, "R2", a.Parts[1].Tension, 360, 1e-5)
}
