// Rigid teams without control in a rigid-body engine: rotors push on welded bodies, some payloads hang on lines as well.
// node held.mjs > held.jsonl, in a folder where `npm i mujoco-js@0.0.7` was run.
import load from 'mujoco-js';
import { G, chance, ranges } from './scene.mjs';

const engine = await load();
const STEP = 1.25e-5, SPAN = 1, EVERY = 0.125;

const draw = chance(20261126), { between, point } = ranges(draw);
const times = (a, b) => [a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3], a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
  a[0] * b[2] + a[2] * b[0] + a[3] * b[1] - a[1] * b[3], a[0] * b[3] + a[3] * b[0] + a[1] * b[2] - a[2] * b[1]];
const turned = (q, v) => times(times(q, [0, ...v]), [q[0], -q[1], -q[2], -q[3]]).slice(1);

// A plan, what every rotor gives all the time, and how the payload begins. Lines go from fixed points to the payload.
function make(n) {
  const size = [between(0.6, 1.6), between(0.4, 1.2), between(0.1, 0.4)], mass = between(2, 9);
  const vehicles = {}, team = [], thrust = [];
  for (let i = 0; i < 1 + n % 5; i++) {
    const rotors = [4, 6, 8, 4, 3][(n + i) % 5];
    vehicles[`class-${i}`] = { mass_kg: between(0.8, 3), rotors, layout: ['cross', 'plus'][i % 2], arm_m: between(0.2, 0.4), rotor_radius_m: 0.1,
      rotor_thrust_max_n: 40, torque_per_thrust_m: between(0.01, 0.03), inertia_kg_m2: [between(0.03, 0.05), between(0.03, 0.05), between(0.045, 0.06)], drag_area_m2: 0.05, tilt_max_deg: 30 };
    team.push({ id: String.fromCharCode(65 + i), vehicle: `class-${i}`, attach_m: point(size[0], size[1], 0.4), yaw_deg: between(-180, 180), hold: { kind: 'rigid', lean_deg: [between(-10, 10), between(-10, 10)] } });
    thrust.push(Array.from({ length: rotors }, () => between(4, 6)));
  }
  const lines = Array.from({ length: [0, 2, 3][n % 3] }, () => {
    const on = point(size[0] / 2, size[1] / 2, size[2] / 2), top = [on[0] * 1.3, on[1] * 1.3, between(1.2, 2)];
    return { from: top, to: on, length: +(Math.hypot(...top.map((x, a) => x - on[a])) - 0.01).toFixed(5), stiffness: between(600, 1500) };
  });
  return { plan: { format: 'liftplan/1', title: `held ${n}`, payload: { solids: [{ shape: 'box', size_m: size, mass_kg: mass }] }, vehicles, team }, thrust, lines, velocity: point(0.5, 0.5, 0.3), spin: point(0.8, 0.8, 0.8) };
}

// pose is how a vehicle's axes stand in the payload: yawed about its own axis, then leant by a rotation vector.
function pose(m) {
  const deg = Math.PI / 180, lean = m.hold.lean_deg.map(x => x * deg), a = Math.hypot(...lean);
  const q = a > 0 ? [Math.cos(a / 2), lean[0] / a * Math.sin(a / 2), lean[1] / a * Math.sin(a / 2), 0] : [1, 0, 0, 0];
  return times(q, [Math.cos(m.yaw_deg * deg / 2), 0, 0, Math.sin(m.yaw_deg * deg / 2)]);
}

// wrench is what a vehicle's rotors do about its centre, in its own axes.
function wrench(c, u) {
  const force = [0, 0, 0], moment = [0, 0, 0];
  u.forEach((x, j) => {
    const angle = (c.layout === 'cross' ? Math.PI / c.rotors : 0) + 2 * Math.PI * j / c.rotors;
    force[2] += x;
    moment[0] += c.arm_m * Math.sin(angle) * x;
    moment[1] -= c.arm_m * Math.cos(angle) * x;
    moment[2] += (j % 2 ? -1 : 1) * c.torque_per_thrust_m * x;
  });
  return { force, moment };
}

function xml(s) {
  const { plan } = s, box = plan.payload.solids[0], [x, y, z] = box.size_m, m = box.mass_kg;
  const inertia = [y * y + z * z, x * x + z * z, x * x + y * y].map(k => m / 12 * k);
  const held = plan.team.map((v, i) => `<body pos="${v.attach_m.join(' ')}" quat="${pose(v).join(' ')}"><inertial pos="0 0 0" mass="${plan.vehicles[v.vehicle].mass_kg}" diaginertia="${plan.vehicles[v.vehicle].inertia_kg_m2.join(' ')}"/><site name="v${i}"/></body>`).join('');
  const sites = s.lines.map((l, k) => `<site name="on${k}" pos="${l.to.join(' ')}"/>`).join(''), tops = s.lines.map((l, k) => `<site name="top${k}" pos="${l.from.join(' ')}"/>`).join('');
  const tendons = s.lines.map((l, k) => `<spatial stiffness="${l.stiffness}" damping="0" springlength="0 ${l.length}"><site site="top${k}"/><site site="on${k}"/></spatial>`).join('');
  const sensors = plan.team.map((_, i) => `<force site="v${i}"/><torque site="v${i}"/>`).join('');
  return `<mujoco><compiler boundmass="0" boundinertia="0" balanceinertia="false"/><option gravity="0 0 ${-G}" timestep="${STEP}" integrator="RK4"><flag contact="disable"/></option>
<worldbody>${tops}<body><freejoint/><inertial pos="0 0 0" mass="${m}" diaginertia="${inertia.join(' ')}"/>${sites}${held}</body></worldbody>${tendons && `<tendon>${tendons}</tendon>`}<sensor>${sensors}</sensor></mujoco>`;
}

for (let n = 0; n < 15; n++) {
  const s = make(n);
  engine.FS.writeFile('/scene.xml', xml(s));
  const model = engine.MjModel.loadFromXML('/scene.xml'), data = new engine.MjData(model);
  [...s.velocity, ...s.spin].forEach((x, a) => { data.qvel[a] = x; });
  const own = s.plan.team.map((v, i) => ({ ...wrench(s.plan.vehicles[v.vehicle], s.thrust[i]), q: pose(v) }));
  // the engine holds an applied force for a step: that of the middle of the step is of second order
  const push = ahead => {
    const q = Array.from(data.qpos).slice(3, 7), w = Array.from(data.qvel).slice(3, 6).map(x => x * ahead / 2);
    const mid = times(q, [1, ...w]), size = Math.hypot(...mid), unit = mid.map(x => x / size);
    own.forEach((o, i) => {
      const at = times(unit, o.q);
      [...turned(at, o.force), ...turned(at, o.moment)].forEach((x, a) => { data.xfrc_applied[6 * (i + 2) + a] = x; });
    });
  };
  const states = [], per = Math.round(EVERY / STEP);
  for (let k = 0; k <= Math.round(SPAN / STEP); k++) {
    if (k % per === 0) {
      push(0);
      engine.mj_forward(model, data);
      const keep = list => Array.from(list).map(x => +x.toPrecision(9));
      states.push({ time: +(k * STEP).toFixed(6), q: keep(data.qpos), v: keep(data.qvel), held: keep(data.sensordata) });
    }
    push(STEP);
    engine.mj_step(model, data);
  }
  console.log(JSON.stringify({ ...s, states }));
  data.delete(); model.delete();
}
