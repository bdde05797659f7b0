"""Asks general-purpose solvers about a Lift: HiGHS (scipy.optimize.linprog) where all vehicles hold
rigidly, cvxopt's conelp where cables pull. Every optimum is then taken to about 1e-14 by conic.py
and must agree with the peer's own to 1e-8, or the question counts as unclear."""
import numpy as np
from cvxopt import matrix, solvers
from scipy.optimize import linprog

import conic

solvers.options.update(show_progress=False, maxiters=200)
AGREE, PROOF = 1e-8, 1e-9
worst = {"highs": 0.0, "conelp": 0.0, "proof": 0.0}


class Unclear(Exception):
    """The peer itself gives no clear answer."""


class Program:
    """Variables: s, u in parts of each rotor's limit, F in units of F0.
    goal +1: smallest s with every thrust at most s of its limit. goal −1: the most s of the wrench d
    beyond start, thrust within limit; the vehicles on cables accelerate by s·acc. settle: least
    Σu² + Σ|F|² with every thrust at most that part of its limit."""

    def __init__(self, l, d=None, limit=None, acc=None, start=None, settle=None):
        n, k = len(l.top), len(l.hung)
        w = l.w if start is None else start
        d = np.zeros(6) if d is None else np.asarray(d, float)
        self.F0 = F0 = max([*(v["T"] for v in l.hung), *(l.top if n else [])])
        arm = max([1e-6, *np.abs(l.cols[3:]).ravel(), *(np.abs(v["r"]).max() for v in l.hung)])
        self.s0 = s0 = F0 / max(np.abs(d[:3]).max(), np.abs(d[3:]).max() / arm) if d.any() else 1.0
        self.n, self.k, self.l = n, k, l
        unit = np.r_[np.ones(3), np.full(3, 1 / arm)] / F0
        A = np.zeros((6, 1 + n + 3 * k))
        A[:, 0] = -d * s0 * unit
        A[:, 1:1 + n] = l.cols * l.top * unit[:, None]
        for i, v in enumerate(l.hung):
            x, y, z = v["r"]
            A[:, 1 + n + 3 * i:4 + n + 3 * i] = np.vstack([np.eye(3), [[0, -z, y], [z, 0, -x], [-y, x, 0]]]) * F0 * unit[:, None]
        b = w * unit
        self.reduce(A, b)
        self.c = np.zeros(A.shape[1])
        self.c[0] = 1.0 if limit is None and settle is None else -1.0
        self.lines, self.cones = [], []
        N = A.shape[1]

        def row(**at):
            v = np.zeros(N)
            for i, x in at.items():
                v[int(i[1:])] = x
            return v
        for j in range(n):
            self.lines.append((row(**{f"_{1 + j}": -1.0}), 0.0))
            top = row(**{f"_{1 + j}": 1.0})
            if limit is None and settle is None:
                top[0] = -1.0
            self.lines.append((top, 0.0 if limit is None and settle is None else (limit or settle)))
        for i, v in enumerate(l.hung):
            F = np.zeros((3, N))
            F[:, 1 + n + 3 * i:4 + n + 3 * i] = np.eye(3)
            a = np.zeros((3, N))
            if acc is not None:
                a[:, 0] = v["mass_kg"] * np.asarray(acc(v), float) * s0 / F0
            own, T = v["own"] / F0, v["T"] / F0
            self.lines.append((-F[2], -l.least / F0))
            f = F + a
            if limit is None and settle is None:
                self.cone(-T * row(_0=1.0), 0.0, f, own)
            else:
                self.cone(np.zeros(N), T * (limit or settle), f, own)
            self.cone(-v["tilt"] * f[2], v["tilt"] * own[2], f[:2], own[:2])
            self.cone(-l.cone * F[2], 0.0, F[:2], np.zeros(2))
            if v["work"] is not None:
                self.cone(np.zeros(N), v["work"] / F0, F, np.zeros(3))
        if settle is not None:
            self.c[0] = 1.0
            own = np.eye(N)[1:]
            own[:n] *= (l.top / F0)[:, None]
            self.cone(-row(_0=1.0), 0.0, own, np.zeros(N - 1))
        self.stack()

    def reduce(self, A, b):
        """Dependent rows are taken out; a wanted wrench outside what is left has no balance at all."""
        u, sv, _ = np.linalg.svd(A)
        r = int((sv > 1e-9 * sv[0]).sum())
        if ((sv > 1e-11 * sv[0]) & (sv < 1e-7 * sv[0])).any():
            raise Unclear("rank")
        rest = np.abs(u[:, r:].T @ b).max(initial=0) / max(np.abs(b).max(), 1e-3)
        if 1e-11 < rest < 1e-6:
            raise Unclear("reach")
        self.hopeless = rest >= 1e-6
        self.A, self.b = u[:, :r].T @ A, u[:, :r].T @ b

    def stack(self):
        self.G = np.array([g for g, _ in self.lines] + [g for G, _ in self.cones for g in G])
        self.h = np.array([x for _, x in self.lines] + [x for _, h in self.cones for x in h])
        self.sizes = [len(h) for _, h in self.cones]

    def cone(self, g0, h0, rows, shift):
        """g·x is written so that h − G x = (h0 − g0·x; rows·x + shift)."""
        self.cones.append((np.vstack([g0, -rows]), np.r_[h0, shift]))

    def highs(self):
        r = linprog(self.c, A_ub=self.G, b_ub=self.h, A_eq=self.A, b_eq=self.b, bounds=(None, None), method="highs-ds",
                    options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10})
        if r.status not in (0, 2):
            raise Unclear
        return None if r.status == 2 else r.x

    def conelp(self):
        for tol in (1e-10, 1e-9, 1e-8):
            solvers.options.update(abstol=tol, reltol=tol, feastol=tol)
            try:
                r = solvers.conelp(matrix(self.c), matrix(self.G), matrix(self.h), {"l": len(self.lines), "q": self.sizes, "s": []},
                                   matrix(self.A), matrix(self.b))
            except (ValueError, ArithmeticError):
                continue
            if r["status"] == "primal infeasible":
                self.proof = np.array(r["y"]).ravel(), np.array(r["z"]).ravel()
                return None
            if r["status"] == "optimal":
                self.asked = tol
                return np.array(r["x"]).ravel()
        raise Unclear

    def value(self):
        """s alone, from the peer where it reaches what it is asked for at first, else in 80 bit."""
        if self.hopeless:
            return None
        x = self.conelp() if self.sizes else self.highs()
        if x is None:
            return None
        if self.sizes and self.asked > 1e-10:
            p, _, _, off = conic.solve(self.c, self.A, self.b, self.G, self.h, conic.Cones(len(self.lines), self.sizes))
            if not (off < PROOF and abs(float(p[0]) - x[0]) < 1e-6 * max(1, abs(x[0]))):
                raise Unclear("proof")
            return float(p[0]) * self.s0
        return x[0] * self.s0

    def forces(self, x):
        return np.r_[x[1:1 + self.n] * self.l.top, x[1 + self.n:] * self.F0]

    def answer(self, peer=None, proof=PROOF):
        """(s, u, F) in plan units, or None where no balance exists."""
        if self.hopeless:
            return None
        name = "conelp" if self.sizes else "highs"
        x = getattr(self, name)() if peer is None else peer
        if x is None:
            return None
        p, _, _, off = conic.solve(self.c, self.A, self.b, self.G, self.h, conic.Cones(len(self.lines), self.sizes))
        if not off < proof:
            raise Unclear
        if peer is None:
            diff = abs(float(p[0]) - x[0]) / max(abs(float(p[0])), 1e-2 if self.c[0] < 0 else 1e-6)
            if not diff < AGREE:
                raise Unclear
            worst[name], worst["proof"] = max(worst[name], diff), max(worst["proof"], off)
        p = p.astype(float)
        n = self.n
        return p[0] * self.s0, p[1:1 + n] * self.l.top, p[1 + n:].reshape(-1, 3) * self.F0


