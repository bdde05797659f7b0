"""A small conic solver in 80-bit arithmetic, used only to add digits to what the general-purpose
solvers answer: minimise c·x with A x = b, G x + s = h, s in a product of half-lines and
second-order cones; Nesterov-Todd scaling, predictor and corrector (the method of L. Vandenberghe,
The CVXOPT linear and quadratic cone program solvers, 2010, from memory). numpy's longdouble has no
linear algebra, so that Cholesky is written out here."""
import numpy as np

LD = np.longdouble


def cholesky(M):
    L, n = M.copy(), len(M)
    for j in range(n):
        if not L[j, j] > 0:
            L[j, j] = LD(1e-40)
        L[j:, j] /= np.sqrt(L[j, j])
        if j + 1 < n:
            L[j + 1:, j + 1:] -= np.multiply.outer(L[j + 1:, j], L[j + 1:, j])
    return np.tril(L)


def chosolve(L, B):
    X, n = B.copy(), len(L)
    for j in range(n):
        X[j] = (X[j] - L[j, :j] @ X[:j]) / L[j, j]
    for j in range(n - 1, -1, -1):
        X[j] = (X[j] - L[j + 1:, j] @ X[j + 1:]) / L[j, j]
    return X


class Cones:
    """A vector cut into groups of cones of one size; a half-line is a cone of size 1."""

    def __init__(self, lines, sizes):
        at, by = lines, {1: [[i] for i in range(lines)]}
        for q in sizes:
            by.setdefault(q, []).append(list(range(at, at + q)))
            at += q
        self.groups = [np.array(ix) for ix in by.values() if ix]
        self.n, self.degree = at, lines + len(sizes)

    def room(self, v):
        """How far inside the cone v is: smallest v0 − |v1|."""
        return min((v[g][:, 0] - np.sqrt((v[g][:, 1:] ** 2).sum(1))).min() for g in self.groups)

    def unit(self):
        e = np.zeros(self.n, LD)
        for g in self.groups:
            e[g[:, 0]] = 1
        return e

    def product(self, a, b):
        o = np.zeros(self.n, LD)
        for g in self.groups:
            x, y = a[g], b[g]
            o[g] = x[:, :1] * y + y[:, :1] * x
            o[g[:, 0]] = (x * y).sum(1)
        return o

    def over(self, a, b):
        """x with a ∘ x = b."""
        o = np.zeros(self.n, LD)
        for g in self.groups:
            x, y = a[g], b[g]
            d = det(x)
            x0 = (x[:, 0] * y[:, 0] - (x[:, 1:] * y[:, 1:]).sum(1)) / d
            o[g] = (y - x0[:, None] * x) / x[:, :1]
            o[g[:, 0]] = x0
        return o

    def step(self, v, d):
        """Largest a ≤ 1e3 with v + a d still inside."""
        a = LD(1e3)
        for g in self.groups:
            x, y = v[g], d[g]
            A, C = y[:, 0] ** 2 - (y[:, 1:] ** 2).sum(1), det(x)
            B = x[:, 0] * y[:, 0] - (x[:, 1:] * y[:, 1:]).sum(1)
            disc = np.sqrt(np.maximum(B * B - A * C, 0))
            with np.errstate(all="ignore"):
                r = np.where(B < 0, C / (disc - B), np.where(A < 0, (B + disc) / -A, LD(1e3)))
            a = min(a, r[r > 0].min() if (r > 0).any() else a)
        return a

    def scale(self, s, z):
        self.w, self.eta = np.zeros(self.n, LD), np.zeros(self.n, LD)
        for g in self.groups:
            x, y = s[g], z[g]
            rx, ry = np.sqrt(det(x))[:, None], np.sqrt(det(y))[:, None]
            x, y = x / rx, y / ry
            gam = np.sqrt((1 + (x * y).sum(1)) / 2)[:, None]
            flip = np.r_[LD(1), -np.ones(g.shape[1] - 1, LD)]
            self.w[g] = (x + flip * y) / (2 * gam)
            self.eta[g] = np.sqrt(rx / ry)

    def W(self, v, inverse=False):
        o = np.zeros(self.n, LD)
        for g in self.groups:
            w, x = self.w[g].copy(), v[g]
            if inverse:
                w[:, 1:] *= -1
            e = self.eta[g]
            dot = (w[:, 1:] * x[:, 1:]).sum(1)
            k = x[:, 0] + dot / (1 + w[:, 0])
            y = x + k[:, None] * w
            y[:, 0] = w[:, 0] * x[:, 0] + dot
            o[g] = y / e if inverse else y * e
        return o

    def gram(self, G):
        """Gᵀ W⁻² G."""
        H = np.zeros((G.shape[1],) * 2, LD)
        for g in self.groups:
            for ix in g:
                X, w = G[ix], self.w[ix].copy()
                w[1:] *= -1
                use = np.flatnonzero(np.any(X != 0, axis=0))
                X, e2 = X[:, use], self.eta[ix[0]] ** 2
                v = w @ X
                part = 2 * np.multiply.outer(v, v) - np.multiply.outer(X[0], X[0]) + X[1:].T @ X[1:]
                H[np.ix_(use, use)] += part / e2
        return H


