"""Writes rigid.jsonl, cable.jsonl and mixed.jsonl again: random plans with the answers of
general-purpose solvers. README.md says what is in them.

    /usr/bin/python3 testdata/peers/make.py [kind ...]"""
import os

for v in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"):
    os.environ[v] = "1"  # the same sums in the same order every time

import copy
import json
import random
import sys
from collections import Counter

import numpy as np

import ask
import draw
from lift import G, Lift, bisect

COUNT = {"rigid": 400, "cable": 347, "mixed": 60}
EYE, AXES = np.eye(6), np.eye(3)


def near_edge(d, p):
    """Turns a plan into one just this or that side of where balance stops: the centre of mass is moved,
    or on cables also the working loads or the cone."""
    q = copy.deepcopy(p)
    how = d.pick("com", "com", "work", "cone") if d.kind == "cable" else "com"
    side = (d.num(-1, 1), d.num(-1, 1))
    com = Lift(p).pcom
    size = max(p["payload"]["solids"][0]["size_m"])

    def at(x):
        q["payload"]["com_m"] = [float(com[0] + x * size * side[0]), float(com[1] + x * size * side[1]), float(com[2])]
        if how == "work":
            for v in q["team"]:
                v["hold"]["working_load_n"] = float(1e3 * (1 - x))
        if how == "cone":
            q["site"] = {"wind_m_s": 8.0, "wind_to_deg": 30}
            q["payload"]["drag_area_m2"] = [float(size * size * 0.2)] * 3
            q["limits"]["cone_deg"] = float(60 * (1 - x))
        return q
    if how in ("work", "cone"):
        side = (0, 0)

    def holds(x):
        try:
            return ask.peer_even(Lift(at(x))) is not None
        except ask.Unclear:
            return False
    if not holds(0.0):
        return p
    far = 1.0
    while how == "com" and far < 100 and holds(far):
        far *= 2
    x = bisect(holds, 0.0, far, 30)
    return at(x * (1 + d.pick(-1, 1) * 10 ** -d.num(2.5, 5.5)))


class Maybe:
    """Asks for single numbers; one that the peer does not clearly give stays null and is counted."""
    left = Counter()

    def __call__(self, name, f, number=float):
        try:
            x = f()
        except ask.Unclear:
            self.left[name] += 1
            return None
        return None if x is None else number(x)


def both(name, f):
    return [maybe(name, lambda: f(i, s)) for i in range(3) for s in (1, -1)]


maybe = Maybe()


def largest(p, l):
    """Most kilograms at the crew's utilisation. Balance is linear in the mass, about the payload's own
    centre; a team that leans in wind is asked again and again instead."""
    if l.wind.any() and l.stiff and not l.hung:
        holds = lambda m: (lambda t: t is not None and t <= l.U)(ask.peer_even(Lift(p, m)))
        if not holds(l.m):
            return None
        hi = 2 * l.m + 0.01
        while holds(hi):
            hi *= 2
        return bisect(holds, l.m, hi, 34)
    bare = Lift(p, 0.0)  # its wrench is about the centre of the vehicles alone
    r = bare.pcom - bare.com
    x = ask.most(bare, np.r_[G * bare.up, np.cross(r, G * bare.up)], l.U)
    return 0.0 if x is None else max(0.0, x)


def climb(l):
    """Largest upward acceleration. A rigid team in wind leans anew, the drag staying as it was: its most
    force along the full-thrust axis then has to meet weight, drag and acceleration."""
    if l.hung or not l.wind.any():
        return ask.most(l, l.M * np.r_[l.up, 0, 0, 0], 1.0, lambda v: l.up)
    d = np.array([0, 0, l.M * G]) - l.R @ l.w[:3]  # drag, level axes
    x = ask.most(l, np.r_[l.axis, 0, 0, 0])
    return None if x is None else (np.sqrt((np.linalg.norm(l.w[:3]) + x) ** 2 - d[:2] @ d[:2]) + d[2]) / l.M - G


def side(l):
    """Largest acceleration sideways, the worst of four ways. Payloads on three cables or more that do not
    stand in a line go level, vehicles in tow; rigid teams without wind or leaned holds lean as far as
    thrust and tilt let them. Otherwise not asked."""
    if l.hung and not l.stiff:
        spread = np.linalg.svd(np.array([v["r"] for v in l.hung]) - l.hung[0]["r"], compute_uv=False)
        if len(l.hung) < 3 or spread[1] < 0.01 * spread[0] or spread[0] < 0.01:
            return None
        return min(ask.most(l, l.M * np.r_[d, 0, 0, 0], 1.0, lambda v: d) for d in (AXES[0], -AXES[0], AXES[1], -AXES[1]))
    if l.hung or l.wind.any() or any(any(v["hold"].get("lean_deg", [0])) for v in l.stiff):
        return None
    up = ask.most(l, l.M * EYE[2])
    return min(np.sqrt((G + up) ** 2 - G * G), G * np.tan(np.radians(min(v.get("tilt_max_deg", 30) for v in l.stiff))))


