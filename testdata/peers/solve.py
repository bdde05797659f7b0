"""Answers of general-purpose solvers to a Lift: HiGHS for rotors, cvxopt's conelp for cables."""
import math

import numpy as np
from cvxopt import matrix, solvers, spmatrix
from scipy.optimize import linprog

solvers.options.update(show_progress=False, maxiters=100)


class Unclear(Exception):
    """The peer itself did not get to a clear answer."""


def careful(run, loosest=1.1e-8):
    """The tightest answer that the peer reaches: past its own accuracy it stops with an error of
    arithmetic, so the tolerance is loosened step by step, to 1e-8 at most."""
    tol = 1e-11
    while tol <= loosest:
        solvers.options.update(abstol=tol, reltol=tol, feastol=tol)
        try:
            sol = run()
        except (ValueError, ArithmeticError):
            sol = {"status": "unknown"}
        if sol["status"] in ("optimal", "primal infeasible"):
            return sol
        tol *= 10
    raise Unclear


def rows(A, b, scale):
    """Independent rows of A x = b; None when the rest of b is out of reach."""
    S = np.diag([1, 1, 1, 1 / scale, 1 / scale, 1 / scale])
    A, b = S @ A, S @ b
    u, s, _ = np.linalg.svd(A, full_matrices=True)
    r = int(np.sum(s > 1e-10 * s[0]))
    rest = np.abs(u[:, r:].T @ b).max() if r < 6 else 0
    size = max(np.abs(b).max(), 1e-300)
    if 1e-10 < rest / size < 1e-6:
        raise Unclear
    if rest > 1e-8 * size:
        return None
    return u[:, :r].T @ A, u[:, :r].T @ b


def lp(c, A, b, lo, hi, G=None, h=None):
    r = linprog(c, A_ub=G, b_ub=h, A_eq=A, b_eq=b, bounds=list(zip(lo, hi)), method="highs-ds",
                options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10})
    if r.status == 2:
        return None
    if r.status != 0:
        raise Unclear
    return r


def arm(columns):
    return max(np.abs(columns[3:]).max(), 1e-9)


def rigid_even(l):
    """Smallest t with B u = w, 0 ≤ u ≤ t top; None when there is none."""
    B = l.B * l.top  # in parts of each rotor's limit
    f = rows(B, l.w, arm(l.B))
    if f is None:
        return None
    A, b = f
    n = len(l.top)
    r = lp(np.r_[np.zeros(n), 1], np.c_[A, np.zeros(len(b))], b, [0] * (n + 1), [None] * (n + 1),
           np.c_[np.eye(n), -np.ones(n)], np.zeros(n))
    return None if r is None else dual(r, b, None)


def dual(r, b, hi):
    """The optimum as the dual tells it: HiGHS meets rows to 1e-10 only, and large multipliers turn
    that into more of the objective, while the multipliers themselves are those of a basis. (Rows must
    not be scaled down: HiGHS takes coefficients below 1e-9 for zero, worth 2e-7 on one of the plans.)"""
    value = r.eqlin.marginals @ b
    if hi is not None:
        value += r.upper.marginals[:len(hi)] @ hi
    if abs(value - r.fun) > 1e-5 * max(1, abs(value)):
        raise Unclear
    return value


def rigid_most(l, d, limit=1.0, start=None):
    """Largest x with B u = start + x d, 0 ≤ u ≤ limit top."""
    w = l.w if start is None else start
    B = l.B * l.top
    scale = np.linalg.norm(d) / l.top.max()
    f = rows(np.c_[B, -d / scale], w, arm(l.B))
    if f is None:
        return None
    A, b = f
    hi = np.full(len(l.top), limit)
    r = lp(np.r_[np.zeros(len(l.top)), -1], A, b, [0] * len(l.top) + [None], list(hi) + [None])
    return None if r is None else -dual(r, b, hi) / scale


