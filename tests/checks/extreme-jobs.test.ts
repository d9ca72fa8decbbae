// Jobs whose facts are anywhere in their ranges, ends included: no check crashes, and what is said keeps its shape and is a figure. All data invented.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { formatIn } from '../../server/src/quantity/format.ts'
import { kinds } from '../../server/src/quantity/kinds.ts'
import { findUnit } from '../../server/src/quantity/units.ts'
import { findKind } from '../../server/src/vocabulary/index.ts'
import { type Random, randomFrom } from '../fuzz/random.ts'
import { findingsOf } from './marks.ts'
import { wordingFaults } from './wording.ts'

/** Blocks of a drive, with what their heading and their references have to be. */
const parts = [
  ['propeller', ''],
  ['shaft', ''],
  ['bearing stern', ''],
  ['shaft-log', 'clearance: top 0 mm, bottom 3 mm'],
  ['seal', ''],
  ['coupling', 'bolts: 4 x M10 class 8.8, 45 N·m'],
  ['gear', ''],
  ['motor main', ''],
  ['controller', ''],
  ['target', ''],
  ['bed', 'thread: M16'],
  ['cable feed', 'from: house  to: controller'],
  ['protection fuse', 'in: feed'],
] as const

/** An amount of the fact: an end of its range, its example, or anything between on a scale of ratios. */
function factsOf(kind: string, system: 'metric' | 'inch', { pick, chance, next }: Random): string {
  const facts = Object.entries(findKind(kind)?.facts ?? {})
  return facts
    .flatMap(([name, { shape, example }]) => {
      const { allowed, quantity } = shape
      if (!quantity || !allowed || shape.forms || shape.choices || chance(0.25)) return []
      const { low = 0, high = 1 } = allowed
      const between = low > 0 ? low * (high / low) ** next() : low + (high - low) * next()
      const unit = findUnit(kinds[quantity].shown[system])
      const number = (si: number) =>
        unit && !unit.named ? formatIn(si, unit) : quantity === 'ratio' ? String(si) : undefined
      const written = pick([example, number(low), number(high), number(between), number(between)])
      return written === undefined ? [] : [`${name}: ${written}`]
    })
    .join('\n    ')
}

const jobOf = (random: Random): string => {
  const system = random.pick(['metric', 'inch'] as const)
  const block = (heading: string, more: string) =>
    `  ${heading} {\n    ${factsOf(heading.split(' ')[0] ?? '', system, random)}\n    ${more}\n  }`
  return `job "x" { vessel: "y"  show-in: ${system} }
${block('battery house', random.chance(0.7) ? `window: ${random.pick(['84..108 V', '1..1500 V', '1 V', '21..29 V'])}` : '')}
drive main {
${parts.map(([heading, more]) => block(heading, more)).join('\n')}
}
`
}

describe('jobs at the ends of what the language allows', () => {
  it.each([1, 2, 3])(
    'are checked without a crash, in figures that can be read (%i)',
    (seed) => {
      const random = randomFrom(seed)
      for (let i = 0; i < 40; i++) {
        const text = jobOf(random)
        for (const finding of findingsOf(text, allChecks).findings) {
          expect(wordingFaults(finding), `${finding.check}: ${finding.message}\n${text}`).toEqual([])
          const said = [
            finding.message,
            finding.detail,
            finding.found,
            finding.limit,
            ...(finding.assumptions ?? []),
          ]
          expect(said.join(' '), text).not.toMatch(/Infinity|NaN|undefined|\d\.\d{9}/)
        }
      }
    },
    120_000,
  )
})
