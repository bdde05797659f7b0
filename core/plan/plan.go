// Package plan is the document liftplan/1: what a crew writes down before a lift.
//
// A Plan is SI, is never modified by what reads it, and says nothing of the answer. A number
// that was left out is NaN here and absent in the file; a list or block that may be left out is
// nil. Axes: z up; payload frame, origin at the centre of the first solid, x its long side, y left.
package plan

import (
	"encoding/json"

	"cohoist/core/vec"
)

// Format is the value of the plan's "format" key.
const Format = "liftplan/1"

// Policies: how the team shares the load.
const (
	EvenEffort     = "even-effort"     // smallest worst utilisation, ties by least sum of squares
	LeastSquares   = "least-squares"   // least sum of squares, limits ignored and then checked
	Equal          = "equal"           // each vehicle carries the same part
	EqualEndurance = "equal-endurance" // the vehicle that ends first ends as late as it can
)

// WithinLimits tells that a policy chooses among all shares within the limits, so that what the team can do at most is that of
// the smallest worst utilisation.
func WithinLimits(policy string) bool { return policy == EvenEffort || policy == EqualEndurance }

// Holds: how a vehicle holds the payload.
const (
	Cable = "cable"
	Rigid = "rigid"
)

// What becomes of a vehicle on a cable that is lost.
const (
	DeadWeight = "dead-weight" // it hangs from its attachment
	CutAway    = "cut-away"    // its cable is let go
)

// Plan is one lift.
type Plan struct {
	Format   string           `json:"format"`
	Title    string           `json:"title"`
	Note     string           `json:"note"`
	Seed     int64            `json:"seed"`
	Payload  Payload          `json:"payload"`
	Vehicles map[string]Class `json:"vehicles"`
	Team     []Member         `json:"team"`
	Site     Site             `json:"site"`
	Near     Near             `json:"near"`
	Limits   Limits           `json:"limits"`
	Errors   Errors           `json:"errors"`
	Policy   string           `json:"policy"`
	Way      Way              `json:"way"`
	Cargo    Cargo            `json:"cargo"`
	Extra    Extra            `json:"-"`
}

// Extra holds fields this version does not know, by key: kept, reported, and written back.
type Extra map[string]json.RawMessage

// Payload is what is carried. The three overrides are measured values; nil means "from the solids".
type Payload struct {
	Solids   []Solid     `json:"solids"`
	COM      *vec.V3     `json:"com_m"`         // centre of mass, payload frame
	Inertia  *[6]float64 `json:"inertia_kg_m2"` // xx yy zz xy xz yz about the centre of mass
	DragArea *vec.V3     `json:"drag_area_m2"`  // C_d A for wind along x, y, z
	Beam     Beam        `json:"beam"`
	Extra    Extra       `json:"-"`
}

// Profiles of a Beam.
const (
	Rectangle = "rectangle" // width along y, depth along z; hollow with a wall
	Pipe      = "pipe"      // outer diameter Depth; full without a wall
)

// Beam says what a long payload is made of, when it is to be checked as a beam along x. It is empty
// when it is not. What is left out comes from the material, and from the longest solid along x.
type Beam struct {
	Material       string     `json:"material"`
	Profile        string     `json:"profile"`
	Width          float64    `json:"width_m"` // along y
	Depth          float64    `json:"depth_m"` // along z
	Wall           float64    `json:"wall_m"`
	Area           float64    `json:"area_m2"`
	SecondMoment   [2]float64 `json:"second_moment_m4"`   // of area about y (bends in x and z), about z
	SectionModulus [2]float64 `json:"section_modulus_m3"` // about y, about z
	Youngs         float64    `json:"youngs_modulus_pa"`
	Strength       float64    `json:"strength_pa"`          // yield or rupture
	Factor         float64    `json:"strength_factor"`      // allowable stress is strength over it
	Allowable      float64    `json:"allowable_stress_pa"`  // goes before the two
	DeflectionMax  float64    `json:"deflection_ratio_max"` // of the length
	Extra          Extra      `json:"-"`
}

// Given tells whether the payload is to be checked as a beam.
func (b Beam) Given() bool {
	return b.Material != "" || b.Youngs > 0 || b.Strength > 0 || b.Allowable > 0
}

// Shapes of a Solid.
const (
	Box      = "box"      // Size: x, y, z
	Rod      = "rod"      // Length along x, no width
	Tube     = "tube"     // Length along x, OuterRadius, InnerRadius
	Plate    = "plate"    // Size: x, y; no thickness
	Cylinder = "cylinder" // Length along z (its axis upright), OuterRadius
	Point    = "point"
	MeshBody = "mesh" // Mesh: a closed triangle mesh of even density
)

