"""Ways of least snap by a general solver of quadratic programs: cvxopt's coneqp, on the coefficients of the polynomials.

Fifty random ways. Unknowns are the eight coefficients of every leg by s = t/T; continuity of the derivatives 0 to 3,
the points and rest at both ends are equations; boxes are inequalities on the control points of the Bernstein form, got
here from binomials and not from derivatives. Prints a way a line: the question and the answer.

    /usr/bin/python3 testdata/way/ways.py > testdata/way/ways.jsonl
"""
import json
import math

import numpy as np
from cvxopt import matrix, solvers

solvers.options.update(show_progress=False, abstol=1e-13, reltol=1e-13, feastol=1e-13, maxiters=200)
draw = np.random.default_rng(20261125)


def falling(n, k):
    return math.prod(range(n - k + 1, n + 1))


def row(legs, leg, k, s, T):
    """The k-th derivative by time at s of a leg, as a row over all coefficients."""
    out = np.zeros(8 * legs)
    for n in range(k, 8):
        out[8 * leg + n] = falling(n, k) * s ** (n - k) / T**k
    return out


def bernstein(legs, leg, i):
    """Control point i of a leg: b_i = sum over n of C(i, n)/C(7, n) c_n."""
    out = np.zeros(8 * legs)
    for n in range(i + 1):
        out[8 * leg + n] = math.comb(i, n) / math.comb(7, n)
    return out


def snap(T):
    q = np.zeros((8, 8))
    for a in range(4, 8):
        for b in range(4, 8):
            q[a, b] = falling(a, 4) * falling(b, 4) / (a + b - 7) / T**7
    return q


def solve(at, T, boxes):
    """The least integral of squared snap through the places at (None: any), and the coefficients."""
    legs = len(T)
    P = np.zeros((8 * legs, 8 * legs))
    A, b = [], []
    for leg in range(legs):
        P[8 * leg : 8 * leg + 8, 8 * leg : 8 * leg + 8] = 2 * snap(T[leg])
        if leg > 0:
            scale = min(T[leg - 1], T[leg])
            for k in range(4):
                A.append((row(legs, leg - 1, k, 1, T[leg - 1]) - row(legs, leg, k, 0, T[leg])) * scale**k)
                b.append(0)
        if at[leg] is not None:
            A.append(row(legs, leg, 0, 0, T[leg]))
            b.append(at[leg])
    if at[-1] is not None:
        A.append(row(legs, legs - 1, 0, 1, T[-1]))
        b.append(at[-1])
    for k in range(1, 4):
        A += [row(legs, 0, k, 0, T[0]) * T[0] ** k, row(legs, legs - 1, k, 1, T[-1]) * T[-1] ** k]
        b += [0, 0]
    A, b = np.array(A, dtype=float), np.array(b, dtype=float)
    # coefficients that keep the equations, by an orthonormal basis of what they leave free
    u, sv, vt = np.linalg.svd(A)
    rank = int((sv > 1e-10 * sv[0]).sum())
    c0 = vt[:rank].T @ ((u.T @ b)[:rank] / sv[:rank])
    N = vt[rank:].T
    size = np.abs(P).max()
    H = N.T @ P @ N / size
    # H's own axes and units, so that the interior method sees a round problem
    w, V = np.linalg.eigh(H)
    N = N @ V / np.sqrt(np.maximum(w, 1e-300))
    g = N.T @ P @ c0 / size
    inside = []
    for leg, low, high in boxes:
        for i in range(1, 7):
            end = leg if i <= 3 else leg + 1
            if 0 < end < legs:
                inside.append((bernstein(legs, leg, i), high))
                inside.append((-bernstein(legs, leg, i), -low))
    n = N.shape[1]
    x = -g
    if inside:
        G = np.array([r @ N for r, _ in inside])
        h = np.array([v - r @ c0 for r, v in inside])
        sol = solvers.coneqp(matrix(np.eye(n)), matrix(g), matrix(G), matrix(h))
        assert sol["status"] == "optimal" or sol["gap"] < 1e-9, sol["status"]
        x = np.array(sol["x"]).ravel()
        z = np.array(sol["z"]).ravel()
        tight = z > 1e-6 * max(z.max(), 1e-3)  # solved once more with what holds, to the last digits
        if tight.any():
            Ga = G[tight]
            lam = np.linalg.lstsq(Ga @ Ga.T, -(Ga @ g) - h[tight], rcond=None)[0]
            y = -g - Ga.T @ lam
            if (G @ y <= h + 1e-9).all() and (lam >= -1e-9).all():
                x = y
        else:
            x = -g if (G @ -g <= h + 1e-12).all() else x
    c = c0 + N @ x
    return float(0.5 * c @ P @ c), c


for number in range(50):
    points = 3 + number % 8
    at = draw.uniform([0, 0, 0], [8, 8, 4], (points, 3)).round(3).tolist()
    heading = [None if draw.random() < 0.3 else round(draw.uniform(-3, 3), 3) for _ in range(points)]
    heading[0] = 0
    heading[-1] = [h for h in heading if h is not None][-1]
    T = draw.uniform(0.5, 3.5, points - 1).round(3).tolist()
    boxes = []
    for _ in range((number % 5) * 2):
        leg = int(draw.integers(points - 1))
        low = [round(min(u, v) - float(draw.uniform(0.02, 0.3)), 3) for u, v in zip(at[leg], at[leg + 1])]
        high = [round(max(u, v) + float(draw.uniform(0.02, 0.3)), 3) for u, v in zip(at[leg], at[leg + 1])]
        boxes.append({"leg": leg, "min": low, "max": high})
    arm = round(float(draw.uniform(0.5, 1.5)), 3)
    cost, middle = 0.0, []
    for a in range(4):
        places = heading if a == 3 else [p[a] for p in at]
        own = [] if a == 3 else [(b["leg"], b["min"][a], b["max"][a]) for b in boxes]
        value, c = solve(places, T, own)
        cost += value * (arm**2 if a == 3 else 1)
        middle.append([float(sum(c[8 * k + n] * 0.5**n for n in range(8))) for k in range(points - 1)])
    print(json.dumps({"at": at, "heading": heading, "durations": T, "boxes": boxes, "arm": arm, "cost": cost,
                      "middle": [list(m) for m in zip(*middle)]}))
