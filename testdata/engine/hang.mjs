// Random payloads hung from fixed points on elastic lines in a rigid-body engine: where they come to rest, what the lines
// pull with, and how they accelerate when moved a little.
// node hang.mjs > hang.jsonl, in a folder where `npm i mujoco-js@0.0.7` was run.
import load from 'mujoco-js';
import { G, chance } from './scene.mjs';

const engine = await load();

const random = chance(20261125);
const some = s => s * (2 * random() - 1);
const round = x => +x.toPrecision(12);

function turnOf(axis, angle) { // matrix of a rotation, by Rodrigues' formula
  const n = Math.hypot(...axis), [x, y, z] = axis.map(v => v / n), c = Math.cos(angle), s = Math.sin(angle), d = 1 - c;
  return [[c + x * x * d, x * y * d - z * s, x * z * d + y * s], [y * x * d + z * s, c + y * y * d, y * z * d - x * s], [z * x * d - y * s, z * y * d + x * s, c + z * z * d]];
}

// A box of k lines about it, its centre of mass off the middle and its inertia turned. kind: "all" lines, "long": one line is
// a twentieth too long, "lost": one vehicle is gone.
function invent(k, kind) {
  const mass = round(1 + 7 * random()), size = [0.3 + random(), 0.3 + random(), 0.1 + 0.4 * random()];
  const q = turnOf([some(1), some(1), some(1)], some(1)), box = [[1, 2], [0, 2], [0, 1]].map(([i, j]) => mass * (size[i] ** 2 + size[j] ** 2) / 12);
  const inertia = [[0, 0], [1, 1], [2, 2], [0, 1], [0, 2], [1, 2]].map(([i, j]) => round(box.reduce((sum, m, a) => sum + q[i][a] * m * q[j][a], 0)));
  const com = [some(0.08), some(0.08), -0.15 + some(0.1)].map(round), phase = 6 * random();
  const force = random() < 0.5 ? [0, 0, 0] : [some(0.15) * mass * G, some(0.15) * mass * G, 0].map(round);
  const lines = [];
  for (let i = 0; i < k; i++) {
    const a = phase + 2 * Math.PI * i / k, at = [0.6 * Math.cos(a) + some(0.1), 0.5 * Math.sin(a) + some(0.1), some(0.1)].map(round);
    const spread = 1 + 0.8 * random(), top = [at[0] * spread + some(0.1), at[1] * spread + some(0.1), 2 + some(0.4)].map(round);
    const length = Math.hypot(...top.map((v, j) => v - at[j])), rest = length * (1 + some(0.01) + (kind === 'long' && i === 0 ? 0.05 : 0));
    const strain = 10 ** (-2.5 - 0.8 * random());
    lines.push({ top, at, length: round(rest), stiffness: round(mass * G / k / (strain * rest)) });
  }
  const gone = kind === 'lost' ? Math.floor(k * random()) : -1;
  if (gone >= 0) lines.splice(gone, 1);
  return { kind, mass, com, inertia, force, lines };
}

function scene(c) {
  const [tops, ats, cables] = [[], [], []];
  const weight = c.mass * G;
  c.lines.forEach((l, i) => {
    tops.push(`<site name="v${i}" pos="${l.top.join(' ')}"/>`);
    ats.push(`<site name="a${i}" pos="${l.at.join(' ')}"/>`);
    cables.push(`<spatial name="c${i}" stiffness="${l.stiffness}" damping="${0.4 * Math.sqrt(l.stiffness * c.mass)}" springlength="0 ${l.length}"><site site="v${i}"/><site site="a${i}"/></spatial>`);
  });
  return `<mujoco><compiler angle="radian" boundmass="0" boundinertia="0" inertiafromgeom="false"/>
<option gravity="0 0 ${-G}" timestep="0.0005" integrator="implicitfast"><flag contact="disable"/></option>
<worldbody>${tops.join('')}<body name="payload" pos="0 0 0.05"><joint name="free" type="free" damping="${c.mass * 0.8}"/>
<inertial pos="${c.com.join(' ')}" mass="${c.mass}" fullinertia="${c.inertia.join(' ')}"/><geom type="sphere" size="0.01"/>${ats.join('')}</body></worldbody><tendon>${cables.join('')}</tendon></mujoco>`;
}

// Acceleration for a small shift or turn of each kind, 1/s², central differences at rest: minus the inverse mass matrix
// times the stiffness matrix, in the engine's own six velocities.
function swing(model, data) {
  const by = 1e-5, home = Array.from(data.qpos), columns = [];
  for (let j = 0; j < 6; j++) {
    const side = [1, -1].map(sign => {
      for (let i = 0; i < 7; i++) data.qpos[i] = home[i];
      const v = [0, 0, 0, 0, 0, 0];
      v[j] = sign;
      engine.mj_integratePos(model, data.qpos, v, by);
      for (let i = 0; i < 6; i++) data.qvel[i] = 0;
      engine.mj_forward(model, data);
      return Array.from(data.qacc);
    });
    columns.push(side[0].map((a, i) => round((a - side[1][i]) / (2 * by))));
  }
  for (let i = 0; i < 7; i++) data.qpos[i] = home[i];
  engine.mj_forward(model, data);
  return columns;
}

const version = engine.mj_versionString();
const kinds = [...Array(34).fill('all'), ...Array(8).fill('long'), ...Array(8).fill('lost')];
for (const [n, kind] of kinds.entries()) {
  const c = invent(kind === 'all' ? 2 + n % 7 : 4 + n % 4, kind);
  engine.FS.writeFile('/scene.xml', scene(c));
  const model = engine.MjModel.loadFromXML('/scene.xml'), data = new engine.MjData(model);
  for (let i = 0; i < 3; i++) data.xfrc_applied[6 + i] = c.force[i]; // body 1, at its centre of mass
  let steps = 0, speed = 1;
  for (; steps < 4e5 && speed > 1e-9; steps++) {
    engine.mj_step(model, data);
    if (steps % 1000 === 999) speed = Math.hypot(...data.qvel);
  }
  engine.mj_forward(model, data);
  const q = Array.from(data.qpos).map(round), length = Array.from(data.ten_length);
  const tension = c.lines.map((l, i) => round(Math.max(0, l.stiffness * (length[i] - l.length))));
  const accel = swing(model, data);
  console.error(`${n} ${kind}: ${steps} steps, speed ${speed.toExponential(1)}, tension ${tension.map(t => t.toFixed(2)).join(' ')}`);
  console.log(JSON.stringify({ engine: `MuJoCo ${version}`, kind, mass_kg: c.mass, com_m: c.com, inertia_kg_m2: c.inertia, force_n: c.force,
    lines: c.lines.map(l => ({ top_m: l.top, attach_m: l.at, length_m: l.length, stiffness_n_m: l.stiffness })),
    steps, speed_m_s: +speed.toPrecision(3), origin_m: q.slice(0, 3), quaternion: q.slice(3), tension_n: tension, accel_per_move: accel }));
  data.delete(); model.delete();
}
