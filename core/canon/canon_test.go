package canon

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand"
	"strconv"
	"testing"
)

type inner struct {
	X float64 `json:"x"`
}

type word string

type sample struct {
	Word   word                       `json:"word"`
	Number float64                    `json:"number"`
	Count  int                        `json:"count"`
	Three  [3]float64                 `json:"three"`
	Sizes  []float64                  `json:"sizes"`
	Over   *[2]float64                `json:"over"`
	In     inner                      `json:"in"`
	Many   []inner                    `json:"many"`
	ByName map[string]inner           `json:"by_name"`
	Yes    bool                       `json:"yes"`
	Maybe  string                     `json:"maybe,omitempty"`
	Bare   int64                      // no tag: the field's own name
	Skip   func()                     `json:"-"`
	Extra  map[string]json.RawMessage `json:"-"`
}

var nan, inf = math.NaN(), math.Inf(1)

func TestModes(t *testing.T) {
	empty := sample{Number: nan, Three: [3]float64{nan, nan, nan}, In: inner{inf}, Over: &[2]float64{nan, nan}}
	full := sample{Word: "a\"\\\n\r\t\x01<é\u2028\xff", Number: -0.5, Count: 3, Three: [3]float64{1, nan, 1e21}, Sizes: []float64{0, nan}, Over: &[2]float64{1, 2},
		In: inner{0}, Many: []inner{{1e-7}, {nan}}, ByName: map[string]inner{"b": {1}, "a": {nan}}, Yes: true, Maybe: "m", Bare: -9,
		Extra: map[string]json.RawMessage{"z": json.RawMessage(` { "b" : 1.50, "a":[ true , null,"\u00e9"] } `), "count": json.RawMessage("7"), "bad": json.RawMessage("{")}}
	for _, c := range []struct {
		name string
		v    any
		mode Mode
		want string
	}{
		{"nothing given, plan", empty, Omit, `{"yes":false}`},
		{"nothing given, report", empty, Null, `{"word":"","number":null,"count":0,"three":[null,null,null],"sizes":[],"over":[null,null],"in":{"x":null},"many":[],"by_name":{},"yes":false,"Bare":0}`},
		{"a nil pointer, report", struct{ P *int }{}, Null, `{"P":null}`},
		{"all given", &full, Omit, `{"word":"a\"\\\n\r\t\u0001<é` + "\u2028\ufffd" + `","number":-0.5,"count":3,"three":[1,null,1e+21],"sizes":[0,null],"over":[1,2],"in":{"x":0},"many":[{"x":1e-7},{}],"by_name":{"a":{},"b":{"x":1}},"yes":true,"maybe":"m","Bare":-9,"bad":null,"z":{"a":[true,null,"é"],"b":1.50}}`},
	} {
		got := Compact(c.v, c.mode)
		if string(got) != c.want {
			t.Errorf("%s:\ngot  %s\nwant %s", c.name, got, c.want)
		}
		if !json.Valid(got) {
			t.Errorf("%s: not JSON", c.name)
		}
		var back bytes.Buffer
		if err := json.Compact(&back, Indented(c.v, c.mode)); err != nil || back.String() != c.want {
			t.Errorf("%s: indenting changed more than blanks: %s", c.name, back.String())
		}
	}
}

func TestIndent(t *testing.T) {
	got := Indent([]byte(`{"a":[1,2,"x,]"],"b":[[1,2],[3]],"c":{},"d":[],"e":[{"f":"\"{"}],"g":1}`))
	want := `{
  "a": [1, 2, "x,]"],
  "b": [
    [1, 2],
    [3]
  ],
  "c": {},
  "d": [],
  "e": [
    {
      "f": "\"{"
    }
  ],
  "g": 1
}`
	if string(got) != want {
		t.Errorf("got\n%s", got)
	}
}

// The shortest decimal, compared with encoding/json (which writes the form of ECMA-262 too) and read
// back to the same bits, for floats of every exponent.
func TestFloats(t *testing.T) {
	const seed = 11
	r := rand.New(rand.NewSource(seed))
	numbers := []float64{0.1, 1, 100, 1e20, 1e21, 1e-6, 9.99e-7, 1e-9, 1e-10, 5e-324, math.MaxFloat64, -1.5, 0.30000000000000004}
	for range 5000 {
		x := math.Float64frombits(r.Uint64())
		if !math.IsNaN(x) && !math.IsInf(x, 0) {
			numbers = append(numbers, x)
		}
	}
	for _, x := range numbers {
		got := string(AppendFloat(nil, x))
		want, _ := json.Marshal(x)
		if got != string(want) {
			t.Fatalf("seed %d: %g is %s, want %s", seed, x, got, want)
		}
		if y, err := strconv.ParseFloat(got, 64); err != nil || math.Float64bits(y) != math.Float64bits(x) {
			t.Fatalf("seed %d: %g reads back as %g", seed, x, y)
		}
	}
	for _, c := range []struct {
		x    float64
		want string
	}{{nan, "null"}, {inf, "null"}, {-inf, "null"}, {math.Copysign(0, -1), "0"}} {
		if got := string(AppendFloat(nil, c.x)); got != c.want {
			t.Errorf("%v is %s, want %s", c.x, got, c.want)
		}
	}
}

func TestProgrammersErrorPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a channel was written as data")
		}
	}()
	Compact(make(chan int), Null)
}
