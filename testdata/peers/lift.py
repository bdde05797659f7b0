"""The mechanics of a lift plan in numpy, written from the definition of the plan alone and sharing
nothing with core/. SI; body axes (payload frame, z up); wrenches are force x y z, moment x y z about
the centre of mass of what moves as one: payload and rigidly held vehicles."""
import math

import numpy as np
from scipy.optimize import root
from scipy.spatial.transform import Rotation

G = 9.80665  # standard gravity, exact, ISO 80000-3
RHO0 = 1.225  # sea level, ISO 2533


def inertia_of(s):
    """Inertia of one solid about its own centre of mass in its own axes, and that centre."""
    m, kind = s["mass_kg"], s["shape"]
    if kind == "mesh":
        return mesh(np.array(s["mesh"]["vertices_m"], float), s["mesh"]["triangles"], m)
    a = b = c = 0.0  # full side lengths of a box
    if kind in ("box", "plate"):
        a, b = s["size_m"][:2]
        c = s["size_m"][2] if kind == "box" else 0.0
    elif kind == "rod":
        a = s["length_m"]
    elif kind in ("tube", "cylinder"):
        r2 = s["outer_radius_m"] ** 2 + (s["inner_radius_m"] ** 2 if kind == "tube" else 0.0)
        along, across = m * r2 / 2, m * (r2 / 4 + s["length_m"] ** 2 / 12)
        return np.diag([along, across, across] if kind == "tube" else [across, across, along]), np.zeros(3)
    return m / 12 * np.diag([b * b + c * c, a * a + c * c, a * a + b * b]), np.zeros(3)


def mesh(p, triangles, m):
    """Even density: tetrahedra from the origin over each triangle."""
    vol, first, second = 0.0, np.zeros(3), np.zeros((3, 3))
    for i, j, k in triangles:
        v = np.linalg.det(p[[i, j, k]]) / 6
        s = p[i] + p[j] + p[k]
        vol, first = vol + v, first + v * s / 4
        second = second + v / 20 * (sum(np.outer(x, x) for x in (p[i], p[j], p[k])) + np.outer(s, s))
    com = first / vol
    second = m * (second / vol - np.outer(com, com))
    return np.trace(second) * np.eye(3) - second, com


def steiner(m, d):
    return m * (d @ d * np.eye(3) - np.outer(d, d))


def payload_of(p):
    mass, parts = 0.0, []
    for s in p["solids"]:
        R = Rotation.from_euler("xyz", s.get("turn_deg", [0, 0, 0]), degrees=True).as_matrix()  # fixed axes
        I, c = inertia_of(s)
        parts.append((s["mass_kg"], R @ I @ R.T, np.array(s.get("at_m", [0, 0, 0]), float) + R @ c))
        mass += s["mass_kg"]
    com = sum(m * c for m, _, c in parts) / mass if mass else parts[0][2]
    J = sum(I + steiner(m, c - com) for m, I, c in parts)
    if "com_m" in p:
        com = np.array(p["com_m"], float)
    if "inertia_kg_m2" in p:
        xx, yy, zz, xy, xz, yz = p["inertia_kg_m2"]
        J = np.array([[xx, xy, xz], [xy, yy, yz], [xz, yz, zz]])
    return mass, com, J


def air(site):
    """Standard atmosphere up to 11 km (ISO 2533); the offset changes temperature, not pressure."""
    t = 288.15 - 0.0065 * site.get("altitude_m", 0)
    p = 101325 * (t / 288.15) ** (G / 0.0065 / 287.05287)
    return p / 287.05287 / (t + site.get("temperature_offset_k", 0))


def shortest_turn(a, b):
    axis = np.cross(a, b)
    s = np.linalg.norm(axis)
    return np.eye(3) if s < 1e-300 else Rotation.from_rotvec(axis / s * math.atan2(s, a @ b)).as_matrix()


