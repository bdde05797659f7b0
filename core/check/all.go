package check

// All is every check, in the order of the sheet.
var All = []Check{
	Balance,
	Thrust,
	ControlReserve,
	Tilt,
	CableAngle,
	Tension,
	WorkingLoad,
	Separation,
	Grip,
	CentreOfMass,
	Bending,
	Deflection,
	IdealShare,
	Near,
}
