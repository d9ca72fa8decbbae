import type { UnitSystem } from '../../quantity/kinds.ts'
import { formatText } from '../../syntax/format.ts'
import type { NewJobParams } from '../client-requests.ts'

/** The units that the places of a skeleton have behind them. */
const unitsOf = {
  metric: { size: 'mm', length: 'm', section: 'mm2', power: 'kW', torque: 'N·m' },
  inch: { size: 'in', length: 'ft', section: 'AWG', power: 'hp', torque: 'lbf·ft' },
} as const satisfies Record<UnitSystem, unknown>

type Units = (typeof unitsOf)[UnitSystem]

const footNames = ['aft-port', 'aft-stbd', 'fwd-port', 'fwd-stbd'] as const

const text = (words: string): string => `"${words.replaceAll(/\s+/g, ' ').replaceAll(/["\\]/g, '\\$&')}"`

const places = (unit: string): string =>
  ['top', 'starboard', 'bottom', 'port'].map((place) => `${place} ? ${unit}`).join(', ')

const feet = ({ size }: Units): string =>
  footNames
    .map((name) => {
      const side = name.endsWith('port') ? 'port' : 'starboard'
      return `foot ${name} { from-coupling: ? ${size}  across: ? ${size} ${side} }`
    })
    .join('\n')

const adjusters = { studs: 'adjuster: stud-and-nuts\nthread: ?', shims: 'adjuster: shims\nshims: ?' } as const

const reading = ({ size }: Units): string => `
reading first {
  taken: ?
  afloat: ?
  gauge: ? ${size}
  gaps: ${places(size)}
  offsets: ${places(size)}
}`

const phaseMap = 'phase-map { ? to ?, ? to ?, ? to ? }'

const cable = (name: string, from: string, to: string, { length, section }: Units): string => `
cable ${name} {
  from: ${from}
  to: ${to}
  conductor: ? ${section}
  length: ? ${length}
  insulation: ? degC
  place: ?
  bundled: ?
  voltage: ? V
}`

const drive = (name: string, units: Units, adjuster: NewJobParams['feet']): string => `
drive ${name} {
${name === 'port' ? `across: ? ${units.length} port\n` : ''}propeller {
  diameter: ? ${units.size}
  pitch: ? ${units.size}
  blades: ?
  turns: ?
}

shaft {
  diameter: ? ${units.size}
  length: ? ${units.length}
  material: ?
}

bearing stern {
  at: ? ${units.length}
  kind: ?
  length: ? ${units.size}
  bore: ? ${units.size}
}

shaft-log { bore: ? ${units.size} }

seal {
  shaft-size: ? ${units.size}
  compression: ?..? ${units.size}
  free-length: ? ${units.size}
  fitted-length: ? ${units.size}
}

coupling {
  kind: ?
  flange-diameter: ? ${units.size}
  gauge-diameter: ? ${units.size}
  gap-variation: max ? ${units.size}
  offset: max ? ${units.size}
  rated-torque: ? ${units.torque}
}

gear {
  ratio: ?
  turns: ?
}

motor {
  power: ? ${units.power}
  speed: ? rpm
  voltage: ? V
  power-factor: ?
  efficiency: ? %
  terminals: ?
  turns: ?
  thermal-class: ?
}

controller {
  input: ?..? V
  terminals: ?
  capacitance: ? mF
  current: ? A
  sensor-input: ?
  efficiency: ? %
}

bed {
  ${adjusters[adjuster]}
  ${feet(units)}
}
${cable('feed', 'house', 'controller', units)}

protection main-fuse {
  kind: ?
  rating: ? A
  in: feed
  at: ? ${units.size}
  interrupts: ? kA
  voltage: ? V
}

isolator main-switch {
  current: ? A
  voltage: ? V
  in: feed
  at: ? ${units.size}
  poles: ?
}
${cable('phases', 'controller', 'motor', units)}

${phaseMap}
${reading(units)}
}
`

/** The other of two drives: what differs, or is measured for each. The rest is that of the first. */
const otherDrive = (name: string, first: string, units: Units): string => `
drive ${name} {
like: ${first}
across: ? ${units.length} ${name}

propeller { turns: ? }

seal {
  free-length: ? ${units.size}
  fitted-length: ? ${units.size}
}

${phaseMap}
${reading(units)}
}
`

/** A job with all that is needed to check it, each value a `?` to fill in. No figure is made up, and nothing chosen that could be otherwise. */
export function newJobText({ vessel, drives, units: system, feet: adjuster }: NewJobParams): string {
  const units = unitsOf[system]
  const twin = drives === 2
  return formatText(`job ${text(`${vessel}: ${twin ? 'twin electric drives' : 'electric drive'}`)} {
  vessel: ${text(vessel)}
  revision: ?
  status: draft
  rules: ?
  dc-negative: ?
  show-in: ${system}${twin ? '\n  screws: ?' : ''}
}

battery house {
  nominal: ? V
  window: ?..? V
  capacity: ? Ah
  internal-resistance: ? mohm
}
${drive(twin ? 'port' : 'main', units, adjuster)}${twin ? otherDrive('starboard', 'port', units) : ''}`)
}
