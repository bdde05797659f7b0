package way

import (
	"math"
	"math/rand/v2"
	"testing"

	"cohoist/core/vec"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*(1+math.Abs(want))) {
		t.Errorf("%s = %.12g, want %.12g", what, got, want)
	}
}

// along is a way on the x axis.
func along(xs ...float64) Route {
	r := Route{Arm: 1}
	for _, x := range xs {
		r.Points = append(r.Points, Point{At: vec.V3{x, 0, 0}, Heading: math.NaN(), Time: math.NaN()})
	}
	return r
}

func ones(n int) []float64 {
	d := make([]float64, n)
	for i := range d {
		d[i] = 1
	}
	return d
}

func path(t *testing.T, r Route, durations []float64) *Path {
	t.Helper()
	p, err := r.Path(durations)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// From rest to rest: 35 s⁴ − 84 s⁵ + 70 s⁶ − 20 s⁷ and its peaks, references 9.1 (derived; principle of Flash and Hogan
// 1985): speed 35/16 at the middle, acceleration 84√5/25 at s = 0.276393, jerk 52.5 at the middle, snap 840 at the
// ends, cost 100 800.
func TestRestToRest(t *testing.T) {
	const A, T = 3.0, 2.0
	p := path(t, along(0, A), []float64{T})
	for k, want := range []float64{0, 0, 0, 0, 35, -84, 70, -20} {
		near(t, "coefficient", p.legs[0][0][k], A*want, 1e-14)
	}
	near(t, "speed", p.At(T / 2).Velocity[0], 35.0/16*A/T, 1e-14)
	near(t, "acceleration", p.At(T * (5 - math.Sqrt(5)) / 10).Acceleration[0], 84*math.Sqrt(5)/25*A/(T*T), 1e-14)
	near(t, "jerk", p.At(T / 2).Jerk[0], -52.5*A/(T*T*T), 1e-14)
	near(t, "snap", p.At(0).Snap[0], 840*A/(T*T*T*T), 1e-14)
	near(t, "cost", p.Cost, 100800*A*A/pow(T, 7), 1e-13)
}

// Two segments of 1 s, references 9.2 (derived by two routes: a 16 × 16 system of continuity to the sixth derivative,
// and the quadratic program with continuity to the third), and six, 9.3 (points of a public teaching script).
func TestSegments(t *testing.T) {
	p := path(t, along(0, 1, 3), ones(2))
	for k, want := range []float64{0, 0, 0, 0, -0.4375, 4.725, -4.41875, 1.13125} {
		near(t, "first", p.legs[0][0][k], want, 1e-10) // the matrix of snap has a condition of about 1e6
	}
	for k, want := range []float64{1, 3.28125, 2.1, -3.28125, -3.5, 1.96875, 3.5, -2.06875} {
		near(t, "second", p.legs[1][0][k], want, 1e-10)
	}
	near(t, "cost", p.Cost, 15151.5, 1e-11)
	near(t, "there and back", path(t, along(0, 1, 0), ones(2)).Cost, 32256, 1e-12)

	six := path(t, along(1, 4, 2, 7, 15, 2, 8), ones(6))
	joints := [][3]float64{{5.124226, -7.517175, -49.292792}, {-6.643419, 6.437769, 69.002478}, {18.597134, 13.540264, -97.367207},
		{-13.993150, -42.547922, 99.128754}, {4.938082, 40.099804, -107.083257}}
	for i, want := range joints {
		s := six.At(float64(i + 1))
		near(t, "velocity", s.Velocity[0], want[0], 1e-6) // printed to six places
		near(t, "acceleration", s.Acceleration[0], want[1], 1e-6)
		near(t, "jerk", s.Jerk[0], want[2], 1e-6)
	}
	near(t, "cost of six", six.Cost, 511293.0293, 1e-9)
}

func random(seed uint64, points, boxes int) (Route, []float64) {
	d := rand.New(rand.NewPCG(seed, 20))
	r := Route{Arm: 0.5 + d.Float64()}
	for range points {
		p := Point{At: vec.V3{8 * d.Float64(), 8 * d.Float64(), 4 * d.Float64()}, Heading: 6*d.Float64() - 3, Time: math.NaN()}
		if d.IntN(3) == 0 {
			p.Heading = math.NaN()
		}
		r.Points = append(r.Points, p)
	}
	r.Points[0].Heading = 0
	durations := make([]float64, points-1)
	for k := range durations {
		durations[k] = 0.5 + 3*d.Float64()
	}
	for range boxes {
		b := Box{Leg: d.IntN(points - 1)}
		for a := range 3 {
			u, v := r.Points[b.Leg].At[a], r.Points[b.Leg+1].At[a]
			b.Min[a], b.Max[a] = math.Min(u, v)-0.3*d.Float64(), math.Max(u, v)+0.3*d.Float64()
		}
		r.Boxes = append(r.Boxes, b)
	}
	return r, durations
}

// What every way keeps: its points; continuity to the third derivative always, and without boxes to the sixth (the
// natural condition of least snap); its boxes; the change of cost against differences; and time scaling, cost ∝ T⁻⁷.
func TestLaws(t *testing.T) {
	for seed := range uint64(40) {
		boxes := int(seed%4) * 2
		r, durations := random(seed, 3+int(seed%8), boxes)
		p := path(t, r, durations)
		for k := range durations {
			d := p.on(k, 0).At.Sub(r.Points[k].At).Norm() + p.on(k, 1).At.Sub(r.Points[k+1].At).Norm()
			near(t, "place", d, 0, 1e-10)
			if k == 0 {
				continue
			}
			last := 3
			if boxes == 0 {
				last = 6
			}
			for a := range 4 {
				for n := range last + 1 {
					u := derivative(&p.legs[k-1][a], n, 1) * pow(durations[k-1], -n)
					v := derivative(&p.legs[k][a], n, 0) * pow(durations[k], -n)
					if !(math.Abs(u-v) <= 1e-6*(1+math.Abs(u))) {
						t.Errorf("seed %d: derivative %d of axis %d jumps from %g to %g at point %d", seed, n, a, u, v, k)
					}
				}
			}
		}
		for _, b := range r.Boxes {
			for i := range 51 {
				at := p.on(b.Leg, float64(i)/50).At
				for a := range 3 {
					if at[a] < b.Min[a]-1e-9 || at[a] > b.Max[a]+1e-9 {
						t.Fatalf("seed %d: %v is outside %v", seed, at, b)
					}
				}
			}
		}
		twice := append([]float64(nil), durations...)
		for k := range twice {
			twice[k] *= 2
		}
		near(t, "cost at half speed", path(t, r, twice).Cost*128, p.Cost, 1e-8)
		for k := range durations {
			const h = 1e-5
			moved := append([]float64(nil), durations...)
			moved[k] += h
			up := path(t, r, moved).Cost
			moved[k] -= 2 * h
			down := path(t, r, moved).Cost
			if got, want := p.Change[k], (up-down)/(2*h); !(math.Abs(got-want) <= 1e-5*(math.Abs(want)+p.Cost)) {
				t.Errorf("seed %d: cost changes by %g a second of leg %d, differences say %g", seed, got, k, want)
			}
		}
	}
}

func TestRefused(t *testing.T) {
	box := Box{Leg: 0, Min: vec.V3{0.5, -1, -1}, Max: vec.V3{2, 1, 1}}
	for _, row := range []struct {
		r    Route
		d    []float64
		want error
	}{
		{along(1), nil, ErrPoints}, {along(1, 2), []float64{0}, ErrDuration}, {along(1, 2), []float64{1, 1}, ErrDuration},
		{Route{Points: along(0, 1).Points, Boxes: []Box{box}}, []float64{1}, ErrOutside},
		{Route{Points: along(0, 1).Points, Boxes: []Box{{Leg: 1}}}, []float64{1}, ErrLeg},
		{along(0, math.Inf(1), 2), ones(2), ErrNumbers},
	} {
		if _, err := row.r.Path(row.d); err != row.want {
			t.Errorf("%v, durations %v: %v, want %v", row.r.Points, row.d, err, row.want)
		}
	}
}
