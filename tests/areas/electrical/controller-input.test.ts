// A controller stands the voltages it states and no others: the window of every battery that reaches it, by whatever way, has to lie inside.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const told = (text: string) =>
  findingsOf(text, allChecks)
    .findings.filter(({ check }) => check === 'cable/controller-input-outside')
    .map(({ found, limit }) => `${found}; ${limit}`)
const alone = (battery: string, input: string) =>
  told(`battery house { ${battery} }\ndrive main {\n  controller { input: ${input} }\n}\n`)

it.each([
  ['nominal: 96 V  window: 84..108 V', '72..120 V', []],
  ['nominal: 96 V  window: 84..108 V', '84..108 V', []],
  ['nominal: 96 V  window: 84..108 V', '84..107 V', ['84 V to 108 V; 84 V to 107 V']],
  ['nominal: 96 V  window: 84..108 V', '85..120 V', ['84 V to 108 V; 85 V to 120 V']],
  ['nominal: 96 V  window: 84..108 V', 'max 100 V', ['84 V to 108 V; at most 100 V']],
  ['nominal: 96 V', '72..120 V', []],
  ['nominal: 96 V', '30..60 V', ['96 V; 30 V to 60 V']],
  ['nominal: 96 V  window: max 108 V', '90..100 V', ['96 V to 108 V; 90 V to 100 V']],
  ['nominal: 96  window: 84..108 V', '30..60 V', []], // a voltage that could not be read
])('battery of %s on an input of %s', (battery, input, findings) => {
  expect(alone(battery, input)).toEqual(findings)
})

it('of two batteries that is told which a cable leads to, through a fuse as well', () => {
  const boat = (from: string) => `battery low { nominal: 48 V }
battery high { nominal: 144 V }
drive main {
  controller { input: 110..170 V }
  protection fuse { rating: 200 A  in: lead }
  cable lead { from: ${from}  to: fuse  conductor: 70 mm2  length: 0.5 m  insulation: 105 degC }
  cable feed { from: fuse  to: controller  conductor: 70 mm2  length: 2 m  insulation: 105 degC }
}
`
  expect(told(boat('high'))).toEqual([])
  expect(told(boat('low'))).toEqual(['48 V; 110 V to 170 V'])
})

it('a part at the margin that no cable leads to is held against nothing', () => {
  expect(told('battery low { nominal: 48 V }\ncontroller drive-144 { input: 110..170 V }\n')).toEqual([])
})
