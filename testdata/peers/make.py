"""Writes rigid.jsonl and cable.jsonl: random plans with the answers of general-purpose solvers.

    /usr/bin/python3 testdata/peers/make.py

See README.md. Every plan is drawn from a seed, so a run gives the same plans; those at which the
peer itself gives no clear answer are left out and counted."""
import json
import os
import random
import sys

import numpy as np

import solve
from physics import G, Lift

COUNT = 340
CLASSES = {
    "tiny": dict(mass_kg=0.075, rotors=4, arm_m=0.065, rotor_radius_m=0.033, rotor_thrust_max_n=0.37, torque_per_thrust_m=0.0045, inertia_kg_m2=[8e-5, 8e-5, 1.5e-4]),
    "three": dict(mass_kg=0.6, rotors=3, arm_m=0.17, rotor_radius_m=0.1, rotor_thrust_max_n=4.4, torque_per_thrust_m=0.013, inertia_kg_m2=[0.003, 0.003, 0.006]),
    "quad": dict(mass_kg=3.4, rotors=4, arm_m=0.33, rotor_radius_m=0.19, rotor_thrust_max_n=19, torque_per_thrust_m=0.016, inertia_kg_m2=[0.06, 0.06, 0.11]),
    "hex": dict(mass_kg=4.6, rotors=6, arm_m=0.4, rotor_radius_m=0.19, rotor_thrust_max_n=17.5, torque_per_thrust_m=0.016, inertia_kg_m2=[0.11, 0.12, 0.2]),
    "octo": dict(mass_kg=10, rotors=8, arm_m=0.68, rotor_radius_m=0.25, rotor_thrust_max_n=28, torque_per_thrust_m=0.022, inertia_kg_m2=[0.6, 0.6, 1.1]),
}


def num(rng, a, b, digits=4):
    return round(rng.uniform(a, b), digits)


def solids(rng, size, mass):
    out = [{"shape": "box", "size_m": [num(rng, 0.5, 1) * size, num(rng, 0.1, 0.6) * size, num(rng, 0.02, 0.2) * size], "mass_kg": mass}]
    for _ in range(rng.choice([0, 0, 1, 2])):
        at = [num(rng, -0.3, 0.3) * size, num(rng, -0.15, 0.15) * size, num(rng, -0.1, 0.1) * size]
        turn = [num(rng, -180, 180, 1) for _ in range(3)]
        m = round(mass * rng.uniform(0.05, 0.4), 5)
        out.append(rng.choice([
            {"shape": "point", "mass_kg": m, "at_m": at},
            {"shape": "rod", "length_m": 0.4 * size, "mass_kg": m, "at_m": at, "turn_deg": turn},
            {"shape": "tube", "length_m": 0.3 * size, "outer_radius_m": 0.05 * size, "inner_radius_m": 0.04 * size, "mass_kg": m, "at_m": at, "turn_deg": turn},
            {"shape": "cylinder", "length_m": 0.2 * size, "outer_radius_m": 0.07 * size, "mass_kg": m, "at_m": at, "turn_deg": turn},
            {"shape": "plate", "size_m": [0.3 * size, 0.2 * size], "mass_kg": m, "at_m": at, "turn_deg": turn}]))
    return out


def draw(rng, kind):
    """A random plan; load is set so that most are within reach and many near the edge."""
    k = rng.choice([1, 2, 3, 3, 4, 4, 5, 6, 8, 12])
    names = rng.sample(sorted(CLASSES), 1 if rng.random() < 0.6 else 2)
    if rng.random() < 0.1:
        names = ["tiny", "octo"]
    who = [rng.choice(names) for _ in range(k)]
    spare = sum(CLASSES[n]["rotors"] * CLASSES[n]["rotor_thrust_max_n"] / G - CLASSES[n]["mass_kg"] for n in who)
    size = rng.choice([0.3, 1, 2, 4])
    mass = round(max(0, spare) * rng.choice([0.05, 0.3, 0.6, 0.8, 0.95, 1.2]), 4)
    place = rng.choice(["ring", "ring", "free", "free", "line", "plane", "close", "point"] if k > 1 else ["free", "centre"])
    if rng.random() < 0.04:
        mass = 0
    p = {"format": "liftplan/1", "title": "random", "payload": {"solids": solids(rng, size, mass)}, "vehicles": {}, "team": [], "site": {}, "limits": {}}
    wind = rng.random() < 0.3
    for n in set(who):
        c = dict(CLASSES[n], layout=rng.choice(["cross", "plus"]), tilt_max_deg=rng.choice([20, 30, 45]))
        c["drag_area_m2"] = num(rng, 0.002, 0.1) if wind else 0
        p["vehicles"][n] = c
    for i, n in enumerate(who):
        a = 2 * np.pi * i / k
        at = {"ring": [0.45 * size * np.cos(a), 0.45 * size * np.sin(a), 0.02],
              "free": [num(rng, -0.5, 0.5) * size, num(rng, -0.4, 0.4) * size, num(rng, -0.1, 0.1) * size],
              "line": [0.45 * size * (1 - 2 * i / max(1, k - 1)), 0, 0.02],
              "plane": [num(rng, -0.5, 0.5) * size, num(rng, -0.4, 0.4) * size, 0],
              "close": [0.001 * np.cos(a), 0.001 * np.sin(a), 0.01],
              "point": [0, 0, 0.05], "centre": [0, 0, 0.02]}[place]
        v = {"id": f"V{i}", "vehicle": n, "attach_m": [round(float(x), 5) for x in at]}
        if rng.random() < 0.5:
            v["yaw_deg"] = num(rng, -180, 180, 1)
        if kind == "rigid":
            v["hold"] = {"kind": "rigid"}
            if rng.random() < 0.2:
                v["hold"]["lean_deg"] = [num(rng, -12, 12, 1), num(rng, -12, 12, 1)]
        else:
            v["hold"] = {"kind": "cable", "length_m": num(rng, 1, 5, 2)}
            if rng.random() < 0.7:
                v["hold"]["working_load_n"] = round(rng.choice([0.6, 1, 3, 20]) * max(mass, 0.1) * G / k, 2)
        p["team"].append(v)
    if place in ("centre", "point", "close", "line") and rng.random() < 0.8:
        p["payload"]["com_m"] = [0, 0, 0]
    elif rng.random() < 0.15:
        p["payload"]["com_m"] = [num(rng, -0.1, 0.1) * size, num(rng, -0.1, 0.1) * size, 0]
    if rng.random() < 0.15:
        p["payload"]["inertia_kg_m2"] = [0.5, 0.6, 0.8, 0.05, -0.03, 0.02]
    if wind:
        p["site"] = {"wind_m_s": num(rng, 1, 9, 1), "wind_to_deg": num(rng, 0, 360, 0)}
        p["payload"]["drag_area_m2"] = [round(num(rng, 0.05, 0.5) * size * size * 0.2, 4) for _ in range(3)]
    if rng.random() < 0.3:
        p["site"].update(altitude_m=num(rng, -200, 4000, 0), temperature_offset_k=num(rng, -15, 25, 0))
    if kind == "cable":
        p["limits"] = {"utilisation": 0.8, "cone_deg": rng.choice([15, 30, 45]), "tension_min_n": rng.choice([0, 0.01, 0.5]), "separation_m": 0.0001}
    return p


