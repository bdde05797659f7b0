package drawing

import (
	"bytes"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/vugu/vugu"
	"github.com/vugu/vugu/staticrender"

	"cohoist/core/plan"
	"cohoist/core/vec"
)

func render(t testing.TB, v *View) string {
	t.Helper()
	env, err := vugu.NewBuildEnv(&staticrender.RWMutexEventEnv{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := staticrender.New(&b).Render(env.RunBuild(v)); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

var (
	tags    = regexp.MustCompile(`<[a-z]`)
	numbers = regexp.MustCompile(`\s(d|x|y|cx|cy|r|viewBox|transform|aria-valuenow)="([^"]*)"`)
	valid   = map[string]*regexp.Regexp{
		"d":         regexp.MustCompile(`^([MLA](-?\d+(\.\d\d?)?[ ]?)+|Z)+$`),
		"transform": regexp.MustCompile(`^rotate\((-?\d+(\.\d\d?)?[ ]?){3}\)$`),
		"":          regexp.MustCompile(`^(-?\d+(\.\d\d?)?[ ]?)+$`),
	}
)

// sound checks every number of a rendered view, and that nothing in it needs an inline style.
func sound(t *testing.T, name, out string) {
	t.Helper()
	for _, m := range numbers.FindAllStringSubmatch(out, -1) {
		re := valid[m[1]]
		if re == nil {
			re = valid[""]
		}
		if !re.MatchString(m[2]) {
			t.Fatalf("%s: %s=%q", name, m[1], m[2])
		}
	}
	for _, bad := range []string{" style=", "NaN", "Inf", "<script"} {
		if strings.Contains(out, bad) {
			t.Fatalf("%s: %q in the page", name, bad)
		}
	}
}

// Elements the whole view may have, for it is drawn anew at each move of the pointer.
const elementsEight = 250

func TestFixturesRender(t *testing.T) {
	var css []byte
	for _, name := range []string{"drawing.css", "print.css"} {
		text, err := os.ReadFile("../../public/" + name)
		if err != nil {
			t.Fatal(err)
		}
		css = append(css, text...)
	}
	classes := regexp.MustCompile(`class="([^"]*)"`)
	for name, f := range fixtures {
		out := render(t, f().view())
		sound(t, name, out)
		n := len(tags.FindAllString(out, -1))
		t.Logf("%s: %d elements, %d bytes", name, n, len(out))
		if n > elementsEight {
			t.Errorf("%s: %d elements, at most %d", name, n, elementsEight)
		}
		for _, m := range classes.FindAllStringSubmatch(out, -1) {
			for _, c := range strings.Fields(m[1]) {
				if !regexp.MustCompile(`\.`+c+`\b`).Match(css) && !unstyled[c] {
					t.Errorf("%s: class %s has no rule in drawing.css or print.css", name, c)
				}
			}
		}
	}
}

// Classes that only mark a place for tests and pages.
var unstyled = map[string]bool{"dw-handles": false, "dw-handle-attach": true, "dw-handle-vehicle": true, "dw-handle-com": true,
	"dw-side": true, "dw-in-words": true, "dw-id": true}

func TestLargeTeamsStayBounded(t *testing.T) {
	for _, n := range []int{25, 200, 3000} {
		v := many(n).view()
		v.Selected = "v7"
		out := render(t, v)
		sound(t, whole(n), out)
		if e := len(tags.FindAllString(out, -1)); e > elementsEight {
			t.Errorf("%d vehicles: %d elements", n, e)
		} else {
			t.Logf("%d vehicles: %d elements, %d bytes", n, e, len(out))
		}
		if !strings.Contains(out, "attachment of v7") {
			t.Errorf("%d vehicles: the selected one has no handle", n)
		}
	}
	if w := render(t, many(3000).view()); !strings.Contains(w, "Only the first 400 of 3000 vehicles are drawn.") {
		t.Error("what is left out is not said")
	}
}

// Names are text, whatever they hold.
func TestNamesAreText(t *testing.T) {
	f := beam()
	f.plan.Team[0].ID, f.report.Vehicles[0].ID = `<b>"x</b>`, `<b>"x</b>`
	if out := render(t, f.view()); strings.Contains(out, "<b>") || !strings.Contains(out, "&lt;b&gt;") {
		t.Error("markup in a name came through")
	}
}

func TestNothingToDraw(t *testing.T) {
	out := render(t, &View{})
	sound(t, "empty", out)
	if !strings.Contains(out, "The payload has no dimensions yet") {
		t.Error("an empty plan is not told of")
	}
}

// Plans with numbers missing, infinite, huge, tiny and negative, and reports that do not match: drawn
// as far as they can be, without a panic and without a number that is none.
func TestWildPlans(t *testing.T) {
	const seed = 7
	r := rand.New(rand.NewPCG(seed, seed))
	wild := func() float64 {
		return []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e300, -1e300, 1e-300, 1e7, 1e-7, r.NormFloat64(), 1e5, math.MaxFloat64}[r.IntN(13)]
	}
	names := make([]string, 0, len(fixtures))
	for n := range fixtures {
		names = append(names, n)
	}
	for range 500 {
		f := fixtures[names[r.IntN(len(names))]]()
		at3 := func(v *vec.V3) { v[r.IntN(3)] = wild() }
		for range 1 + r.IntN(3) {
			s, m, v := &f.plan.Payload.Solids[0], &f.plan.Team[r.IntN(len(f.plan.Team))], &f.report.Vehicles[r.IntN(len(f.report.Vehicles))]
			switch r.IntN(16) {
			case 0:
				at3(&s.At)
			case 1:
				at3(&s.Turn)
			case 2:
				s.Size = []float64{wild(), wild(), wild()}[:r.IntN(4)]
			case 3:
				s.Length, s.OuterRadius, s.InnerRadius = wild(), wild(), wild()
			case 4:
				at3(&m.Attach)
			case 5:
				m.Yaw, m.Hold.Length, m.Hold.Lean = wild(), wild(), [2]float64{wild(), wild()}
			case 6:
				at3(&v.Position)
			case 7:
				at3(&v.Force)
			case 8:
				at3(&v.ThrustVector)
			case 9:
				v.Utilisation = wild()
			case 10:
				f.plan.Vehicles[m.Vehicle] = plan.Class{Rotors: r.IntN(9) - 2, Arm: wild(), RotorRadius: wild()}
			case 11:
				at3(&f.report.Payload.COM)
			case 12:
				f.report.Payload.Mass = wild()
			case 13:
				at3(&f.report.Team.Lean)
			case 14:
				f.plan.Site.Wind, f.plan.Site.WindTo, f.plan.Limits.Utilisation = wild(), wild(), wild()
			case 15:
				f.report.Vehicles = f.report.Vehicles[:r.IntN(len(f.report.Vehicles))+1]
				s.Shape, s.Mesh = plan.MeshBody, &plan.Mesh{Vertices: []vec.V3{{wild(), 0, 0}}, Triangles: [][3]int{{0, r.IntN(5) - 2, 0}}}
			}
		}
		v := f.view()
		v.turn.begin()
		v.turn.look(wild(), wild())
		sound(t, "wild", render(t, v))
		if len(v.handles) > 0 {
			v.begin(v.handles[r.IntN(len(v.handles))].At, reachMouse)
			v.moveTo(Point{r.Float64() * 360, r.Float64() * 600}, r.IntN(2) == 0)
			sound(t, "wild, dragged", render(t, v))
		}
	}
}

// What the picture says over the limit, it says in shape and in words.
func TestOverTheLimit(t *testing.T) {
	out := render(t, overloaded().view())
	for _, want := range []string{`class="dw-over"`, "A\u2002107\u00a0%, over", "over the accepted 80\u00a0%", "Eight-sided frame"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is missing", want)
		}
	}
	if out := render(t, beam().view()); strings.Contains(out, `class="dw-over"`) || strings.Contains(out, "Eight-sided") {
		t.Error("a sound team is marked")
	}
}

func TestWordsFollowThePlan(t *testing.T) {
	b := newBoard(beam())
	i, _ := b.handle(t, KindAttach, inPlan, "A")
	before := b.scene.Words(b.Units)
	b.press(i, "ArrowUp", stepShift)
	after := b.scene.Words(b.Units)
	if !strings.Contains(before, "Vehicle A hangs on to x 1.1\u00a0m, y 0\u00a0m, z 0.03\u00a0m by a cable of 3\u00a0m") ||
		!strings.Contains(after, "Vehicle A hangs on to x 1.1\u00a0m, y 0.1\u00a0m") {
		t.Errorf("before: %s\nafter: %s", before, after)
	}
	if l := b.scene.label(b.handles[i]); l != "attachment of A; arrow keys move it" {
		t.Errorf("label %q", l)
	}
	if w := b.scene.where(b.handles[i], b.Units); w != "x 1.1\u00a0m, y 0.1\u00a0m" {
		t.Errorf("where %q", w)
	}
	inches := Units{Length: Unit{"in", 0.0254}, Comma: true}
	if w := b.scene.where(b.handles[i], inches); w != "x 43,31\u00a0in, y 3,94\u00a0in" {
		t.Errorf("where %q", w)
	}
}

// Elevation and plan share x, and all that is drawn of the scene lies on the sheet.
func TestSheetIsAlignedAndFits(t *testing.T) {
	for name, f := range fixtures {
		s := newScene(f().plan, f().report, "", nil)
		fr := fit(s)
		if fr.Elevation.X != fr.Plan.X {
			t.Errorf("%s: the views are not aligned", name)
		}
		if !fr.holds(s) {
			t.Errorf("%s: the scene does not fit its own frame", name)
		}
		e, p := s.Sheet(fr, Units{}, nil)
		for _, l := range []List{e, p} {
			for _, sh := range l {
				for _, g := range sh.Path {
					if g.Op != 'Z' && (g.P.X < -1 || g.P.X > SheetWidth+1 || g.P.Y < -1 || g.P.Y > fr.Height+1) {
						t.Errorf("%s: %s reaches %v beyond the sheet of %g × %g", name, sh.Class, g.P, SheetWidth, fr.Height)
					}
				}
			}
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	for _, name := range []string{"beam", "eight", "boulder"} {
		b.Run(name, func(b *testing.B) {
			v := fixtures[name]().view()
			for b.Loop() {
				v.Build(nil)
			}
		})
	}
}

// A vehicle is drawn where the report has it, and where the plan puts it while the report lags behind.
func TestVehiclesStandWhereTheReportHasThem(t *testing.T) {
	for name, f := range fixtures {
		f := f()
		s := newScene(f.plan, f.report, "", nil)
		for i, c := range s.Craft {
			if want := s.Turn.Mul(f.report.Vehicles[i].Position); !close3(c.Centre, want, 1e-12) {
				t.Errorf("%s: %s at %v, want %v", name, c.ID, c.Centre, want)
			}
		}
	}
	f := beam()
	f.plan.Team[0].Attach = vec.V3{0.5, 0, 0.03} // moved, the report not yet made again
	if c := newScene(f.plan, f.report, "", nil).Craft[0]; !close3(c.Centre, vec.V3{0.5, 0, 3.03}, 1e-12) {
		t.Errorf("vehicle A lags behind at %v", c.Centre)
	}
}
