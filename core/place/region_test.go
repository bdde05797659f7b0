package place

import (
	"math"
	"strings"
	"testing"

	"cohoist/core/vec"
)

func TestParseHoles(t *testing.T) {
	for _, c := range []struct {
		text string
		unit float64
		want []vec.V3
		err  string
	}{
		{"x,y\n0,0\n150,0\n", 0.001, []vec.V3{{0, 0, 0.05}, {0.15, 0, 0.05}}, ""},
		{"\ufeffx;y;z\r\n1,5;-0,25;0,1\r\n", 1, []vec.V3{{1.5, -0.25, 0.1}}, ""},
		{"1 2 # a note\n\n1.5\t2", 1, []vec.V3{{1, 2, 0.05}, {1.5, 2, 0.05}}, ""},
		{"1,5 2,5\n", 1, []vec.V3{{1.5, 2.5, 0.05}}, ""},
		{"1, 2, 3\n4 , 5,\n", 1, []vec.V3{{1, 2, 3}, {4, 5, 0.05}}, ""},
		{"0,0\nNaN,1\n", 1, nil, "line 2"},
		{"0,0\n1e9,1\n", 1, nil, "line 2"},
		{"0,0\n<script>,1\n", 1, nil, "line 2"},
		{"0\n", 1, nil, "one number"},
		{"", 1, nil, "no holes"},
		{strings.Repeat("1,2\n", 6000), 1, nil, "the most is 5000"},
	} {
		got, err := ParseHoles(c.text, 0.05, c.unit)
		if c.err != "" {
			if err == nil || !strings.Contains(err.Error(), c.err) {
				t.Errorf("%.20q: %v, want an error with %q", c.text, err, c.err)
			}
			continue
		}
		if err != nil || len(got) != len(c.want) {
			t.Errorf("%q: %v, %v", c.text, got, err)
			continue
		}
		for i := range got {
			if got[i].Sub(c.want[i]).Norm() > 1e-12 {
				t.Errorf("%q: %v, want %v", c.text, got, c.want)
			}
		}
	}
}

func FuzzParseHoles(f *testing.F) {
	f.Add("x,y\n1,2")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ParseHoles(text, 0, 1)
		if err == nil && len(got) == 0 {
			t.Error("neither holes nor an error")
		}
		for _, p := range got {
			if math.IsNaN(p.Norm()) || p.Norm() > 2000 {
				t.Errorf("hole at %v", p)
			}
		}
	})
}

func TestPatternsOfHoles(t *testing.T) {
	if got := InRow(vec.V3{-3, 0, 0}, vec.V3{3, 0, 0}, 0.15); len(got) != 41 || math.Abs(got[40][0]-3) > 1e-12 || math.Abs(got[1][0]+2.85) > 1e-12 {
		t.Errorf("a row of 6 m every 150 mm: %d holes, %v", len(got), got)
	}
	square := []vec.V3{{0, 0, 1}, {1, 0, 1}, {1, 1, 1}, {0, 1, 1}}
	if got := OnEdges(square, 0.5); len(got) != 8 || got[1] != (vec.V3{0.5, 0, 1}) {
		t.Errorf("along the edges: %v", got)
	}
	if got := OnGrid(square, 0.25); len(got) != 25 || got[12] != (vec.V3{0.5, 0.5, 1}) {
		t.Errorf("a grid: %d", len(got))
	}
	ell := Zone{Points: []vec.V3{{0, 0, 0}, {2, 0, 0}, {2, 1, 0}, {1, 1, 0}, {1, 2, 0}, {0, 2, 0}}}
	for p, want := range map[vec.V3]bool{{0.5, 1.5, 0}: true, {1.5, 1.5, 0}: false, {1, 1, 0}: true, {2, 0.5, 0}: true, {2.1, 0.5, 0}: false} {
		if ell.Contains(p) != want {
			t.Errorf("%v in the ell: %v", p, !want)
		}
	}
	kept := Outside(OnGrid(square, 0.25), []Zone{{Points: []vec.V3{{0.5, 0.5, 0}}, Radius: 0.26}})
	if len(kept) != 20 {
		t.Errorf("%d holes outside a circle that covers five", len(kept))
	}
	if o := orbits(forty(), [2]bool{true, true}); len(o) != 12 { // 4 columns of 2 pairs and one on the axis
		t.Errorf("%d orbits", len(o))
	}
	if n := len(InRow(vec.V3{}, vec.V3{1, 0, 0}, 1e-9)); n > mostHoles {
		t.Errorf("%d holes", n)
	}
}
