package unit

import (
	"math"
	"math/rand"
	"strings"
	"testing"
)

// Factors as published (digits from memory): NIST Special Publication 811 (2008), appendix B.8, "Factors for units listed
// alphabetically"; rows printed bold there are exact.
func TestFactorsAgainstNIST(t *testing.T) {
	for _, c := range []struct {
		symbol string
		want   float64
		tol    float64 // relative; the digits printed in the source
		row    string
	}{
		{"ft", 3.048e-1, 1e-15, "foot (ft), exact"},
		{"in", 2.54e-2, 1e-15, "inch (in), exact"},
		{"lb", 4.5359237e-1, 1e-15, "pound (avoirdupois) (lb), exact"},
		{"oz", 2.834952e-2, 2e-7, "ounce (avoirdupois) (oz)"},
		{"kgf", 9.80665, 1e-15, "kilogram-force (kgf), exact"},
		{"lbf", 4.448222, 2e-7, "pound-force (lbf)"},
		{"lbf ft", 1.355818, 2e-7, "foot pound-force, as moment of force (lbf · ft)"},
		{"kn", 5.144444e-1, 2e-7, "knot (nautical mile per hour)"},
		{"mph", 4.4704e-1, 1e-15, "mile per hour (mi/h), exact"},
		{"km/h", 2.777778e-1, 2e-7, "kilometer per hour (km/h)"},
		{"rad", 180 / math.Pi, 1e-15, "degree (angle) (°) is π/180 rad: SI Brochure, 9th edition, table 8"},
	} {
		if got := Scale(c.symbol); math.Abs(got/c.want-1) > c.tol {
			t.Errorf("%s: %v, want %v: %s", c.symbol, got, c.want, c.row)
		}
	}
}

