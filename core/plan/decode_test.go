package plan

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the expected faults of testdata/plans/bad again")

// sample is a plan with every field of the format, in canonical form.
const sample = `{
  "format": "liftplan/1",
  "title": "Lamp glass <b>up</b> the stair",
  "note": "Invented.",
  "seed": 7,
  "payload": {
    "solids": [
      {
        "shape": "box",
        "size_m": [2.4, 0.3, 0.05],
        "mass_kg": 6,
        "at_m": [0, 0, 0],
        "turn_deg": [0, 0, 12.5]
      },
      {
        "shape": "tube",
        "length_m": 1,
        "outer_radius_m": 0.1,
        "inner_radius_m": 0.09,
        "mass_kg": 0
      },
      {
        "shape": "mesh",
        "mesh": {
          "vertices_m": [
            [0, 0, 0],
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1e-7]
          ],
          "triangles": [
            [0, 2, 1],
            [0, 1, 3]
          ],
          "glow": true
        },
        "mass_kg": 1
      }
    ],
    "com_m": [0.01, 0, 0],
    "inertia_kg_m2": [1, 2, 2.5, 0, 0, 0],
    "drag_area_m2": [0.1, 0.2, 0.9],
    "beam": {
      "material": "softwood-c24",
      "profile": "rectangle",
      "second_moment_m4": [1e-7, 0.000002],
      "strength_factor": 3
    }
  },
  "vehicles": {
    "a.b": {
      "mass_kg": 3.4
    },
    "field-quad": {
      "mass_kg": 3.4,
      "rotors": 4,
      "layout": "plus",
      "arm_m": 0.33,
      "rotor_radius_m": 0.19,
      "rotor_thrust_max_n": 19,
      "torque_per_thrust_m": 0.016,
      "inertia_kg_m2": [0.06, 0.06, 0.11],
      "drag_area_m2": 0.06,
      "tilt_max_deg": 30,
      "figure_of_merit": 0.6,
      "drive_efficiency": 0.8,
      "avionics_w": 8,
      "battery": {
        "energy_wh": 177.6,
        "capacity_ah": 8,
        "cells": 6,
        "voltage_v": 22.2,
        "resistance_ohm": 0.02,
        "usable_ratio": 0.95,
        "peukert": 1.05
      },
      "bench": [
        {
          "throttle": 0.5,
          "thrust_n": 8,
          "power_w": 80,
          "speed_rad_s": 500,
          "voltage_v": 22
        }
      ]
    }
  },
  "team": [
    {
      "id": "A",
      "vehicle": "field-quad",
      "attach_m": [1.1, 0, 0.03],
      "yaw_deg": 0,
      "hold": {
        "kind": "cable",
        "length_m": 3,
        "working_load_n": 400
      }
    },
    {
      "id": "B",
      "vehicle": "field-quad",
      "attach_m": [-1.1, 0, 0.1],
      "hold": {
        "kind": "rigid",
        "lean_deg": [0, 5],
        "grip_force_max_n": 90,
        "grip_moment_max_n_m": 20,
        "stiffness_n_m": 500
      },
      "colour": {"a": 1.50, "b": [1, "x"]}
    }
  ],
  "site": {
    "altitude_m": 0,
    "temperature_offset_k": 0,
    "wind_m_s": 0,
    "wind_to_deg": 0
  },
  "limits": {
    "utilisation": 0.8,
    "cone_deg": 30,
    "tension_min_n": 0.5,
    "separation_m": 1.4,
    "com_error_m": 0.02,
    "turn_rad_s2": 1
  },
  "policy": "even-effort",
  "way": {
    "points": [
      {
        "at_m": [0, 0, 2],
        "heading_deg": 0,
        "time_s": 0
      },
      {
        "at_m": [4, 0, 2],
        "heading_deg": 90,
        "formation": "in-line",
        "spacing_m": 1.5,
        "width_m": 2,
        "line_to_deg": 90
      }
    ],
    "boxes": [
      {
        "leg": 1,
        "min_m": [-1, -1, 1],
        "max_m": [5, 1, 3]
      }
    ],
    "openings": [
      {
        "at_m": [2, 0, 2],
        "normal_deg": 0,
        "width_m": 2.4,
        "height_m": 5,
        "clearance_m": 0.2
      }
    ],
    "speed_max_m_s": 3
  },
  "cargo": {
    "items": [
      {
        "id": "post",
        "payload": {
          "solids": [
            {
              "shape": "cylinder",
              "length_m": 2,
              "outer_radius_m": 0.1,
              "mass_kg": 5
            }
          ],
          "com_m": [0, 0, 0.1]
        },
        "pick_m": [0, 0, 1],
        "pick_heading_deg": 0,
        "set_m": [5, 0, 1],
        "set_heading_deg": 90,
        "hooks": [
          {
            "id": "A",
            "at_m": [0, 0, 1]
          }
        ]
      },
      {
        "id": "bar",
        "like": "post",
        "on": ["post"],
        "under": ["post"],
        "attach": "scaled"
      }
    ],
    "home_m": [0, -5, 0],
    "clearance_m": 1,
    "packs": 2,
    "swap_s": 120,
    "hook_s": 60
  },
  "later": null
}
`

