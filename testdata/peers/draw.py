"""Random lift plans. Every plan comes from a seed (random.Random, whose random() is the same on every
version of Python). The tag says what is special about it; most plans are near what the team can do."""
import math

from lift import G

RIGID = ["plain"] * 5 + ["wind"] * 4 + ["leaned", "leaned", "leaned wind", "height", "measured", "scales", "scales", "one", "pair", "line", "close", "equal", "empty", "flat",
                         "shapes", "shapes", "edge", "edge", "heavy", "light"]
MORE = {"rigid": ["off", "edge", "off", "edge", "one", "edge", "off", "pair"]}  # for later seeds: many without a balance
CABLE = ["plain"] * 5 + ["wind"] * 4 + ["height", "measured", "scales", "scales", "one", "pair", "line", "close", "equal", "empty", "flat", "shapes", "stacked",
                         "edge", "edge", "edge", "heavy", "light", "tight", "tight"]
MIXED = ["plain", "plain", "wind", "height", "scales", "shapes", "heavy", "leaned", "tight"]


class Draw:
    def __init__(self, rng, kind, tag):
        self.rng, self.kind, self.tag = rng, kind, tag
        self.wind = "wind" in tag

    def num(self, a, b, digits=4):
        return round(a + (b - a) * self.rng.random(), digits)

    def log(self, a, b):
        return float(f"{a * (b / a) ** self.rng.random():.4g}")

    def pick(self, *of):
        return of[int(self.rng.random() * len(of))]

    def vehicle(self, mass):
        n = self.pick(3, 4, 4, 4, 5, 6, 6, 7, 8)
        arm = round(0.22 * mass ** (1 / 3), 4)
        j = mass * arm * arm
        c = {"mass_kg": mass, "rotors": n, "layout": self.pick("cross", "plus"), "arm_m": arm, "rotor_radius_m": round(0.8 * arm * math.sin(math.pi / n), 4),
             "rotor_thrust_max_n": float(f"{mass * G * self.num(1.6, 2.9) / n:.4g}"), "torque_per_thrust_m": float(f"{arm * self.num(0.03, 0.08):.3g}"),
             "inertia_kg_m2": [float(f"{j * self.num(0.3, 0.6):.3g}") for _ in range(2)] + [self.num(0.7, 0.98)], "tilt_max_deg": self.pick(15, 25, 30, 45)}
        x, y, part = c["inertia_kg_m2"]
        c["inertia_kg_m2"][2] = float(f"{(x + y) * part:.3g}")
        if self.wind:
            c["drag_area_m2"] = float(f"{0.05 * mass ** (2 / 3) * self.num(0.3, 1.5):.3g}")
        return c

    def fleet(self):
        if self.tag == "scales":
            return {"pocket": self.vehicle(0.075), "heavy": self.vehicle(10)}
        if self.tag == "equal" or self.rng.random() < 0.4:
            return {"same": self.vehicle(self.log(0.075, 10))}
        m = self.log(0.075, 10)
        return {"one": self.vehicle(m), "other": self.vehicle(float(f"{m * self.num(0.5, 2):.4g}"))}

    def solid(self, size, m):
        """Something small, turned, somewhere near the middle."""
        s = self.pick(
            {"shape": "point"}, {"shape": "rod", "length_m": round(0.4 * size, 4)},
            {"shape": "tube", "length_m": round(0.3 * size, 4), "outer_radius_m": round(0.06 * size, 5), "inner_radius_m": round(0.05 * size, 5)},
            {"shape": "cylinder", "length_m": round(0.2 * size, 4), "outer_radius_m": round(0.07 * size, 5)},
            {"shape": "plate", "size_m": [round(0.3 * size, 4), round(0.2 * size, 4)]},
            {"shape": "box", "size_m": [round(0.2 * size, 4), round(0.15 * size, 4), round(0.1 * size, 4)]},
            {"shape": "mesh", "mesh": self.wedge(size)})
        s["mass_kg"] = float(f"{m:.4g}")
        s["at_m"] = [self.num(-0.3, 0.3) * size, self.num(-0.15, 0.15) * size, self.num(-0.1, 0.1) * size]
        if s["shape"] != "point":
            s["turn_deg"] = [self.num(-180, 180, 1) for _ in range(3)]
        return s

    def wedge(self, size):
        """A skew wedge of eight triangles, counter-clockwise from outside."""
        a, b, c, d = (round(size * self.num(0.05, 0.2), 4) for _ in range(4))
        v = [[0, 0, 0], [a, 0, 0], [0, b, 0], [d, 0, c], [a + d, 0, c], [d, b, c]]
        return {"vertices_m": v, "triangles": [[0, 2, 1], [3, 4, 5], [0, 1, 4], [0, 4, 3], [1, 2, 5], [1, 5, 4], [2, 0, 3], [2, 3, 5]]}

    def places(self, k, size):
        a0 = self.num(0, 360, 0)
        turn = [math.radians(a0 + 360 * i / k) for i in range(k)]
        ring = lambda r, z: [[r * math.cos(a), r * math.sin(a), z] for a in turn]
        if self.tag == "close":
            return ring(0.001, 0.02)
        if self.tag == "line" or k == 2 and self.rng.random() < 0.7:
            y = self.pick(0, 0, self.num(-0.1, 0.1)) * size
            return [[0.45 * size * (1 - 2 * i / max(1, k - 1)), y, 0.02] for i in range(k)]
        if self.tag == "stacked":
            return [[0, 0, 0.05]] * k
        if k == 1:
            return [[0, 0, 0.05]] if self.rng.random() < 0.7 else [[self.num(-0.1, 0.1), 0, 0.05]]
        z = 0 if self.tag == "flat" else None
        if self.rng.random() < 0.5:
            return ring(0.45 * size, 0 if z == 0 else self.num(0, 0.1))
        return [[self.num(-0.5, 0.5) * size, self.num(-0.45, 0.45) * size, self.num(-0.1, 0.1) * size if z is None else z] for _ in range(k)]

    def amid(self, places):
        """A centre of mass over which these places can hold by straight pulls."""
        w = [0.3 + self.rng.random() for _ in places]
        return [float(f"{sum(a * p[i] for a, p in zip(w, places)) / sum(w):.6g}") for i in range(2)] + [self.num(-0.05, 0.02)]

    def hold(self, stiff, part):
        if stiff:
            h = {"kind": "rigid"}
            if "leaned" in self.tag and self.rng.random() < 0.8:
                h["lean_deg"] = [self.num(-14, 14, 1), self.num(-14, 14, 1)]
            return h
        h = {"kind": "cable", "length_m": self.num(1, 6, 2)}
        f = self.pick(0.7, 1.05, 1.3) if self.tag == "tight" else self.pick(None, 1.4, 3, 10)
        if f and part > 0:
            h["working_load_n"] = float(f"{f * part:.5g}")
        return h

    def plan(self):
        tag = self.tag
        fleet = self.fleet()
        k = {"one": 1, "pair": 2}.get(tag) or self.pick(2, 3, 3, 4, 4, 4, 5, 6, 6, 8, 12)
        who = [self.pick(*fleet) for _ in range(k)]
        for i, n in enumerate(fleet):  # both kinds fly
            who[i % k] = n
        thrust = lambda n: fleet[n]["rotors"] * fleet[n]["rotor_thrust_max_n"]
        spare = sum(thrust(n) / G - fleet[n]["mass_kg"] for n in who)
        part = {"heavy": 1.3, "light": 0.02, "empty": 0}.get(tag)
        mass = float(f"{spare * (self.pick(0.1, 0.25, 0.4, 0.55, 0.7, 0.9) if part is None else part):.4g}")
        size = self.pick(1, 1.5, 3) * max(0.2, 2.5 * max(fleet[n]["arm_m"] for n in who))
        solids = [{"shape": "box", "size_m": [round(self.num(0.6, 1) * size, 4), round(self.num(0.1, 0.6) * size, 4), round(self.num(0.02, 0.2) * size, 4)], "mass_kg": mass}]
        if tag == "shapes" or self.rng.random() < 0.4:
            solids += [self.solid(size, mass * self.num(0.05, 0.4)) for _ in range(self.pick(1, 2, 4) if tag == "shapes" else 1)]
        p = {"format": "liftplan/1", "payload": {"solids": solids}, "vehicles": {n: fleet[n] for n in sorted(set(who))}, "team": [], "site": {}, "limits": {}}
        if len(solids) == 1 and self.rng.random() < 0.6 or tag in ("line", "close", "one", "pair", "stacked") and self.rng.random() < (0.5 if self.kind == "rigid" else 0.8):
            p["payload"]["com_m"] = [0, 0, 0]
        if tag == "off":
            p["payload"]["com_m"] = [self.num(-3, 3) * size, self.num(-3, 3) * size, 0]
        if tag == "measured":
            p["payload"]["com_m"] = [self.num(-0.12, 0.12) * size, self.num(-0.1, 0.1) * size, self.num(-0.05, 0.05) * size]
            j = max(mass, 0.01) * size * size
            p["payload"]["inertia_kg_m2"] = [float(f"{j * x:.4g}") for x in (0.06, 0.11, 0.14, self.num(-0.02, 0.02), self.num(-0.01, 0.01), self.num(-0.02, 0.02))]
        if self.wind:
            p["payload"]["drag_area_m2"] = [float(f"{size * size * self.num(0.02, 0.25):.3g}") for _ in range(3)]
            p["site"].update(wind_m_s=self.num(1, 12, 1), wind_to_deg=self.num(0, 360, 0))
        if tag == "height" or self.rng.random() < 0.15:
            p["site"].update(altitude_m=self.num(-300, 4500, 0), temperature_offset_k=self.num(-20, 25, 0))
        for i, (n, at) in enumerate(zip(who, self.places(k, size))):
            stiff = self.kind == "rigid" or self.kind == "mixed" and (i == 0 or i > 1 and self.rng.random() < 0.5)
            share = mass * G * thrust(n) / sum(thrust(x) for x in who)
            p["team"].append({"id": f"V{i + 1}", "vehicle": n, "attach_m": [float(f"{x:.6g}") for x in at], "yaw_deg": self.pick(0, self.num(-180, 180, 1)), "hold": self.hold(stiff, share)})
        p["limits"] = {"separation_m": 0}
        if self.kind != "rigid":
            least = self.pick(0, 0.02, 0.5)
            p["limits"].update(cone_deg=self.pick(10, 20, 30, 45), tension_min_n=least if least < 0.3 * mass * G / k else float(f"{0.05 * mass * G / k:.3g}"))
        if "com_m" not in p["payload"] and k > 1 and self.rng.random() < {"rigid": 0.3, "cable": 0.8, "mixed": 0.5}[self.kind]:
            p["payload"]["com_m"] = self.amid([v["attach_m"] for v in p["team"]])
        return p