def extras(p, l, t):
    a = {}
    if t < 0.999 and l.total > 0:
        turn = lambda i, s: (lambda v: np.cross(s * AXES[i], v["r"]))
        a["moment_n_m"] = both("moment", lambda i, s: ask.most(l, s * EYE[3 + i]))
        a["turn_rad_s2"] = both("turn", lambda i, s: ask.most(l, np.r_[0, 0, 0, s * l.J[:, i]], 1.0, turn(i, s)))
        a["climb_m_s2"] = maybe("climb", lambda: climb(l))
        if a["climb_m_s2"] is not None:
            a["climb_n"] = a["climb_m_s2"] * l.total
        a["side_m_s2"] = maybe("side", lambda: side(l))
    if l.m > 0 and t < 0.999:
        a["largest_payload_kg"] = maybe("largest payload", lambda: largest(p, l))
    a["forces"] = maybe("forces", lambda: ask.settle(l, t), forces)
    a["least_squares"] = maybe("least squares", lambda: ask.least_squares(l), forces)
    return a


def forces(s):
    return {"rotor_n": [float(x) for x in s[0]], "cable_n": [[float(x) for x in f] for f in s[1]]}


def answer(p, extra):
    l = Lift(p)
    if l.off > 1e-14:
        raise ask.Unclear
    t = ask.even(l)
    if t is None:
        return {"feasible": False}
    a = {"feasible": True, "utilisation": float(t)}
    if extra:
        a.update(extras(p, l, t))
    return a


def trim(x):
    """Thirteen figures: a little more than is vouched for."""
    if isinstance(x, dict):
        return {k: trim(v) for k, v in x.items()}
    if isinstance(x, list):
        return [trim(v) for v in x]
    return float(f"{x:.13g}") if isinstance(x, float) else x


def tidy(x):
    """A plan's numbers as they will be read from the file: rounding comes before the answer."""
    return json.loads(json.dumps(trim(x)))


def again(path):
    """Answers the plans of a file once more."""
    rows, unclear = [], 0
    for line in open(path):
        r = json.loads(line)
        try:
            r["answer"] = trim(answer(r["plan"], extra=True))
            rows.append(r)
        except ask.Unclear:
            unclear += 1
    write(path, rows)
    print(f"kept: {len(rows)} plans, {unclear} dropped as the peer gave no clear answer, {sum(r['answer']['feasible'] for r in rows)} with a balance; single numbers left out {dict(maybe.left)}")


def write(path, rows):
    with open(path, "w") as f:
        f.writelines(json.dumps(r, separators=(",", ":")) + "\n" for r in rows)


def main(kinds):
    here = os.path.dirname(os.path.abspath(__file__))
    for kind in kinds:
        if kind == "kept":
            again(os.path.join(here, "kept.jsonl"))
            continue
        tags = getattr(draw, kind.upper())
        kept, unclear = [], Counter()
        maybe.left.clear()
        ask.worst.update(dict.fromkeys(ask.worst, 0.0))
        for seed in range(1, COUNT[kind] + 1):
            if seed == 341 and kind in draw.MORE:
                tags = draw.MORE[kind]
            tag = tags[(seed - 1) % len(tags)]
            d = draw.Draw(random.Random(f"{kind} {seed}"), kind, tag)
            p = d.plan()
            try:
                if tag == "edge":
                    p = near_edge(d, p)
                p = tidy(p)
                a = answer(p, extra=seed % 3 == 0)
            except ask.Unclear:
                unclear[tag] += 1
                continue
            kept.append({"seed": seed, "tag": tag, "plan": p, "answer": trim(a)})
        write(os.path.join(here, kind + ".jsonl"), kept)
        ok = sum(r["answer"]["feasible"] for r in kept)
        print(f"{kind}: {len(kept)} plans, {ok} with a balance, {sum('turn_rad_s2' in r['answer'] for r in kept)} with agility, "
              f"{sum('largest_payload_kg' in r['answer'] for r in kept)} with largest payload; left out as the peer gave no clear answer: {sum(unclear.values())} plans {dict(unclear)}, single numbers {dict(maybe.left)}; "
              f"largest difference of peer and 80-bit answer {max(ask.worst['highs'], ask.worst['conelp']):.1e}, of proof {ask.worst['proof']:.1e}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:] or [*COUNT, "kept"])
