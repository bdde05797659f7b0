package link

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"flag"
	"fmt"
	"hash/crc32"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cohoist/core/plan"
)

var freeze = flag.Bool("freeze", false, "write the link of every new plan in testdata/links; never writes one again")

// pack makes a link with a right checksum from any plain text.
func pack(plain []byte) string {
	var b bytes.Buffer
	w, _ := flate.NewWriterDict(&b, flate.BestCompression, []byte(dict1))
	w.Write(plain)
	w.Close()
	return wrap(b.Bytes())
}

// wrap makes a link with a right checksum from any compressed bytes.
func wrap(raw []byte) string {
	out := binary.BigEndian.AppendUint32(nil, crc32.ChecksumIEEE(raw))
	return "p1." + encoding.EncodeToString(append(out, raw...))
}

func samples(t testing.TB) map[string]plan.Plan {
	files, _ := filepath.Glob("../../testdata/links/*.json")
	if len(files) < 5 {
		t.Fatalf("only %d plans in testdata/links", len(files))
	}
	out := map[string]plan.Plan{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, faults := plan.Decode(data)
		if len(faults) > 0 {
			t.Fatalf("%s: %s", file, faults)
		}
		out[strings.TrimSuffix(file, ".json")] = p
	}
	return out
}

// Every link ever published opens, for ever, to the plan beside it. What this Go's compressor writes
// today is the same text; should a later Go write another, the old texts must still open: freeze
// samples of the new text, and let the old ones pass here by name.
func TestPublishedLinksOpen(t *testing.T) {
	for name, p := range samples(t) {
		if _, err := os.Stat(name + ".link"); *freeze && os.IsNotExist(err) {
			if err := os.WriteFile(name+".link", []byte(Encode(p)+"\n"), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		text, err := os.ReadFile(name + ".link")
		if err != nil {
			t.Fatal(err)
		}
		got, err := Decode("#" + string(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !plan.Same(got, p) {
			t.Errorf("%s opens as another plan:\n%s", name, plan.Encode(got))
		}
		if again := Encode(got); again+"\n" != string(text) {
			t.Errorf("%s encodes back to another text:\n%s", name, again)
		}
	}
}

// The promise: eight vehicles on cables, every number irregular with three decimals, own class numbers, a title
// and a sentence of note, in at most 700 characters.
func TestLengthOfEight(t *testing.T) {
	for name, p := range samples(t) {
		n := len(Encode(p))
		t.Logf("%s: %d vehicles, %d characters of JSON, link %d", filepath.Base(name), len(p.Team), len(plan.Compact(p)), n)
		if strings.Contains(name, "eight") && (len(p.Team) != 8 || n > 700) {
			t.Errorf("%s: %d vehicles take %d characters, more than 700", name, len(p.Team), n)
		}
	}
}

// The same for other numbers: every number of the sample's payload, class, team, site and limits drawn anew with
// three decimals.
func TestLengthOfAnyEight(t *testing.T) {
	const seed = 8
	r := rand.New(rand.NewSource(seed))
	some := func(low, high float64) float64 { return math.Round(1000*(low+(high-low)*r.Float64())) / 1000 }
	all := func(v []float64, low, high float64) {
		for i := range v {
			v[i] = some(low, high)
		}
	}
	base, longest := samples(t)["../../testdata/links/1-eight"], 0
	for range 100 {
		p := base.Clone()
		for i := range p.Payload.Solids {
			s := &p.Payload.Solids[i]
			s.Mass = some(1, 20)
			all(s.Size, 0.1, 3)
			all(s.At[:], -1, 1)
		}
		c := p.Vehicles["own-six"]
		c.Mass, c.Arm, c.RotorRadius, c.RotorThrustMax, c.TorquePerThrust = some(2, 9), some(0.2, 0.9), some(0.1, 0.3), some(10, 40), some(0.01, 0.03)
		c.DragArea, c.TiltMax = some(0.02, 0.2), some(20, 40)
		all(c.Inertia[:], 0.05, 0.2)
		p.Vehicles["own-six"] = c
		for i := range p.Team {
			m := &p.Team[i]
			all(m.Attach[:], -2, 2)
			m.Yaw, m.Hold.Length = some(0, 360), some(2, 9)
		}
		p.Site = plan.Site{Altitude: some(0, 300), TemperatureOffset: some(-9, 9), Wind: some(0, 9), WindTo: some(0, 360)}
		p.Limits.Separation, p.Limits.Cone, p.Limits.Utilisation = some(1, 3), some(20, 40), some(0.6, 0.9)
		longest = max(longest, len(Encode(p)))
	}
	t.Logf("seed %d: the longest of 100 links has %d characters", seed, longest)
	if longest > 700 {
		t.Errorf("seed %d: a link of %d characters, more than 700", seed, longest)
	}
}

func TestRefusals(t *testing.T) {
	p := samples(t)["../../testdata/links/1-pair"]
	good := Encode(p)
	for _, c := range []struct{ name, link, says string }{
		{"nothing", "", "holds no plan"},
		{"a bare #", "#", "holds no plan"},
		{"another page's fragment", "#section-3", "not made by this program"},
		{"another program's", "#{\"nodes\":[]}", "not made by this program"},
		{"no number", "p.AAAA", "not made by this program"},
		{"version nought", "p0.AAAA", "not made by this program"},
		{"a padded version", "p01" + good[2:], "not made by this program"},
		{"a later version", "p2" + good[2:], "newer version"},
		{"a far later version", "p40.whatever it holds", "newer version"},
		{"only the prefix", "p1.", "cut short"},
		{"only the checksum", good[:9], "cut short"},
		{"its last character lost", good[:len(good)-1], "cut short"},
		{"half of it", good[:len(good)/2], "cut short"},
		{"a foreign character", good[:20] + "%" + good[21:], "damaged"},
		{"more after the end", good + "AAAA", "damaged"},
		{"10 MB of zeros", pack(make([]byte, 10<<20)), "too long"},
		{"10 MB of blanks", pack(bytes.Repeat([]byte(" "), 10<<20)), "too long"},
		{"3 MB of text", "p1." + strings.Repeat("A", 3<<20), "too long"},
		{"a liftplan of the future", pack([]byte(`{"format":"liftplan/9"}`)), "newer than this program"},
		{"another document", pack([]byte(`{"format":"trackfile/3"}`)), "not a lift plan"},
		{"no plan", pack([]byte("hello")), "does not begin with a brace"},
		{"a broken plan", pack([]byte(`{"format":"liftplan/1","team":[{"id":7}]}`)), "team[0].id is the number 7"},
		{"no deflate stream", wrap([]byte{0xff, 0xff, 0xff}), "damaged"},
		{"bytes after the stream", wrap(append(mustRaw(good), 0)), "damaged"},
	} {
		got, err := Decode(c.link)
		if err == nil {
			t.Errorf("%s: opened as %.100s", c.name, plan.Compact(got))
			continue
		}
		if s := err.Error(); !strings.Contains(s, c.says) || !strings.HasSuffix(s, ".") || strings.Contains(s, "\n") || len(s) > 400 {
			t.Errorf("%s: %q, want a sentence with %q", c.name, s, c.says)
		}
	}
}

func mustRaw(link string) []byte {
	raw, err := encoding.DecodeString(link[3:])
	if err != nil {
		panic(err)
	}
	return raw[checkBytes:]
}

// However a link is cut, and whichever of its characters is changed to whatever else: it never opens.
func TestCutAndChanged(t *testing.T) {
	p := samples(t)["../../testdata/links/1-pair"]
	good := Encode(p)
	for n := range len(good) {
		if _, err := Decode(good[:n]); err == nil {
			t.Fatalf("the first %d characters open", n)
		} else if n > 3 && err != errCut {
			t.Fatalf("the first %d characters: %v", n, err)
		}
	}
	const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
	for i := 3; i < len(good); i++ {
		for _, c := range alphabet {
			if byte(c) == good[i] {
				continue
			}
			if _, err := Decode(good[:i] + string(c) + good[i+1:]); err == nil {
				t.Fatalf("character %d changed to %c, and it opens", i, c)
			}
		}
		if i+1 < len(good) && good[i] != good[i+1] {
			if _, err := Decode(good[:i] + string(good[i+1]) + string(good[i]) + good[i+2:]); err == nil {
				t.Fatalf("characters %d and %d changed places, and it opens", i, i+1)
			}
		}
	}
}

func TestCanonical(t *testing.T) {
	a, _ := plan.Decode([]byte(`{"format":"liftplan/1","vehicles":{"b":{"mass_kg":1.50},"a":{}},"title":"x","odd":{"z":1,"y":2}}`))
	b, _ := plan.Decode([]byte("{\"odd\": {\"y\":2,\"z\":1}, \"title\":\"\\u0078\",\n\"vehicles\":{\"a\":{}, \"b\":{\"mass_kg\":15e-1}}, \"format\":\"liftplan/1\"}"))
	if Encode(a) != Encode(b) {
		t.Error("the same plan gives two links")
	}
	got, err := Decode(" #" + Encode(a) + "\n")
	if err != nil || !plan.Same(a, got) || string(got.Extra["odd"]) != `{"y":2,"z":1}` {
		t.Errorf("read back as %s, %v", plan.Compact(got), err)
	}
}

func TestFits(t *testing.T) {
	p := plan.Blank()
	if !Fits(p) {
		t.Error("an empty plan does not fit")
	}
	p.Note = strings.Repeat("x", mostPlain)
	if _, err := Decode(Encode(p)); Fits(p) || err != errLong {
		t.Errorf("a plan above 1 MB: fits %v, %v", Fits(p), err)
	}
}

// dict1 is published: changing a byte of it would close every link ever sent.
func TestDictionaryIsFrozen(t *testing.T) {
	if got := fmt.Sprintf("%d %08x", len(dict1), crc32.ChecksumIEEE([]byte(dict1))); got != frozen {
		t.Errorf("the dictionary of version 1 is %s, was %s", got, frozen)
	}
}

func BenchmarkEight(b *testing.B) {
	p := samples(b)["../../testdata/links/1-eight"]
	text := Encode(p)
	b.Run("Encode", func(b *testing.B) {
		for b.Loop() {
			Encode(p)
		}
	})
	b.Run("Decode", func(b *testing.B) {
		for b.Loop() {
			if _, err := Decode(text); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func FuzzLink(f *testing.F) {
	for _, p := range samples(f) {
		f.Add(byte(0), []byte(Encode(p)))
		f.Add(byte(1), plan.Compact(p))
		f.Add(byte(2), mustRaw(Encode(p)))
	}
	f.Fuzz(func(t *testing.T, kind byte, data []byte) {
		s := string(data)
		switch kind % 3 {
		case 1:
			s = pack(data)
		case 2:
			s = wrap(data)
		}
		p, err := Decode(s)
		if err != nil {
			if m := err.Error(); !strings.HasSuffix(m, ".") || strings.ContainsAny(m, "\n\r") || len(m) > 1000 {
				t.Fatalf("no sentence: %q", m)
			}
			return
		}
		once := Encode(p)
		q, err := Decode(once)
		if err != nil && Fits(p) {
			t.Fatalf("%q encodes to what does not open: %v", s, err)
		}
		if err == nil && (!plan.Same(p, q) || Encode(q) != once) {
			t.Fatalf("no fixed point:\n%s\n%s", plan.Compact(p), plan.Compact(q))
		}
	})
}

// frozen is the length and CRC-32 of dict1.
const frozen = "3187 80bdcff5"
