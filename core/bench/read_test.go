package bench

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"
)

// measured is a vehicle of 27 g on a scale, all four rotors and its avionics: a thrust investigation of Bitcraze, published at
// wiki.bitcraze.io/misc:investigations:thrust and in the documentation of its firmware, every row.
const measured = `Amps,Thrust (g),Voltage,PWM (%),Average RPM
0.24,0.0,4.01,0,0
0.37,1.6,3.98,6.25,4485
0.56,4.8,3.95,12.5,7570
0.75,7.9,3.92,18.75,9374
0.94,10.9,3.88,25,10885
1.15,13.9,3.84,31.25,12277
1.37,17.3,3.80,37.5,13522
1.59,21.0,3.76,43.25,14691
1.83,24.4,3.71,50,15924
2.11,28.6,3.67,56.25,17174
2.39,32.8,3.65,62.5,18179
2.71,37.3,3.62,68.75,19397
3.06,41.7,3.56,75,20539
3.46,46.0,3.48,81.25,21692
3.88,51.9,3.40,87.5,22598
4.44,57.9,3.30,93.75,23882
`

func rowsOf(t *testing.T, text string) (*Table, []string) {
	t.Helper()
	s, err := Cut(text)
	if err != nil {
		t.Fatal(err)
	}
	rows, notes, err := Rows(s, Guess(s))
	if err != nil {
		t.Fatal(err)
	}
	table, err := New(rows)
	if err != nil {
		t.Fatal(err)
	}
	return table, notes
}

// The published table is read as it stands: power is volts times amperes. It hovers (27 g) between two rows, and at their power.
func TestMeasured(t *testing.T) {
	table, notes := rowsOf(t, measured)
	if len(table.Rows) != 16 || len(notes) != 0 {
		t.Errorf("%d rows, %q", len(table.Rows), notes)
	}
	last := table.Rows[15]
	near(t, "thrust", last.Thrust, 0.0579*9.80665, 1e-12)
	near(t, "power", last.Power, 4.44*3.30, 1e-12)
	near(t, "speed", last.Speed, 23882*rpm, 1e-12)
	near(t, "throttle", last.Throttle, 0.9375, 1e-12)
	near(t, "voltage", last.Voltage, 3.30, 1e-12)
	hover, ok := table.Power(0.027 * 9.80665)
	if !ok || hover < 1.83*3.71 || hover > 2.11*3.67 {
		t.Errorf("hovers at %g W", hover)
	}
}

// The same rows as a table of another country, other separators, units and names; shuffled, with repeats, remarks, blank lines and a line of units.
func TestSpellings(t *testing.T) {
	want, _ := rowsOf(t, measured)
	lines := strings.Split(strings.TrimSpace(measured), "\n")
	semicolon := strings.ReplaceAll(strings.ReplaceAll(measured, ",", ";"), ".", ",")
	tab := "# scale 1\n\n" + strings.ReplaceAll(measured, ",", "\t")
	shuffled := lines[0] + "\n" + lines[9] + "\n"
	for i := 16; i > 0; i-- {
		shuffled += lines[i] + "\n"
	}
	unitsBelow := strings.Replace(measured, lines[0], "Current,Thrust,Voltage,Throttle,Motor speed\nA,g,V,%,RPM", 1)
	for name, text := range map[string]string{
		"decimal commas": semicolon, "tabs and a remark": tab, "shuffled, a row twice": shuffled, "Windows": "\ufeff" + strings.ReplaceAll(measured, "\n", "\r\n"),
		"bars": strings.ReplaceAll(measured, ",", "|"), "in quotes": strings.ReplaceAll(measured, "Thrust (g)", `"Thrust (g)"`),
		"a line of units": unitsBelow,
	} {
		got, notes := rowsOf(t, text)
		if len(got.Rows) != len(want.Rows) {
			t.Errorf("%s: %d rows", name, len(got.Rows))
			continue
		}
		for i, r := range got.Rows {
			w := want.Rows[i]
			for k, x := range [][2]float64{{r.Throttle, w.Throttle}, {r.Thrust, w.Thrust}, {r.Power, w.Power}, {r.Speed, w.Speed}, {r.Voltage, w.Voltage}} {
				if math.Abs(x[0]-x[1]) > 1e-12*math.Max(1, x[1]) {
					t.Errorf("%s: row %d, number %d is %g, want %g", name, i, k, x[0], x[1])
				}
			}
		}
		if name == "shuffled, a row twice" && (len(notes) != 1 || notes[0] != "1 row repeats a throttle or a thrust and was averaged with it.") {
			t.Errorf("%s: %q", name, notes)
		}
		if name == "a line of units" && (len(notes) != 1 || notes[0] != "Left out for want of thrust or power, or with one below zero: line 2.") {
			t.Errorf("%s: %q", name, notes)
		}
	}
}

