// Every length and slope that findings and plans say is one that stands in their JSON, or in the job: words and data cannot part, and no factor slips
// in between. Held against nothing but each other and the text of the job; conversions by NIST SP 811, B.8.
import { describe, expect, it } from 'vitest'
import { randomFrom } from '../../fuzz/random.ts'
import { randomDrive } from '../random-drive.ts'
import { saidOf } from '../said-of.ts'

const size = { mm: 1, in: 25.4, m: 1000, mrad: 1, deg: 1000 * (Math.PI / 180) } as const
type Unit = keyof typeof size

/** Decimals of a length that is said roughly. */
const rough: Readonly<Record<string, number>> = { mm: 1, in: 2 }

const amounts = (text: string) =>
  [...text.matchAll(/(?<![\w.-])-?(\d+(?:\.(\d+))?)(?: ± (\d+(?:\.\d+)?))? (mm|in|mrad|deg|m)\b/g)].flatMap(
    ([whole, value = '', decimals = '', sure, unit = '']) =>
      [value, ...(sure === undefined ? [] : [sure])].map((number) => ({
        whole,
        value: Number(number) * size[unit as Unit],
        // Rounded to the last place, or down to it; what is said roughly, to half a millimetre or two hundredths of an inch.
        slack:
          (rough[unit] === decimals.length ? 5 * 10 ** -decimals.length : 10 ** -decimals.length) *
          size[unit as Unit] *
          1.0001,
        angle: unit === 'mrad' || unit === 'deg',
      })),
  )

/** All numbers that stand below a key with this ending. */
function numbersIn(json: unknown, ending: RegExp, below = false): readonly number[] {
  if (typeof json === 'number') return below ? [Math.abs(json)] : []
  if (Array.isArray(json)) return json.flatMap((one) => numbersIn(one, ending, below))
  if (typeof json !== 'object' || json === null) return []
  return Object.entries(json).flatMap(([key, value]) => numbersIn(value, ending, below || ending.test(key)))
}

/** What is said as it is, whatever the job: constants of a rule, with where they are from. */
const constants = [
  5, // rough alignment comes first beyond this: common practice, no source
  1, // roughly aligned below this: common practice, no source
  0.75, // holes for M12 and M16, to either side: ISO 273, from memory
  25.4 / 32, // holes for inch studs, to either side: from memory
  0.06, // soft foot above this: general industry alignment tolerance table
]

describe('what findings and plans say', () => {
  it('is what their JSON holds, in 500 jobs', () => {
    const random = randomFrom(20_261_130)
    let [figures, plansWithSteps] = [0, 0]
    for (let i = 0; i < 500; i++) {
      const text = randomDrive(random)
      const { json, words, stepped } = saidOf(text)
      const written = amounts(text)
      const lengths = [
        ...numbersIn(json, /_mm$/),
        ...written.filter(({ angle }) => !angle).map(({ value }) => value),
        ...constants,
      ]
      const angles = [
        ...numbersIn(json, /_mrad$/),
        ...written.filter(({ angle }) => angle).map(({ value }) => value),
      ]
      for (const sentence of words)
        for (const { whole, value, slack, angle } of amounts(sentence)) {
          figures += 1
          const known = (angle ? angles : lengths).some((one) => Math.abs(one - value) <= slack + 1e-4)
          expect(known, `${whole}\nin: ${sentence}\n${text}`).toBe(true)
        }
      if (stepped) plansWithSteps += 1
    }
    expect(figures).toBeGreaterThan(20_000)
    expect(plansWithSteps).toBeGreaterThan(100)
  })

  it('would not be, a thousand times too large', () => {
    expect(amounts('70 mm on 110 mm; -0.07 ± 0.02 mrad').map(({ value }) => value)).toEqual([
      70, 110, 0.07, 0.02,
    ])
    expect(numbersIn({ a_mm: { b: [1, -2] }, c: 3 }, /_mm$/)).toEqual([1, 2])
  })
})
