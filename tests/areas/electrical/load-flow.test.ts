// The solved network under the currents of cables: constant powers, the drop on the way, batteries off. Against nodal equations written out here.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cableCurrent } from '../../../server/src/areas/electrical/plans/design-current.ts'
import { type CaseKind, caseFlows } from '../../../server/src/areas/electrical/plans/load-cases.ts'
import { flowAt } from '../../../server/src/areas/electrical/plans/load-flow.ts'
import { blockIn } from '../job-text.ts'
import { loopAt105, withDrop } from './with-drop.ts'

const bank = (name = 'b', more = '') =>
  `battery ${name} { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm  ${more} }\n`
const cable = (name: string, from: string, to: string, length = 2, area = 95) =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: ${area} mm2  length: ${length} m  insulation: 105 degC  place: open }\n`
const load = (name: string, watts: number) => `load ${name} { power: ${watts} W }\n`

const currentOf = (text: string, name: string): number => {
  const { block, lookup } = blockIn(text, name)
  const outcome = cableCurrent(block, lookup)
  return outcome.ok ? outcome.value.current : Number.NaN
}
const flowOf = (text: string, name: string) => {
  const { block, lookup } = blockIn(text, name)
  return flowAt(block, lookup)
}

const casesOf = (text: string, name: string, kind: CaseKind) => {
  const { block, lookup } = blockIn(text, name)
  return caseFlows(kind, block, lookup)
}

/** IEC 60228:2004 class 5 tinned, Ω/km at 20 °C. */
const published = { 16: 1.24, 35: 0.565, 95: 0.21 } as const
type Area = keyof typeof published
const ohm = (area: Area, length: number) => length * loopAt105(published[area])

/** Two loads on a busbar behind one lead: currents by repeated substitution in Kirchhoff's equations. */
function substituted(lead: number, branches: readonly { readonly ohm: number; readonly watts: number }[]) {
  let currents = branches.map(({ watts }) => watts / 84)
  for (let i = 0; i < 200; i += 1) {
    const bus = 84 - lead * currents.reduce((sum, one) => sum + one, 0)
    currents = branches.map((branch, at) => branch.watts / (bus - branch.ohm * (currents[at] ?? 0)))
  }
  return currents
}

describe('the current of a cable', () => {
  it('is that of a constant power behind a resistance (quadratic equation)', () => {
    const text = bank() + load('l', 15_000) + cable('f', 'b', 'l', 6)
    expect(currentOf(text, 'f')).toBeCloseTo(withDrop(15_000, 84, ohm(95, 6)), 6)
  })

  it('is that of Kirchhoff in random networks of a lead and branches', () => {
    const branch = fc.record({
      watts: fc.integer({ min: 1, max: 4000 }),
      area: fc.constantFrom<Area>(16, 35, 95),
      length: fc.integer({ min: 1, max: 9 }),
    })
    fc.assert(
      fc.property(
        fc.array(branch, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 9 }),
        (all, lead) => {
          const text = `${bank()}busbar bus { }\n${cable('lead', 'b', 'bus', lead)}${all
            .map(
              ({ watts, area, length }, i) =>
                load(`l${i}`, watts) + cable(`c${i}`, 'bus', `l${i}`, length, area),
            )
            .join('')}`
          const currents = substituted(
            ohm(95, lead),
            all.map(({ watts, area, length }) => ({ watts, ohm: ohm(area, length) })),
          )
          for (const [i, one] of currents.entries()) expect(currentOf(text, `c${i}`)).toBeCloseTo(one, 5)
          expect(currentOf(text, 'lead')).toBeCloseTo(
            currents.reduce((sum, one) => sum + one, 0),
            5,
          )
        },
      ),
      { numRuns: 30 },
    )
  })

  it('is never less for a longer or a thinner lead, and never more for one in parallel', () => {
    const at = (length: number, area = 95) =>
      currentOf(
        `${bank()}busbar bus { }\n${cable('lead', 'b', 'bus', length, area)}${load('l', 9000)}${cable('c', 'bus', 'l')}`,
        'c',
      )
    expect(at(4)).toBeGreaterThan(at(2))
    expect(at(4, 35)).toBeGreaterThan(at(4))
    expect(at(4)).toBeGreaterThan(9000 / 84)
  })
})

describe('the voltage of a load', () => {
  const two = (more: string) =>
    `${bank('b', more)}${bank('s', more)}busbar bus { }\n${cable('one', 'b', 'bus', 9)}${cable('two', 's', 'bus', 9)}${load('l', 9000)}${cable('c', 'bus', 'l')}`
  const lead = ohm(95, 9)
  const rest = ohm(95, 2)

  it('is that with one string off, where the other may give enough', () => {
    const current = withDrop(9000, 84, lead + rest)
    expect(flowOf(two(''), 'l')?.lowest).toBeCloseTo(84 - current * (lead + rest), 6)
  })

  it('is that with both strings on, where neither may give enough alone', () => {
    const current = withDrop(9000, 84, lead / 2 + rest)
    const flow = flowOf(two('current: 100 A'), 'l')
    expect(flow?.lowest).toBeCloseTo(84 - current * (lead / 2 + rest), 6)
    for (const name of ['b', 's'])
      expect(casesOf(two('current: 100 A'), name, 'rated')[0]?.amps).toBeCloseTo(current / 2, 5)
  })

  // E² / 4 R: the most that a source gives through a resistance (maximum power transfer).
  it('is none where more is asked for than can come through the cable', () => {
    const most = 84 ** 2 / (4 * ohm(16, 200))
    const asked = (watts: number) => flowOf(bank() + load('l', watts) + cable('f', 'b', 'l', 200, 16), 'l')
    expect(asked(most * 0.99)?.share).toBeUndefined()
    expect(asked(most * 2)?.share).toBeCloseTo(0.5, 3)
  })
})