def peer_even(l):
    """The same from the peer alone: for bisections."""
    p = Program(l)
    x = None if p.hopeless else p.conelp() if p.sizes else p.highs()
    return None if x is None else x[0]


def even(l):
    a = Program(l).answer()
    return None if a is None else a[0]


def most(l, d, limit=1.0, acc=None, start=None):
    a = Program(l, d, limit, acc, start).answer()
    return None if a is None else a[0]


def settle(l, t):
    """Second stage: least Σu² + Σ|F|² at t. The set of answers at exactly t has no inside, so t is let
    off: by 1e-7 or 1e-6 where peer and 80-bit answer are compared (1e-4 of the largest thrust), then
    by 1e-9 for the answer kept. Its forces stand on cone surfaces: good to some 3e-5 of the largest
    thrust, the root of 1e-9, and 1e-8 where nothing but rotors carry."""
    for slack in (1e-7, 1e-6):
        loose = Program(l, settle=t * (1 + slack))
        try:
            x = loose.conelp()
        except Unclear:
            continue
        a, b = (p.answer(peer=x, proof=1e-8) for p in (loose, Program(l, settle=t * (1 + 1e-9))))
        if x is not None and abs(np.r_[a[1], a[2].ravel()] - loose.forces(x)).max() < 1e-4 * loose.F0:
            return b[1], b[2]
    raise Unclear


def least_squares(l):
    """Least Σu² + Σ|F|² under the balance alone: the pseudo-inverse."""
    A = np.hstack([l.cols] + [np.vstack([np.eye(3), [[0, -z, y], [z, 0, -x], [-y, x, 0]]]) for x, y, z in (v["r"] for v in l.hung)])
    f = np.linalg.pinv(A, rcond=1e-11) @ l.w
    if np.abs(A @ f - l.w).max() > 1e-9 * np.abs(l.w).max():
        raise Unclear
    return f[:len(l.top)], f[len(l.top):].reshape(-1, 3)
