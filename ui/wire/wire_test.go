package wire

import (
	"math"
	"reflect"
	"testing"

	"cohoist/core/plan"
	"cohoist/core/report"
)

func TestReportAndPlanComeBackBitForBit(t *testing.T) {
	r := report.Blank()
	r.Vehicles = []report.Vehicle{{ID: "A", Thrust: 1.5, RotorThrust: []float64{math.Inf(1), math.Copysign(0, -1)}}}
	r.Missing = []string{"a", ""}
	r.NoBalance = &report.NoBalance{}
	var got report.Report
	if err := Decode(Encode(r), &got); err != nil {
		t.Fatal(err)
	}
	if a, b := Encode(r), Encode(got); string(a) != string(b) {
		t.Errorf("the report changed on the way")
	}
	if !math.IsNaN(got.Team.Mass) || got.Checks != nil || got.Vehicles[0].RotorThrust[0] != math.Inf(1) {
		t.Errorf("NaN, nil or infinity did not come through: %v %v %v", got.Team.Mass, got.Checks, got.Vehicles[0].RotorThrust)
	}
	p := plan.Plan{Title: "<b>x</b>", Seed: -3, Vehicles: map[string]plan.Class{"a": {Rotors: 4, Mass: 2}},
		Extra: plan.Extra{"later": []byte(`{"x":1}`)}}
	var q plan.Plan
	if err := Decode(Encode(p), &q); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(p, q) {
		t.Errorf("the plan changed on the way: %+v", q)
	}
}

func TestDamagedMessagesAreRefused(t *testing.T) {
	data := Encode(report.Blank())
	var r report.Report
	for n := range data {
		if Decode(data[:n], &r) == nil {
			t.Fatalf("a message cut at %d of %d was taken", n, len(data))
		}
	}
	if Decode(append(data, 0), &r) == nil {
		t.Error("a message that is too long was taken")
	}
}
