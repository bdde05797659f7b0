package beam

// Material is a nominal row of the table: what a bar is usually made of. A measured or certified value
// always goes before it.
type Material struct {
	Name     string  // as the plan says it
	Title    string  // in words
	Youngs   float64 // Pa
	Strength float64 // Pa, in bending: yield of a metal, rupture of wood and laminates, the weaker side
	Yields   bool    // Strength is a yield strength
	Source   string
}

// Materials is the table. Allowable stress is strength over the plan's factor; see Factor.
var Materials = []Material{
	{"steel-s235", "structural steel S235", 210e9, 235e6, true,
		"EN 1993-1-1:2005, 3.2.6 and Table 3.1, up to 40 mm thick, https://it.scribd.com/document/470650995/stee116"},
	{"aluminium-6061-t6", "aluminium 6061-T6", 68.9e9, 240e6, true,
		"modulus: data sheet after the Aluminum Association, https://www.mfgproto.com/aluminum-6061-t6-data-sheet/ (typical yield there 276 MPa); least yield of an extrusion, 240 MPa: from memory; not beside a weld"},
	{"softwood-c24", "spruce or pine, class C24", 11e9, 24e6, false,
		"EN 338, bending strength by https://www.engineeringtoolbox.com/structural-softwood-strength-classes-d_1804.html; mean modulus 11 GPa: from memory; dry, sorted timber"},
	{"carbon-fabric", "carbon fabric 0/90 in epoxy", 70e9, 570e6, false,
		"in compression, nominal, half the volume fibres, https://performance-composites.com/carbonfibre/mechanicalproperties_2.asp"},
	{"carbon-along", "carbon fibres all along the bar in epoxy", 135e9, 1200e6, false,
		"in compression, nominal, 60 % of the volume fibres, https://performance-composites.com/carbonfibre/mechanicalproperties_2.asp"},
	{"grp-e23", "pultruded glass-fibre profile, grade E23", 23e9, 240e6, false,
		"EN 13706-3:2002, least values of grade E23, https://fiberline.com/european-standard-en-13706"},
	{"bamboo", "bamboo culm", 15e9, 80e6, false,
		"from memory: nominal, seasoned and sound; culms differ by a factor of two, so test yours"},
}

// Factor is what strength is divided by when the plan gives neither a factor nor an allowable stress: 3,
// which the design of lifting devices takes against yielding when the circumstances of the lift are not
// certain (ASME BTH-1, design category B; from memory).
const Factor = 3

// MaterialOf finds a row by its name.
func MaterialOf(name string) (Material, bool) {
	for _, m := range Materials {
		if m.Name == name {
			return m, true
		}
	}
	return Material{}, false
}