def pairs(f, scale):
    """Largest t each way about the three axes; a bound within 1e-9 of the scale of nothing is nothing."""
    out = []
    for i in range(3):
        for s in (1, -1):
            x = f(i, s)
            out.append(None if x is None else float(x))
    return out


def answer_rigid(l, extra):
    t = solve.rigid_even(l)
    a = {"feasible": t is not None}
    if t is None:
        return a
    a["utilisation"] = float(t)
    if not extra or t > 0.999:
        return a
    e = np.eye(6)
    a["moment_n_m"] = pairs(lambda i, s: solve.rigid_most(l, s * e[3 + i]), 1)
    a["turn_rad_s2"] = pairs(lambda i, s: solve.rigid_most(l, np.r_[0, 0, 0, s * l.J[:, i]]), 1)
    if not np.any(l.wind) and abs(l.axis[2] - 1) < 1e-14:
        a["climb_n"] = float(solve.rigid_most(l, e[2]))
        per = np.r_[0, 0, G, np.cross(l.com - l.centre, [0, 0, G])]
        x = solve.rigid_most(l, per, 0.8, l.w - l.m * per)
        a["largest_payload_kg"] = float(max(x, 0)) if x is not None else 0.0
    return a


def answer_cable(l, extra):
    r = solve.cable_even(l)
    a = {"feasible": r is not None}
    if r is None:
        return a
    a["utilisation"] = float(r[0])
    if not extra or r[0] > 0.999:
        return a
    e, ex = np.eye(6), np.eye(3)
    get = lambda x: None if x is None else x[0]
    a["moment_n_m"] = pairs(lambda i, s: get(solve.cable_most(l, s * e[3 + i])), 1)
    a["turn_rad_s2"] = pairs(lambda i, s: get(solve.cable_most(l, np.r_[0, 0, 0, s * l.J[:, i]], 1.0, lambda n: np.cross(s * ex[i], l.cables[n]["r"]))), 1)
    a["climb_m_s2"] = float(get(solve.cable_most(l, l.m * e[2], 1.0, lambda n: ex[2])))
    x = get(solve.cable_most(l, np.r_[0, 0, G, 0, 0, 0], 0.8, None, l.w - np.r_[0, 0, l.m * G, 0, 0, 0]))
    a["largest_payload_kg"] = float(max(x, 0)) if x is not None else 0.0
    a["forces_n"] = [[float(x) for x in f] for f in solve.settle(l, r[0])]
    return a


def trim(x):
    """Numbers to twelve figures: more than the peers can vouch for, half the file."""
    if isinstance(x, float):
        return float(f"{x:.12g}")
    if isinstance(x, list):
        return [trim(v) for v in x]
    if isinstance(x, dict):
        return {k: trim(v) for k, v in x.items()}
    return x


def main():
    here = os.path.dirname(os.path.abspath(__file__))
    for kind, answer in (("rigid", answer_rigid), ("cable", answer_cable)):
        kept, feasible, unclear, seed = [], 0, 0, 0
        while len(kept) < COUNT:
            seed += 1
            rng = random.Random(f"{kind} {seed}")
            p = draw(rng, kind)
            try:
                a = answer(Lift(p), extra=len(kept) % 4 == 0)
            except solve.Unclear:
                unclear += 1
                continue
            feasible += a["feasible"]
            kept.append({"seed": seed, "plan": p, "answer": trim(a)})
        with open(os.path.join(here, kind + ".jsonl"), "w") as f:
            for row in kept:
                f.write(json.dumps(row, separators=(",", ":")) + "\n")
        print(f"{kind}: {len(kept)} plans, {feasible} feasible, {unclear} left out because the peer gave no clear answer")


if __name__ == "__main__":
    sys.exit(main())
