package report_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/report"
)

var update = flag.Bool("update", false, "write the golden reports again")

// Golden reports find changes: each plan in testdata/golden has its report beside it as text, to
// four figures: how ties are shared is known to about 1e-5 of the thrust, the rest far better, and
// the laws and the hand cases hold those to their own tolerances.
func TestGolden(t *testing.T) {
	plans, err := filepath.Glob("../../testdata/golden/*.plan.json")
	if err != nil || len(plans) < 5 {
		t.Fatalf("%d golden plans, %v", len(plans), err)
	}
	for _, file := range plans {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, faults := plan.Decode(text)
		if len(faults) > 0 {
			t.Fatalf("%s: %v", file, faults)
		}
		got := sheet(report.Build(p))
		golden := strings.TrimSuffix(file, ".plan.json") + ".report.txt"
		if *update {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s changed (make golden writes it again; read the diff):\n%s", golden, firstChange(string(want), got))
		}
	}
}

// sheet is a report as text.
func sheet(r report.Report) string {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("%s, governed by %s", r.Verdict, r.Governing)
	line("%s", r.Sentence)
	line("payload %s kg at %s m, inertia %s kg m², drag area %s m²", figures(r.Payload.Mass), figures(r.Payload.COM[:]...), figures(r.Payload.Inertia[:]...), figures(r.Payload.DragArea[:]...))
	line("team %s kg at %s m, inertia %s kg m², lean %s°, air %s kg/m³", figures(r.Team.Mass), figures(r.Team.COM[:]...), figures(r.Team.Inertia[:]...), figures(r.Team.Lean[:]...), figures(r.Team.Density))
	line("utilisation %.5f, largest payload %.4f kg", r.Team.Utilisation, r.Team.LargestPayload)
	line("power %s W, held for %s s, ended by %v %s", figures(r.Team.Power), figures(r.Team.Hold), r.Team.HoldEnds, r.Team.HoldBy)
	for _, c := range r.Checks {
		line("%-16s %-14s %-10s %s of %s %s: %s", c.ID, c.Status, c.Where, figures(c.Demand), figures(c.Capacity), c.Unit, c.Sentence)
	}
	for _, v := range r.Vehicles {
		line("%s: force %s N, moment %s N m, tension %s N at %s°, thrust %s of %s N (%s), tilt %s°, at %s m", v.ID, hundredths(v.Force[:]...), hundredths(v.Moment[:]...),
			hundredths(v.Tension), hundredths(v.CableAngle), hundredths(v.Thrust), hundredths(v.ThrustMax), figures(v.Utilisation), hundredths(v.Tilt), hundredths(v.Position[:]...))
	}
	for _, m := range []struct {
		name string
		of   report.Moves
	}{{"team", r.Agility.Team}, {"solo", r.Agility.Solo}, {"ratio", r.Agility.Ratio}} {
		line("%s: roll %s pitch %s yaw %s N m; %s %s %s rad/s²; climb %s N %s m/s², side %s m/s²; 30° %s s, 360° %s s", m.name,
			figures(m.of.Roll[:]...), figures(m.of.Pitch[:]...), figures(m.of.Yaw[:]...), figures(m.of.RollAcc[:]...), figures(m.of.PitchAcc[:]...), figures(m.of.YawAcc[:]...),
			figures(m.of.Climb), figures(m.of.ClimbAcc), figures(m.of.SideAcc), figures(m.of.TurnSmall[:]...), figures(m.of.TurnFull[:]...))
	}
	for _, list := range [][]string{r.LeftOut, r.Assumptions, r.Notes, r.Missing, r.Unknown} {
		for _, s := range list {
			line("- %s", s)
		}
	}
	return b.String()
}

// figures writes numbers to four figures; residual-sized ones as 0 and NaN as a dash.
func figures(x ...float64) string {
	parts := make([]string, len(x))
	for i, v := range x {
		switch {
		case math.IsNaN(v):
			parts[i] = "–"
		case math.Abs(v) < 1e-4:
			parts[i] = "0"
		default:
			parts[i] = fmt.Sprintf("%.4g", v)
		}
	}
	return strings.Join(parts, " ")
}

// hundredths writes numbers to two decimals, without a sign on 0: ties are shared to about 1e-5 of
// the thrust, and a small part of a force is all noise beyond.
func hundredths(x ...float64) string {
	parts := make([]string, len(x))
	for i, v := range x {
		parts[i] = strings.TrimSuffix(fmt.Sprintf("%.2f", v), ".00")
		if math.IsNaN(v) {
			parts[i] = "–"
		} else if parts[i] == "-0" {
			parts[i] = "0"
		}
	}
	return strings.Join(parts, " ")
}

func firstChange(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range min(len(w), len(g)) {
		if w[i] != g[i] {
			return fmt.Sprintf("line %d\nwas %s\nnow %s", i+1, w[i], g[i])
		}
	}
	return "one is longer"
}
