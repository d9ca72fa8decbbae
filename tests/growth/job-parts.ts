// What the long jobs are made of. All data invented.

export const times = (count: number, of: (i: number) => string, between = ''): string =>
  Array.from({ length: count }, (_, i) => of(i)).join(between)

export const job = (lines = ''): string => `job "Long" {\n  vessel: "Measure 1"\n${lines}}\n`
export const head = job()
export const bank =
  'battery house {\n  nominal: 96 V\n  window: 84..108 V\n  internal-resistance: 14 mohm\n}\n'

/** One drive that is whole in itself, with other lines in it. */
export const drive = (lines: string): string => `${head}${bank}drive main {\n${lines}}\n`

export const coupling =
  '  coupling {\n    kind: flexible\n    pilot: no\n    flange-diameter: 125 mm\n    gauge-diameter: 110 mm\n    gap-variation: max 0.10 mm\n    offset: max 0.15 mm\n  }\n'
export const footOf = (i: number): string =>
  `    foot f${i} { from-coupling: ${180 + 10 * i} mm across: 140 mm ${i % 2 === 0 ? 'port' : 'starboard'} }\n`
export const bed = (feet: number): string =>
  `  bed {\n    adjuster: stud-and-nuts\n    thread: M16\n${times(feet, footOf)}  }\n`
export const figures =
  '    gauge: 0.02 mm\n    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm\n    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm\n'
export const reading = (name: string, lines = figures): string =>
  `  reading ${name} {\n    taken: 2026-03-05\n    afloat: no\n${lines}  }\n`
export const move = (after: string, feet: string, done = 'done: 2026-03-05'): string =>
  `  move after ${after} {\n    ${done}\n${feet}  }\n`
export const aligned = `${coupling}${bed(4)}${reading('dry')}`
export const motor =
  '  motor propulsion {\n    power: 15 kW\n    voltage: 58 V\n    terminals: U, V, W\n  }\n'
export const controller = '  controller {\n    input: 72..120 V\n    terminals: A, B, C\n  }\n'
export const cable = (name: string, from = 'house', to = 'controller'): string =>
  `  cable ${name} {\n    from: ${from}\n    to: ${to}\n    conductor: 95 mm2\n    length: 2.5 m\n    insulation: 105 degC\n    place: machinery-space\n  }\n`
export const narrow = (count: number): string =>
  `  shaft {\n    diameter: 35 mm\n  }\n${times(count, (i) => `  bearing b${i} {\n    at: ${i / 100} m\n    bore: 34 mm\n  }\n`)}`
export const conceded = (on: string, until = '2026-04-01'): string =>
  `concession alignment/bearing-smaller-than-shaft {\n  on: ${on}\n  reason: "trial"\n  granted-by: "office"\n  until: ${until}\n}\n`
export const fuse = (name: string, within: string): string =>
  `  protection ${name} {\n    kind: fuse\n    rating: 315 A\n    in: ${within}\n    interrupts: 20 kA\n  }\n`

/** So many places round the shaft, each with a length. */
export const places = (count: number): string =>
  times(count, (i) => `${((360 * i) / count).toFixed(4)} deg ${1.8 + (i % 5) / 1000} mm`, ', ')

export const source = `${bank}protection bus { kind: fuse rating: 315 A in: c0 }
cable c0 { from: house to: bus conductor: 95 mm2 length: 2.5 m insulation: 105 degC }
cable c1 { from: bus to: main.controller conductor: 95 mm2 length: 2.5 m insulation: 105 degC }
drive main { motor m { power: 15 kW } controller { input: 72..120 V } }
`
/** A fuse with the cable that it protects, from the bus. */
export const branch = (i: number): string =>
  `cable b${i} { from: bus to: p${i} conductor: 95 mm2 length: 2.5 m insulation: 105 degC }
protection p${i} { kind: fuse rating: 10 A in: b${i} }
`
