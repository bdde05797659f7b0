// A scene without control as the engine's XML: free bodies, undamped lines that only pull, the rule of Runge and Kutta.
export const G = 9.80665;

// chance is a seeded generator of numbers from 0 to 1, of 32 bits (mulberry32), so that files can be made again.
export function chance(seed) {
  return () => {
    seed = (seed + 0x6d2b79f5) | 0;
    let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

// ranges are numbers and points of a generator, to four decimals.
export function ranges(draw) {
  const between = (a, b) => +(a + (b - a) * draw()).toFixed(4);
  return { between, point: (x, y, z) => [between(-x, x), between(-y, y), between(-z, z)] };
}

export function xml(s, step) {
  const site = (name, p) => `<site name="${name}" pos="${p.join(' ')}"/>`;
  const own = i => s.lines.map((l, k) => (l.a === i ? site(`a${k}`, l.at_a) : '') + (l.b === i ? site(`b${k}`, l.at_b) : '')).join('');
  const bodies = s.bodies.map((b, i) => `<body pos="${b.at.join(' ')}"><freejoint/><inertial pos="0 0 0" mass="${b.mass}" diaginertia="${b.inertia.join(' ')}"/>${own(i)}</body>`).join('');
  const tendons = s.lines.map((l, k) => `<spatial stiffness="${l.stiffness}" damping="0" springlength="0 ${l.length}"><site site="a${k}"/><site site="b${k}"/></spatial>`).join('');
  return `<mujoco><compiler boundmass="0" boundinertia="0" balanceinertia="false"/><option gravity="0 0 ${-G}" timestep="${step}" integrator="RK4"><flag contact="disable"/></option>
<worldbody>${own(-1)}${bodies}</worldbody><tendon>${tendons}</tendon></mujoco>`;
}

// start sets the motion that a scene begins with, spin in body axes, and the upward thrusts that last.
export function start(data, s) {
  s.bodies.forEach((b, i) => {
    [...b.velocity, ...b.spin].forEach((x, a) => { data.qvel[6 * i + a] = x; });
    if (b.thrust) data.xfrc_applied[6 * (i + 1) + 2] = b.thrust;
  });
}
