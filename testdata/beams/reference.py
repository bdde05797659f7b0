#!/usr/bin/python3
"""Twenty random beams on supports by finite elements: testdata/beams/answers.json.

Two-node beam elements with cubic shape functions (Euler-Bernoulli) and the loads that belong to them, so
that the nodes' deflections, slopes and end moments are exact up to rounding; solved with scipy.sparse.
Supports are springs, or exact by a Lagrange multiplier, with a rise; a support that would push goes slack,
found by trying every set of slack supports and keeping the one whose forces pull and whose gaps are open.
It shares no line and no method with the Go code, which integrates segment polynomials and solves for the
reactions. Run: /usr/bin/python3 testdata/beams/reference.py
"""
import itertools
import json
import pathlib

import numpy as np
from scipy import sparse
from scipy.sparse.linalg import splu

rng = np.random.default_rng(20)


def problem(i):
    length = float(np.round(rng.uniform(0.8, 12), 3))
    ei = float(np.round(10 ** rng.uniform(1, 6), 3))
    n = int(rng.integers(2, 7))
    xs = np.sort(rng.uniform(0, length, n))
    xs[0] = rng.uniform(0, 0.25) * length
    xs[-1] = length - rng.uniform(0, 0.25) * length
    xs = np.round(np.sort(xs), 3)
    while np.min(np.diff(xs)) < 0.04 * length:
        xs = np.round(np.sort(rng.uniform(0, length, n)), 3)
        xs[0], xs[-1] = round(0.1 * length, 3), round(0.92 * length, 3)
        xs = np.sort(xs)
    w = 10 ** rng.uniform(0, 2)
    spreads = [{"from": 0.0, "to": length, "a": -w, "b": -w}]
    for _ in range(int(rng.integers(0, 3))):
        a, b = np.round(np.sort(rng.uniform(0, length, 2)), 3)
        if b - a > 0.05:
            spreads.append({"from": float(a), "to": float(b), "a": float(-w * rng.uniform(0, 3)), "b": float(-w * rng.uniform(0, 3))})
    points = [{"x": float(np.round(rng.uniform(0, length), 3)), "force": float(-w * length * rng.uniform(0, 0.5)),
               "couple": float(w * length**2 * rng.uniform(-0.03, 0.03))} for _ in range(int(rng.integers(0, 4)))]
    sag = w * length**4 / ei / 400
    supports = []
    for x in xs:
        s = {"x": float(x), "rise": float(rng.uniform(-0.3, 0.3) * sag) if i % 3 else 0.0}
        if i % 2:
            s["stiffness"] = float(48 * ei / length**3 * 10 ** rng.uniform(-1, 3))
        supports.append(s)
    return {"length": length, "ei": ei, "spreads": spreads, "points": points, "supports": supports}


def solve(p, slack):
    knots = {0.0, p["length"]}
    for s in p["spreads"]:
        knots |= {s["from"], s["to"]}
    knots |= {q["x"] for q in p["points"]} | {s["x"] for s in p["supports"]}
    base = np.array(sorted(knots))
    nodes = np.unique(np.concatenate([np.linspace(a, b, 4) for a, b in zip(base[:-1], base[1:])]))
    at = lambda x: int(np.argmin(np.abs(nodes - x)))
    size = 2 * len(nodes)
    hold = [s for i, s in enumerate(p["supports"]) if i not in slack]
    exact = [s for s in hold if "stiffness" not in s]
    k = sparse.lil_matrix((size + len(exact), size + len(exact)))
    f = np.zeros(size + len(exact))
    elements, own = [], []
    for e in range(len(nodes) - 1):
        a, b = nodes[e], nodes[e + 1]
        h, m = b - a, (a + b) / 2
        ke = p["ei"] / h**3 * np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                                        [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]])
        qa = qb = 0.0
        for s in p["spreads"]:
            if s["from"] <= m <= s["to"]:
                line = lambda x: s["a"] + (s["b"] - s["a"]) * (x - s["from"]) / (s["to"] - s["from"])
                qa, qb = qa + line(a), qb + line(b)
        fe = h * np.array([(7 * qa + 3 * qb) / 20, h * (3 * qa + 2 * qb) / 60, (3 * qa + 7 * qb) / 20, -h * (2 * qa + 3 * qb) / 60])
        i = slice(2 * e, 2 * e + 4)
        k[i, i] = k[i, i].toarray() + ke
        f[i] += fe
        elements.append(ke)
        own.append(fe)
    for q in p["points"]:
        f[2 * at(q["x"])] += q["force"]
        f[2 * at(q["x"]) + 1] -= q["couple"]  # a jump of the moment by c turns the node the other way
    for s in hold:
        if "stiffness" in s:
            k[2 * at(s["x"]), 2 * at(s["x"])] += s["stiffness"]
            f[2 * at(s["x"])] += s["stiffness"] * s["rise"]
    for j, s in enumerate(exact):
        k[size + j, 2 * at(s["x"])] = k[2 * at(s["x"]), size + j] = 1
        f[size + j] = s["rise"]
    lu = splu(k.tocsc())
    u = lu.solve(f)
    for _ in range(3):
        u += lu.solve(f - k @ u)
    reactions, gaps = [], []
    for i, s in enumerate(p["supports"]):
        w = u[2 * at(s["x"])]
        gaps.append(w - s["rise"])
        if i in slack:
            reactions.append(0.0)
        elif "stiffness" in s:
            reactions.append(s["stiffness"] * (s["rise"] - w))
        else:
            reactions.append(-u[size + exact.index(s)])
    ends = [ke @ u[2 * e:2 * e + 4] - fe for e, (ke, fe) in enumerate(zip(elements, own))]
    probes = [{"x": float((nodes[e])), "shear": float(v[0]), "moment": float(-v[1]), "w": float(u[2 * e])} for e, v in enumerate(ends)]
    return np.array(reactions), np.array(gaps), probes


def main():
    out = []
    for i in range(20):
        p = problem(i)
        n = len(p["supports"])
        total = sum(-(s["a"] + s["b"]) / 2 * (s["to"] - s["from"]) for s in p["spreads"]) - sum(q["force"] for q in p["points"])
        free, _, _ = solve(p, ())
        found = None
        for size in range(n - 1):
            for slack in itertools.combinations(range(n), size):
                try:
                    r, gap, probes = solve(p, slack)
                except RuntimeError:
                    continue
                if min(r) >= -1e-9 * total and all(gap[j] >= 0 for j in slack) and abs(sum(r) - total) < 1e-7 * total:
                    found = (r, slack, probes)
                    break
            if found:
                break
        p["two_sided"] = free.tolist()
        p["total"] = total
        if found:
            r, slack, probes = found
            p["reactions"], p["slack"], p["probes"] = r.tolist(), list(slack), probes
        out.append(p)
    path = pathlib.Path(__file__).with_name("answers.json")
    path.write_text(json.dumps(out, separators=(",", ":")) + "\n")
    print(len(out), "beams,", sum(bool(p.get("slack")) for p in out), "with slack supports,", sum("reactions" not in p for p in out), "that tip")


main()
