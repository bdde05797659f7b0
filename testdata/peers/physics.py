"""The physics of a lift plan, written a second time and sharing nothing with core/: mass properties,
density, drag, lean, and the balance as matrices. SI, payload frame, z up."""
import math

import numpy as np

G = 9.80665


def rot(axis, deg):
    c, s = math.cos(math.radians(deg)), math.sin(math.radians(deg))
    i, j = {"x": (1, 2), "y": (2, 0), "z": (0, 1)}[axis]
    m = np.eye(3)
    m[i, i] = m[j, j] = c
    m[i, j], m[j, i] = -s, s
    return m


def rotvec(v):
    """The turn by a rotation vector, by the exponential series of its cross-product matrix."""
    k = cross(v)
    m, term = np.eye(3), np.eye(3)
    for n in range(1, 40):
        term = term @ k / n
        m = m + term
    return m


def cross(v):
    return np.array([[0, -v[2], v[1]], [v[2], 0, -v[0]], [-v[1], v[0], 0]], float)


def second_moment(s):
    """Integral of x xᵀ dm of a solid in its own axes, which makes every inertia trace·1 − this."""
    m = s["mass_kg"]
    if s["shape"] == "box":
        return m / 12 * np.diag(np.square(s["size_m"]))
    if s["shape"] == "plate":
        return m / 12 * np.diag(np.square(s["size_m"] + [0]))
    if s["shape"] == "rod":
        return m / 12 * np.diag([s["length_m"] ** 2, 0, 0])
    if s["shape"] == "tube":
        q = (s["outer_radius_m"] ** 2 + s["inner_radius_m"] ** 2) / 4
        return m * np.diag([s["length_m"] ** 2 / 12, q, q])
    if s["shape"] == "cylinder":
        q = s["outer_radius_m"] ** 2 / 4
        return m * np.diag([q, q, s["length_m"] ** 2 / 12])
    return np.zeros((3, 3))


def payload(p):
    m, first, second = 0.0, np.zeros(3), np.zeros((3, 3))
    for s in p["solids"]:
        a, b, c = s.get("turn_deg", [0, 0, 0])
        r = rot("z", c) @ rot("y", b) @ rot("x", a)
        at = np.array(s.get("at_m", [0, 0, 0]), float)
        m += s["mass_kg"]
        first += s["mass_kg"] * at
        second += r @ second_moment(s) @ r.T + s["mass_kg"] * np.outer(at, at)
    com = first / m if m > 0 else np.array(p["solids"][0].get("at_m", [0, 0, 0]), float)
    second = second - m * np.outer(com, com)
    inertia = np.trace(second) * np.eye(3) - second
    if "com_m" in p:
        com = np.array(p["com_m"], float)
    if "inertia_kg_m2" in p:
        xx, yy, zz, xy, xz, yz = p["inertia_kg_m2"]
        inertia = np.array([[xx, xy, xz], [xy, yy, yz], [xz, yz, zz]])
    return m, com, inertia


def density(site):
    t0, h = 288.15, site.get("altitude_m", 0)
    t = t0 - 0.0065 * h
    p = 101325 * (t / t0) ** (G / (0.0065 * 287.05287))
    return p / (287.05287 * (t + site.get("temperature_offset_k", 0)))


def drag(rho, area, v):
    return rho / 2 * np.linalg.norm(v) * np.asarray(area, float) * v