// Solid is one part of the payload, of even density.
type Solid struct {
	Shape       string    `json:"shape"`
	Size        []float64 `json:"size_m"`
	Length      float64   `json:"length_m"`
	OuterRadius float64   `json:"outer_radius_m"`
	InnerRadius float64   `json:"inner_radius_m"`
	Mesh        *Mesh     `json:"mesh"`
	Mass        float64   `json:"mass_kg"`
	At          vec.V3    `json:"at_m"`     // payload frame: where the solid's own origin stands
	Turn        vec.V3    `json:"turn_deg"` // about the fixed x, then y, then z axis
	Extra       Extra     `json:"-"`
}

// Mesh is a closed surface, triangles counter-clockwise seen from outside.
type Mesh struct {
	Vertices  []vec.V3 `json:"vertices_m"`
	Triangles [][3]int `json:"triangles"`
	Extra     Extra    `json:"-"`
}

// Layouts of the rotors.
const (
	Cross = "cross" // rotor j at yaw + π/n + 2πj/n
	Plus  = "plus"  // rotor j at yaw + 2πj/n
)

// Class is a kind of vehicle.
type Class struct {
	Mass            float64 `json:"mass_kg"`
	Rotors          int     `json:"rotors"`
	Layout          string  `json:"layout"`
	Arm             float64 `json:"arm_m"`
	RotorRadius     float64 `json:"rotor_radius_m"`
	RotorThrustMax  float64 `json:"rotor_thrust_max_n"`  // at sea level in standard air
	TorquePerThrust float64 `json:"torque_per_thrust_m"` // κ
	Inertia         *vec.V3 `json:"inertia_kg_m2"`       // own axes, about its centre; nil: estimated
	DragArea        float64 `json:"drag_area_m2"`        // C_d A, one horizontal area
	TiltMax         float64 `json:"tilt_max_deg"`
	FigureOfMerit   float64 `json:"figure_of_merit"`  // ideal over shaft power of its rotors in hover
	DriveEfficiency float64 `json:"drive_efficiency"` // shaft over electric power: motor and controller
	Avionics        float64 `json:"avionics_w"`       // everything electric that turns no rotor
	Battery         Battery `json:"battery"`
	Bench           []Bench `json:"bench"` // one rotor with its drive on a static stand, standard air
	Extra           Extra   `json:"-"`
}

// Battery is the pack that feeds a vehicle, new and full.
type Battery struct {
	Energy     float64 `json:"energy_wh"` // nominal: charge times nominal voltage
	Charge     float64 `json:"capacity_ah"`
	Cells      int     `json:"cells"`     // in series
	Voltage    float64 `json:"voltage_v"` // nominal
	Resistance float64 `json:"resistance_ohm"`
	Usable     float64 `json:"usable_ratio"` // part of the energy that can be taken out at all
	Peukert    float64 `json:"peukert"`      // exponent
	Extra      Extra   `json:"-"`
}

// Given tells whether anything is known of how much the pack holds.
func (b Battery) Given() bool { return b.Energy > 0 || b.Charge > 0 }

// Bench is one row of a static test.
type Bench struct {
	Throttle float64 `json:"throttle"`
	Thrust   float64 `json:"thrust_n"`
	Power    float64 `json:"power_w"` // electric, into the controller
	Speed    float64 `json:"speed_rad_s"`
	Voltage  float64 `json:"voltage_v"` // at the controller
	Extra    Extra   `json:"-"`
}

// Member is one vehicle of the team.
type Member struct {
	ID      string  `json:"id"`
	Vehicle string  `json:"vehicle"`
	Attach  vec.V3  `json:"attach_m"` // payload frame; rigid: the vehicle's centre
	Yaw     float64 `json:"yaw_deg"`  // anticlockwise from above
	Hold    Hold    `json:"hold"`
	Extra   Extra   `json:"-"`
}

// Hold is a cable or a rigid grip. Lean is a rotation vector about payload x and y, in degrees,
// that tips the vehicle's own axes before they are yawed about its own axis.
type Hold struct {
	Kind          string     `json:"kind"`
	Length        float64    `json:"length_m"`
	WorkingLoad   float64    `json:"working_load_n"`
	Lean          [2]float64 `json:"lean_deg"`
	GripForceMax  float64    `json:"grip_force_max_n"`
	GripMomentMax float64    `json:"grip_moment_max_n_m"`
	Stiffness     float64    `json:"stiffness_n_m"`    // upwards, when the vehicle holds its place rather than its thrust
	LengthError   float64    `json:"length_error_m"`   // how far the place it holds may be from where it should
	LineStiffness float64    `json:"line_stiffness_n"` // axial stiffness E A of the cable: pull over strain
	LineMaterial  string     `json:"line_material"`    // of the cable, when its stiffness is not known
	Extra         Extra      `json:"-"`
}

