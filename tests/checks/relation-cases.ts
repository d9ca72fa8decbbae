// Jobs that break a rule of docs/plausible.md, and jobs that keep it.
export const drive = (...parts: readonly string[]) => `drive main {\n${parts.join('\n')}\n}\n`
export const battery = (facts: string) => `battery house { ${facts} }\n`

export interface Case {
  readonly broken: readonly string[]
  readonly kept: readonly string[]
}

const shaft = 'shaft { diameter: 35 mm  length: 2.65 m }'
export const motor =
  'motor m { power: 15 kW  speed: 1500 rpm  voltage: 58 V  power-factor: 0.9  efficiency: 92 % }'
const bearing = (facts: string) => drive(shaft, `bearing stern { ${facts} }`)
const log = (facts: string) => drive(shaft, `shaft-log { ${facts} }`)
const cable = (name: string, facts: string) =>
  `cable ${name} { ${facts}  length: 2 m  insulation: 105 degC }\n`
const feedOf = (name: string, current: string) =>
  cable(name, `from: house  to: controller  conductor: 95 mm2  design-current: ${current}`)
const phasesOf = (name: string, current: string) =>
  cable(name, `from: controller  to: m  conductor: 70 mm2  design-current: ${current}`)
const fed = (cables: string) =>
  battery('nominal: 96 V  window: 84..108 V') + drive(motor, 'controller { efficiency: 96 % }', cables)
const twoBanks = (fact: string, inside: string, outside = '') =>
  `battery house { nominal: 96 V }\nbattery aux { nominal: 12 V }\n${drive(fact, motor, 'controller { }', inside)}${outside}\n`
const target = (fact: string) => (value: string) => drive(`target { ${fact}: ${value} }`)

