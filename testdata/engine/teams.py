"""Hung payloads for the physics engine, ten invented here and the shipped examples on cables (without
wind and separation): plans, and where vehicles and cables are in hover by testdata/peers.

    /usr/bin/python3 testdata/engine/teams.py > teams.json"""
import glob
import json
import math
import os
import sys

os.environ["OPENBLAS_NUM_THREADS"] = "1"
here = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.environ.get("PEERS", os.path.join(here, "..", "peers")))

import numpy as np

import ask
from lift import Lift

QUAD = dict(mass_kg=3.4, rotors=4, arm_m=0.33, rotor_radius_m=0.19, rotor_thrust_max_n=19, tilt_max_deg=30)
HEX = dict(mass_kg=5.2, rotors=6, arm_m=0.42, rotor_radius_m=0.19, rotor_thrust_max_n=22, tilt_max_deg=30)
POCKET = dict(mass_kg=0.075, rotors=4, arm_m=0.065, rotor_radius_m=0.033, rotor_thrust_max_n=0.4, tilt_max_deg=30)


def ring(k, r, z, turn=0):
    return [[round(r * math.cos(2 * math.pi * i / k + turn), 6), round(r * math.sin(2 * math.pi * i / k + turn), 6), z] for i in range(k)]


def box(size, mass, at=(0, 0, 0), turn=(0, 0, 0)):
    return {"shape": "box", "size_m": list(size), "mass_kg": mass, "at_m": list(at), "turn_deg": list(turn)}


def cylinder(length, radius, mass, at, turn=(0, 0, 0)):
    return {"shape": "cylinder", "length_m": length, "outer_radius_m": radius, "mass_kg": mass, "at_m": list(at), "turn_deg": list(turn)}


def point(mass, at):
    return {"shape": "point", "mass_kg": mass, "at_m": list(at)}


# title, solids, attachments, kind of each vehicle (q quad, h hex, p pocket), cable lengths, cone
TEAMS = [
    ("beam on two", [box([2.4, 0.3, 0.06], 5)], [[1.1, 0, 0.03], [-1.1, 0, 0.03]], "qq", [3, 3], 30),
    ("beam on two, lamp at one end", [box([2.4, 0.3, 0.06], 4), point(0.9, [0.7, 0, 0])], [[1.1, 0, 0.03], [-1.1, 0, 0.03]], "hq", [3, 2.5], 30),
    ("plate on three", [box([1, 1, 0.04], 6)], ring(3, 0.5, 0.02), "qqq", [3, 3, 3], 30),
    ("plate on three, centre of mass off", [box([1, 1, 0.04], 5), point(2.4, [0.3, 0.2, -0.25])], ring(3, 0.5, 0.02), "qqq", [2.5, 3, 3.5], 30),
    ("three, turned parts", [box([0.9, 0.6, 0.1], 4, turn=[0, 0, 20]), cylinder(0.5, 0.06, 1.5, [0.1, 0.12, -0.08], [40, 25, 10]), box([0.2, 0.1, 0.15], 1, [-0.2, 0.05, 0.02], [10, -30, 50])],
     [[0.42, 0.3, 0.08], [-0.4, 0.33, 0.1], [0.02, -0.36, 0.06]], "hqq", [3, 3, 3], 30),
    ("crate on four", [box([0.8, 0.8, 0.6], 8)], ring(4, 0.5, 0.3, math.pi / 4), "qqqq", [3, 3, 3, 3], 30),
    ("crate on four, unlike vehicles", [box([0.8, 0.8, 0.5], 7), point(5, [0.3, 0.25, -0.2])], ring(4, 0.5, 0.25, math.pi / 4), "hqqq", [3, 3.2, 3.4, 3], 30),
    ("sensor plate on four pocket vehicles", [box([0.3, 0.2, 0.004], 0.09), point(0.01, [0.05, 0.02, -0.01])], [[0.15, 0.1, 0.002], [-0.15, 0.1, 0.002], [-0.15, -0.1, 0.002], [0.15, -0.1, 0.002]], "pppp", [1, 1, 1, 1], 30),
    ("drum on five, at two heights", [cylinder(0.8, 0.35, 11, [0, 0, 0]), point(2.5, [0.2, -0.2, -0.3])], [[0.35, 0, 0.4], [0.1, 0.33, 0.2], [-0.28, 0.2, 0.4], [-0.28, -0.2, 0.2], [0.1, -0.33, 0.4]], "qhqqq", [2, 2.5, 3, 3, 2.5], 30),
    ("deck on eight", [box([3, 1.6, 0.08], 18), point(9, [0.9, 0.4, -0.2])], [[x, y, 0.04] for y in (-0.75, 0.75) for x in (-1.4, -0.5, 0.5, 1.4)], "qqhqqqhq", [4, 3, 4, 3, 3, 4, 3, 4], 30),
]


def plans():
    names = {"q": ("quad", QUAD), "h": ("hex", HEX), "p": ("pocket", POCKET)}
    for title, solids, places, kinds, lengths, cone in TEAMS:
        yield {"format": "liftplan/1", "title": title, "payload": {"solids": solids}, "vehicles": dict(names[c] for c in sorted(set(kinds))),
               "team": [{"id": f"V{i + 1}", "vehicle": names[c][0], "attach_m": at, "hold": {"kind": "cable", "length_m": L}} for i, (c, at, L) in enumerate(zip(kinds, places, lengths))],
               "limits": {"cone_deg": cone, "tension_min_n": 0.05, "separation_m": 0}}
    for path in sorted(glob.glob(os.path.join(here, "..", "..", "core", "example", "*.json"))):
        plan = json.load(open(path))
        plan["site"] = {}
        plan.setdefault("limits", {})["separation_m"] = 0
        if all(v["hold"]["kind"] == "cable" for v in plan["team"]) and all(s["shape"] in ("box", "cylinder", "point") for s in plan["payload"]["solids"]):
            yield plan


def main():
    out = []
    for plan in plans():
        title, places, lengths = plan["title"], [v["attach_m"] for v in plan["team"]], [v["hold"]["length_m"] for v in plan["team"]]
        l = Lift(plan)
        t = ask.even(l)
        if t is None:
            continue
        _, F = ask.settle(l, t)
        T = np.linalg.norm(F, axis=1)
        n = F / T[:, None]
        r = np.array(places) - l.pcom
        E = np.hstack([n, np.cross(r, n)])  # balance of tensions alone, directions held
        s = np.linalg.svd(E, compute_uv=False)
        out.append({"plan": plan, "tension_n": T.tolist(), "anchors_m": (np.array(places) + n * np.array(lengths)[:, None]).tolist(),
                    "determinate": bool(len(s) == len(T) and s[-1] > 0.02 * s[0]), "cable_angle_deg": np.degrees(np.arccos(n[:, 2])).round(3).tolist()})
        print(title, "tension", T.round(3), "angle", out[-1]["cable_angle_deg"], "determinate" if out[-1]["determinate"] else "rest lengths by tension", file=sys.stderr)
    json.dump(out, sys.stdout)


if __name__ == "__main__":
    main()