func TestParse(t *testing.T) {
	const lb = 0.45359237
	for _, c := range []struct {
		text, display string
		want          float64
	}{
		{"1.5", "kg", 1.5},
		{"1,5", "kg", 1.5},
		{"  1,5 kg ", "g", 1.5},
		{"12 oz", "kg", 0.75 * lb},
		{"12oz", "kg", 0.75 * lb},
		{"1.5", "lb", 1.5 * lb},
		{"2 LB", "kg", 2 * lb},
		{".5", "m", 0.5},
		{"5.", "m", 5},
		{"1,234", "m", 1.234}, // a decimal comma
		{"-3", "m", -3},
		{"−3", "m", -3},
		{"+3", "m", 3},
		{"1e3", "mm", 1},
		{"1e−3 m", "mm", 0.001},
		{"10'", "m", 3.048},
		{`12"`, "m", 0.3048},
		{"250 mm", "ft", 0.25},
		{"250\u202fmm", "ft", 0.25},
		{"1 kgf", "N", 9.80665},
		{"1 lbf", "N", lb * 9.80665},
		{"30°", "°", 30},
		{"30 deg", "°", 30},
		{"80 %", "", 0.8},
		{"80", "%", 0.8},
		{"3 N m", "N m", 3},
		{"3 Nm", "N m", 3},
		{"1 ft lbf", "N m", lb * 9.80665 * 0.3048},
		{"36 km/h", "m/s", 10},
		{"9 KN", "m/s", 4.63},
		{"9 KN", "N", 9000},
		{"007", "s", 7},
		{"0", "kg", 0},
		{"-0", "kg", 0},
	} {
		got, err := Parse(c.text, c.display)
		if err != nil || math.Abs(got-c.want) > 1e-15*math.Abs(c.want) || math.Signbit(got) != (c.want < 0) {
			t.Errorf("Parse(%q, %q) = %v, %v; want %v", c.text, c.display, got, err, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ text, display, says string }{
		{"", "kg", "Nothing is written"},
		{"  ", "", "such as 1.5."},
		{"abc", "kg", "is not a number"},
		{"–", "kg", "is not a number"},
		{"-", "kg", "is not a number"},
		{"NaN", "kg", "is not a number"},
		{"Inf", "kg", "is not a number"},
		{"0x10", "m", "“x10” is not a unit of length"},
		{"1,234.5", "m", "separator of thousands"},
		{"1.234,5", "m", "separator of thousands"},
		{"1,234,567", "m", "separator of thousands"},
		{"1 234", "m", "separator of thousands"},
		{"1\u202f234", "m", "separator of thousands"},
		{"1'234", "m", "separator of thousands"},
		{"1’234", "m", "separator of thousands"},
		{"1_234", "m", "separator of thousands"},
		{"1..2", "m", "separator of thousands"},
		{"5'6", "m", "two numbers"},
		{"3 kg", "N", "“kg” is a unit of mass, not of force; write only the number, or one of N, kN, gf, kgf or lbf."},
		{"3 parsecs", "m", "“parsecs” is not a unit of length known here; write only the number, or one of m, cm, mm, ft or in."},
		{"3 m", "s", "“m” is a unit of length, not of time"},
		{"3 x", "K", "write only the number, or K."},
		{"1e400", "m", "too large"},
		{"1e307 kN", "N", "too large"},
		{"1/2", "m", "“/2” is not a unit"},
		{"1 " + strings.Repeat("x", 1000) + "\n<b>", "m", "…”"},
	} {
		got, err := Parse(c.text, c.display)
		if err == nil {
			t.Errorf("Parse(%q, %q) = %v, want an error", c.text, c.display, got)
			continue
		}
		s := err.Error()
		if !strings.Contains(s, c.says) || strings.Contains(s, "\n") || len(s) > 250 || !strings.HasSuffix(s, ".") {
			t.Errorf("Parse(%q, %q): %q; want a sentence with %q", c.text, c.display, s, c.says)
		}
	}
}

func TestFigures(t *testing.T) {
	for _, c := range []struct {
		x      float64
		digits int
		want   string
	}{
		{math.NaN(), 3, "–"}, {math.Inf(1), 3, "∞"}, {math.Inf(-1), 3, "−∞"},
		{0, 3, "0"}, {math.Copysign(0, -1), 3, "0"}, {-1e-3, 3, "−0.001"},
		{1.5, 3, "1.5"}, {1.2345, 3, "1.23"}, {9.999, 3, "10"}, {99.96, 3, "100"}, {0.09999, 3, "0.1"},
		{12345, 3, "12345"}, {12345.6, 3, "12346"}, {1234.56, 6, "1234.56"},
		{0.00001234, 3, "0.0000123"}, {0.000001234, 3, "1.23e−6"}, {1e20, 3, "1e20"}, {1.5, 0, "2"}, {2.5e-9, 40, "2.5000000000000001e−9"},
	} {
		if got := Figures(c.x, c.digits); got != c.want {
			t.Errorf("Figures(%v, %d) = %q, want %q", c.x, c.digits, got, c.want)
		}
	}
	if got := Format(0.3048, "ft", 3); got != "1\u202fft" {
		t.Errorf("one foot is %q", got)
	}
	if got := Format(30, "°", 3); got != "30°" {
		t.Errorf("thirty degrees are %q", got)
	}
	if got := Format(math.NaN(), "kg", 3); got != "–" {
		t.Errorf("no mass is %q", got)
	}
}

// What Format writes with 17 digits Parse reads back to a relative 1e-15: two divisions and products
// by the factor, half a unit in the last place each.
func TestRoundTrip(t *testing.T) {
	const seed = 4
	r := rand.New(rand.NewSource(seed))
	for _, u := range Units {
		for range 200 {
			x := (r.Float64() - 0.5) * math.Pow(10, float64(r.Intn(24)-12))
			text := Format(x, u.Symbol, 17)
			got, err := Parse(text, u.Symbol)
			if err != nil || math.Abs(got-x) > 1e-15*math.Abs(x) {
				t.Fatalf("seed %d: %v in %q is %q, read back as %v, %v", seed, x, u.Symbol, text, got, err)
			}
		}
	}
}

// A person must never get another unit than the one typed: no two units share a way of writing.
func TestUnitsAreTold(t *testing.T) {
	seen := map[string]string{}
	for _, u := range Units {
		for _, s := range append([]string{u.Symbol}, u.Typed...) {
			key := u.Kind.String() + " " + strings.ToLower(s)
			if other, twice := seen[key]; twice {
				t.Errorf("%q is both %q and %q", s, other, u.Symbol)
			}
			seen[key] = u.Symbol
			if got, ok := find(s, u.Kind); !ok || got.Symbol != u.Symbol {
				t.Errorf("%q is not read as %q", s, u.Symbol)
			}
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"1.5", "1,5 kg", "12 oz", "−3e-2ft", "1'234", "", "1e999", "0x1p3", "5'6\"", "９"} {
		f.Add(s, "kg")
		f.Add(s, "m")
	}
	f.Fuzz(func(t *testing.T, text, display string) {
		x, err := Parse(text, display)
		if err != nil {
			if len(err.Error()) > 600 || strings.ContainsAny(err.Error(), "\n\r") {
				t.Fatalf("error is no single sentence: %q", err)
			}
			return
		}
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("Parse(%q, %q) = %v", text, display, x)
		}
		if Scale(display) != 1 || math.Abs(x) < 1e-300 {
			return // the factor rounds once each way
		}
		if y, err := Parse(Figures(x, 17), display); err != nil || y != x {
			t.Fatalf("Parse(%q) = %v reads back as %v, %v", text, x, y, err)
		}
	})
}
