// The steps of a plan and what they lead to, as figures: the same as in the JSON of the plan.
import fs from 'node:fs'
import { describe, expect, it } from 'vitest'
import { trustedCorrection } from '../../../server/src/areas/alignment/plan-trust.ts'
import { lastReading } from '../../../server/src/areas/alignment/plans/moves.ts'
import { type PlanJson, planJson, round } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { lookupFrom } from '../../../server/src/store/store.ts'
import { randomFrom } from '../../fuzz/random.ts'
import { randomDrive } from '../random-drive.ts'
import { resultsIn } from '../results-in.ts'

/** The plans of a job by its last readings, each with the results of that reading. */
function plansIn(text: string) {
  const { file, analysis, findings, results } = resultsIn(text)
  return analysis
    .blocks(file)
    .flatMap((drive) => (drive.kind === 'drive' && lastReading(drive)) || [])
    .flatMap((reading) => {
      const lookup = lookupFrom(reading, { analysis, file })
      const outcome = trustedCorrection(lookup.block, lookup, { file, findings })
      if (!outcome.ok) return []
      return [
        {
          plan: planJson(outcome.value, lookup.system),
          results: results.filter(({ block }) => block === reading),
        },
      ]
    })
}

type Results = ReturnType<typeof plansIn>[number]['results']

/** Values by figure and key: of lengths in mm, as the plan has them. */
const valuesOf = (results: Results) =>
  Object.fromEntries(
    results
      .filter(({ figure }) => /^alignment\/(step|next)-/.test(figure.id))
      .map(({ figure, amount: { value, uncertainty, key } }) => [
        [figure.id.replace('alignment/', ''), ...Object.values(key ?? {})].join(' '),
        figure.kind === 'length'
          ? [round(value * 1000), ...(uncertainty === undefined ? [] : [round(uncertainty * 1000)])]
          : [round((value / (2 * Math.PI)) * 6)],
      ]),
  )

/** The same from the plan. */
function plannedIn({ feet, predicted, verdict, target }: PlanJson): Record<string, readonly number[]> {
  if (!predicted || verdict === 'within') return {}
  const { gapVariation_mm: gaps, fromTarget_mm: left, opening_mm: opening, offset_mm: offset } = predicted
  const both = (name: string, of: typeof opening) =>
    (['vertical', 'horizontal'] as const).map(
      (plane) => [`${name} ${plane}`, [of[plane].value, of[plane].uncertainty]] as const,
    )
  return Object.fromEntries([
    ...feet.flatMap(({ name, moved_mm: moved, slide_mm: slid, turns }) => [
      ...(moved === undefined ? [] : [[`step-height ${name}`, [moved]] as const]),
      ...(slid === undefined ? [] : [[`step-sideways ${name}`, [slid]] as const]),
      ...(turns
        ? [
            [
              `step-turn ${name}`,
              [(turns.direction === 'down' ? -1 : 1) * (6 * turns.turns + turns.flats) + 0],
            ] as const,
          ]
        : []),
    ]),
    ['next-gap-variation', target ? [left.gapVariation] : [gaps.value, gaps.uncertainty]],
    ...(left.offset === null ? [] : [['next-offset', [left.offset]] as const]),
    ...both('next-opening', opening),
    ...(offset ? both('next-offset-part', offset) : []),
  ])
}

const demo = (name: string) => fs.readFileSync(`docs/examples/${name}.wright`, 'utf8')
const found = demo('survey-launch-as-found')

