// Package report turns a plan into the document liftreport/1.
package report

import (
	"cohoist/core/agility"
	"cohoist/core/check"
	"cohoist/core/share"
	"cohoist/core/vec"
)

// Format is the value of the report's "format" key.
const Format = "liftreport/1"

// Report is plain data: SI, payload frame, NaN (null in JSON) where a number was not computed.
type Report struct {
	Format      string      `json:"format"`
	Verdict     Verdict     `json:"verdict"`
	Governing   string      `json:"governing"` // id of the check that decides the verdict
	Sentence    string      `json:"sentence"`  // the verdict in words
	Checks      []check.Row `json:"checks"`
	Vehicles    []Vehicle   `json:"vehicles"`
	Payload     Payload     `json:"payload"`
	Team        Team        `json:"team"`
	Agility     Agility     `json:"agility"`
	NoBalance   *NoBalance  `json:"no_balance"` // nil when there is a balance
	Scaling     Scaling     `json:"scaling"`
	Beam        *Beam       `json:"beam"`     // nil when the payload is no beam
	Held        *Held       `json:"held"`     // nil when balance alone says who carries
	LeftOut     []string    `json:"left_out"` // what the thrust needed leaves out, but would take more than a little of it
	Assumptions []string    `json:"assumptions"`
	Notes       []string    `json:"notes"` // why a number is missing, and the like
	Cautions    []string    `json:"cautions"`
	Missing     []string    `json:"missing"` // fields with no honest default that were left out
	Unknown     []string    `json:"unknown"` // paths of fields this version does not know
}

// Verdict is the answer to the whole plan.
type Verdict string

// The verdicts.
const (
	Lifts        Verdict = "lifts"
	ThinLift     Verdict = "thin"
	Fails        Verdict = "fails"
	NeedsInput   Verdict = "needs-input"
	OutsideModel Verdict = "outside-model"
	Unsolved     Verdict = "unsolved"
)

// Vehicle is one vehicle's part of the lift.
type Vehicle struct {
	ID             string    `json:"id"`
	Force          vec.V3    `json:"force_on_payload_n"` // rigid: net of the vehicle's own weight
	Moment         vec.V3    `json:"moment_on_payload_n_m"`
	Tension        float64   `json:"tension_n"`       // cable only
	CableAngle     float64   `json:"cable_angle_deg"` // from vertical
	Thrust         float64   `json:"thrust_n"`
	ThrustVector   vec.V3    `json:"thrust_vector_n"` // what it pushes with, payload axes
	ThrustMax      float64   `json:"thrust_max_n"`
	Utilisation    float64   `json:"utilisation"`
	Tilt           float64   `json:"tilt_deg"`
	RotorThrust    []float64 `json:"rotor_thrust_n"`
	RotorThrustMax float64   `json:"rotor_thrust_max_n"`
	Position       vec.V3    `json:"position_m"`
	Download       vec.V3    `json:"download_n"`    // of its wakes on the payload, payload axes; nothing when the plan leaves it out
	DownloadAt     vec.V3    `json:"download_at_m"` // where, payload frame
}

// Payload is the payload's mass properties, payload frame.
type Payload struct {
	Mass     float64    `json:"mass_kg"`
	COM      vec.V3     `json:"com_m"`
	Inertia  [6]float64 `json:"inertia_kg_m2"` // xx yy zz xy xz yz about COM
	DragArea vec.V3     `json:"drag_area_m2"`
}

// Team is the team with its payload.
type Team struct {
	Mass           float64    `json:"mass_kg"`
	COM            vec.V3     `json:"com_m"`
	Inertia        [6]float64 `json:"inertia_kg_m2"` // rigid: payload and vehicles about COM
	Utilisation    float64    `json:"utilisation"`   // of the worst vehicle
	LargestPayload float64    `json:"largest_payload_kg"`
	DualBound      float64    `json:"dual_bound"` // proven lower bound on Utilisation
	Residual       float64    `json:"residual"`   // largest imbalance, relative to weight and weight × 1 m
	Lean           vec.V3     `json:"lean_deg"`   // rigid in wind: rotation vector of the body
	Density        float64    `json:"air_density_kg_m3"`
	Power          float64    `json:"power_w"`   // electric, in hover
	Hold           float64    `json:"hold_s"`    // from full packs until the first vehicle ends
	HoldEnds       []string   `json:"hold_ends"` // ids of those that end then; empty: not known
	HoldBy         string     `json:"hold_by"`   // what ends the first: reserve, thrust, collapse, from full
}

// Agility is what the team can do beyond hover, beside one vehicle alone.
type Agility struct {
	Team  Moves `json:"team"`
	Solo  Moves `json:"solo"`  // one vehicle, no payload
	Ratio Moves `json:"ratio"` // team over solo
}

// Moves are the strongest motions about hover.
type Moves = agility.Moves

// NoBalance says which force or moment runs out when no thrust at all would balance the payload.
type NoBalance = share.NoBalance

// Scaling is how the lift would scale with the number of vehicles and with size.
type Scaling = agility.Scaling
