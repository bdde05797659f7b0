"""Answers random programs that TestPrograms of core/crosscheck has written: HiGHS where there are
rotors alone, conelp where there are cables.

    COHOIST_PROGRAMS=/tmp/programs.jsonl go test -count=1 ./core/crosscheck -run TestPrograms
    /usr/bin/python3 testdata/peers/programs.py /tmp/programs.jsonl > testdata/peers/programs.txt

A line is the program's number and its t, or none where no forces balance. What the peer is not clear
about (see ask.py) is left out and counted. Where conelp stops at 1e-9 or 1e-8 the 80-bit answer goes in."""
import os

for v in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"):
    os.environ[v] = "1"

import json
import sys
from collections import Counter

import numpy as np

import ask
import conic


class General(ask.Program):
    """A Program of core/solve as matrices: t, forces along lines, force vectors; in units of its own."""

    def __init__(self, p, s0):
        lines, pulls = p["Lines"] or [], p["Pulls"] or []
        n, N = len(lines), 1 + len(lines) + 3 * len(pulls)
        own = [max(l["Hi"], l["HiT"]) for l in lines] + [x for q in pulls for x in [max(q["Cones"][0]["T"], q["Cones"][0]["C"])] * 3]
        self.s0 = s0 = 1.0 if p["Goal"] > 0 else 100 * s0
        unit = np.r_[s0, own]
        A = np.zeros((6, N))
        A[:, 0] = -np.array(p["WrenchT"])
        for j, l in enumerate(lines):
            A[:, 1 + j] = l["Column"]
        for i, q in enumerate(pulls):
            x, y, z = q["At"]
            A[:, 1 + n + 3 * i:4 + n + 3 * i] = np.vstack([np.eye(3), [[0, -z, y], [z, 0, -x], [-y, x, 0]]])
        force = max(own)
        A, b = A * unit / force, np.array(p["Wrench"]) / force
        arm = max(np.abs(A[3:]).max(), 1e-300)
        A[3:], b[3:] = A[3:] / arm, b[3:] / arm
        self.reduce(A, b)
        size = np.linalg.norm(self.A, axis=1)  # HiGHS takes coefficients below 1e-9 for zero
        self.A, self.b = self.A / size[:, None], self.b / size
        self.c = np.zeros(N)
        self.c[0] = p["Goal"]
        self.lines, self.cones = [], []
        for j, l in enumerate(lines):
            row = np.zeros(N)
            row[1 + j] = own[j]
            self.lines.append((-row / own[j], -l["Lo"] / own[j]))
            row[0] = -l["HiT"] * s0
            self.lines.append((row / own[j], l["Hi"] / own[j]))
        for i, q in enumerate(pulls):
            at = 1 + n + 3 * i
            u = unit[at]
            row = np.zeros(N)
            row[at + 2] = -1
            self.lines.append((row, -q["MinZ"] / u))
            for c in q["Cones"]:
                k = 2 if c["Flat"] else 3
                rows = np.zeros((k, N))
                rows[:, at:at + k] = np.eye(k)
                rows[:, 0] = np.array(c["D"][:k]) * s0 / u
                g0 = np.zeros(N)
                g0[at + 2], g0[0] = -c["Z"], -c["T"] * s0 / u
                self.cone(g0, c["C"] / u, rows, np.array(c["B"][:k]) / u)
        self.stack()


def main(path):
    unclear, n = Counter(), Counter()
    for line in open(path):
        row = json.loads(line)
        try:
            p = General(row["program"], row["scale"])
            t = p.value()
        except ask.Unclear as e:
            unclear[str(e)] += 1
            continue
        n["none" if t is None else "balance"] += 1
        print(row["seed"], "none" if t is None else f"{t:.12g}")
    print(dict(n), "left out as the peer gave no clear answer:", dict(unclear), file=sys.stderr)


if __name__ == "__main__":
    main(sys.argv[1])
