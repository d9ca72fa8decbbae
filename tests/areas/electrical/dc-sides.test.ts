import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { batteriesAlong, sideOf } from '../../../server/src/areas/electrical/plans/dc-sides.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

const names = ['a', 'b', 'bus', 'fuse', 'link', 'c', 'd', 'm'] as const
type Name = (typeof names)[number]
interface Cable {
  readonly from: Name
  readonly to: Name
}

const isBattery = (name: Name) => name === 'a' || name === 'b'
const isLoad = (name: Name) => name === 'c' || name === 'd' || name === 'm'
const endsWay = (name: Name) => isBattery(name) || name === 'm'

/** All that is joined to a block by cables but one: by trying every cable at every block. */
function reached(start: Name, cables: readonly Cable[], without: Cable | undefined): ReadonlySet<Name> {
  const met = new Set([start])
  for (const name of met)
    if (!endsWay(name))
      for (const cable of cables)
        if (cable !== without && [cable.from, cable.to].includes(name)) met.add(cable.from).add(cable.to)
  return met
}

const block = (name: Name): string =>
  isBattery(name)
    ? `battery ${name} { nominal: 48 V }\n`
    : name === 'm'
      ? 'motor m { power: 5 kW }\n'
      : isLoad(name)
        ? `controller ${name} { }\n`
        : `protection ${name} { }\n`

/** The job, with some of its blocks at the top of the file. */
const jobOf = (cables: readonly Cable[], shared: readonly Name[], top: readonly boolean[]): string => {
  const isShared = (name: Name) => isBattery(name) || shared.includes(name)
  const at = (name: Name, isTop: boolean) => (isTop && !isShared(name) ? `main.${name}` : name)
  const lines = cables.map(({ from, to }, i) => {
    const isTop = top[i] === true
    return { isTop, text: `cable k${i} { from: ${at(from, isTop)} to: ${at(to, isTop)} system: dc }\n` }
  })
  const inside = lines.filter(({ isTop }) => !isTop).map(({ text }) => text)
  const outside = lines.filter(({ isTop }) => isTop).map(({ text }) => text)
  const own = names.filter((name) => !isShared(name)).map(block)
  return `${names.filter(isShared).map(block).join('')}drive main {\n${own.join('')}${inside.join('')}}\n${outside.join('')}`
}

const cables = fc.array(fc.record({ from: fc.constantFrom(...names), to: fc.constantFrom(...names) }), {
  minLength: 1,
  maxLength: 12,
})
const sorted = (found: Iterable<string>) => [...found].sort()

describe('what DC cables lead to', () => {
  it('is what a walk from block to block finds, with and without a ring', () => {
    fc.assert(
      fc.property(
        cables,
        fc.subarray(['bus', 'fuse', 'c'] as const),
        fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
        (of, shared, top) => {
          const text = jobOf(of, shared, top)
          for (const [i, cable] of of.entries()) {
            const { block, lookup } = blockIn(text, top[i] ? `k${i}` : `main.k${i}`)
            for (const end of ['from', 'to'] as const) {
              const at = lookup.referred(end)
              if (!at) throw new Error(text)
              const side = sideOf(block, at, lookup)
              const met = [...reached(cable[end], of, cable)]
              expect(sorted(side.loads().map(({ name }) => `${name}`))).toEqual(sorted(met.filter(isLoad)))
              expect(side.hasLoad).toBe(met.some(isLoad))
              expect(side.hasBattery).toBe(met.some(isBattery))
              const along = batteriesAlong(at, undefined, lookup).map((id) => `${lookup.blockOf(id).name}`)
              expect(sorted(along)).toEqual(sorted([...reached(cable[end], of, undefined)].filter(isBattery)))
            }
          }
        },
      ),
      { numRuns: 40 },
    )
  }, 60_000)

  it('counts a battery once, though two ways lead to it', () => {
    const ring = ['from: bus to: link', 'from: bus to: link', 'from: link to: c'].map(
      (ends, i) => `cable k${i} { ${ends} system: dc conductor: 95 mm2 length: 1 m insulation: 105 degC }\n`,
    )
    const text = `job "Ring" { vessel: "Ring 1" }
battery a { nominal: 48 V  short-circuit-current: 5000 A }
drive main {
motor m { power: 5 kW }
controller c { }
protection bus { kind: fuse  rating: 200 A  in: k0 }
protection link { kind: fuse  rating: 200 A  in: k1  interrupts: 6000 A }
cable e { from: a to: bus conductor: 95 mm2 length: 0.5 m insulation: 105 degC }
${ring.join('')}}
`
    const said = findingsOf(text, allChecks).findings.filter(({ check }) => check.startsWith('protection/'))
    expect(said.map(({ message }) => message).join()).not.toContain('10000 A')
    expect(said.map(({ message }) => message).join()).toMatch(/short circuit .* (4\d\d\d|5000) A/)
  })
})
