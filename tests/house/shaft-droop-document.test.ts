// The droop of the parted shaft end in docs/engineering/alignment.md: its sums as they stand there, and beside them the same beam bent step by step
// from its moments alone (statics; curvature = moment / EI), which knows nothing of the formulas.
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const text = readFileSync(resolve(import.meta.dirname, '../../docs/engineering/alignment.md'), 'utf8')
const section = text.slice(
  text.indexOf('### How to find the droop'),
  text.indexOf('## Corrections of the feet'),
)

const given = (name: string): number => Number(new RegExp(`\`${name} = ([\\d.]+)\``).exec(section)?.[1])
const { d, L, a } = { d: given('d'), L: given('L'), a: given('a') }

const scope: Record<string, number> = { d, L, a, PI: Math.PI }
const rows = [...section.matchAll(/^\| (.*?) \| `(\w+)` \| `(.*?)` \| ([\d.]+) \|$/gm)].map(
  ([, what = '', name = '', sum = '', printed = '']) => {
    scope[name] = new Function(...Object.keys(scope), `return ${sum}`)(...Object.values(scope)) as number
    return { what, name, sum, printed, value: scope[name] }
  },
)

it.each(rows)('$what: $name = $sum = $printed', ({ value, printed }) => {
  expect(value.toFixed(/\.(\d+)/.exec(printed)?.[1]?.length ?? 0)).toBe(printed)
})

describe('the beam bent step by step', () => {
  const { EI = 0, w = 0, M = 0 } = scope
  /** With this load on the free end, N. */
  function beam(P: number) {
    // Taken about the aft end of the span: M hogs there, the last bearing carries the rest.
    const bearing = (P * (L + a) + (w * (L + a) ** 2) / 2 - M) / L
    /** Moment at x from the aft end of the span, + hogging: of all that lies forward of x. */
    const moment = (x: number): number => {
      const rest = L + a - x
      return P * rest + (w * rest ** 2) / 2 - (x < L ? bearing * (L - x) : 0)
    }
    const dx = (L + a) / 20_000
    const bent = (slopeAtStart: number) => {
      let [sunk, slope, atBearing] = [0, slopeAtStart, 0]
      for (let i = 0; i * dx < L + a - dx / 2; i++) {
        const curvature = moment((i + 0.5) * dx) / EI
        sunk += (slope + (curvature * dx) / 2) * dx
        slope += curvature * dx
        if (Math.abs((i + 1) * dx - L) < dx / 2) atBearing = sunk
      }
      return { sunk, slope, atBearing }
    }
    // Turned so that the last bearing is at the height of the first.
    return { ...bent(-bent(0).atBearing / L), start: moment(0) }
  }
  const hanging = beam(scope['P'] ?? 0)
  const figure = (name: string) => scope[name] ?? Number.NaN

  it('rests on both bearings', () => {
    expect(hanging.start).toBeCloseTo(M, 9)
    expect(Math.abs(hanging.atBearing)).toBeLessThan(1e-7)
  })
  it('droops and slopes as the sums say', () => {
    expect(hanging.sunk * 1000).toBeCloseTo(figure('droop'), 3)
    expect(hanging.slope * 1000).toBeCloseTo(figure('slope'), 3)
  })
  it('rises by more than it drooped where it is lifted by the rule of the scale', () => {
    const lifted = beam(figure('P') - (figure('P') + (w * (L + a)) / 2))
    expect((hanging.sunk - lifted.sunk) * 1000).toBeCloseTo(figure('lift'), 3)
    expect(figure('lift')).toBeGreaterThan(2 * figure('droop'))
  })
})

it('has all its rows', () => {
  expect(rows.map(({ name }) => name)).toEqual(['EI', 'w', 'P', 'M', 'droop', 'slope', 'lift'])
})