def det(x):
    n = np.sqrt((x[:, 1:] ** 2).sum(1))
    return (x[:, 0] - n) * (x[:, 0] + n)


def solve(c, A, b, G, h, cones, rounds=60):
    """x, y, z, and how far the pair is from proof: the relative gap and residuals."""
    c, A, b, G, h = (np.asarray(v, LD) for v in (c, A, b, G, h))
    K = cones
    e = K.unit()
    K.w, K.eta = e.copy(), np.ones(K.n, LD)

    def factor():
        H = K.gram(G)
        H = H + np.diag(np.full(len(H), LD(1e-19) * np.abs(np.diag(H)).max()))
        L = cholesky(H)
        V = chosolve(L, A.T.copy())
        return L, V, cholesky(A @ V) if len(b) else None

    def once(F, rx, ry, rz):
        """Aᵀy + Gᵀz = rx, A x = ry, G x − W²z = rz."""
        L, V, S = F
        q = rx + G.T @ K.W(K.W(rz, True), True)
        x = chosolve(L, q)
        y = np.zeros(0, LD)
        if len(b):
            y = chosolve(S, A @ x - ry)
            x = x - V @ y
        return x, y, K.W(K.W(G @ x - rz, True), True)

    def kkt(F, rx, ry, rz):
        x, y, z = once(F, rx, ry, rz)
        for _ in range(2):
            d = once(F, rx - A.T @ y - G.T @ z, ry - A @ x, rz - G @ x + K.W(K.W(z)))
            x, y, z = x + d[0], y + d[1], z + d[2]
        return x, y, z

    F = factor()
    x, _, z = kkt(F, np.zeros(len(c), LD), b, h)
    s = -z
    _, y, z = kkt(F, -c, np.zeros(len(b), LD), np.zeros(K.n, LD))
    s, z = (v + (1 - min(K.room(v), 1)) * e if K.room(v) < 1e-3 else v for v in (s, z))
    best, kept, since = np.inf, None, 0
    for _ in range(rounds):
        rx, ry, rz = c + A.T @ y + G.T @ z, A @ x - b, G @ x + s - h
        gap, big = s @ z, max(abs(c @ x), LD(1e-12))
        off = float(max(gap / max(big, 1e-6), np.abs(rx).max(initial=0) / max(1, np.abs(c).max()), np.abs(ry).max(initial=0) / max(1, np.abs(b).max(initial=0)),
                        np.abs(rz).max() / max(1, np.abs(h).max())))
        if off < best:
            best, kept, since = off, (x, y, z), 0
        else:
            since += 1
        if best < 1e-16 or since > 4 or not np.isfinite(off):
            break
        K.scale(s, z)
        lam, mu = K.W(z), gap / K.degree
        try:
            F = factor()
        except FloatingPointError:
            break

        def direction(bs, k):
            u = K.W(K.over(lam, bs))
            dx, dy, dz = kkt(F, -k * rx, -k * ry, -k * rz - u)
            return dx, dy, dz, u - K.W(K.W(dz))
        ll = K.product(lam, lam)
        da = direction(-ll, LD(1))
        a = min(LD(1), K.step(s, da[3]), K.step(z, da[2]))
        sig = (1 - a) ** 3
        bs = -ll - K.product(K.W(da[3], True), K.W(da[2])) + sig * mu * e
        d = direction(bs, 1 - sig)
        a = min(LD(1), LD(0.98) * min(K.step(s, d[3]), K.step(z, d[2])))
        x, y, z, s = x + a * d[0], y + a * d[1], z + a * d[2], s + a * d[3]
        if not (K.room(s) > 0 and K.room(z) > 0):
            break
    if kept is None:
        return None, None, None, np.inf
    return (*kept, best)