describe('the figures of the steps', () => {
  it('are those of the plan, and there are none where it gives no steps', () => {
    const demos = ['survey-launch-as-found', 'survey-launch-as-built', 'inch-day-boat'].map(demo)
    const random = randomFrom(20_261_201)
    const texts = [...demos, ...Array.from({ length: 200 }, () => randomDrive(random))]
    const count = { steps: 0, target: 0, shims: 0, none: 0 }
    for (const text of texts)
      for (const { plan, results } of plansIn(text)) {
        const expected = plannedIn(plan)
        expect(valuesOf(results), text).toEqual(expected)
        if (Object.keys(expected).length === 0) count.none += 1
        else {
          count.steps += 1
          if (plan.target) count.target += 1
          if (plan.feet.some(({ shims }) => shims)) count.shims += 1
        }
      }
    expect(Math.min(...Object.values(count))).toBeGreaterThan(10)
  })

  it('hold the next reading to the limits, as the plan does', () => {
    const random = randomFrom(12)
    const count = { inside: 0, outside: 0 }
    for (let i = 0; i < 200; i++)
      for (const { plan, results } of plansIn(randomDrive(random))) {
        const next = results.filter(({ figure }) => /next-(gap-variation|offset)$/.test(figure.id))
        if (next.length === 0) continue
        const verdicts = next.map(({ verdict }) => verdict)
        if (plan.predicted?.provable) expect(verdicts).not.toContain('outside')
        else expect(verdicts).not.toContain('within')
        count[plan.predicted?.inside ? 'inside' : 'outside'] += 1
      }
    expect(Math.min(count.inside, count.outside)).toBeGreaterThan(5)
  })

  it('depend on the steps and on how the next reading is taken', () => {
    const { results } = resultsIn(found)
    const of = (id: string) => results.find(({ figure }) => figure.id === id)?.amount
    expect(of('alignment/step-turn')?.from).toBe(
      'up 1 flat: turn the lower nut counter-clockwise, seen from above',
    )
    expect(of('alignment/step-height')?.assumptions?.join('; ')).toContain('the studs have enough thread')
    expect(of('alignment/next-offset')?.assumptions).toContain('the steps are made exactly')
  })

  it('are not given while a finding is to be fixed, and the corrections are in doubt', () => {
    // The foot called fwd-stbd is to port of the other.
    const [{ plan, results } = { plan: undefined, results: [] }] = plansIn(
      found
        .replace(
          'foot fwd-port { from-coupling: 560 mm  across: 140 mm port',
          'foot fwd-port { from-coupling: 560 mm  across: 140 mm starboard',
        )
        .replace(
          'foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard',
          'foot fwd-stbd { from-coupling: 560 mm  across: 140 mm port',
        ),
    )
    expect(plan?.withheld).toBe('finding')
    expect(valuesOf(results)).toEqual({})
    const heights = results.filter(({ figure }) => figure.id === 'alignment/foot-height')
    expect(heights.length).toBe(4)
    for (const { amount } of heights)
      expect(amount.doubt).toMatch(/^the plan gives no steps because of .*alignment\/\S+ at \d+:\d+/)
  })
})

describe('feet of one name', () => {
  it('have each its own key', () => {
    const { results } = resultsIn(found.replace('foot aft-stbd', 'foot aft-port'))
    const heights = results.filter(({ figure }) => figure.id === 'alignment/foot-height')
    expect(heights.map(({ amount }) => amount.key?.['foot'])).toEqual([
      'aft-port',
      'aft-port~2',
      'fwd-port',
      'fwd-stbd',
    ])
  })
})

describe('what a stiff machine cannot do', () => {
  const moved = (move: string) =>
    resultsIn(
      found.replace('  controller {', `  move after dry-1 { done: 2026-03-04  ${move} }\n  controller {`),
    ).results
  // Four feet at the corners of a rectangle: the plane by least squares leaves a quarter of the twist at each. 7 and 2 flats of M16 (pitch 2 mm) on
  // one diagonal are 9 flats of 1/3 mm, 3 mm; a quarter of that is 0.75 mm.
  it.each([
    ['alignment/out-of-plane', 'fwd-port: up 7 flats  aft-stbd: up 2 flats', 0.75e-3, 'outside'],
    ['alignment/out-of-plane', 'fwd-port: up 7 flats  fwd-stbd: up 7 flats', 0, 'within'],
    // Two feet of one station 2 mm apart are 1 mm off their mean.
    ['alignment/slid-apart', 'aft-port: starboard 2 mm', 1e-3, 'outside'],
    ['alignment/slid-apart', 'aft-port: starboard 2 mm  aft-stbd: starboard 2 mm', 0, 'within'],
  ])('%s of %s', (id, move, value, verdict) => {
    const result = moved(move).find(({ figure }) => figure.id === id)
    expect(result?.amount.value).toBeCloseTo(value, 9)
    expect(result?.verdict).toBe(verdict)
  })
})

describe('what the coupling is rated for', () => {
  const rated = (facts: string) =>
    resultsIn(found.replace('rated-torque:    400 N·m', `rated-torque: 400 N·m\n    ${facts}`)).results
  // 0.2608 mm on 110 mm are 2.371 mrad; 0.1 deg are 1.745 mrad.
  it('is the limit of the angle and of the offset', () => {
    const results = rated('max-angle: 0.1 deg\n    max-offset: 0.5 mm')
    const of = (id: string) => results.find(({ figure }) => figure.id === id)
    expect(of('alignment/angle')?.amount.value).toBeCloseTo(2.371e-3, 6)
    expect(of('alignment/angle')?.verdict).toBe('outside')
    expect(of('alignment/rated-offset')?.amount.limit).toEqual({ high: 0.5e-3 })
    expect(of('alignment/rated-offset')?.verdict).toBe('within')
  })

  it('is no limit where it is not stated', () => {
    const results = rated('')
    expect(results.find(({ figure }) => figure.id === 'alignment/angle')?.verdict).toBeUndefined()
    expect(results.some(({ figure }) => figure.id === 'alignment/rated-offset')).toBe(false)
  })
})
