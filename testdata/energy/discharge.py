#!/usr/bin/python3
"""Discharges ten invented packs at constant power by scipy's solve_ivp and writes discharge.json.

States: charge (1 is full) and energy taken out at open circuit, both over time. Run in this folder:
    /usr/bin/python3 discharge.py
"""
import json

import numpy as np
from scipy.integrate import solve_ivp

FULL, EMPTY, NOMINAL, RATED = 4.2, 3.2, 3.7, 0.2  # V per cell; rated current over the capacity in an hour

# energy Wh, voltage V, resistance ohm, usable, Peukert, power W, effort, reserve
CASES = [
    (111.0, 22.2, 0.000, 1.00, 1.00, 300.0, 0.30, 0.20),
    (111.0, 22.2, 0.020, 1.00, 1.00, 300.0, 0.30, 0.20),
    (111.0, 22.2, 0.060, 0.95, 1.05, 500.0, 0.40, 0.20),
    (177.6, 22.2, 0.030, 0.90, 1.03, 650.0, 0.50, 0.25),
    (177.6, 22.2, 0.030, 0.90, 1.03, 650.0, 0.90, 0.25),
    (0.888, 3.7, 0.100, 1.00, 1.00, 7.5, 0.55, 0.20),
    (0.888, 3.7, 0.150, 1.00, 1.02, 20.0, 0.20, 0.00),
    (30.0, 11.1, 0.050, 1.00, 1.10, 83.808, 0.50, 0.20),
    (30.0, 11.1, 0.000, 1.00, 1.20, 83.808, 0.50, 0.20),
    (11.1, 7.4, 0.160, 1.00, 1.00, 80.0, 0.45, 0.05),
]


def run(case):
    energy, volts, ohm, usable, n, power, effort, reserve = case
    energy *= 3600
    coulombs = energy / volts

    def opened(q):
        return volts * (EMPTY + (FULL - EMPTY) * q) / NOMINAL

    def current(q):
        v = opened(q)
        if ohm == 0:
            return power / v
        return (v - np.sqrt(max(v * v - 4 * ohm * power, 0))) / (2 * ohm)

    def loaded(q):
        return opened(q) - ohm * current(q)

    def rhs(_, y):
        i = current(y[0])
        pace = i * (i / (RATED * coulombs / 3600)) ** (n - 1)  # counted against the capacity
        return [-pace / coulombs, opened(y[0]) * pace]

    def reserved(_, y):
        return usable * (1 - reserve) * energy - y[1]

    def weak(_, y):
        return (loaded(y[0]) / loaded(1)) ** 2 - effort

    def dry(_, y):
        return opened(y[0]) ** 2 - 4 * ohm * power * (1 + 1e-12)

    events = [reserved, weak, dry]
    for e in events:
        e.terminal = True
    s = solve_ivp(rhs, (0, 1e6), [1, 0], method="DOP853", events=events, rtol=1e-11, atol=1e-12, max_step=10)
    which = [k for k, t in enumerate(s.t_events) if len(t)]
    return {
        "energy_wh": energy / 3600, "voltage_v": volts, "resistance_ohm": ohm, "usable_ratio": usable, "peukert": n,
        "power_w": power, "effort": effort, "reserve_ratio": reserve,
        "time_s": s.t[-1], "charge": s.y[0][-1], "by": ["reserve", "thrust", "collapse"][which[0]],
        "voltage_full_v": loaded(1), "voltage_last_v": loaded(s.y[0][-1]),
    }


if __name__ == "__main__":
    with open("discharge.json", "w") as f:
        json.dump([run(c) for c in CASES], f, indent=1)
        f.write("\n")
