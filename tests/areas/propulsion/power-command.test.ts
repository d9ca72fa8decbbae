// `power` of jobs that are odd: a table or a plain sentence, the same in each format, and every figure finite.
import { describe, expect, it } from 'vitest'
import { CannotRun } from '../../../server/src/areas/common/command.ts'
import { power } from '../../../server/src/areas/propulsion/commands/power.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'
import { type BoatText, boat } from './boat.ts'

function powerOf(text: string) {
  const analysis = new Analysis()
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const head = {
    tool: { name: 'shaftwright', version: '0.0.0' },
    file: 'a.wright',
    job: null,
    date: '2026-03-10',
  } as const
  return power.run({ file, analysis, findings: [], head }, {})
}

/** The output in its three formats, each held against the schema and against the others. */
function checked(text: string) {
  const { text: words, json, csv = [], exitCode } = powerOf(text)
  // The schema takes no number that is not finite.
  expect(power.schema.parse(JSON.parse(JSON.stringify(json)))).toEqual(json)
  expect(words).not.toMatch(/NaN|Infinity|undefined|null|\[object/)
  expect(csv.flat().every((cell) => typeof cell === 'string' || Number.isFinite(cell))).toBe(true)
  expect(exitCode).toBe(json.fault === null ? 0 : 1)
  if (json.fault !== null) expect(words).toContain(`No power table: ${json.fault}`)
  expect(csv.length - 1).toBe(json.rows.reduce((sum, { drives }) => sum + drives.length, 0))
  for (const line of csv.slice(1)) expect(line).toHaveLength(csv[0]?.length ?? 0)
  return { words, json }
}

const lines = (text: string) => `hull { ${text} }\n`

describe('power', () => {
  it.each<readonly [string, BoatText, string | null]>([
    ['no propeller', { propeller: '' }, 'The propeller of main is not described.'],
    ['no hull', { hull: '' }, 'The hull is not described: there is no `hull`.'],
    [
      'a hull of which nothing is known',
      { hull: 'wake-fraction: 5 %' },
      'The resistance of the hull is not stated, nor its displacement and waterline-length.',
    ],
    ['a speed of 0 kn', { service: 'point stop { boat-speed: 0 kn  time: 1 h }' }, null],
    ['points from 0 kn', { hull: 'calm-water-resistance: 0 kn 0 N, 5 kn 600 N, 8 kn 5 kN' }, null],
    ['no resistance at all', { hull: 'calm-water-resistance: 0 kn 0 N, 5 kn 0 N, 8 kn 0 N' }, null],
    [
      'a hull that nothing moves',
      { hull: 'calm-water-resistance: 4 kn 1e8 N, 8 kn 1e8 N  thrust-deduction: 12 %' },
      'Thrust (N) must be a number from 0 to 100000000, not 125000000.',
    ],
    ['a motor of no highest speed', { motor: 'power: 15 kW  speed: 1500 rpm' }, null],
    ['a motor of 1e9 kW', { motor: 'power: 1000000000 kW  speed: 1500 rpm' }, null],
    ['a motor of 1 W', { motor: 'power: 1 W  speed: 1500 rpm' }, null],
    [
      'a torque curve of 0',
      { motor: 'power: 15 kW  speed: 1500 rpm  torque-curve: 0 rpm 0 N·m, 1500 rpm 0 N·m' },
      null,
    ],
    ['a gear of 1000', { gear: 'ratio: 1000' }, 'Ratio of the gear cannot be used as written.'],
    ['a gear of 100', { gear: 'ratio: 100' }, null],
    ['no gear', { gear: '' }, null],
    ['a propeller of 10 m', { propeller: 'diameter: 10 m  pitch: 8 m  blades: 3' }, null],
    ['a propeller of 50 mm', { propeller: 'diameter: 50 mm  pitch: 40 mm  blades: 3' }, null],
    [
      'a propeller of too much pitch',
      { propeller: 'diameter: 460 mm  pitch: 1400 mm  blades: 3' },
      'Pitch ratio must be a number from 0.5 to 1.4, not 3.04348.',
    ],
    [
      'a propeller that is not known yet',
      { propeller: 'diameter: ?  pitch: 340 mm  blades: 3' },
      'The diameter of the propeller is not known yet.',
    ],
    [
      'inches',
      { propeller: 'diameter: 18 in  pitch: 13 in  blades: 3', motor: 'power: 20 hp  speed: 1500 rpm' },
      null,
    ],
    [
      'two drives',
      {
        more: 'drive other { propeller { diameter: 460 mm  pitch: 340 mm  blades: 3 }  motor m { power: 2 kW  speed: 1500 rpm } }',
      },
      null,
    ],
    [
      'two drives, one of them too weak',
      {
        more: 'drive other { propeller { diameter: 60 mm  pitch: 40 mm  blades: 3 }  motor m { power: 20 W  speed: 1500 rpm } }',
      },
      null,
    ],
    [
      'an end of each range',
      {
        service:
          'reserve: 95 %  sea-margin: 200 %  water-temperature: 40 degC  point cruise { boat-speed: 5 kn  time: 1 h }',
      },
      null,
    ],
  ])('of a job with %s', (_, parts, fault) => {
    expect(checked(boat(parts)).json.fault).toBe(fault)
  })

  it.each<readonly [string, BoatText, string]>([
    ['no battery', { battery: '' }, 'Which battery feeds main is not clear.'],
    [
      'a battery of another voltage than the controller',
      { battery: 'nominal: 24 V  capacity: 210 Ah' },
      'The battery of main does not fit its controller: how it is fed is not clear.',
    ],
    [
      'a load of which nothing is known',
      { more: 'load light { voltage: 96 V }\ncable to-light { from: house  to: light }' },
      'What light draws is not stated.',
    ],
  ])('with %s has its table, without endurance', (_, parts, fault) => {
    const { json, words } = checked(boat(parts))
    expect(json.energyFault).toBe(fault)
    expect(words).toContain(`Endurance and range: ${fault}`)
    expect(json.rows.length).toBeGreaterThan(3)
    for (const row of json.rows)
      expect(row).toMatchObject({ batteryPower_kW: null, cRate: null, endurance_h: null, range_nmi: null })
  })

  it('of a motor that is not known has the table, without top speed and limits', () => {
    const { json, words } = checked(boat({ motor: '' }))
    expect(words).toContain('The motor of main is not stated.')
    expect(json.topSpeed).toBeNull()
    expect(json.bollard).toEqual([{ drive: 'main', fault: 'The motor of main is not stated.' }])
    for (const { drives } of json.rows)
      expect(drives[0]).toMatchObject({ motorTorqueLimit_Nm: null, torqueLimit_Nm: null })
    expect(json.rows.length).toBeGreaterThan(3)
  })

  it('has the limit of the controller beside that of the motor', () => {
    const motor =
      'power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  efficiency: 90 %  power-factor: 90 %  voltage: 60 V'
    const { json } = checked(boat({ motor, controller: 'input: 72..120 V  current: 89.1 A' }))
    // 15 kW / (√3 · 60 V · 0.9 · 0.9) = 178.2 A (definition of power factor and efficiency): half of the current, half of the torque.
    const [drive] = json.rows[0]?.drives ?? []
    expect((drive?.torqueLimit_Nm ?? 0) / (drive?.motorTorqueLimit_Nm ?? 0)).toBeCloseTo(0.5, 3)
  })

  it('says by what the controller holds the motor, and takes neither of two controllers', () => {
    const motor =
      'power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  efficiency: 90 %  power-factor: 90 %  voltage: 60 V'
    const controller = 'input: 72..120 V  current: 89.1 A'
    const held = (more: string) => {
      const { json } = checked(boat({ motor, controller: `${controller}${more}` }))
      return json.assumptions.filter((words) => words.includes('its torque goes with the current'))
    }
    expect(held('')).toEqual([
      'the controller gives 89.1 A of 178 A that the motor needs for its rated torque: its torque goes with the current',
    ])
    expect(held(' } controller second { current: 10 A')).toEqual([])
  })

  it('names the points of the service', () => {
    const { json } = checked(boat())
    expect(json.rows.flatMap(({ point }) => point ?? [])).toEqual(['cruise'])
  })

  it('cannot run without a hull and a drive', () => {
    expect(() => powerOf('motor m { power: 5 kW }\n')).toThrow(CannotRun)
    expect(checked(lines('displacement: 5 t  waterline-length: 9 m')).json.fault).toBe(
      'The file has no drive.',
    )
  })
})
