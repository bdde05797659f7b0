// Package talk is what the page and the program of its studies say to each other. A study is a question that
// takes work of its own, or that few people ask: the page shows its title, and a second program, loaded
// when it is first asked for, works it out beside the page and draws it.
package talk

import (
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/format"
)

// Section is the title of a study on the page.
type Section struct {
	ID, Title string
	Closed    string // what stands beside the title until there is more to say
	Bench     string // which copy of the program works on it
	Chapter   int    // of the theory; 0: none of its own
}

// Benches. What takes long and is started by hand has a bench of its own, so that the rest goes on.
const (
	Live = "live" // follows the plan while it moves
	Long = "long"
	Dice = "dice" // samples, which may take minutes
	Slow = "slow" // what takes a second or more
)

// The sections.
const (
	WouldDo = "would-do"
	Moves   = "moves"
	Bent    = "bent"
	Lost    = "lost"
	Wind    = "wind"
	Patch   = "patch"
	Where   = "where"
	Hang    = "hang"
	Energy  = "energy"
	Air     = "air"
	Sizes   = "sizes"
	Errors  = "errors"

	Formation = "formation"
	Compare   = "compare"
	HandOn    = "hand-on"
	Way       = "way"
	Cargo     = "cargo"
)

// Paper is what only the printed sheet shows at its end. It has no title on the page.
const Paper = "paper"

// Group is studies of one kind.
type Group struct {
	Title    string
	Sections []Section
}

// Groups are the studies, in the order of the page.
var Groups = []Group{
	{"To change it", []Section{
		{WouldDo, "What would do", "the smallest single changes that would make it lift", Live, 11},
		{Moves, "What moves the answer", "centimetres, kilograms and wind, by what they cost", Live, 11},
		{Where, "Where to attach", "the best holes or places, what a shift costs, how many it takes", Long, 10},
	}},
	{"When something goes wrong", []Section{
		{Lost, "If a vehicle is lost", "who may fail, and what the others then bear", Live, 13},
		{Wind, "Wind from anywhere", "the wind that is held from every side, and what ends it", Live, 15},
		{Patch, "Where the centre of mass may be", "the patch in which every vehicle keeps within its limits", Live, 14},
		{Errors, "If the numbers are a little wrong", "the worst case, the chance of exceeding a limit, and which error matters", Dice, 16},
	}},
	{"How it hangs, flies and bends", []Section{
		{Hang, "How it hangs and swings", "tilt and pulls when a vehicle is out of place, a line short, one lost; the swing", Live, 12},
		{Formation, "How far apart they fly", "places that keep the separation, what that costs, and who flies in whose wake", Slow, 17},
		{Air, "Near the ground and near each other", "ground effect, wash on the payload, wakes", Live, 18},
		{Bent, "The payload as a beam, and who carries it", "bending, deflection, and what a team carries that holds its places", Live, 9},
	}},
	{"How long, how far, how fast", []Section{
		{Energy, "How long they hold, and how far", "hold time, who ends first, a route, static tests", Live, 18},
		{Way, "The way, and how fast", "a way through waypoints, the shortest time it takes, and what limits it where", Long, 20},
		{Cargo, "Cargo list", "several payloads for the same team in order: time, supports and packs", Slow, 23},
		{Sizes, "Many small or one large", "size, mass, power and agility of teams that are just large enough", Live, 18},
	}},
	{"With others", []Section{
		{Compare, "Compare variants", "up to four plans beside one another: what differs, and what that changes", Live, 0},
		{HandOn, "Hand it on", "tables, matrices, set-points, scenes for simulators, drawings", Live, 1},
	}},
}

// Sections are those of all groups.
var Sections = func() (all []Section) {
	for _, g := range Groups {
		all = append(all, g.Sections...)
	}
	return all
}()

// Ask is the plan on the screen and what is to be seen of it.
type Ask struct {
	Gen      int // counts the plans
	Plan     plan.Plan
	Report   report.Report
	Selected string // id of a vehicle
	Units    format.Units
	Open     []string // sections that stand open
}

// Opened tells whether a section stands open.
func (a Ask) Opened(id string) bool {
	for _, o := range a.Open {
		if o == id {
			return true
		}
	}
	return false
}

// Of is the section with an id.
func Of(id string) Section {
	for _, s := range Sections {
		if s.ID == id {
			return s
		}
	}
	return Section{}
}
