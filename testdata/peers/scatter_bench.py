"""The same study of errors by general-purpose solvers, sample by sample, side by side with core/scatter.

    COHOIST_SCATTER=/tmp/scatter.jsonl go test -count=1 ./core/scatter -run TestPeers
    /usr/bin/python3 testdata/peers/scatter_bench.py /tmp/scatter.jsonl > testdata/peers/scatter.txt

A line of the first file is a plan with its errors and the offsets of some samples; a line written is a study, the
sample's number and its smallest worst utilisation, or none where no forces balance. Mass, density, drag, lean and
balance are worked out again by lift.py; conelp answers where there are cables, HiGHS where there are none.
On standard error: the time of a sample, of this process's own work, and that of 100 000 of them, beside
core/scatter's; the peer's time is that of its solver alone, at the tolerance of 1e-10, matrices not counted."""
import os

for v in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"):
    os.environ[v] = "1"

import copy
import json
import sys
import time

import ask
import lift

standard = lift.air


def moved(plan, errors, offsets):
    """The plan with its numbers off, and the ratio of the air's density."""
    p, thin = copy.deepcopy(plan), 1.0
    site = p.setdefault("site", {})
    team = {v["id"]: v for v in p["team"]}
    for e, x in zip(errors, offsets):
        kind, axis = e["Kind"], "xyz".find(e["Axis"]) if e["Axis"] else -1
        if kind == "payload mass":
            for s in p["payload"]["solids"]:
                s["mass_kg"] *= 1 + x
        elif kind == "centre of mass":
            p["payload"]["com_m"][axis] += x
        elif kind == "air density":
            thin = 1 + x
        elif kind == "wind speed":
            site["wind_m_s"] = max(0.0, site.get("wind_m_s", 0) + x)
        elif kind == "wind direction":
            site["wind_to_deg"] = site.get("wind_to_deg", 0) + x
        elif kind == "thrust":
            v = team[e["Who"]]
            own = dict(p["vehicles"][v["vehicle"]])
            own["rotor_thrust_max_n"] *= 1 + x
            v["vehicle"] = "of " + v["id"]
            p["vehicles"][v["vehicle"]] = own
        elif kind == "attachment":
            team[e["Who"]]["attach_m"][axis] += x
        else:
            raise ValueError(kind)
    return p, thin


def main(path):
    print(f"{'study':16s}{'core/scatter':>28s}{'peer':>26s}{'ratio':>8s}", file=sys.stderr)
    for line in open(path):
        row = json.loads(line)
        spent = 0.0
        for i, offsets in enumerate(row["samples"]):
            p, thin = moved(row["plan"], row["errors"], offsets)
            lift.air = lambda site: standard(site) * thin
            program = ask.Program(lift.Lift(p))
            start = time.process_time()
            if not program.hopeless:
                program.conelp() if program.sizes else program.highs()
            spent += time.process_time() - start
            t = program.value()
            print(row["name"], i, "none" if t is None else repr(t))
        n = len(row["samples"])
        own, peer = row["micros"] * 1e-6, spent / n
        print(f"{row['name']:16s}{own * 1e6:9.1f} µs {own * 1e5:9.2f} s/100k{peer * 1e3:9.2f} ms {peer * 1e5:7.0f} s/100k{peer / own:8.0f}", file=sys.stderr)


if __name__ == "__main__":
    main(sys.argv[1])
