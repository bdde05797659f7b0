package link

// dict1 is the preset dictionary of links of version 1: text the compressor points back into
// (RFC 1951, section 2), the commonest last, where pointing is shortest. It is part of the format: never
// change one byte of it. What it should have had goes into the dictionary of a version 2.
const dict1 = `"grip_force_max_n":,"grip_moment_max_n_m":"inner_radius_m":"mesh":{"vertices_m":[[],"triangles":[["shape":"rod","length_m":"shape":"tube","length_m":"shape":"plate","size_m":[{"shape":"cylinder","length_m":0.,"outer_radius_m":0."shape":"point","mass_kg":],"com_m":[0,0,0],"inertia_kg_m2":[0.],"drag_area_m2":[0.,` +
	`"layout":"plus","policy":"least-squares"}"equal""rotors":6"rotors":8{"format":"liftplan/1","title":"","note":"","seed":1,"payload":{"solids":[{"shape":"box","size_m":[1,"mass_kg":1,"at_m":[0,0,0],"turn_deg":[0,0,0]}]},` +
	`"vehicles":{"pocket-quad":{"mass_kg":0.{"field-quad":{"mass_kg":3.4,"rotors":4,"layout":"cross","arm_m":0.33,"rotor_radius_m":0.19,"rotor_thrust_max_n":19,"torque_per_thrust_m":0.016,"inertia_kg_m2":[0.06,0.06,0.11],"drag_area_m2":0.06,"tilt_max_deg":30}},` +
	`"team":[{"id":"A","vehicle":"field-quad","attach_m":[1.1,0,0.03],"hold":{"kind":"rigid","lean_deg":[0,0]}},` +
	`{"id":"B","vehicle":"field-quad","attach_m":[-1.1,0,0.03],"yaw_deg":0,"hold":{"kind":"cable","length_m":3,"working_load_n":400}}],` +
	`"site":{"altitude_m":0,"temperature_offset_k":0,"wind_m_s":0,"wind_to_deg":0},` +
	`"limits":{"utilisation":0.8,"cone_deg":30,"tension_min_n":0.5,"separation_m":1.4,"com_error_m":0.02,"turn_rad_s2":1},"policy":"even-effort"}`
