package chart

import (
	"bytes"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/vugu/vugu"
	"github.com/vugu/vugu/staticrender"

	"cohoist/ui/figure"
)

func render(t *testing.T, b vugu.Builder) string {
	t.Helper()
	env, err := vugu.NewBuildEnv(&staticrender.RWMutexEventEnv{})
	if err != nil {
		t.Fatal(err)
	}
	var buf bytes.Buffer
	if err := staticrender.New(&buf).Render(env.RunBuild(b)); err != nil {
		t.Fatal(err)
	}
	out := buf.String()
	for _, bad := range []string{" style=", "NaN", "Inf", "e+", "e-0"} {
		if strings.Contains(out, bad) {
			t.Fatalf("%q in %s", bad, out)
		}
	}
	return out
}

func TestScales(t *testing.T) {
	for _, k := range []struct {
		name   string
		axis   Axis
		values []float64
		lo, hi float64
		ticks  int
	}{
		{"round", Axis{}, []float64{1, 9.3}, 0, 10, 6},
		{"from zero", Axis{Zero: true}, []float64{6, 9.3}, 0, 10, 6},
		{"whole", Axis{Whole: true}, []float64{1, 2, 3}, 1, 3, 3},
		{"one value", Axis{Zero: true}, []float64{4}, 0, 4, 5},
		{"log", Axis{Log: true}, []float64{0.25, 4}, 0.25, 4, 3},
		{"log, far", Axis{Log: true}, []float64{0.01, 1000}, 0.01, 1000, 6},
		{"with gaps", Axis{}, []float64{math.NaN(), 0, 1, math.Inf(1)}, 0, 1, 6},
	} {
		s, ok := newScale(k.axis, k.values, 0, 100, 5)
		if !ok || math.Abs(s.lo-k.lo) > 1e-12 || math.Abs(s.hi-k.hi) > 1e-12 || len(s.ticks) != k.ticks {
			t.Errorf("%s: from %g to %g with ticks %v, want from %g to %g with %d", k.name, s.lo, s.hi, s.ticks, k.lo, k.hi, k.ticks)
		}
		if a, b := s.at(s.lo), s.at(s.hi); math.Abs(a) > 1e-12 || math.Abs(b-100) > 1e-12 {
			t.Errorf("%s: ends at %g and %g", k.name, a, b)
		}
	}
	s, _ := newScale(Axis{Log: true}, []float64{1, 16}, 0, 100, 5)
	if got := s.at(4); math.Abs(got-50) > 1e-12 {
		t.Errorf("4 lies at %g between 1 and 16, want the middle", got)
	}
}

func TestLine(t *testing.T) {
	c := &Line{Title: "Turning against size", Summary: "Roll acceleration falls from 40 to 5.", X: Axis{Title: "size", Log: true}, Y: Axis{Title: "rad/s²", Log: true}, Now: 1,
		Series: []Series{{Name: "roll", X: []float64{0.5, 1, 2, 4}, Y: []float64{40, 20, 10, 5}}, {Name: "yaw", X: []float64{0.5, 1, 2, 4}, Y: []float64{8, math.NaN(), 2, 1}}}}
	out := render(t, c)
	for _, want := range []string{`role="img"`, `aria-label="Turning against size"`, "<desc>Roll acceleration falls from 40 to 5.</desc>", ">roll<", ">yaw<", `class="ch-now"`} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is missing", want)
		}
	}
	d := regexp.MustCompile(`class="ch-b" d="([^"]*)"`).FindStringSubmatch(out)
	if d == nil || strings.Count(d[1], "M") != 2 {
		t.Errorf("the line with a gap is %v, want two pieces", d)
	}
	// On two logarithmic axes y ∝ 1/x is straight.
	p := regexp.MustCompile(`class="ch-a" d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)`).FindStringSubmatch(out)
	if p == nil {
		t.Fatal("no first line")
	}
	var q [6]float64
	for i := range q {
		q[i], _ = strconv.ParseFloat(p[i+1], 64)
	}
	if turn := (q[2]-q[0])*(q[5]-q[3]) - (q[3]-q[1])*(q[4]-q[2]); math.Abs(turn) > 2 { // of some 5 000, two decimals
		t.Errorf("bent by %g", turn)
	}
	if out := render(t, &Line{Title: "none", Series: []Series{{Name: "a", X: []float64{1}, Y: []float64{math.NaN()}}}}); !strings.Contains(out, "Nothing to show yet.") {
		t.Error("an empty chart does not say so")
	}
}