class Lift:
    """Everything of a plan that its balance needs. rotors: (column of 6, limit); cables: dicts."""

    def __init__(self, plan):
        site = plan.get("site", {})
        self.limits = {"utilisation": 0.8, "cone_deg": 30, "tension_min_n": 0.5, **plan.get("limits", {})}
        self.rho = density(site)
        self.m, self.com, self.inertia = payload(plan["payload"])
        self.area = np.array(plan["payload"].get("drag_area_m2", [0, 0, 0]), float)
        w = math.radians(site.get("wind_to_deg", 0))
        self.wind = site.get("wind_m_s", 0) * np.array([math.cos(w), math.sin(w), 0])
        self.team = [(v, plan["vehicles"][v["vehicle"]]) for v in plan["team"]]
        self.rigid = all(v["hold"]["kind"] == "rigid" for v, _ in self.team)
        (self.set_rigid if self.rigid else self.set_cables)()

    def set_rigid(self):
        mass, first = self.m, self.m * self.com
        axes = []
        for v, c in self.team:
            lx, ly = v["hold"].get("lean_deg", [0, 0])
            axes.append(rotvec(np.radians([lx, ly, 0])) @ rot("z", v.get("yaw_deg", 0)))
            mass += c["mass_kg"]
            first = first + c["mass_kg"] * np.array(v["attach_m"])
        self.mass, self.centre = mass, first / mass
        self.J = self.inertia + self.m * self.far(self.com)
        cols, top, full = [], [], np.zeros(3)
        for (v, c), a in zip(self.team, axes):
            at = np.array(v["attach_m"], float)
            self.J = self.J + a @ np.diag(c["inertia_kg_m2"]) @ a.T + c["mass_kg"] * self.far(at)
            n = c["rotors"]
            for j in range(n):
                phi = (0 if c.get("layout") == "plus" else math.pi / n) + 2 * math.pi * j / n
                r = at - self.centre + a @ (c["arm_m"] * np.array([math.cos(phi), math.sin(phi), 0]))
                z = a[:, 2]
                torque = np.cross(r, z) + (-1) ** j * c["torque_per_thrust_m"] * z
                cols.append(np.concatenate([z, torque]))
                top.append(c["rotor_thrust_max_n"] * self.rho / 1.225)
                full = full + top[-1] * z
        self.B, self.top = np.array(cols).T, np.array(top)
        self.axis = full / np.linalg.norm(full)
        aim = self.axis
        for _ in range(2000):
            R = align(self.axis, aim)
            force, moment = self.body(R)
            new = R @ force
            new = new / np.linalg.norm(new)
            if np.linalg.norm(new - aim) < 1e-15:
                break
            aim = aim + 0.5 * (new - aim)
            aim = aim / np.linalg.norm(aim)
        self.R = R
        self.w = np.concatenate(self.body(R))

    def far(self, p):
        r = p - self.centre
        return r @ r * np.eye(3) - np.outer(r, r)

    def body(self, R):
        """The wrench that the team must give about the combined centre of mass, body axes."""
        v = R.T @ self.wind
        force = R.T @ np.array([0, 0, self.mass * G])
        moment = np.zeros(3)
        for at, area in [(self.com, self.area)] + [(np.array(v_["attach_m"], float), [c.get("drag_area_m2", 0)] * 3) for v_, c in self.team]:
            d = drag(self.rho, area, v)
            force = force - d
            moment = moment - np.cross(at - self.centre, d)
        return force, moment

    def set_cables(self):
        self.J = self.inertia
        self.w = np.concatenate([[0, 0, self.m * G] - drag(self.rho, self.area, self.wind), np.zeros(3)])
        self.cables = []
        for v, c in self.team:
            r = np.array(v["attach_m"], float) - self.com
            own = np.array([0, 0, c["mass_kg"] * G]) - drag(self.rho, [c.get("drag_area_m2", 0)] * 3, self.wind)
            self.cables.append({"A": np.vstack([np.eye(3), cross(r)]), "r": r, "own": own, "mass": c["mass_kg"],
                                "T": c["rotors"] * c["rotor_thrust_max_n"] * self.rho / 1.225,
                                "tilt": math.tan(math.radians(c.get("tilt_max_deg", 30))),
                                "work": v["hold"].get("working_load_n")})


def align(a, b):
    """The smallest turn from unit vector a to b (not opposite), by the formula of two reflections."""
    k = cross(np.cross(a, b))
    return np.eye(3) + k + k @ k / (1 + a @ b)
