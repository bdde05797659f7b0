package link

// dict1 is the preset dictionary of links of version 1: text the compressor points back into
// (RFC 1951, section 2), the commonest last, where pointing is shortest. It is part of the format: never
// change one byte of it. What it should have had goes into the dictionary of a version 2.
const dict1 = dictBeam + dictClasses + dictRare + dictWords + dictPlan

// Long payloads checked as beams, and holds that keep their place.
const dictBeam = `"stiffness_n_m":500,"length_error_m":0.01}},` +
	`"beam":{"material":"softwood-c24","bamboo","grp-e23","carbon-fabric","carbon-along","steel-s235","profile":"rectangle","width_m":0.1,` +
	`"area_m2":0.001,"second_moment_m4":[1e-7,"section_modulus_m3":[1e-5,"youngs_modulus_pa":7e10,"strength_pa":2.4e8,"strength_factor":3,"allowable_stress_pa":8e7,"deflection_ratio_max":0.005},` +
	`"beam":{"material":"aluminium-6061-t6","profile":"pipe","depth_m":0.1,"wall_m":0.005}`

// The classes of the library.
const dictClasses = `"vehicles":{"bench-quad":{"mass_kg":0.25,"rotors":4,"layout":"cross","arm_m":0.115,"rotor_radius_m":0.064,"rotor_thrust_max_n":1.35,"torque_per_thrust_m":0.0082,"drag_area_m2":0.01,"tilt_max_deg":30},` +
	`"carrier-hex":{"mass_kg":6.8,"rotors":6,"layout":"cross","arm_m":0.52,"rotor_radius_m":0.25,"rotor_thrust_max_n":25,"torque_per_thrust_m":0.022,"drag_area_m2":0.11,"tilt_max_deg":25},` +
	`"field-hex":{"mass_kg":4.6,"rotors":6,"layout":"plus","arm_m":0.4,"rotor_radius_m":0.19,"rotor_thrust_max_n":17.5,"torque_per_thrust_m":0.016,"drag_area_m2":0.08,"tilt_max_deg":30},` +
	`"heavy-octo":{"mass_kg":10,"rotors":8,"layout":"cross","arm_m":0.68,"rotor_radius_m":0.25,"rotor_thrust_max_n":28,"torque_per_thrust_m":0.022,"drag_area_m2":0.15,"tilt_max_deg":25},` +
	`"pocket-quad":{"mass_kg":0.075,"rotors":4,"layout":"cross","arm_m":0.065,"rotor_radius_m":0.033,"rotor_thrust_max_n":0.37,"torque_per_thrust_m":0.0045,"drag_area_m2":0.004,"tilt_max_deg":30},` +
	`"survey-quad":{"mass_kg":0.9,"rotors":4,"layout":"cross","arm_m":0.19,"rotor_radius_m":0.105,"rotor_thrust_max_n":4.7,"torque_per_thrust_m":0.0125,"drag_area_m2":0.025,"tilt_max_deg":30}`

// Fields and words that few plans have.
const dictRare = `"grip_force_max_n":200,"grip_moment_max_n_m":20}},"inner_radius_m":0.0` +
	`"mesh":{"vertices_m":[[0,"triangles":[[0,1,2],[` +
	`"shape":"rod","length_m":` +
	`{"shape":"tube","length_m":2,"outer_radius_m":0.05,` +
	`{"shape":"plate","size_m":[` +
	`{"shape":"cylinder","length_m":0.5,"outer_radius_m":0.1,"mass_kg":2,"at_m":[0.` +
	`{"shape":"point","mass_kg":1,"at_m":[0,0,-0.1]}],"com_m":[0,0,0],"inertia_kg_m2":[0.1,0.2,0.3,0,0,0],"drag_area_m2":[0.1,0.2,0.9]},` +
	`"policy":"least-squares"}` +
	`"policy":"equal"}`

// Words of titles and notes.
const dictWords = ` the crew lifts at slack water with invented numbers: lighthouse, lantern, lamp glass, lens crate, battery, solar panel, ladder, railing, bridge, pier, boat, rope; ` +
	`onto the gallery, from the deck to the landing, over the rock and the rail, then lower it. ` +
	`A beam and a sensor plate on cables. ` +
	`Invented example: `

// A plan with every key that most plans have.
const dictPlan = `{"format":"liftplan/1","title":"","note":"","seed":1,` +
	`"payload":{"solids":[{"shape":"box","size_m":[1,"mass_kg":1,"at_m":[0,0,0],"turn_deg":[0,0,0]}]},` +
	`"vehicles":{"field-quad":{"mass_kg":3.4,"rotors":4,"layout":"cross","arm_m":0.33,"rotor_radius_m":0.19,"rotor_thrust_max_n":19,"torque_per_thrust_m":0.016,"inertia_kg_m2":[0.06,0.06,0.11],"drag_area_m2":0.06,"tilt_max_deg":30}},` +
	`"team":[{"id":"A","vehicle":"field-quad","attach_m":[1.1,0,0.03],"hold":{"kind":"rigid","lean_deg":[0,0]}},` +
	`{"id":"B","vehicle":"field-quad","attach_m":[-1.1,0,0.03],"yaw_deg":0,"hold":{"kind":"cable","length_m":3,"working_load_n":400}}],` +
	`"site":{"altitude_m":0,"temperature_offset_k":0,"wind_m_s":0,"wind_to_deg":0},` +
	`"limits":{"utilisation":0.8,"cone_deg":30,"tension_min_n":0.5,"separation_m":1.4,"com_error_m":0.02,"turn_rad_s2":1},"policy":"even-effort"}`
