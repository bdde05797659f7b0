package drawing

// Class names of the shapes; public/drawing.css says how each looks. A picture's layers are drawn in
// this order, back to front, one path a class.
const (
	classCentre     = "dw-centre"      // centre lines of the payload
	classSolid      = "dw-solid"       // payload, filled
	classHidden     = "dw-hidden"      // hidden edges
	classEdge       = "dw-edge"        // visible edges
	classFine       = "dw-fine"        // blunt edges of a mesh
	classRod        = "dw-rod"         // solids without width
	classPoint      = "dw-point"       // point masses
	classCable      = "dw-cable"       //
	classDisc       = "dw-disc"        // rotor discs
	classArm        = "dw-arm"         //
	classHub        = "dw-hub"         //
	classNose       = "dw-nose"        // points along a vehicle's own x
	classOver       = "dw-over"        // eight-sided mark of a vehicle beyond the limit
	classForce      = "dw-force"       // force on the payload: shafts
	classForceHead  = "dw-force-head"  //
	classWeight     = "dw-weight"      //
	classWeightHead = "dw-weight-head" //
	classWind       = "dw-wind"        //
	classWindHead   = "dw-wind-head"   //
	classCOM        = "dw-com"         // centre of mass of the payload: ring
	classCOMFill    = "dw-com-fill"    // two of its quarters
	classTeam       = "dw-com-team"    // combined centre of mass: ring
	classTeamFill   = "dw-com-team-fill"
	classEye        = "dw-eye"    // attachment of a cable
	classGrip       = "dw-grip"   // rigid hold
	classPicked     = "dw-picked" // ring about the selected vehicle
	classDim        = "dw-dim"    // dimension and extension lines
	classDimHead    = "dw-dim-head"
	classAxis       = "dw-axis" // payload axes
	classAxisHead   = "dw-axis-head"
	classBar        = "dw-bar"      // scale bar, dark fields
	classBarEmpty   = "dw-bar-open" // light fields
	classSnap       = "dw-snap"     // what a dragged point has caught on
)

// Texts. The second word says how it is anchored or stressed.
const (
	textTitle  = "dw-t dw-title"
	textLeft   = "dw-t"
	textMid    = "dw-t dw-mid"
	textRight  = "dw-t dw-right"
	textSmall  = "dw-t dw-small dw-mid"
	textSmallL = "dw-t dw-small"
	textID     = "dw-t dw-id dw-mid"
	textPicked = "dw-t dw-id dw-mid dw-picked-t"
	textOver   = "dw-t dw-id dw-mid dw-over-t"
	textForce  = "dw-t dw-small dw-force-t"
	textWind   = "dw-t dw-small dw-right dw-wind-t"
)

var payloadLayers = []string{classSolid, classHidden, classFine, classEdge, classRod, classPoint}

var layers = []string{classCentre, classSolid, classHidden, classFine, classEdge, classRod, classPoint, classCable, classDisc,
	classArm, classHub, classNose, classOver, classForce, classForceHead, classWeight, classWeightHead, classWind,
	classWindHead, classEye, classGrip, classTeam, classTeamFill, classCOM, classCOMFill, classPicked, classDim, classDimHead,
	classAxis, classAxisHead, classBar, classBarEmpty, classSnap}
