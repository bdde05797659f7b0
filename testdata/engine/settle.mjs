// Hangs each team's payload in a rigid-body engine and reads what the cables pull with.
// node settle.mjs teams.json > hung.jsonl, in a folder where `npm i mujoco-js@0.0.7` was run.
import { readFileSync } from 'node:fs';
import load from 'mujoco-js';

const engine = await load();
const G = 9.80665;

// euler turns about fixed axes x, y, z: the engine's eulerseq "XYZ"; angles in degrees
function geom(s) {
  const pose = `pos="${(s.at_m ?? [0, 0, 0]).join(' ')}"` + (s.turn_deg ? ` euler="${s.turn_deg.join(' ')}"` : '');
  const mass = `mass="${s.mass_kg}"`;
  if (s.shape === 'box') return `<geom type="box" size="${s.size_m.map(x => x / 2).join(' ')}" ${pose} ${mass}/>`;
  if (s.shape === 'cylinder') return `<geom type="cylinder" size="${s.outer_radius_m} ${s.length_m / 2}" ${pose} ${mass}/>`;
  return `<geom type="sphere" size="0.001" ${pose} ${mass}/>`;
}

// Vehicles are fixed points. A cable is a spring of rest length r that is slack when shorter.
function scene(t, stretch, start) {
  const { team, payload } = t.plan;
  const weight = G * payload.solids.reduce((m, s) => m + s.mass_kg, 0);
  const sites = team.map((v, i) => `<site name="a${i}" pos="${v.attach_m.join(' ')}"/>`).join('');
  const ends = team.map((_, i) => `<site name="v${i}" pos="${t.anchors_m[i].join(' ')}"/>`).join('');
  const cables = team.map((v, i) => {
    const L = v.hold.length_m, k = weight / team.length / (stretch * L);
    // tensions that the lengths alone decide: the plan's own length; else the length less its stretch
    const rest = t.determinate ? L : L - t.tension_n[i] / k;
    const damping = 2 * Math.sqrt(k * weight / G) * 0.2;
    return `<spatial name="c${i}" stiffness="${k}" damping="${damping}" springlength="0 ${rest}"><site site="v${i}"/><site site="a${i}"/></spatial>`;
  }).join('');
  return `<mujoco><compiler angle="degree" eulerseq="XYZ" inertiafromgeom="true" boundmass="0" boundinertia="0"/>
<option gravity="0 0 ${-G}" timestep="0.0005" integrator="implicitfast"><flag contact="disable"/></option>
<worldbody>${ends}<body name="payload" pos="${start.at.join(' ')}" euler="${start.turn.join(' ')}"><joint name="free" type="free" damping="${weight / G * 0.6}"/>
${payload.solids.map(geom).join('')}${sites}</body></worldbody><tendon>${cables}</tendon></mujoco>`;
}

const version = engine.mj_versionString();
for (const t of JSON.parse(readFileSync(process.argv[2]))) {
  // let go from somewhere else and not level
  const xml = scene(t, 1e-4, { at: [0.03, -0.02, 0.02], turn: [3, -2, 4] });
  engine.FS.writeFile('/scene.xml', xml);
  const model = engine.MjModel.loadFromXML('/scene.xml'), data = new engine.MjData(model);
  const k = t.plan.team.length;
  let steps = 0, speed = 1;
  for (; steps < 1e6 && speed > 1e-9; steps++) {
    engine.mj_step(model, data);
    if (steps % 1000 === 0) speed = Math.hypot(...data.qvel);
    if (steps === 0) speed = 1;
  }
  engine.mj_forward(model, data);
  const length = Array.from(data.ten_length), rest = Array.from(model.tendon_lengthspring).filter((_, i) => i % 2 === 1), stiff = Array.from(model.tendon_stiffness);
  const tension = length.slice(0, k).map((l, i) => Math.max(0, stiff[i] * (l - rest[i])));
  const q = Array.from(data.qpos);
  const off = Math.max(...tension.map((x, i) => Math.abs(x / t.tension_n[i] - 1)));
  const tilt = 2 * Math.asin(Math.min(1, Math.hypot(q[4], q[5], q[6]))) * 180 / Math.PI;
  console.error(`${t.plan.title}: ${steps} steps, speed ${speed.toExponential(1)}, ${t.determinate ? 'own lengths' : 'lengths by tension'}, moved ${Math.hypot(q[0], q[1], q[2]).toExponential(1)} m, turned ${tilt.toExponential(1)} deg, tension off by ${off.toExponential(1)}`);
  console.log(JSON.stringify({ plan: t.plan, engine: `MuJoCo ${version}`, determinate: t.determinate, steps, speed_m_s: +speed.toPrecision(3),
    anchors_m: t.anchors_m.map(p => p.map(x => +x.toPrecision(9))), moved_m: q.slice(0, 3).map(x => +x.toPrecision(4)), turned_deg: +tilt.toPrecision(4), tension_n: tension.map(x => +x.toPrecision(9)) }));
  data.delete(); model.delete();
}
