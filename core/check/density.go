package check

import (
	atmosphere "cohoist/core/air"
	"cohoist/core/plan"
)

// air works out the density of the day.
func (w *working) air(s plan.Site) {
	d, _ := atmosphere.Of(s)
	w.add("T_a", d.Temperature, "K", "THEORY (3.1), "+given, "288.15 - 0.0065*%v + %v", s.Altitude, s.TemperatureOffset)
	w.add("p", d.Pressure, "Pa", "THEORY (3.2)", "101325*pow((T_a - %v)/288.15, 9.80665/(0.0065*287.05287))", s.TemperatureOffset)
	if !(s.Humidity > 0) {
		w.add("rho", d.Density, "kg/m³", "THEORY (3.3)", "p/(287.05287*T_a)")
		return
	}
	w.add("e_s", d.Vapour, "Pa", "THEORY (3.10)", "611.2*exp(17.62*(T_a - 273.15)/(T_a - 273.15 + 243.12))")
	w.add("rho", d.Density, "kg/m³", "THEORY (3.3), (3.9)", "p/(287.05287*T_a)*(1 - 0.378*%v*e_s/p)", s.Humidity)
}
