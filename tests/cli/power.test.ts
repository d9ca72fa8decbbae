// `power`: text, JSON and CSV have the same table, and its figures obey the definitions.

import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { folder, put, shaftwright } from './run-cli.ts'

const demo = 'docs/examples/survey-launch-as-built.wright'
const row = z.object({
  boatSpeed_kn: z.number(),
  point: z.string().nullable(),
  resistance_N: z.number(),
  drives: z.array(
    z.object({
      thrust_N: z.number(),
      motorPower_kW: z.number(),
      motorTorque_Nm: z.number(),
      motorSpeed_rpm: z.number(),
    }),
  ),
  batteryPower_kW: z.number(),
  endurance_h: z.number(),
  range_nmi: z.number(),
})
const json = (args: readonly string[] = []) => {
  const run = shaftwright(['power', demo, '--format', 'json', ...args])
  expect(run.code).toBe(0)
  return z
    .object({ rows: z.array(row), topSpeed: z.object({ value_kn: z.number() }) })
    .parse(JSON.parse(run.out))
}

describe('power', () => {
  it('is speed by speed, the points of the service among them', () => {
    const { rows, topSpeed } = json()
    expect(rows.length).toBeGreaterThan(3)
    expect(rows.map((one) => one.boatSpeed_kn)).toEqual(
      rows.map((one) => one.boatSpeed_kn).toSorted((a, b) => a - b),
    )
    expect(rows.flatMap(({ point }) => point ?? [])).toEqual(['cruise'])
    expect(topSpeed.value_kn).toBeGreaterThan(5)
  })

  it('has power = torque × speed, a battery that gives more than the motor, and range = speed × time', () => {
    for (const { drives, batteryPower_kW, boatSpeed_kn, endurance_h, range_nmi } of json().rows) {
      const [motor] = drives
      const shaft = ((motor?.motorTorque_Nm ?? 0) * (motor?.motorSpeed_rpm ?? 0) * Math.PI) / 30_000
      expect(motor?.motorPower_kW).toBeCloseTo(shaft, 3)
      expect(batteryPower_kW).toBeGreaterThan(motor?.motorPower_kW ?? 0)
      expect(range_nmi / (boatSpeed_kn * endurance_h)).toBeCloseTo(1, 3)
    }
  })

  it('has a line of CSV for each speed and drive, with the figures of the JSON', () => {
    const { out, code } = shaftwright(['power', demo, '--format', 'csv'])
    expect(code).toBe(0)
    const [heads = '', ...lines] = out.trim().split(/\r?\n/)
    const { rows } = json()
    expect(lines).toHaveLength(rows.length)
    const column = heads.split(',').indexOf('motorPower_kW')
    expect(lines.map((line) => Number(line.split(',')[column]))).toEqual(
      rows.map(({ drives }) => drives[0]?.motorPower_kW),
    )
  })

  it('shows the table and what it assumes as text', () => {
    const { out, code } = shaftwright(['power', demo])
    expect(code).toBe(0)
    expect(out).toContain('kn')
    expect(out).toContain('Assumed:')
  })

  it('without a propeller says what is missing, and ends with 1', () => {
    const file = put(
      'power/open.wright',
      'job "x" { vessel: "y" }\nhull { displacement: 5 t }\ndrive main { }\n',
    )
    const { out, code } = shaftwright(['power', file], folder)
    expect(code).toBe(1)
    expect(out).toContain('No power table: ')
  })
})
