package handover

import "cohoist/core/report"

// ChecksCSV is the table of checks; demand and capacity are in the unit of their row.
func ChecksCSV(r report.Report) []byte {
	t := head("id", "title", "status", "where", "demand", "capacity", "unit", "utilisation", "sentence")
	for _, c := range r.Checks {
		t.row(c.ID, text(c.Title), string(c.Status), text(c.Where), number(c.Demand), number(c.Capacity), c.Unit,
			number(c.Utilisation), text(c.Sentence))
	}
	return t.bytes()
}

// VehiclesCSV is the table of vehicles, keys as in the report. Vectors are in the payload frame.
func VehiclesCSV(r report.Report) []byte {
	t := head("id", "force_on_payload_x_n", "force_on_payload_y_n", "force_on_payload_z_n",
		"moment_on_payload_x_n_m", "moment_on_payload_y_n_m", "moment_on_payload_z_n_m", "tension_n", "cable_angle_deg",
		"thrust_n", "thrust_x_n", "thrust_y_n", "thrust_z_n", "thrust_max_n", "utilisation", "tilt_deg", "x_m", "y_m", "z_m",
		"download_x_n", "download_y_n", "download_z_n", "download_at_x_m", "download_at_y_m", "download_at_z_m")
	for _, v := range r.Vehicles {
		f, m, u, p, d, at := v.Force, v.Moment, v.ThrustVector, v.Position, v.Download, v.DownloadAt
		t.row(append([]string{text(v.ID)}, numbers(f[0], f[1], f[2], m[0], m[1], m[2], v.Tension, v.CableAngle,
			v.Thrust, u[0], u[1], u[2], v.ThrustMax, v.Utilisation, v.Tilt, p[0], p[1], p[2], d[0], d[1], d[2], at[0], at[1], at[2])...)...)
	}
	return t.bytes()
}

// BeamCSV is the diagrams of the payload as a beam along x: both sides of every jump, a positive moment sags (THEORY
// chapter 9). _level_ is the plane of x and y, the others are upright.
func BeamCSV(b report.Beam) []byte {
	t := head("x_m", "shear_n", "moment_n_m", "axial_n", "deflection_m", "moment_level_n_m", "deflection_level_m", "stress_pa")
	for _, p := range b.Points {
		t.row(numbers(p.X, p.Shear, p.Moment, p.Axial, p.Deflection, p.MomentLevel, p.Sideways, p.Stress)...)
	}
	return t.bytes()
}