def cone_rows(l, cols, thrust, accel=None):
    """conelp's G, h and dims for the cables; cols(i) is the column of F_i; column 0 is the scalar.
    thrust(i) gives (constant, factor of the scalar); accel(i) the acceleration for scalar = 1."""
    n = 1 + 3 * len(l.cables)
    G, h, L, Q = [], [], [], []
    tan = math.tan(math.radians(l.limits["cone_deg"]))
    for i, c in enumerate(l.cables):
        row = np.zeros((1, n))
        row[0, cols(i)[2]] = -1
        L.append((row, [-l.limits["tension_min_n"]]))
        const, factor = thrust(i)
        shift = np.zeros(3) if accel is None else c["mass"] * accel(i)
        B = np.zeros((4, n))
        B[0, 0] = -factor
        for k in range(3):
            B[1 + k, cols(i)[k]], B[1 + k, 0] = -1, -shift[k]
        Q.append((B, [const, *c["own"]]))
        B = np.zeros((3, n))
        B[0, cols(i)[2]], B[0, 0] = -c["tilt"], -c["tilt"] * shift[2]
        for k in range(2):
            B[1 + k, cols(i)[k]], B[1 + k, 0] = -1, -shift[k]
        Q.append((B, [c["tilt"] * c["own"][2], c["own"][0], c["own"][1]]))
        B = np.zeros((3, n))
        B[0, cols(i)[2]], B[1, cols(i)[0]], B[2, cols(i)[1]] = -tan, -1, -1
        Q.append((B, [0, 0, 0]))
        if c["work"] is not None:
            B = np.zeros((4, n))
            for k in range(3):
                B[1 + k, cols(i)[k]] = -1
            Q.append((B, [c["work"], 0, 0, 0]))
    G = np.vstack([r for r, _ in L + Q])
    h = np.concatenate([np.asarray(v, float) for _, v in L + Q])
    return G, h, {"l": len(L), "q": [len(v) for _, v in Q], "s": []}


def cone(l, cost, d, thrust, accel=None, start=None):
    """min cost · scalar with Σ A_i F_i − scalar d = start; (scalar, forces), or None."""
    k = len(l.cables)
    w = l.w if start is None else start
    F = max(c["T"] for c in l.cables)
    S = 1.0 if not np.any(d) else F / np.linalg.norm(d)  # unit of the scalar
    A = np.hstack([(-d * S / F).reshape(6, 1)] + [c["A"] for c in l.cables])
    f = rows(A, w / F, max(arm(c["A"]) for c in l.cables))
    if f is None:
        return None
    A, b = f
    cols = lambda i: [1 + 3 * i, 2 + 3 * i, 3 + 3 * i]
    G, h, dims = cone_rows(l, cols, thrust, accel)
    G, h = G.copy(), h / F
    G[:, 0] *= S / F
    c = np.zeros(1 + 3 * k)
    c[0] = cost
    sol = careful(lambda: solvers.conelp(matrix(c), matrix(G), matrix(h), dims, matrix(A), matrix(b)))
    if sol["status"] == "primal infeasible":
        return None
    x = np.array(sol["x"]).ravel()
    return x[0] * S, x[1:].reshape(k, 3) * F


def cable_even(l):
    return cone(l, 1.0, np.zeros(6), lambda i: (0.0, l.cables[i]["T"]))


def cable_most(l, d, limit=1.0, accel=None, start=None):
    return cone(l, -1.0, d, lambda i: (limit * l.cables[i]["T"], 0.0), accel, start)


def settle(l, t):
    """Second stage by cvxopt's coneqp: least Σ|F|² with no vehicle above t (1 + 1e-8)."""
    k = len(l.cables)
    F = max(c["T"] for c in l.cables)
    A = np.hstack([c["A"] for c in l.cables])
    A, b = rows(A, l.w / F, max(arm(c["A"]) for c in l.cables))
    cols = lambda i: [1 + 3 * i, 2 + 3 * i, 3 + 3 * i]
    G, h, dims = cone_rows(l, cols, lambda i: (t * (1 + 1e-8) * l.cables[i]["T"], 0.0))
    sol = careful(lambda: solvers.coneqp(matrix(np.eye(3 * k)), matrix(np.zeros(3 * k)), matrix(G[:, 1:]), matrix(h / F), dims, matrix(A), matrix(b)), 1e-6)
    return np.array(sol["x"]).reshape(k, 3) * F
