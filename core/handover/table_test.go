package handover_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"cohoist/core/example"
	"cohoist/core/handover"
	"cohoist/core/report"
)

// rows reads a table as RFC 4180 has it: encoding/csv, and CR LF at every end of line.
func rows(t *testing.T, data []byte) (head []string, lines [][]string) {
	t.Helper()
	if n := bytes.Count(data, []byte("\n")); n == 0 || n != bytes.Count(data, []byte("\r\n")) {
		t.Fatalf("%d lines, %d of them end with CR LF", n, bytes.Count(data, []byte("\r\n")))
	}
	all, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[0], all[1:]
}

func TestTablesSayWhatTheReportSays(t *testing.T) {
	same := func(cell string, x float64) {
		t.Helper()
		got, err := strconv.ParseFloat(cell, 64)
		if math.IsNaN(x) && cell == "" {
			return
		}
		if err != nil || math.Abs(got-x) > 1e-8*math.Max(1, math.Abs(x)) { // nine figures
			t.Errorf("cell %q for %v", cell, x)
		}
	}
	for _, e := range example.All {
		l := lift(t, e.Name)
		_, checks := rows(t, handover.ChecksCSV(l.Report))
		for i, c := range l.Report.Checks {
			if checks[i][0] != c.ID || checks[i][2] != string(c.Status) || checks[i][8] != c.Sentence || checks[i][6] != c.Unit {
				t.Errorf("%s: %q for %+v", e.Name, checks[i], c)
			}
			same(checks[i][4], c.Demand)
			same(checks[i][7], c.Utilisation)
		}
		head, vehicles := rows(t, handover.VehiclesCSV(l.Report))
		if head[7] != "tension_n" || head[14] != "utilisation" || len(vehicles) != len(l.Report.Vehicles) {
			t.Fatalf("%s: %q", e.Name, head)
		}
		for i, v := range l.Report.Vehicles {
			same(vehicles[i][7], v.Tension)
			same(vehicles[i][14], v.Utilisation)
			same(vehicles[i][18], v.Position[2])
		}
	}
}

// A beam's diagrams end without shear and moment, for nothing is beyond its ends.
func TestBeamTable(t *testing.T) {
	l := lift(t, "handrail-beam")
	head, points := rows(t, handover.BeamCSV(*l.Report.Beam))
	if len(points) != len(l.Report.Beam.Points) || head[2] != "moment_n_m" {
		t.Fatalf("%d points, %q", len(points), head)
	}
	for _, end := range [][]string{points[0], points[len(points)-1]} {
		for _, cell := range end[1:3] {
			if x, err := strconv.ParseFloat(cell, 64); err != nil || math.Abs(x) > 1e-6 {
				t.Errorf("at the end %q", end)
			}
		}
	}
}

// Names that strangers chose stay texts, in a spreadsheet too.
func TestNamesInTables(t *testing.T) {
	r := report.Report{Vehicles: []report.Vehicle{{ID: `=1+1`}, {ID: `a "b", c`}}}
	_, vehicles := rows(t, handover.VehiclesCSV(r))
	for i, want := range []string{`'=1+1`, `a "b", c`} {
		if vehicles[i][0] != want {
			t.Errorf("%q for %q", vehicles[i][0], want)
		}
	}
}

// Set-points of a leaning rigid team: level places are the payload's turned by the lean, thrust up to the drag.
func TestSetPointsOfALeaningTeam(t *testing.T) {
	p, _ := example.Plan("lattice-panel")
	p.Site.Wind, p.Site.WindTo = 6, 20
	p.Team[0].Yaw = 30
	l, err := handover.Of(p)
	if err != nil {
		t.Fatal(err)
	}
	head, points := rows(t, l.FormationCSV())
	at := map[string]int{}
	for i, key := range head {
		at[key] = i
	}
	get := func(row []string, key string) float64 {
		x, err := strconv.ParseFloat(row[at[key]], 64)
		if err != nil {
			t.Fatalf("%s is %q", key, row[at[key]])
		}
		return x
	}
	lean := l.Report.Team.Lean.Norm() * math.Pi / 180
	if lean < 0.01 {
		t.Fatalf("the team leans %v", lean)
	}
	for i, row := range points {
		// A turn keeps lengths, and tips the thrust of upright rotors by the lean.
		own := math.Hypot(math.Hypot(get(row, "x_m"), get(row, "y_m")), get(row, "z_m"))
		level := math.Hypot(math.Hypot(get(row, "level_x_m"), get(row, "level_y_m")), get(row, "level_z_m"))
		if math.Abs(own-level) > 1e-7 {
			t.Errorf("%s is %v or %v from the origin", row[0], own, level)
		}
		if up := get(row, "thrust_level_z"); math.Abs(up-math.Cos(lean)) > 1e-7 {
			t.Errorf("%s pushes up by %v of its thrust, want %v", row[0], up, math.Cos(lean))
		}
		if row[at["cable_x"]] != "" || row[at["hold"]] != "rigid" {
			t.Errorf("%q has a cable", row)
		}
		if i == 0 && math.Abs(get(row, "heading_deg")-30) > 1 { // the lean of some degrees hardly turns it
			t.Errorf("heading %v, planned 30°", get(row, "heading_deg"))
		}
	}
	if strings.Count(string(l.FormationCSV()), "\r\n") != len(p.Team)+1 {
		t.Error("a row a vehicle")
	}
}