// Throttle without a unit, in microseconds, and units by name.
func TestUnits(t *testing.T) {
	for head, want := range map[string][5]float64{ // throttle, thrust, power, speed, voltage of the second row
		"throttle;thrust_N;power_W;rpm;voltage_V":                              {0.5, 4, 50, 6000 * rpm, 16},
		"ESC signal (µs);Thrust (kgf);Electrical Power (W);Motor Speed (Hz);V": {-0.95, 4 * 9.80665, 50, 6000 * 60 * rpm, math.NaN()},
		"Throttle [%];Thrust [lbf];Power [kW];Rotation [rad/s];Voltage [mV]":   {0.5, 4 * 4.4482216152605, 5e4, 6000, 0.016},
		"Throttle %;Thrust/oz;Power;Speed (rpm);Volts":                         {0.5, 4 * 4.4482216152605 / 16, 50, 6000 * rpm, 16},
	} {
		s, err := Cut(head + "\n0;0;1;0;16.5\n50;4;50;6000;16\n100;9;160;9000;15\n")
		if err != nil {
			t.Fatal(err)
		}
		rows, _, err := Rows(s, Guess(s))
		if err != nil {
			t.Errorf("%s: %v", head, err)
			continue
		}
		r := rows[1]
		for k, x := range [][2]float64{{r.Throttle, want[0]}, {r.Thrust, want[1]}, {r.Power, want[2]}, {r.Speed, want[3]}, {r.Voltage, want[4]}} {
			if math.Abs(x[0]-x[1]) > 1e-12*math.Abs(x[1]) || math.IsNaN(x[0]) != math.IsNaN(x[1]) {
				t.Errorf("%s: number %d is %g, want %g", head, k, x[0], x[1])
			}
		}
	}
}

// What is wrong is said in a sentence that names it.
func TestFaults(t *testing.T) {
	for text, says := range map[string]string{
		"":                                      "The file is empty.",
		"1,2,3\n4,5,6":                          "Line 1 holds numbers, but no line before it names the columns.",
		"a,b\n" + strings.Repeat("1,2\n", 5001): "The file has more than 5000 lines; keep the rows of one test.",
		strings.Repeat("x", 1<<20+1):            "The file is larger than 1 MB; keep the rows of one test.",
		"\xff\xfea,b":                           "The file is not text in UTF-8; save it as CSV.",
		"only one column\n1\n2":                 "The file has no line with the names of its columns.",
		"Thrust (N),Time (s)\n1,2\n3,4":         "The file has no column for power, and none for voltage and current to compute it from. Its columns are “Thrust (N)”, “Time (s)”.",
		"Power (W),RPM\n1,2\n3,4":               "The file has no column for thrust. Its columns are “Power (W)”, “RPM”.",
		"Thrust,Power (W)\n1,2\n3,4":            "Choose the unit of thrust, column “Thrust”: N, gf, kgf, lbf, ozf.",
		"Thrust (N),Power (W)\n1,2\nx,4":        "The file has fewer than two rows with thrust and power.",
	} {
		s, err := Cut(text)
		if err == nil {
			_, _, err = Rows(s, Guess(s))
		}
		if err == nil || err.Error() != says {
			t.Errorf("%.40q: %v, want %s", text, err, says)
		}
	}
	s, _ := Cut("Thrust (N),Power (W)\n1,2\n3,4")
	if _, _, err := Rows(s, []Column{{Thrust, 0, "N"}, {Power, 7, "W"}}); err == nil || err.Error() != "There is no column 8 for power." {
		t.Error(err)
	}
}

// FuzzCut: nothing panics, everything is bounded, every fault is a short sentence, and what is read lays a curve or says why not.
func FuzzCut(f *testing.F) {
	f.Add(measured)
	f.Add(strings.ReplaceAll(strings.ReplaceAll(measured, ",", ";"), ".", ","))
	f.Add("Thrust (N),Power (W)\n1,2\n1,3\n2,\"4\n")
	f.Add("a;b\n\"\n;;;\n-,--,1e999;nan;inf")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Cut(text)
		if err == nil {
			var rows, notes = 0, []string(nil)
			r, n, e := Rows(s, Guess(s))
			rows, notes, err = len(r), n, e
			if rows > mostRows || len(notes) > 3 {
				t.Fatal(rows, notes)
			}
			if err == nil {
				table, e := New(r)
				if err = e; e == nil {
					least, most := table.Span()
					if p, ok := table.Power((least + most) / 2); !ok || math.IsNaN(p) {
						t.Fatalf("no power between %g and %g N: %s", least, most, fmt.Sprint(r))
					}
				}
			}
		}
		if err != nil && (len(err.Error()) > 2000 || !strings.HasSuffix(err.Error(), ".") || !utf8.ValidString(err.Error())) {
			t.Fatalf("%q", err)
		}
	})
}
