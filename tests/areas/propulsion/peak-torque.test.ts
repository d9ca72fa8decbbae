// What the motor gives for a short time, at the gear and, times the ratio, at the coupling.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const found = (parts: string) =>
  findingsOf(`drive main {\n${parts}\n}\n`, allChecks)
    .findings.filter(({ check }) => check.endsWith('/peak-torque-beyond'))
    .map(({ check, severity }) => `${severity} ${check.split('/', 1)[0]}`)
const motor = 'motor m { power: 15 kW  speed: 1500 rpm  peak-torque: 150 N·m }'

describe('the peak torque of a motor', () => {
  it.each([
    ['above that of the gear', `${motor} gear { ratio: 2.5  peak-torque: 140 N·m }`, ['error gear']],
    [
      'within that of the gear',
      `${motor} gear { ratio: 2.5  rated-torque: 120 N·m  peak-torque: 150 N·m }`,
      [],
    ],
    [
      'above what the gear takes all the time, where no more is said',
      `${motor} gear { ratio: 2.5  rated-torque: 120 N·m }`,
      ['warning gear'],
    ],
    [
      'behind the gear, at the coupling',
      `${motor} gear { ratio: 3 } coupling { peak-torque: 440 N·m }`,
      ['error coupling'],
    ],
    ['within that of the coupling', `${motor} gear { ratio: 3 } coupling { peak-torque: 450 N·m }`, []],
    ['without a gear, at the coupling', `${motor} coupling { rated-torque: 149 N·m }`, ['warning coupling']],
    ['behind a gear of unknown ratio', `${motor} gear { turns: same } coupling { rated-torque: 1 N·m }`, []],
    [
      'that is not stated',
      'motor m { power: 15 kW  speed: 1500 rpm } gear { ratio: 2  peak-torque: 1 N·m }',
      [],
    ],
  ])('%s', (_, parts, expected) => {
    expect(found(parts)).toEqual(expected)
  })
})
