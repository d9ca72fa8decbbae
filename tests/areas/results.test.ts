// What the figures of a job come to, against the findings of the same job, and the laws of their declarations.
import { describe, expect, it } from 'vitest'
import { unitOf } from '../../server/src/areas/common/figure-units.ts'
import { isResult, type Result } from '../../server/src/areas/common/result.ts'
import { allFigures, areas } from '../../server/src/areas/index.ts'
import type { Finding } from '../../server/src/checks/check.ts'
import { resultsOfFile } from '../../server/src/cli/file-results.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { type Block, isWithin } from '../../server/src/job/model.ts'
import { vocabulary } from '../../server/src/vocabulary/index.ts'
import { type Random, randomFrom } from '../fuzz/random.ts'
import { randomElectrics } from './electrical/random-electrics.ts'
import { randomBoat } from './propulsion/random-boats.ts'
import { randomDrive } from './random-drive.ts'
import { resultsIn, today } from './results-in.ts'
import { randomTests } from './testing/random-tests.ts'

/** What a figure comes to beyond its limit is what this check finds. */
const foundBy = {
  'cable/ampacity': 'cable/undersized',
  'cable/voltage-drop': 'cable/voltage-drop',
  'phases/shaft-speed-ahead': 'phases/turns-backward',
  'precharge/energy': 'precharge/energy',
  'precharge/mean-power': 'precharge/power',
  'precharge/closing-surge': 'precharge/closing-surge',
  'protection/highest-voltage': 'protection/voltage-below',
  'protection/short-circuit-current': 'protection/interrupts-too-little',
  'protection/opening-current': 'protection/cannot-open',
  'seal/compression': 'seal/compression-outside',
  'test/insulation-resistance': 'test/insulation-low',
  'test/polarisation-index': 'test/polarisation-index-low',
  'test/imbalance': 'test/unbalanced',
  'test/sensor-temperature': 'test/sensor-implausible',
  'test/run-out': 'test/beyond-permitted',
  'test/precharge-time': 'test/precharge-differs',
  'alignment/gap-variation': 'alignment/gap-variation-outside',
  'alignment/offset': 'alignment/offset-outside',
  'alignment/angle': 'alignment/misalignment-beyond-coupling',
  'alignment/rated-offset': 'alignment/misalignment-beyond-coupling',
  'alignment/out-of-plane': 'alignment/feet-out-of-plane',
  'alignment/slid-apart': 'alignment/feet-slid-apart',
  'battery/drive-current': 'battery/current-beyond',
  'gear/torque': 'gear/torque-beyond',
  'point/motor-speed': 'motor/speed-beyond',
  'point/motor-torque': 'motor/torque-beyond',
  'propeller/blade-area': 'propeller/cavitation',
  'service/energy-used': 'battery/endurance-short',
  'service/range': 'battery/range-short',
} as const

/** The check that finds what a figure comes to, where its amount is not in doubt. */
const checkOf = ({ figure, amount }: Result): string | undefined =>
  amount.doubt === undefined ? foundBy[figure.id as keyof typeof foundBy] : undefined

/** Some feet moved as no stiff machine can move them. */
const uneven = (text: string, { chance }: Random): string =>
  text.replaceAll(/(f\d-\w+: (?:up|down) [\d.]+ mm)/g, (moved) =>
    chance(0.1) ? `${moved.replace(/up|down/, 'up')}, starboard 0.2 mm` : moved,
  )

const isIn = (finding: Finding, block: Block): boolean => isWithin(finding.at, block)

describe('a result beyond its limit', () => {
  it('has a finding, and one within has none, in 800 random jobs', () => {
    const random = randomFrom(20_261_130)
    const count = { outside: 0, within: 0, undecided: 0 }
    const compared = new Set<string>()
    for (let i = 0; i < 800; i++) {
      const text =
        i >= 700
          ? randomBoat(random)
          : i >= 600
            ? randomTests(random)
            : i % 2 === 0
              ? randomElectrics(random)
              : uneven(randomDrive(random), random)
      const { findings, results } = resultsIn(text)
      for (const result of results) {
        const { figure, verdict, block } = result
        const check = checkOf(result)
        if (!check || !verdict) continue
        // Two figures of a reading are held against the rating of the coupling, and one check finds both.
        const isOutside = results.some(
          (one) => one.block === block && checkOf(one) === check && one.verdict === 'outside',
        )
        const finding = findings.find((one) => one.check === check && isIn(one, block))
        const told = `${figure.id} of ${block.path}: ${verdict}\n${text}`
        // Below the tables it is a warning: not shown to be within, and not to be outside.
        if (verdict !== 'undecided' || isOutside) expect(finding !== undefined, told).toBe(isOutside)
        else expect(finding?.severity, told).not.toBe('error')
        count[verdict] += 1
        compared.add(`${figure.id} ${verdict}`)
      }
    }
    expect(Math.min(count.outside, count.within)).toBeGreaterThan(100)
    for (const id of Object.keys(foundBy))
      expect([...compared]).toEqual(expect.arrayContaining([`${id} outside`, `${id} within`]))
  })

  it('of a rating is too small for the load or too large for the cable', () => {
    const random = randomFrom(7)
    let compared = 0
    for (let i = 0; i < 300; i++) {
      const text = randomElectrics(random)
      const { findings, results } = resultsIn(text)
      for (const { figure, verdict, amount, block } of results) {
        if (figure.id !== 'protection/rating' || amount.doubt !== undefined) continue
        const has = (check: string) => findings.some((one) => one.check === check && isIn(one, block))
        expect(has('protection/below-load') || has('protection/above-cable'), text).toBe(
          verdict === 'outside',
        )
        compared += 1
      }
    }
    expect(compared).toBeGreaterThan(100)
  })
})

