// `power`: text, JSON and CSV have the same table, and its figures obey the definitions.

import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { boat } from '../areas/propulsion/boat.ts'
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
      propellerSpeed_rpm: z.number(),
      propellerTorque_Nm: z.number(),
      deliveredPower_kW: z.number(),
      efficiency: z.number(),
      slip: z.number(),
      advanceRatio: z.number(),
      motorTorqueLimit_Nm: z.number(),
      torqueLimit_Nm: z.number(),
      bladeAreaNeeded: z.number(),
    }),
  ),
  effectivePower_kW: z.number(),
  batteryPower_kW: z.number(),
  cRate: z.number(),
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

  // Definitions: PE = R V, PD = 2π n Q, and η0 = T Va / PD with Va = 0.85 V here. The bank is 96 V · 210 Ah, the gear 2.5 with 96 %, the shaft 98 %.
  it('has the powers, the C-rate and the limits that follow from the job', () => {
    const { rows } = json()
    for (const { drives, boatSpeed_kn, resistance_N, effectivePower_kW, batteryPower_kW, cRate } of rows) {
      const speed = (boatSpeed_kn * 1852) / 3600
      const [drive] = drives
      if (!drive) throw new Error('no drive')
      const turns = drive.propellerSpeed_rpm / 60
      expect(effectivePower_kW / ((resistance_N * speed) / 1e3)).toBeCloseTo(1, 4)
      const turning = 2 * Math.PI * turns * drive.propellerTorque_Nm
      expect(drive.deliveredPower_kW / (turning / 1e3)).toBeCloseTo(1, 4)
      expect(drive.motorPower_kW * 0.96 * 0.98).toBeCloseTo(drive.deliveredPower_kW, 3)
      expect((drive.thrust_N * 0.85 * speed) / turning).toBeCloseTo(drive.efficiency, 4)
      expect((0.85 * speed) / (turns * 0.42)).toBeCloseTo(drive.advanceRatio, 4)
      expect(1 - speed / (turns * 0.3)).toBeCloseTo(drive.slip, 4)
      expect(cRate).toBeCloseTo((batteryPower_kW * 1e3) / (96 * 210), 4)
      // 15 kW at 1500 rpm: 95.5 N·m up to there, that power above. No table goes beyond.
      expect(drive.motorTorqueLimit_Nm).toBeCloseTo(
        (15e6 / Math.max(1500, drive.motorSpeed_rpm)) * (0.03 / Math.PI),
        2,
      )
      expect(drive.torqueLimit_Nm).toBeLessThanOrEqual(drive.motorTorqueLimit_Nm)
      expect(drive.motorTorque_Nm).toBeLessThan(drive.torqueLimit_Nm)
      // 55 % are there.
      expect(drive.bladeAreaNeeded).toBeLessThan(0.55)
      expect(drive.bladeAreaNeeded).toBeGreaterThan(0.2)
    }
  })

  it('does not know the torque beyond a curve, nor the blade area without a depth', () => {
    const file = put(
      'power/unknown.wright',
      boat({
        propeller: 'diameter: 460 mm  pitch: 340 mm  blades: 3  blade-area-ratio: 55 %',
        motor:
          'power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  torque-curve: 1000 rpm 95 N·m, 1600 rpm 90 N·m',
        service:
          'reserve: 20 %  point cruise { boat-speed: 5.5 kn  time: 1 h } point wild { boat-speed: 8 kn  time: 1 h }',
      }),
    )
    const limits = z.object({
      rows: z.array(
        z.object({
          drives: z.array(
            z.object({
              motorSpeed_rpm: z.number(),
              motorTorqueLimit_Nm: z.number().nullable(),
              bladeAreaNeeded: z.null(),
            }),
          ),
        }),
      ),
    })
    const { rows } = limits.parse(JSON.parse(shaftwright(['power', file, '--format', 'json'], folder).out))
    const said = rows.flatMap(({ drives }) => drives)
    for (const { motorSpeed_rpm, motorTorqueLimit_Nm } of said)
      if (motorSpeed_rpm > 2600) expect(motorTorqueLimit_Nm).toBe(0)
      else expect(motorTorqueLimit_Nm === null).toBe(motorSpeed_rpm < 1000 || motorSpeed_rpm > 1600)
    expect(said.some(({ motorTorqueLimit_Nm: limit }) => limit === 0)).toBe(true)
    expect(said.some(({ motorTorqueLimit_Nm: limit }) => limit === null)).toBe(true)
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