// What is drawn over points stands where they are, once each, in a group that may hold buttons.
func TestMarks(t *testing.T) {
	var at [][2]float64
	c := &Line{Title: "front", Series: []Series{{Name: "", X: []float64{1, 2, 3}, Y: []float64{1, math.NaN(), 3}}, {Name: "other", X: []float64{1, 3}, Y: []float64{2, 2}}},
		Mark: func(k int, x, y float64) *vugu.VGNode {
			at = append(at, [2]float64{x, y})
			return figure.SVG("g", figure.Attrs{"id", "m" + strconv.Itoa(k)})
		}}
	out := render(t, c)
	if !strings.Contains(out, `role="group"`) || !strings.Contains(out, `id="m0"`) || strings.Contains(out, `id="m1"`) || !strings.Contains(out, `id="m2"`) || len(at) != 2 {
		t.Errorf("%v in %s", at, out)
	}
	if at[0] != [2]float64{left, height - bottom} || at[1] != [2]float64{width - right, top} {
		t.Errorf("the ends are at %v", at)
	}
}

func TestBarsAndMeter(t *testing.T) {
	b := &Bars{Title: "Utilisation", Limit: 0.8, Items: []Item{{"A", 0.5}, {"a very long name", 1.07}, {"C", math.NaN()}, {"D", math.Inf(1)}}}
	out := render(t, b)
	for _, want := range []string{"50\u00a0%", "107\u00a0% over", "not known", "limit 80\u00a0%", "a very …"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is missing", want)
		}
	}
	if out := render(t, &Bars{Title: "many", Items: make([]Item, 300)}); strings.Count(out, "<text") > 100 || !strings.Contains(out, "and 260 more") {
		t.Error("300 bars are not cut short and told of")
	}
	for value, want := range map[float64]string{0.5: "A: 50\u00a0%", 1.3: "A: 130\u00a0%, over the limit of 80\u00a0%", math.NaN(): "A: not known", -1: "A: −100\u00a0%", 1e9: "over the limit"} {
		m := &Meter{Label: "A", Value: value, Limit: 0.8}
		if out := render(t, m); !strings.Contains(out, want) {
			t.Errorf("%g: %q is missing in %s", value, want, out)
		}
	}
	if got := render(t, &Meter{Value: 0.8, Limit: 0.8}); strings.Contains(got, "over") {
		t.Error("at the limit counts as over")
	}
}

func TestClassesAreStyled(t *testing.T) {
	css, err := os.ReadFile("../../public/drawing.css")
	if err != nil {
		t.Fatal(err)
	}
	three := []Series{{Name: "a", X: []float64{1, 2}, Y: []float64{1, 2}}, {Name: "b", X: []float64{1, 2}, Y: []float64{1, 2}}, {Name: "c", X: []float64{1, 2}, Y: []float64{1, 2}}}
	out := render(t, &Line{Title: "t", Series: three, Now: 1.5, NowName: "now"}) + render(t, &Meter{Value: 2, Limit: 1}) +
		render(t, &Bars{Items: []Item{{"A", 2}, {"B", 0.1}}, Limit: 1})
	for _, m := range regexp.MustCompile(`class="([^"]*)"`).FindAllStringSubmatch(out, -1) {
		for _, c := range strings.Fields(m[1]) {
			if !regexp.MustCompile(`\.` + c + `\b`).Match(css) {
				t.Errorf("class %s has no rule in public/drawing.css", c)
			}
		}
	}
}
