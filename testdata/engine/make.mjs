// Hangs payloads from stiff lines in a general physics engine, lets them settle and writes what the
// lines carry to tensions.json. See README.md.
import { execFileSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import load_mujoco from 'mujoco-js'

const root = process.argv[2] // of the repository
const examples = ['beam-pair', 'crate-ring', 'mixed-team', 'deck-of-eight', 'handrail-beam']
const mujoco = await load_mujoco()
const STIFF = 2e4 // N/m, stretched by a few millimetres at most

const read = (path) => readFileSync(`${root}/${path}`, 'utf8')

// cases are the examples and the first random plans on three cables or more that lift without wind
// and whose attachments lie at least 10 cm from each other (closer, a load may turn as it likes).
function cases() {
  const list = examples.map((name) => ({ name, plan: JSON.parse(read(`core/example/${name}.json`)) }))
  for (const line of read('testdata/peers/cable.jsonl').trim().split('\n')) {
    const { seed, plan, answer } = JSON.parse(line)
    const at = plan.team.map((v) => v.attach_m)
    const apart = at.every((a, i) => at.slice(0, i).every((b) => Math.hypot(...a.map((x, k) => x - b[k])) > 0.1))
    const mass = plan.payload.solids.reduce((sum, s) => sum + s.mass_kg, 0)
    if (answer.feasible && answer.utilisation < 1 && at.length >= 3 && apart && mass > 0.01 && !plan.payload.inertia_kg_m2) {
      list.push({ name: `random-${seed}`, plan })
    }
    if (list.length === 14) break
  }
  return list.map(({ name, plan }) => {
    plan.site = {}
    const r = JSON.parse(execFileSync('go', ['run', './wasm/headless', '-'], { cwd: root, input: JSON.stringify(plan) }))
    return {
      name, plan, mass: r.payload.mass_kg, com: r.payload.com_m, inertia: r.payload.inertia_kg_m2,
      lines: r.vehicles.map((v, i) => ({ anchor: v.position_m, attach: plan.team[i].attach_m, tension: v.tension_n })),
    }
  })
}

// Each case: mass, com, inertia (xx yy zz xy xz yz about com), and lines {anchor, attach, tension}.
// A line's rest length is its length less tension / stiffness: where statics leaves the share open,
// the lines' lengths decide it, and these are the lengths that ask for the share of the sheet.
function scene(c) {
  const v = (a) => a.join(' ')
  const anchors = c.lines.map((l, i) => `<site name="top${i}" pos="${v(l.anchor)}"/>`).join('')
  const holds = c.lines.map((l, i) => `<site name="end${i}" pos="${v(l.attach)}"/>`).join('')
  const tendons = c.lines.map((l, i) => {
    const length = Math.hypot(...l.anchor.map((a, k) => a - l.attach[k]))
    const rest = length - l.tension / STIFF
    return `<spatial name="line${i}" stiffness="${STIFF}" damping="${60}" springlength="0 ${rest}"><site site="top${i}"/><site site="end${i}"/></spatial>`
  }).join('')
  return `<mujoco><compiler autolimits="true" boundmass="0" boundinertia="0"/>
<option gravity="0 0 -9.80665" timestep="0.0005" integrator="implicitfast"/>
<worldbody>${anchors}<body name="load"><freejoint/><inertial pos="${v(c.com)}" mass="${c.mass}" fullinertia="${v(c.inertia)}"/>${holds}</body></worldbody>
<tendon>${tendons}</tendon></mujoco>`
}

const out = []
for (const c of cases()) {
  mujoco.FS.writeFile('/lift.xml', scene(c))
  const model = mujoco.MjModel.loadFromXML('/lift.xml')
  const data = new mujoco.MjData(model)
  // let go 3 cm off and 2 degrees askew, with a push: what it settles to is the engine's own finding
  const half = Math.PI / 180
  data.qpos.set([0.02, -0.02, 0.01, Math.cos(half), Math.sin(half) * 0.6, Math.sin(half) * 0.64, Math.sin(half) * 0.48])
  data.qvel.set([0.05, 0.03, 0, 0.02, -0.03, 0.05])
  const steps = 120000 // 60 s
  for (let i = 0; i < steps; i++) {
    // the air's resistance, so that the load comes to rest: it does no work once it hangs still
    const keep = 1 - 2 * 0.0005
    for (let k = 0; k < 6; k++) data.qvel[k] *= keep
    mujoco.mj_step(model, data)
  }
  const speed = Math.hypot(...Array.from(data.qvel).slice(0, 6))
  const tensions = c.lines.map((l, i) => {
    const length = Math.hypot(...l.anchor.map((a, k) => a - l.attach[k]))
    return Math.max(0, STIFF * (data.ten_length[i] - (length - l.tension / STIFF)))
  })
  const tilt = 2 * Math.acos(Math.min(1, Math.abs(data.qpos[3]))) * 180 / Math.PI
  out.push({ name: c.name, plan: c.plan, anchors_m: c.lines.map((l) => l.anchor), tension_n: tensions, speed, tilt_deg: tilt })
  console.log(c.name, 'speed', speed.toExponential(1), 'tilt', tilt.toFixed(4), tensions.map((t, i) => (t / c.lines[i].tension - 1).toExponential(1)).join(' '))
  data.delete()
  model.delete()
}
writeFileSync(`${root}/testdata/engine/tensions.json`, '[\n' + out.map((c) => JSON.stringify(c)).join(',\n') + '\n]\n')