const bed = (feet: readonly string[]) => `drive d {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  bed { adjuster: stud-and-nuts  thread: M16  ${feet.join('  ')} }
  reading one {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.20 mm, starboard 1.10 mm, bottom 1.00 mm, port 1.10 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`
const feet = [
  'foot aft-port { from-coupling: 200 mm  across: 150 mm port }',
  'foot aft-stbd { from-coupling: 200 mm  across: 150 mm starboard }',
  'foot fwd { from-coupling: 600 mm  across: 0 mm }',
]

/** The results by what names them, to as many digits as are printed. */
function named(text: string): readonly (readonly [name: string, value: number])[] {
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  return resultsOfFile({ file, shown: () => 'a.wright' }, allFigures, today).blocks.flatMap(
    ({ at, results }) =>
      results
        .filter(isResult)
        .map(
          ({ figure, amount }) =>
            [
              `${at.block} ${figure.id} ${JSON.stringify(amount.key)}`,
              Number(amount.value.toPrecision(12)),
            ] as const,
        ),
  )
}

describe('a key', () => {
  it('names the same result in whatever order the blocks are', () => {
    const there = new Map(named(bed(feet)))
    expect([...there.keys()].filter((key) => key.includes('aft-port')).length).toBe(5)
    expect(new Map(named(bed(feet.toReversed())))).toEqual(there)
  })

  it('tells all results of a file apart, in 100 random jobs', () => {
    const random = randomFrom(3)
    for (let i = 0; i < 100; i++) {
      const text = randomDrive(random)
      const names = named(text).map(([name]) => name)
      expect(
        names.filter((name, j) => names.indexOf(name) !== j),
        text,
      ).toEqual([])
    }
  })
})

/** A result of a job with one reading. */
const resultIn = (text: string, id: string) => resultsIn(text).results.find(({ figure }) => figure.id === id)

/** What stands after the reading of the bed. */
const followed = (by: string): string => bed(feet).replace(/\n}$/, `\n${by}\n}`)

describe('what a move leads to', () => {
  // Similar triangles: 1 mm at the forward foot, 400 mm from the others, is 2.5 mrad. The reading leans 2 mrad down: 0.20 mm on 100 mm. So
  // 0.5 mrad is left, 0.05 mm on 100 mm.
  const made = 'move after one { done: 2026-03-04  fwd: up 1 mm }'
  const id = 'alignment/expected-gap-variation'

  it('is said of the only move after a reading', () => {
    expect(resultIn(followed(made), id)?.amount.value).toBeCloseTo(0.05e-3, 9)
  })

  it.each([
    ['there is a target', `target { shaft-slope: 1 mrad }\n${made}`],
    ['a foot cannot be read', made.replace('fwd:', 'aft-port: up 1 flatt  fwd:')],
  ])('is not said where %s', (_, by) => {
    expect(resultIn(followed(by), id)).toBeUndefined()
  })

  it('is said of the first of two moves alone', () => {
    const { results } = resultsIn(followed(`${made}\n${made.replace('1 mm', '0.5 mm')}`))
    expect(results.filter(({ figure }) => figure.id === id).length).toBe(1)
  })

  it('is in doubt while the move is only planned', () => {
    const planned = followed(made.replace('done: 2026-03-04  ', ''))
    expect(resultIn(planned, 'alignment/move-height')?.amount.doubt).toContain('planned')
    expect(resultIn(followed(made), 'alignment/move-height')?.amount.doubt).toBeUndefined()
  })

  it('leaves a reading that was within undecided: nobody has read again', () => {
    const level = bed(feet).replace(
      /gaps:.*/,
      'gaps: top 1.10 mm, starboard 1.10 mm, bottom 1.10 mm, port 1.10 mm',
    )
    expect(resultIn(level, 'alignment/gap-variation')?.verdict).toBe('within')
    const moved = resultIn(level.replace(/\n}$/, `\n${made}\n}`), 'alignment/gap-variation')
    expect(moved?.verdict).toBe('undecided')
    expect(moved?.amount.doubt).toContain('moved since')
  })
})

