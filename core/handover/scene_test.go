package handover_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"encoding/xml"
	"io"
	"math"
	"os"
	"os/exec"
	"strings"
	"testing"

	"cohoist/core/example"
)

// handed is one line of testdata/engine/handed.jsonl: a scene after it ran in the engine.
type handed struct {
	Name    string     `json:"name"`
	Scene   string     `json:"scene"`
	Engine  string     `json:"engine,omitempty"`
	Speed   float64    `json:"speed_m_s"`
	Moved   [3]float64 `json:"moved_m"`
	Tilted  float64    `json:"tilted_deg"`
	Tension []float64  `json:"tension_n,omitempty"`
}

const handedFile = "../../testdata/engine/handed.jsonl"

// TestScenesInAnEngine holds the scenes against a rigid-body engine (MuJoCo, https://github.com/google-deepmind/mujoco,
// npm package mujoco-js 0.0.7). Lifts on cables are pushed and come to rest with the report's tensions; wanted is half a
// percent; 1e-4 is how closely scenes and ties are compared, the engine itself ends within 1e-6. Rigid ones, whose thrust turns with them, stay for five seconds when nothing pushes.
func TestScenesInAnEngine(t *testing.T) {
	var scenes []handed
	for _, e := range example.All {
		scenes = append(scenes, handed{Name: e.Name, Scene: string(lift(t, e.Name).MJCF())})
	}
	if folder := os.Getenv("COHOIST_ENGINE"); folder != "" && *update {
		runEngine(t, folder, scenes)
	}
	file, err := os.Open(handedFile)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	d := json.NewDecoder(bufio.NewReader(file))
	for _, s := range scenes {
		var h handed
		if err := d.Decode(&h); err != nil {
			t.Fatalf("%s was not run in the engine: %v", s.Name, err)
		}
		if difference := unlike(h.Scene, s.Scene, 1e-4); h.Name != s.Name || difference != "" {
			t.Errorf("%s: run the scenes again (testdata/engine/README.md): %s", s.Name, difference)
			continue
		}
		worst := 0.0
		for j, v := range lift(t, s.Name).Report.Vehicles {
			if len(h.Tension) > 0 {
				worst = math.Max(worst, math.Abs(h.Tension[j]/v.Tension-1))
			}
		}
		t.Logf("%s: tension %.1e, speed %.1e m/s, moved %.1e m, tilted %.1e°", h.Name, worst, h.Speed, math.Hypot(h.Moved[0], h.Moved[1]), h.Tilted)
		if !(worst <= 1e-4) || h.Speed > 1e-4 || h.Tilted > 0.01 {
			t.Errorf("%s: a tension differs by %.3g from %s; speed %g m/s, tilted %g°", h.Name, worst, h.Engine, h.Speed, h.Tilted)
		}
	}
}

// runEngine runs testdata/engine/handed.mjs in a folder where mujoco-js is installed.
func runEngine(t *testing.T, folder string, scenes []handed) {
	script, err := os.ReadFile("../../testdata/engine/handed.mjs")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(folder+"/handed.mjs", script, 0o644); err != nil {
		t.Fatal(err)
	}
	var in bytes.Buffer
	for _, s := range scenes {
		if err := json.NewEncoder(&in).Encode(map[string]string{"name": s.Name, "scene": s.Scene}); err != nil {
			t.Fatal(err)
		}
	}
	run := exec.Command("node", "handed.mjs")
	run.Dir, run.Stdin, run.Stderr = folder, &in, os.Stderr
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(handedFile, out, 0o644); err != nil {
		t.Fatal(err)
	}
}

// node is an element with what is in it.
type node struct {
	name string
	attr map[string]string
	text string
	sub  []*node
}

// parse reads XML strictly.
func parse(t *testing.T, data []byte) *node {
	t.Helper()
	root := &node{}
	stack := []*node{root}
	for d := xml.NewDecoder(bytes.NewReader(data)); ; {
		token, err := d.Token()
		if err == io.EOF {
			return root.sub[0]
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, data)
		}
		top := stack[len(stack)-1]
		switch e := token.(type) {
		case xml.StartElement:
			n := &node{name: e.Name.Local, attr: map[string]string{}}
			for _, a := range e.Attr {
				n.attr[a.Name.Local] = a.Value
			}
			top.sub = append(top.sub, n)
			stack = append(stack, n)
		case xml.EndElement:
			stack = stack[:len(stack)-1]
		case xml.CharData:
			top.text += strings.TrimSpace(string(e))
		}
	}
}

// all lists the elements of a name, at any depth.
func (n *node) all(name string) (list []*node) {
	for _, s := range n.sub {
		if s.name == name {
			list = append(list, s)
		}
		list = append(list, s.all(name)...)
	}
	return list
}

// first is the first child of a name; one without text when there is none.
func (n *node) first(name string) *node {
	for _, s := range n.sub {
		if s.name == name {
			return s
		}
	}
	return &node{}
}