/** A job that a rule is broken in and one that it is kept in, at the bound where there is one; inch and metric. */
export const cases: Readonly<Record<string, Case>> = {
  'short-circuit': {
    // 108 V / 14 mΩ = 7.71 kA (Ohm's law).
    broken: ['1 A', '3.8 kA', '15.5 kA', '1000 kA'].map((amps) =>
      battery(
        `nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm  short-circuit-current: ${amps}`,
      ),
    ),
    kept: ['3.9 kA', '8 kA', '15.4 kA'].map((amps) =>
      battery(
        `nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm  short-circuit-current: ${amps}`,
      ),
    ),
  },
  'curve-above-rating': {
    broken: ['protection f { kind: fuse  rating: 100 A  clears: 80 A 100 s, 2 kA 0.1 s }'],
    kept: ['protection f { kind: fuse  rating: 100 A  clears: 135 A 1000 s, 2 kA 0.1 s }'],
  },
  'battery-peak-current': {
    broken: ['1 A', '209 A'].map((peak) => battery(`current: 210 A  peak-current: ${peak}`)),
    kept: ['210 A', '0.42 kA'].map((peak) => battery(`current: 210 A  peak-current: ${peak}`)),
  },
  'controller-phase-limit': {
    broken: ['301 A', '0.31 kA'].map((limit) =>
      drive(`controller { peak-current: 300 A  phase-current-limit: ${limit} }`),
    ),
    kept: ['1 A', '300 A'].map((limit) =>
      drive(`controller { peak-current: 300 A  phase-current-limit: ${limit} }`),
    ),
  },
  'controller-speed-limit': {
    broken: ['2401 rpm', '4000 rpm'].map((limit) =>
      drive('motor m { max-speed: 2400 rpm }', `controller { speed-limit: ${limit} }`),
    ),
    kept: ['2400 rpm', '900 rpm'].map((limit) =>
      drive('motor m { max-speed: 2400 rpm }', `controller { speed-limit: ${limit} }`),
    ),
  },
  'log-clearance': {
    // 60 mm less 35 mm is 25 mm (geometry).
    broken: [
      log('bore: 60 mm  clearance: top 12 mm, bottom 10 mm'),
      log('bore: 2.362 in  clearance: top 0.7 in, bottom 0.7 in'),
      log('bore: 60 mm  clearance: 45 deg 20 mm, 225 deg 20 mm'),
    ],
    kept: [
      log('bore: 60 mm  clearance: top 12.4 mm, starboard 12.1 mm, bottom 12.6 mm, port 12.9 mm'),
      log('bore: 60 mm  clearance: top 12 mm, bottom 11 mm'),
      log('bore: 60 mm  clearance: top 3 mm'),
    ],
  },
  'cable-current': {
    // 15 kW / 0.92 / 0.96 / 84 V = 202 A (definition of efficiency): 80 % is 162 A, a quarter 50.5 A. Between phases
    // 15 kW / (sqrt 3 x 58 V x 0.9 x 0.92) = 180 A: 80 % is 144 A.
    broken: [
      ...['0.1 A', '51 A', '161 A'].map((current) => fed(feedOf('feed', current))),
      fed(feedOf('feed', '50 A') + feedOf('feed-2', '202 A')),
      fed(phasesOf('phases', '140 A')),
    ],
    kept: [
      ...['163 A', '202 A', '500 A'].map((current) => fed(feedOf('feed', current))),
      fed(feedOf('feed', '51 A') + feedOf('feed-2', '202 A')),
      fed(phasesOf('phases', '146 A')),
      fed(phasesOf('phases', '50 A') + phasesOf('phases-2', '150 A')),
    ],
  },
  'drive-battery': {
    // Two banks: what the cables lead to is followed through fuses, and through cables from bank to bank.
    broken: [
      twoBanks('battery: aux', 'cable feed { from: house  to: controller }'),
      twoBanks(
        'battery: aux',
        'protection fuse { }  cable a { from: house  to: fuse }  cable b { from: fuse  to: controller }',
      ),
      twoBanks('battery: aux', 'cable feed { from: house  to: m }'),
      twoBanks(
        'battery: aux',
        'cable phases { from: controller  to: m }',
        'cable feed { from: house  to: main.controller }',
      ),
      twoBanks(
        'battery: aux',
        'cable feed { from: house  to: controller }',
        'protection other { }\ncable b { from: aux  to: other }',
      ),
    ],
    kept: [
      twoBanks('battery: house', 'cable feed { from: house  to: controller }'),
      twoBanks('', 'cable feed { from: house  to: controller }'),
      twoBanks(
        'battery: aux',
        'cable feed { from: house  to: controller }  cable other { from: aux  to: controller }',
      ),
      twoBanks(
        'battery: aux',
        'cable feed { from: house  to: controller }',
        'cable link { from: aux  to: house }',
      ),
      twoBanks(
        'battery: aux',
        'cable feed { from: house  to: controller }',
        'protection switch { }\ncable a { from: aux  to: switch }\ncable b { from: switch  to: house }',
      ),
      // Drafts: a cable that is not finished may be the link.
      twoBanks('battery: aux', ''),
      twoBanks('battery: aux', 'cable phases { from: controller  to: m }'),
      twoBanks('battery: aux', 'protection fuse { }  cable feed { from: fuse  to: controller }'),
      twoBanks('battery: aux', 'cable feed { from: house  to: controller }', 'cable link { from: aux }'),
      twoBanks(
        'battery: aux',
        'cable feed { from: house  to: controller }',
        'cable link { from: aux  to: ? }',
      ),
      twoBanks('battery: aux', 'cable feed { from: ?  to: controller }'),
      twoBanks('battery: aux', 'cable feed { from: hous  to: controller }'),
      twoBanks('battery: none-such', 'cable feed { from: house  to: controller }'),
    ],
  },
  'bearing-on-shaft': {
    broken: [bearing('at: 100 m'), bearing('at: 2.66 m'), bearing('at: 8.8 ft')],
    kept: [bearing('at: 0.21 m'), bearing('at: 2.65 m'), bearing('at: 0 m'), bearing('at: 8 ft')],
  },
  'bearing-shorter-than-shaft': {
    broken: [bearing('length: 3 m')],
    kept: [bearing('length: 140 mm')],
  },
  'bearing-near-shaft-size': {
    broken: [bearing('bore: 39.6 mm'), bearing('bore: 3 in')],
    kept: [bearing('bore: 39.4 mm'), bearing('bore: 1.386 in')],
  },
  'log-larger-than-shaft': {
    broken: [log('bore: 5 mm'), log('bore: 35 mm'), log('bore: 1-1/4 in')],
    kept: [log('bore: 60 mm'), log('bore: 36 mm')],
  },
  'log-clear-of-shaft': {
    broken: [log('clearance: top 0 mm, bottom 0 mm'), log('clearance: top 0 in, bottom 0.5 in')],
    kept: [log('clearance: top 0.1 mm, bottom 24 mm')],
  },
  'seal-has-clamps': {
    broken: [drive('seal { clamps-each-end: 0 }')],
    kept: [drive('seal { clamps-each-end: 1 }'), drive('seal { clamps-each-end: 2 }')],
  },
  'shaft-slender': {
    broken: ['50 mm', '104 mm', '36 m', '4 in'].map((length) =>
      drive(`shaft { diameter: 35 mm  length: ${length} }`),
    ),
    kept: ['105 mm', '35 m', '8 ft'].map((length) => drive(`shaft { diameter: 35 mm  length: ${length} }`)),
  },
  'shaft-bears-torque': {
    // 95.5 N·m behind 2.5:1 is 239 N·m; at 200 MPa that takes 18.3 mm (torsion of a round bar).
    broken: ['5 mm', '18 mm', '0.7 in'].map((size) =>
      drive(`shaft { diameter: ${size} }`, motor, 'gear { ratio: 2.5 }'),
    ),
    kept: [
      ...['18.5 mm', '35 mm', '1-3/8 in'].map((size) =>
        drive(`shaft { diameter: ${size} }`, motor, 'gear { ratio: 2.5 }'),
      ),
      drive('shaft { diameter: 5 mm }', motor, 'gear { turns: same }'),
    ],
  },
  'propeller-larger-than-shaft': {
    broken: [drive(shaft, 'propeller { diameter: 104 mm }')],
    kept: [drive(shaft, 'propeller { diameter: 105 mm }'), drive(shaft, 'propeller { diameter: 16 in }')],
  },
  'propeller-pitch': {
    broken: ['100 mm', '1100 mm', '45 in'].map((pitch) =>
      drive(`propeller { diameter: 420 mm  pitch: ${pitch} }`),
    ),
    kept: ['126 mm', '300 mm', '1050 mm', '12 in'].map((pitch) =>
      drive(`propeller { diameter: 420 mm  pitch: ${pitch} }`),
    ),
  },
  'flange-near-shaft-size': {
    broken: ['3 m', '701 mm', '28 in'].map((size) => drive(shaft, `coupling { flange-diameter: ${size} }`)),
    kept: [
      ...['125 mm', '700 mm', '5 in'].map((size) => drive(shaft, `coupling { flange-diameter: ${size} }`)),
      drive('coupling { flange-diameter: 3 m }'),
    ],
  },
  'log-near-shaft-size': {
    broken: [log('bore: 360 mm'), log('bore: 14 in')],
    kept: [log('bore: 60 mm'), log('bore: 350 mm')],
  },
  'motor-loads-shaft': {
    // 95.5 N·m on 35 mm is 11.3 MPa (torsion of a round bar): 0.05 MPa is 66 W.
    broken: ['15 W', '60 W'].map((power) => drive(shaft, `motor m { power: ${power}  speed: 1500 rpm }`)),
    kept: [
      ...['70 W', '15 kW'].map((power) => drive(shaft, `motor m { power: ${power}  speed: 1500 rpm }`)),
      drive(shaft, 'motor a { power: 15 W  speed: 1500 rpm }', 'motor b { power: 15 kW  speed: 1500 rpm }'),
      drive(shaft, 'motor m { power: 15 W }'),
    ],
  },
  'propeller-tip-speed': {
    // π x 420 mm x 6821 rpm is 150 m/s.
    broken: ['6830 rpm', '15000 rpm'].map((speed) =>
      drive('propeller { diameter: 420 mm }', `motor m { speed: ${speed} }`),
    ),
    kept: [
      ...['1500 rpm', '6810 rpm'].map((speed) =>
        drive('propeller { diameter: 420 mm }', `motor m { speed: ${speed} }`),
      ),
      drive('propeller { diameter: 420 mm }', 'motor m { speed: 15000 rpm }', 'gear { ratio: 10 }'),
      drive('propeller { diameter: 420 mm }', 'motor m { speed: 15000 rpm }', 'gear { turns: same }'),
    ],
  },
  'coupling-bears-torque': {
    broken: ['200 N·m', '170 lbf·ft'].map((torque) =>
      drive(motor, 'gear { ratio: 2.5 }', `coupling { rated-torque: ${torque} }`),
    ),
    kept: ['400 N·m', '239 N·m', '177 lbf·ft'].map((torque) =>
      drive(motor, 'gear { ratio: 2.5 }', `coupling { rated-torque: ${torque} }`),
    ),
  },
  'coupling-bolt-torque': {
    broken: [
      '4 x M10 class 8.8, 45000 N·m',
      '4 x M10 class 8.8, 0.4 N·m',
      '4 x "3/8-16 UNC" class 5, 300 lbf·ft',
    ].map((bolts) => drive(`coupling { bolts: ${bolts} }`)),
    kept: [
      '4 x M10 class 8.8, 45 N·m',
      '4 x M10 class 12.9, 85 N·m',
      '4 x "3/8-16 UNC" class 5, 30 lbf·ft',
      '4 x M10',
    ].map((bolts) => drive(`coupling { bolts: ${bolts} }`)),
  },
  'coupling-bolts-fit': {
    // 8 bolts of 48 mm: 48 + 8 x 48 / π is 170.2 mm.
    broken: ['8 x "M48x5"', '1 x "M80x6"', '40 x M10'].map((bolts) =>
      drive(`coupling { flange-diameter: ${bolts.startsWith('8') ? '170' : '125'} mm  bolts: ${bolts} }`),
    ),
    kept: [
      ...['4 x M10 class 8.8, 45 N·m', '8 x "M48x5"', '8 x "1/2-13 UNC"'].map((bolts) =>
        drive(`coupling { flange-diameter: 171 mm  bolts: ${bolts} }`),
      ),
      drive('coupling { bolts: 40 x M24 }'),
    ],
  },
  'bed-torque': {
    broken: ['1000 N·m', '1 N·m'].map((torque) =>
      drive(`bed { adjuster: stud-and-nuts  thread: M16  torque: ${torque} }`),
    ),
    kept: ['90 N·m', '120 N·m'].map((torque) =>
      drive(`bed { adjuster: stud-and-nuts  thread: M16  torque: ${torque} }`),
    ),
  },
  'controller-gives-motor-current': {
    // 15000 / (√3 · 58 · 0.9 · 0.92) = 180.3 A; nine tenths are 162.3 A.
    broken: ['0.1 A', '160 A'].map((current) => drive(motor, `controller { current: ${current} }`)),
    kept: [
      ...['163 A', '220 A'].map((current) => drive(motor, `controller { current: ${current} }`)),
      drive(motor, 'controller a { current: 90 A }', 'controller b { current: 90 A }'),
    ],
  },
  'motor-voltage': {
    broken: [
      battery('nominal: 96 V  window: 84..108 V') + drive('motor m { voltage: 400 V }'),
      battery('nominal: 96 V') + drive('motor m { voltage: 121 V }'),
    ],
    kept: [
      battery('nominal: 96 V  window: 84..108 V') + drive('motor m { voltage: 76 V }'),
      drive('motor m { voltage: 400 V }'),
    ],
  },
  'motor-mass': {
    broken: ['0.5 kg', '4000 kg', '1 lb'].map((mass) => drive(`motor m { power: 15 kW  mass: ${mass} }`)),
    kept: ['62 kg', '0.75 kg', '3000 kg', '137 lb'].map((mass) =>
      drive(`motor m { power: 15 kW  mass: ${mass} }`),
    ),
  },
  'motor.efficiency': {
    broken: ['100 %', '99.6 %', '9.2 %', '1'].map((share) => drive(`motor m { efficiency: ${share} }`)),
    kept: ['92 %', '99.5 %', '20 %', '0.85'].map((share) => drive(`motor m { efficiency: ${share} }`)),
  },
  'motor.power-factor': {
    broken: ['0.09', '1.9 %'].map((share) => drive(`motor m { power-factor: ${share} }`)),
    kept: ['0.9', '1', '0.2'].map((share) => drive(`motor m { power-factor: ${share} }`)),
  },
  'controller.efficiency': {
    broken: ['100 %', '9.6 %'].map((share) => drive(`controller { efficiency: ${share} }`)),
    kept: ['96 %', '99.8 %', '50 %'].map((share) => drive(`controller { efficiency: ${share} }`)),
  },
  'gear.efficiency': {
    broken: ['100 %', '9.7 %'].map((share) => drive(`gear { efficiency: ${share} }`)),
    kept: ['97 %', '99.9 %', '30 %'].map((share) => drive(`gear { efficiency: ${share} }`)),
  },
  'battery-lasts': {
    // 96 V x 210 Ah is 20.16 kWh: 20.16 W for 1000 hours, 1.21 MW for a minute.
    broken: ['20 W', '1.3 MW'].map(
      (power) => battery('nominal: 96 V  capacity: 210 Ah') + drive(`motor m { power: ${power} }`),
    ),
    kept: [
      ...['21 W', '15 kW', '1.2 MW'].map(
        (power) => battery('nominal: 96 V  capacity: 210 Ah') + drive(`motor m { power: ${power} }`),
      ),
      battery('nominal: 96 V') + drive('motor m { power: 20 W }'),
    ],
  },
  'cable-insulation': {
    broken: ['250 degC', '201 degC', '480 degF'].map((rating) => drive(`cable k { insulation: ${rating} }`)),
    kept: ['60 degC', '105 degC', '200 degC', '221 degF'].map((rating) =>
      drive(`cable k { insulation: ${rating} }`),
    ),
  },
  'cable-bundle': {
    broken: [
      drive('cable k { parallel: 6  bundled: 2 }'),
      drive('cable k { parallel: 2  bundled: 3 }'),
      drive(motor, 'controller { }', 'cable k { from: controller  to: m  parallel: 2  bundled: 5 }'),
    ],
    kept: [
      drive('cable k { parallel: 6  bundled: 12 }'),
      drive('cable k { parallel: 1  bundled: 1 }'),
      drive('cable k { parallel: 6 }'),
      drive(motor, 'controller { }', 'cable k { from: controller  to: m  parallel: 2  bundled: 6 }'),
    ],
  },
  'cable-drop': {
    broken: ['max 100 %', 'max 21 %', 'max 0.3'].map((share) => drive(`cable k { drop: ${share} }`)),
    kept: ['max 3 %', 'max 20 %', 'max 0.1'].map((share) => drive(`cable k { drop: ${share} }`)),
  },
  'fuse-interrupts-rating': {
    broken: ['200 A', '1 A'].map((amps) => drive(`protection f { rating: 250 A  interrupts: ${amps} }`)),
    kept: [
      ...['250 A', '20 kA'].map((amps) => drive(`protection f { rating: 250 A  interrupts: ${amps} }`)),
      drive('protection f { interrupts: 1 A }'),
    ],
  },
  'battery-fault': {
    // 2 and 500 A for each of 210 Ah: 420 A and 105 kA.
    broken: ['300 A', '110 kA'].map((amps) =>
      battery(`nominal: 96 V  capacity: 210 Ah  short-circuit-current: ${amps}`),
    ),
    kept: ['420 A', '8 kA', '105 kA'].map((amps) =>
      battery(`nominal: 96 V  capacity: 210 Ah  short-circuit-current: ${amps}`),
    ),
  },
  ...Object.fromEntries(
    ['shaft-droop', 'afloat-up', 'afloat-to-starboard', 'maker-up', 'maker-to-starboard'].map((fact) => [
      `target.${fact}`,
      {
        broken: ['50 mm', '-5.1 mm', '1 in'].map(target(fact)),
        kept: ['5 mm', '-0.05 mm', '0.1 in', '0 mm'].map(target(fact)),
      },
    ]),
  ),
  ...Object.fromEntries(
    [
      'shaft-slope',
      'afloat-slope-up',
      'afloat-slope-to-starboard',
      'maker-slope-up',
      'maker-slope-to-starboard',
    ].map((fact) => [
      `target.${fact}`,
      {
        broken: ['21 mrad', '-2 deg'].map(target(fact)),
        kept: ['20 mrad', '-0.3 mrad', '1 deg'].map(target(fact)),
      },
    ]),
  ),
  'foot.growth': {
    broken: ['50 mm', '-4 mm'].map((growth) => drive(`bed { foot a { growth: ${growth} } }`)),
    kept: ['0.1 mm', '-3 mm', '0.004 in'].map((growth) => drive(`bed { foot a { growth: ${growth} } }`)),
  },
}