func mustDecode(t *testing.T, text string) Plan {
	t.Helper()
	p, faults := Decode([]byte(text))
	if len(faults) > 0 {
		t.Fatalf("faults:\n%s", faults)
	}
	return p
}

func TestEncodeIsFixedPoint(t *testing.T) {
	p := mustDecode(t, sample)
	got := string(Encode(p))
	want := strings.Replace(sample, `{"a": 1.50, "b": [1, "x"]}`,
		"{\n        \"a\": 1.50,\n        \"b\": [1, \"x\"]\n      }", 1)
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if again := mustDecode(t, got); !reflect.DeepEqual(nanless(again), nanless(p)) {
		t.Error("decoding the canonical text gives another plan")
	}
	if faults := Validate(p); len(faults) > 0 {
		t.Errorf("the sample is not valid:\n%s", faults)
	}
	want2 := []string{"payload.solids[2].mesh.glow", "team[1].colour", "later"}
	if got := Unknown(p); !reflect.DeepEqual(got, want2) {
		t.Errorf("unknown %q, want %q", got, want2)
	}
}

// nanless replaces NaN by a number no plan holds, so that DeepEqual can compare.
func nanless(p Plan) Plan {
	q := p.Clone()
	walkEdit(&q, func(l leaf) {
		if l.unknown || l.v.Kind() == reflect.Pointer {
			return
		}
		if l.v.Kind() == reflect.Float64 && math.IsNaN(l.v.Float()) {
			l.v.SetFloat(-1e300)
		}
		if l.v.Kind() == reflect.Array && allBlank(l.v) {
			for i := range l.v.Len() {
				l.v.Index(i).SetFloat(-1e300)
			}
		}
	})
	return q
}

func TestLeftOutIsNaN(t *testing.T) {
	p := mustDecode(t, `{"format":"liftplan/1","payload":{"solids":[{"shape":"point"}],"com_m":null},"team":[{"id":"A"}],"vehicles":{"x":{}}}`)
	for name, x := range map[string]float64{
		"mass": p.Payload.Solids[0].Mass, "at": p.Payload.Solids[0].At[2], "attach": p.Team[0].Attach[0], "length": p.Team[0].Hold.Length,
		"lean": p.Team[0].Hold.Lean[1], "class mass": p.Vehicles["x"].Mass, "wind": p.Site.Wind, "cone": p.Limits.Cone,
	} {
		if !math.IsNaN(x) {
			t.Errorf("%s left out is %v, want NaN", name, x)
		}
	}
	if p.Payload.COM != nil || p.Payload.Inertia != nil || p.Team[0].Extra != nil || p.Seed != 0 {
		t.Error("what is left out is not empty")
	}
}

// Every file in testdata/plans/bad holds a broken plan; the .txt beside it the faults it must give.
func TestBadPlans(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/plans/bad/*.json")
	if len(files) < 10 {
		t.Fatalf("only %d bad plans found", len(files))
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		want := strings.TrimSuffix(file, ".json") + ".txt"
		_, faults := Read(data)
		got := faults.String() + "\n"
		if *update {
			if err := os.WriteFile(want, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		text, err := os.ReadFile(want)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(text) {
			t.Errorf("%s:\ngot\n%swant\n%s", filepath.Base(file), got, text)
		}
	}
}
