"""Times general-purpose solvers on the problems of a folder: cvxopt's conelp on cables, HiGHS through
scipy.optimize.linprog on rigid holds, both at their default tolerances. Called by bench.sh.

    /usr/bin/python3 testdata/peers/bench.py FOLDER

reads FOLDER/problems.json, writes FOLDER/peers.json: per problem the answer and the median time in
seconds of one thread's own work (process time), without setting up the matrices."""
import os

for v in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"):
    os.environ[v] = "1"

import json
import statistics
import sys
import time

import numpy as np
from cvxopt import matrix, solvers, sparse, spmatrix
from scipy.optimize import linprog
from scipy.sparse import coo_matrix

solvers.options["show_progress"] = False
PATIENCE = 60  # s of one run; after one that took longer, no more problems of that size or larger


class Entries(list):
    """Entries (row, column, value) of a sparse matrix."""

    def matrix(self, rows, cols):
        i, j, v = zip(*[e for e in self if e[2] != 0])
        return coo_matrix((v, (i, j)), shape=(rows, cols))

    def cvxopt(self, rows, cols):
        i, j, v = zip(*[e for e in self if e[2] != 0])
        return spmatrix(v, i, j, (rows, cols))


def independent(A, b):
    """Dependent rows taken out: the solvers want full rank."""
    scale = np.abs(A).max(axis=1)
    A, b = A[scale > 0] / scale[scale > 0, None], b[scale > 0] / scale[scale > 0]
    keep = []
    for i in range(len(A)):
        if np.linalg.matrix_rank(A[keep + [i]], tol=1e-9) == len(keep) + 1:
            keep.append(i)
    return A[keep], b[keep]


def cable(p):
    """Variables t, then F of each cable in units of the largest thrust."""
    pulls, w = p["Pulls"] or [], np.array(p["Wrench"])
    unit = max(abs(c["T"]) for q in pulls for c in q["Cones"])
    n = 1 + 3 * len(pulls)
    A = np.zeros((6, n))
    lines, hl, G, h, sizes = Entries(), [], Entries(), [], []
    for i, q in enumerate(pulls):
        f = 1 + 3 * i
        x, y, z = q["At"]
        A[:, f:f + 3] = np.vstack([np.eye(3), [[0, -z, y], [z, 0, -x], [-y, x, 0]]])
        lines.append((len(hl), f + 2, -1.0))
        hl.append(-q["MinZ"] / unit)
        for c in q["Cones"]:
            k, r = (2 if c["Flat"] else 3), len(h)
            G.extend([(r, f + 2, -c["Z"]), (r, 0, -c["T"] / unit)])
            h.append(c["C"] / unit)
            for j in range(k):
                G.extend([(r + 1 + j, f + j, -1.0), (r + 1 + j, 0, -c["D"][j] / unit)])
                h.append(c["B"][j] / unit)
            sizes.append(k + 1)
    A, b = independent(A, w / unit)
    G = sparse([lines.cvxopt(len(hl), n), G.cvxopt(len(h), n)])
    c = matrix(0.0, (n, 1))
    c[0] = 1.0
    args = (c, G, matrix(hl + h), {"l": len(hl), "q": sizes, "s": []}, sparse(matrix(A)), matrix(b))

    def run():
        r = solvers.conelp(*args)
        return r["x"][0] if r["status"] == "optimal" else float("nan")
    return run


def rigid(p):
    lines, w = p["Lines"], np.array(p["Wrench"])
    n = len(lines)
    most = np.array([l["HiT"] for l in lines])
    A = np.array([l["Column"] for l in lines]).T * most
    A, b = independent(A, w)
    A, c = np.c_[A, np.zeros(len(A))], np.r_[np.zeros(n), 1.0]
    A = coo_matrix(A)
    G = Entries([(j, j, 1.0) for j in range(n)] + [(j, n, -1.0) for j in range(n)]).matrix(n, n + 1)

    def run():
        r = linprog(c, A_ub=G, b_ub=np.zeros(n), A_eq=A, b_eq=b, bounds=(0, None), method="highs")
        return r.fun if r.status == 0 else float("nan")
    return run


def main(folder):
    out, slow = {}, {}
    for p in json.load(open(os.path.join(folder, "problems.json"))):
        if p["k"] > slow.get(p["kind"], 1e9):
            continue
        run, took, begin = {"cable": cable, "rigid": rigid}[p["kind"]](p["program"]), [], time.process_time()
        while not took or time.process_time() - begin < 0.3 and len(took) < 50:
            t0 = time.process_time()
            t = run()
            took.append(time.process_time() - t0)
        out[p["name"]] = {"t": t, "s": statistics.median(took)}
        if took[0] > PATIENCE:
            slow[p["kind"]] = p["k"] - 1
        print(p["name"], f"{t:.9g} {statistics.median(took) * 1e3:.4g} ms", file=sys.stderr, flush=True)
    json.dump(out, open(os.path.join(folder, "peers.json"), "w"))


if __name__ == "__main__":
    main(sys.argv[1])
