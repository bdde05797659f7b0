package way

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"testing"

	"cohoist/core/vec"
)

// Fifty random ways by cvxopt's coneqp on the coefficients of the polynomials (testdata/way/ways.py): the cost and
// the places half way along every leg.
func TestAgainstQuadraticSolver(t *testing.T) {
	file, err := os.Open("../../testdata/way/ways.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines := bufio.NewScanner(file)
	lines.Buffer(nil, 1<<20)
	count, held := 0, 0
	for lines.Scan() {
		var row struct {
			At        []vec.V3
			Heading   []*float64
			Durations []float64
			Boxes     []struct {
				Leg      int
				Min, Max vec.V3
			}
			Arm, Cost float64
			Middle    [][4]float64
		}
		if err := json.Unmarshal(lines.Bytes(), &row); err != nil {
			t.Fatal(err)
		}
		r := Route{Arm: row.Arm}
		for i, at := range row.At {
			p := Point{At: at, Heading: math.NaN()}
			if h := row.Heading[i]; h != nil {
				p.Heading = *h
			}
			r.Points = append(r.Points, p)
		}
		for _, b := range row.Boxes {
			r.Boxes = append(r.Boxes, Box(b))
		}
		p := path(t, r, row.Durations)
		if !(math.Abs(p.Cost-row.Cost) <= 1e-7*row.Cost) {
			t.Errorf("way %d: cost %.12g, want %.12g", count, p.Cost, row.Cost)
		}
		for k, want := range row.Middle {
			x := p.on(k, 0.5)
			got := [4]float64{x.At[0], x.At[1], x.At[2], x.Heading}
			for a := range got {
				if !(math.Abs(got[a]-want[a]) <= 1e-7*(1+math.Abs(want[a]))) {
					t.Errorf("way %d, leg %d, axis %d: %.10g half way, want %.10g", count, k, a, got[a], want[a])
				}
			}
		}
		count++
		held += p.Held
	}
	if count != 50 || held < 100 {
		t.Errorf("%d ways, %d control points on the sides of boxes", count, held)
	}
}