// Site is the place and the air of the day.
type Site struct {
	Altitude          float64 `json:"altitude_m"`
	TemperatureOffset float64 `json:"temperature_offset_k"` // from the standard atmosphere
	Wind              float64 `json:"wind_m_s"`
	WindTo            float64 `json:"wind_to_deg"`    // blows towards, anticlockwise from payload x
	GustFactor        float64 `json:"gust_factor"`    // of the speed in a gust over the mean
	Humidity          float64 `json:"humidity_ratio"` // relative: vapour pressure over that of saturated air
	Extra             Extra   `json:"-"`
}

// What a term of the thrust needed can be.
const (
	LeftOut = "left-out"
	Counted = "counted"
)

// Near says which of the things near the rotors enter the thrust needed.
type Near struct {
	Ground    string  `json:"ground"`      // ground effect
	Download  string  `json:"download"`    // of the wakes on the payload
	Wakes     string  `json:"wakes"`       // of the vehicles on each other
	Clearance float64 `json:"clearance_m"` // of the payload's lowest point above the ground
	Extra     Extra   `json:"-"`
}

// Limits are what the crew accepts.
type Limits struct {
	Utilisation float64 `json:"utilisation"`
	Cone        float64 `json:"cone_deg"`
	TensionMin  float64 `json:"tension_min_n"`
	Separation  float64 `json:"separation_m"`  // centre to centre
	COMError    float64 `json:"com_error_m"`   // how far the centre of mass may be from where the plan has it
	TurnReserve float64 `json:"turn_rad_s2"`   // roll and pitch acceleration kept free for attitude control
	Lost        string  `json:"lost"`          // what becomes of a lost vehicle on a cable
	Reserve     float64 `json:"reserve_ratio"` // part of the usable energy that is kept
	Extra       Extra   `json:"-"`
}

// Errors says how far the plan's numbers may be from what is true on the day: standard deviations of
// normal errors that are cut off at three of them. What is left out is for core/scatter to assume.
type Errors struct {
	PayloadMass float64 `json:"payload_mass_ratio"` // of the payload's mass
	COM         float64 `json:"com_m"`              // of its centre of mass, along each axis
	Thrust      float64 `json:"thrust_ratio"`       // of each vehicle's thrust, by itself
	Attach      float64 `json:"attach_m"`           // of each attachment, along each axis
	Line        float64 `json:"line_m"`             // of each cable's length
	Density     float64 `json:"density_ratio"`      // of the air
	Wind        float64 `json:"wind_m_s"`
	WindTo      float64 `json:"wind_to_deg"`
	Extra       Extra   `json:"-"`
}

// Way is where the payload goes: level axes that do not move, z up, x the payload's when it heads to 0.
type Way struct {
	Points   []Waypoint `json:"points"`
	Boxes    []Corridor `json:"boxes"`
	Openings []Opening  `json:"openings"`
	SpeedMax float64    `json:"speed_max_m_s"` // of the payload
	Extra    Extra      `json:"-"`
}

// Waypoint is a place that the payload passes; at the first and the last it is at rest.
type Waypoint struct {
	At        vec.V3  `json:"at_m"` // of the centre of mass
	Heading   float64 `json:"heading_deg"`
	Time      float64 `json:"time_s"`      // from the start; left out: as soon as allowed
	Pass      string  `json:"pass"`        // left out: Through
	Formation string  `json:"formation"`   // left out: as planned
	Spacing   float64 `json:"spacing_m"`   // of the nearest two vehicles, seen from above
	Width     float64 `json:"width_m"`     // of a team in line, rotors included
	Along     float64 `json:"line_to_deg"` // direction of the line, level axes
	Extra     Extra   `json:"-"`
}

// How a waypoint is passed.
const (
	Through = "through" // with the velocity that the smoothest way has there
	Stop    = "stop"    // at rest for a moment
)

// Formations of the team at a waypoint, besides AsPlanned.
const (
	Gather  = "gather"
	Spread  = "spread"
	InLine  = "in-line"
	Stacked = "stacked"
)

// Opening is a door, gate or window in an upright wall.
type Opening struct {
	At        vec.V3  `json:"at_m"`       // of its middle
	Normal    float64 `json:"normal_deg"` // direction across the wall, level axes
	Width     float64 `json:"width_m"`
	Height    float64 `json:"height_m"`
	Clearance float64 `json:"clearance_m"` // kept to its sides; left out: none
	Extra     Extra   `json:"-"`
}

// Corridor is a box in which the payload's centre of mass stays on one leg. A side left out is open.
type Corridor struct {
	Leg   int    `json:"leg"` // 1 is from the first point to the second
	Min   vec.V3 `json:"min_m"`
	Max   vec.V3 `json:"max_m"`
	Extra Extra  `json:"-"`
}