class Lift:
    """rotors: columns (6×n) and limits. cables: arm r from the body's centre, own weight less drag
    (what the thrust has to carry besides F), full thrust, tangent of tilt, working load."""

    def __init__(self, plan, payload_mass=None):
        site, lim = plan.get("site", {}), plan.get("limits", {})
        self.plan, self.rho = plan, air(site)
        self.m, self.pcom, self.pJ = payload_of(plan["payload"])
        self.given_mass = self.m
        if payload_mass is not None:  # shape kept: inertia goes with mass
            self.pJ = self.pJ * (payload_mass / self.m if self.m else 1.0)
            self.m = payload_mass
        to = math.radians(site.get("wind_to_deg", 0))
        self.wind = site.get("wind_m_s", 0) * np.array([math.cos(to), math.sin(to), 0.0])
        self.U = lim.get("utilisation", 0.8)
        self.cone = math.tan(math.radians(lim.get("cone_deg", 30)))
        self.least = lim.get("tension_min_n", 0.5)
        self.team = [dict(plan["vehicles"][v["vehicle"]], at=np.array(v["attach_m"], float), yaw=v.get("yaw_deg", 0), hold=v["hold"])
                     for v in plan["team"]]
        self.stiff = [v for v in self.team if v["hold"]["kind"] == "rigid"]
        self.hung = [v for v in self.team if v["hold"]["kind"] == "cable"]
        self.area = np.array(plan["payload"].get("drag_area_m2", [0, 0, 0]), float)
        self.body()
        self.lean()
        self.ropes()

    def drag(self, area, v):
        return 0.5 * self.rho * np.linalg.norm(v) * np.multiply(area, v)

    def body(self):
        parts = [(self.m, self.pJ, self.pcom)]
        for v in self.stiff:
            v["axes"] = (Rotation.from_rotvec(np.radians([*v["hold"].get("lean_deg", [0, 0]), 0])) * Rotation.from_euler("z", v["yaw"], degrees=True)).as_matrix()
            parts.append((v["mass_kg"], v["axes"] @ np.diag(v["inertia_kg_m2"]) @ v["axes"].T, v["at"]))
        self.M = sum(p[0] for p in parts)
        self.com = sum(m * c for m, _, c in parts) / self.M if self.M else self.pcom
        self.J = sum(I + steiner(m, c - self.com) for m, I, c in parts)
        self.total = self.M + sum(v["mass_kg"] for v in self.hung)
        cols, self.top, self.axis = [], [], np.zeros(3)
        for v in self.stiff:
            n, z = v["rotors"], v["axes"][:, 2]
            for j in range(n):
                phi = 2 * math.pi * j / n + (0 if v.get("layout", "cross") == "plus" else math.pi / n)
                arm = v["at"] + v["arm_m"] * v["axes"] @ [math.cos(phi), math.sin(phi), 0] - self.com
                cols.append(np.r_[z, np.cross(arm, z) + (1 if j % 2 == 0 else -1) * v["torque_per_thrust_m"] * z])
                self.top.append(v["rotor_thrust_max_n"] * self.rho / RHO0)
                self.axis = self.axis + self.top[-1] * z
        self.top = np.array(self.top)
        self.cols = np.array(cols).T.reshape(6, len(cols))

    def need(self, R):
        """Force and moment that the team must give, body axes, when the body stands at R (body → level)."""
        v = R.T @ self.wind
        f, t = R.T @ [0, 0, self.M * G], np.zeros(3)
        for at, area in [(self.pcom, self.area)] + [(s["at"], s.get("drag_area_m2", 0)) for s in self.stiff]:
            d = self.drag(area, v)
            f, t = f - d, t - np.cross(at - self.com, d)
        return np.r_[f, t]

    def lean(self):
        self.R, self.off = np.eye(3), 0.0
        if self.stiff and not self.hung:
            self.axis = self.axis / np.linalg.norm(self.axis)

            def at(p):  # aim with horizontal components p → its turn, and where the needed force points
                aim = np.array([*p, math.sqrt(max(0.0, 1 - p @ p))])
                R = shortest_turn(self.axis, aim)
                f = R @ self.need(R)[:3]
                return R, f / np.linalg.norm(f)
            s = root(lambda p: at(p)[1][:2] - p, np.zeros(2), tol=1e-14)
            p = s.x
            for _ in range(5):  # a few plain steps take off the last digits
                p = at(p)[1][:2]
            self.R = at(p)[0]
            self.off = np.abs(at(p)[1][:2] - p).max()
        self.w = self.need(self.R)
        self.up = self.R.T @ [0, 0, 1.0]

    def ropes(self):
        for v in self.hung:
            v["r"] = v["at"] - self.com
            v["own"] = np.array([0, 0, v["mass_kg"] * G]) - self.drag(v.get("drag_area_m2", 0), self.wind)
            v["T"] = v["rotors"] * v["rotor_thrust_max_n"] * self.rho / RHO0
            v["tilt"] = math.tan(math.radians(v.get("tilt_max_deg", 30)))
            v["work"] = v["hold"].get("working_load_n")


def bisect(holds, yes, no, rounds):
    """The edge between where holds() is so and where it is not, from its good side."""
    for _ in range(rounds):
        mid = (yes + no) / 2
        yes, no = (mid, no) if holds(mid) else (yes, mid)
    return yes
