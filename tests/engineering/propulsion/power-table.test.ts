// Hull, propellers and motors in balance: laws that any boat keeps.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { continuousTorque } from '../../../server/src/engineering/propulsion/motor-limit.ts'
import {
  type DriveInput,
  type PowerInput,
  powerTable,
} from '../../../server/src/engineering/propulsion/power-table.ts'
import { waterOf } from '../../../server/src/engineering/propulsion/water.ts'

const rpm = (2 * Math.PI) / 60
const knot = 1852 / 3600

const motor = { ratedTorque: 15e3 / (1500 * rpm), ratedSpeed: 1500 * rpm, maxSpeed: 2000 * rpm, share: 1 }
const drive: DriveInput = {
  diameter: 0.56,
  pitch: 0.45,
  blades: 3,
  areaRatio: 0.55,
  wake: 0.15,
  thrustDeduction: 0.12,
  ratio: 2.5,
  efficiency: 0.95,
  motor,
}
/** Every number in a result, however deep. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value]
  return value instanceof Object ? Object.values(value).flatMap(numbersIn) : []
}
const points = [2, 3, 4, 5, 6, 7, 8].map((knots) => ({ at: knots * knot, value: 5 * knots ** 3 }))
const boat: PowerInput = {
  water: waterOf('sea', 15),
  hull: { by: 'points', points },
  margin: 0.1,
  drives: [drive],
  speeds: [5 * knot],
}

describe('the power table', () => {
  it('is in balance: thrust with resistance, torque with torque, power with power', () => {
    const { rows, asked, top, bollard } = powerTable(boat)
    expect(rows.length).toBeGreaterThan(3)
    for (const row of [...rows, ...asked]) {
      const [state] = row?.drives ?? []
      if (!row || !state) throw new Error('no row')
      expect(state.thrust * (1 - drive.thrustDeduction)).toBeCloseTo(row.resistance, 4)
      expect(state.motorPower * drive.efficiency).toBeCloseTo(state.power, 6)
      expect(state.motorSpeed).toBeCloseTo(state.speed * drive.ratio, 9)
      // What moves the hull is less than what turns the propeller.
      expect(row.resistance * row.boatSpeed).toBeLessThan(state.power)
      expect(row.boatSpeed).toBeLessThanOrEqual((top?.boatSpeed ?? 0) * (1 + 1e-9))
    }
    const [still] = bollard
    expect(still?.limitedBy).toBe('torque')
    expect(still?.motorTorque).toBeCloseTo(motor.ratedTorque, 6)
    const [fast] = top?.drives ?? []
    expect(fast && fast.motorTorque / continuousTorque(motor, fast.motorSpeed)).toBeLessThan(1 + 1e-6)
  })

  it('has the balance of an independent sum', () => {
    // By hand with KT, KQ of the printed polynomial at 5 kn: R 1.1 * 625 = 687.5 N, T 781.25 N, Va 2.1864 m/s.
    const [row] = powerTable(boat).asked
    const [state] = row?.drives ?? []
    if (!state) throw new Error('no row')
    const n = state.speed / (2 * Math.PI)
    expect(state.advance).toBeCloseTo((5 * knot * 0.85) / (n * 0.56), 9)
    expect(state.thrust).toBeCloseTo(781.25, 3)
    expect(state.efficiency).toBeCloseTo((781.25 * 5 * knot * 0.85) / state.power, 6)
  })

  it('has its rows up to the last step below the top speed', () => {
    const { rows, top } = powerTable(boat)
    const knots = rows.map(({ boatSpeed }) => boatSpeed / knot)
    const step = (knots[1] ?? 0) - (knots[0] ?? 0)
    expect(step).toBeCloseTo(0.5, 9)
    expect(knots[0]).toBeCloseTo(2, 9)
    expect((top?.boatSpeed ?? 0) / knot - (knots.at(-1) ?? 0)).toBeLessThan(step)
  })

  it('has wider steps the faster the boat, so that there are at most some twenty rows', () => {
    const steps = [8, 15, 35, 80, 95].map((high) => {
      const flat = [0, high].map((knots) => ({ at: knots * knot, value: 1 + knots }))
      const { motor: _, ...bare } = { ...drive, diameter: 0.4, pitch: 0.5 }
      const { rows } = powerTable({
        ...boat,
        hull: { by: 'points', points: flat },
        drives: [bare],
        speeds: [],
      })
      expect(rows.length).toBeLessThanOrEqual(20)
      return ((rows[1]?.boatSpeed ?? 0) - (rows[0]?.boatSpeed ?? 0)) / knot
    })
    expect(steps).toEqual([0.5, 1, 2, 5, 5].map((step) => expect.closeTo(step, 9)))
  })

  it('shares the resistance among twins', () => {
    const one = powerTable(boat)
    const twin = powerTable({ ...boat, drives: [drive, drive] })
    const [alone, shared] = [one, twin].map(({ asked }) => asked[0]?.drives[0])
    expect(shared && alone && shared.thrust * 2).toBeCloseTo(alone?.thrust ?? 0, 3)
    expect(twin.top?.boatSpeed ?? 0).toBeGreaterThan(one.top?.boatSpeed ?? 0)
  })

  it('says where its points end', () => {
    const { top } = powerTable({ ...boat, hull: { by: 'points', points: points.slice(0, 3) } })
    expect(top).toMatchObject({ bound: 'at-least', boatSpeed: 4 * knot })
    const heavy = points.map(({ at, value }) => ({ at, value: 1e4 * value }))
    const slow = powerTable({ ...boat, hull: { by: 'points', points: heavy } })
    expect(slow.top).toMatchObject({ bound: 'less-than', boatSpeed: 2 * knot })
    expect(slow.rows).toEqual([])
    expect(powerTable({ ...boat, speeds: [9 * knot, 1 * knot] }).asked).toEqual([undefined, undefined])
  })

  it('knows no top speed without a motor, and no row without a hull', () => {
    const { motor: _, ...bare } = drive
    expect(powerTable({ ...boat, drives: [bare] })).toMatchObject({ bollard: [undefined] })
    expect(powerTable({ ...boat, drives: [bare] }).top).toBeUndefined()
    const { hull: __, ...afloat } = boat
    expect(powerTable(afloat)).toMatchObject({ rows: [], asked: [undefined] })
  })

  it('a propeller too small for its motor turns at its highest speed, one too large is held by its torque', () => {
    const small = powerTable({ ...boat, drives: [{ ...drive, diameter: 0.3, pitch: 0.2 }] })
    expect(small.top?.drives[0]?.limitedBy).toBe('speed')
    expect(small.top?.limitedBy).toBe('speed')
    const large = powerTable({ ...boat, drives: [{ ...drive, diameter: 0.6, pitch: 0.6 }] })
    expect(large.top?.drives[0]?.limitedBy).toBe('torque')
    expect(large.top?.drives[0]?.motorSpeed ?? 0).toBeLessThan(motor.ratedSpeed)
  })

  it('is held by the drive that has no more to give, whichever it is', () => {
    const weak = { ...drive, diameter: 0.3, pitch: 0.2 }
    for (const drives of [
      [drive, weak],
      [weak, drive],
    ])
      expect(powerTable({ ...boat, drives }).top?.limitedBy).toBe('speed')
    expect(powerTable(boat).top?.limitedBy).toBe('torque')
  })

  it('is held by the end of a curve where the motor might turn faster, and not where that is its highest speed', () => {
    const heldBy = (maxSpeed: number) => {
      const curve = [
        { at: 0, value: 95 },
        { at: 1000 * rpm, value: 95 },
      ]
      return powerTable({ ...boat, drives: [{ ...drive, motor: { ...motor, maxSpeed, curve } }] })
    }
    expect(heldBy(2000 * rpm).top?.limitedBy).toBe('curve')
    expect(heldBy(2000 * rpm).bollard[0]?.limitedBy).toBe('curve')
    expect(heldBy(1000 * rpm).top?.limitedBy).toBe('speed')
  })

  const boats = fc.record({
    diameter: fc.double({ min: 0.2, max: 1, noNaN: true }),
    pitchRatio: fc.double({ min: 0.5, max: 1.4, noNaN: true }),
    blades: fc.integer({ min: 2, max: 7 }),
    areaRatio: fc.double({ min: 0.3, max: 1.05, noNaN: true }),
    ratio: fc.double({ min: 0.5, max: 5, noNaN: true }),
    torque: fc.double({ min: 1, max: 1000, noNaN: true }),
    margin: fc.double({ min: 0, max: 0.5, noNaN: true }),
    count: fc.integer({ min: 1, max: 3 }),
  })
  const made = ({
    diameter,
    pitchRatio,
    blades,
    areaRatio,
    ratio,
    torque,
    margin,
    count,
  }: {
    diameter: number
    pitchRatio: number
    blades: number
    areaRatio: number
    ratio: number
    torque: number
    margin: number
    count: number
  }): PowerInput => ({
    ...boat,
    margin,
    drives: Array.from({ length: count }, () => ({
      ...drive,
      diameter,
      pitch: diameter * pitchRatio,
      blades,
      areaRatio,
      ratio,
      motor: { ...motor, ratedTorque: torque },
    })),
  })

  it('is finite, rises with the speed, and a stronger motor is never slower', () => {
    fc.assert(
      fc.property(boats, (random) => {
        const input = made(random)
        const table = powerTable(input)
        expect(numbersIn(table).every(Number.isFinite)).toBe(true)
        const powers = table.rows.map(({ drives }) => drives[0]?.power ?? 0)
        expect(powers).toEqual(powers.toSorted((a, b) => a - b))
        const stronger = powerTable(made({ ...random, torque: random.torque * 1.2 }))
        expect(stronger.top?.boatSpeed ?? 0).toBeGreaterThanOrEqual((table.top?.boatSpeed ?? 0) * (1 - 1e-6))
        const rougher = powerTable(made({ ...random, margin: random.margin + 0.1 }))
        expect(rougher.top?.boatSpeed ?? 0).toBeLessThanOrEqual((table.top?.boatSpeed ?? 0) * (1 + 1e-6))
      }),
      { numRuns: 60 },
    )
  })
})