describe('run-out', () => {
  // Half the difference of the slopes in both positions of the flange, on the diameter: (0.15 - 0.05) mm; of the rims the difference of the offsets,
  // 0.10 mm and 0.04 mm at the top (derived in engineering/alignment/run-out.ts).
  it('is that of the face and of the rim', () => {
    const text = bed(feet)
      .replace(
        /gaps:.*/,
        'gaps: top 1.95 mm, starboard 1.80 mm, bottom 1.65 mm, port 1.80 mm\n    gaps-half-turn: top 1.85 mm, starboard 1.80 mm, bottom 1.75 mm, port 1.80 mm',
      )
      .replace(
        /offsets:.*/,
        'offsets: top 0.10 mm, starboard 0 mm, bottom -0.10 mm, port 0 mm\n    offsets-half-turn: top 0.04 mm, starboard 0 mm, bottom -0.04 mm, port 0 mm',
      )
    const found = resultsIn(text).results.filter(({ figure }) => figure.id === 'alignment/run-out')
    expect(found.map(({ amount }) => [amount.key?.['of'], amount.value])).toEqual([
      ['face', expect.closeTo(0.1e-3, 9)],
      ['rim', expect.closeTo(0.06e-3, 9)],
    ])
  })
})

describe('a reading that disagrees', () => {
  it('is within no limit, whatever its figures', () => {
    // Top + bottom = 2.20 mm, sides 2.30 mm: they do not close.
    const text = bed(feet).replace(
      /gaps:.*/,
      'gaps: top 1.10 mm, starboard 1.20 mm, bottom 1.10 mm, port 1.20 mm',
    )
    const gaps = resultsIn(text).results.find(({ figure }) => figure.id === 'alignment/gap-variation')
    expect(gaps?.amount.value).toBeLessThan(1e-6)
    expect(gaps?.verdict).toBe('undecided')
    expect(gaps?.amount.doubt).toContain('disagree')
  })
})

describe('what is assumed, and what is not known', () => {
  const boat = (
    battery: string,
    cable = 'length: 2.5 m',
    fuse = 'rating: 315 A',
  ) => `battery house { ${battery} }
drive main {
  motor m { power: 15 kW  efficiency: 92 % }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  insulation: 105 degC  ${cable} }
  protection fuse { in: feed  ${fuse} }
}
`
  // 2.5 V for each cell of nominal 2 V when equalising (common practice, no source).
  it.each([
    ['battery/highest-voltage', 'nominal: 96 V', 120, ['1.25 times its nominal voltage']],
    ['battery/highest-voltage', 'nominal: 96 V  window: 84..108 V', 108, []],
    ['protection/highest-voltage', 'nominal: 96 V', 120, ['1.25 times its nominal voltage']],
    ['protection/highest-voltage', 'nominal: 96 V  window: 84..108 V', 108, []],
  ])('%s of %s is %d V', (id, battery, volts, assumed) => {
    const amount = resultIn(boat(battery), id)?.amount
    expect(amount?.value).toBeCloseTo(volts, 9)
    expect(amount?.assumptions ?? []).toEqual(assumed.map((words) => expect.stringContaining(words)))
  })

  // As stated, else 3 % for propulsion (common practice, no source).
  it.each([
    ['length: 2.5 m', 0.03],
    ['length: 2.5 m  drop: max 5 %', 0.05],
  ])('a voltage drop has a limit: %s', (cable, limit) => {
    expect(resultIn(boat('nominal: 96 V', cable), 'cable/voltage-drop')?.amount.limit).toEqual({
      high: limit,
    })
  })

  // 15000 / 0.92 / 0.96 / 96 V = 177 A (definition of efficiency), 1.25 times that 221 A. 95 mm² at 105 °C carries 390 A (ISO 13297 Table A.1, from
  // memory), 0.85 of it in a machinery space (33 CFR 183.425 Table 5): 331.5 A.
  it('a rating between load and cable is within, and one whose load is not known undecided', () => {
    expect(resultIn(boat('nominal: 96 V'), 'protection/rating')).toMatchObject({ verdict: 'within' })
    const idle = boat('nominal: 96 V').replace('power: 15 kW', '')
    const rating = resultIn(idle, 'protection/rating')
    expect(rating?.verdict).toBe('undecided')
    expect(rating?.amount.doubt).toBe('the load is not known')
  })
})

describe('a figure', () => {
  it('has an id of its own and a unit of its kind', () => {
    expect(new Set(allFigures.map(({ id }) => id)).size).toBe(allFigures.length)
    for (const figure of allFigures) {
      expect(figure.id).toMatch(/^[a-z-]+\/[a-z-]+$/)
      expect(Object.keys(vocabulary)).toContain(figure.on)
      expect(unitOf(figure)?.kind ?? 'ratio').toBe(figure.kind)
      expect(figure.title).toMatch(/^[A-Z][^.]+$/)
      expect(figure.doc).toMatch(/\.$/)
      expect(figure.formula ?? '.').toMatch(/\.$/)
    }
  })

  it('says in JSON what it is: its amounts are data', () => {
    const { results } = resultsIn(randomElectrics(randomFrom(1)))
    expect(results.length).toBeGreaterThan(5)
    for (const { amount } of results) expect(structuredClone(amount)).toEqual(amount)
  })

  it('belongs to one area', () => {
    for (const figure of allFigures)
      expect(areas.filter(({ figures }) => figures.includes(figure)).length).toBe(1)
  })
})
