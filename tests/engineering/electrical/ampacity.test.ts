import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Ampacity, ampacity } from '../../../server/src/engineering/electrical/ampacity.ts'
import { readTable, usTable5 } from '../../../server/src/engineering/electrical/ampacity-tables.ts'
import type { ConductorSection } from '../../../server/src/engineering/electrical/conductor.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

type Given = Parameters<typeof ampacity>[0]

const awg = (n: number): ConductorSection => ({ system: 'awg', n })
const metric = (mm2: number): ConductorSection => ({ system: 'metric', mm2 })

const carried = (given: Partial<Given> & Pick<Given, 'section'>): Ampacity =>
  ampacity({ insulationC: 105, place: 'open', bundled: 1, ...given })

describe('ampacity of AWG conductors', () => {
  // 33 CFR 183.425 Table 5, single conductors at 30 °C, columns 60, 75, 80, 90, 105, 125, 200 °C.
  it.each([
    [18, [10, 10, 15, 20, 20, 25, 25]],
    [16, [15, 15, 20, 25, 25, 30, 35]],
    [14, [20, 20, 25, 30, 35, 40, 45]],
    [12, [25, 25, 35, 40, 45, 50, 55]],
    [10, [40, 40, 50, 55, 60, 70, 70]],
    [8, [55, 65, 70, 70, 80, 90, 100]],
    [6, [80, 95, 100, 100, 120, 125, 135]],
    [4, [105, 125, 130, 135, 160, 170, 180]],
    [3, [120, 145, 150, 155, 180, 195, 210]],
    [2, [140, 170, 175, 180, 210, 225, 240]],
    [1, [165, 195, 210, 210, 245, 265, 280]],
    [0, [195, 230, 245, 245, 285, 305, 325]],
    [-1, [225, 265, 285, 285, 330, 355, 370]],
    [-2, [260, 310, 330, 330, 385, 410, 430]],
    [-3, [300, 360, 385, 385, 445, 475, 510]],
  ])('%i AWG is as in 33 CFR 183.425 Table 5', (n, printed) => {
    const read = [60, 75, 80, 90, 105, 125, 200].map((insulationC) =>
      carried({ section: awg(n), insulationC }),
    )
    expect(read.map(({ amps }) => amps)).toEqual(printed)
    for (const { confidence, factors, table } of read) {
      expect({ confidence, factors, table }).toEqual({
        confidence: 'confirmed',
        factors: [],
        table: '33 CFR 183.425 Table 5',
      })
    }
  })

  // UL 1426 boat-cable table, 105 °C: outside and inside the engine space, single, 3, 4 to 6 and 7 to 24
  // bundled.
  it.each([
    [6, ['120', '102', '84', '71.4', '72', '61.2', '60', '51']],
    [2, ['210', '178.5', '147', '125', '126', '107.1', '105', '89.3']],
    [-1, ['330', '280.5', '231', '196.4', '198', '168.3', '165', '140.3']],
    [-3, ['445', '378.3', '311.5', '264.8', '267', '227', '222.5', '189.1']],
  ])('%i AWG, 105 °C, derated as in the UL 1426 boat-cable table', (n, printed) => {
    const read = [1, 3, 4, 7].flatMap((bundled) =>
      (['open', 'machinery-space'] as const).map(
        (place) => carried({ section: awg(n), place, bundled }).amps,
      ),
    )
    for (const [i, amps] of read.entries()) asPrinted(amps, printed[i] ?? '')
  })

  it('4/0, 105 °C, engine space, 3 bundled: 264.775 A, printed 264.8 (UL 1426 boat-cable table)', () => {
    const result = carried({ section: awg(-3), place: 'machinery-space', bundled: 3 })
    exactly(result.amps, 264.775)
    asPrinted(result.amps, '264.8')
    expect(result.factors.map(({ value }) => value)).toEqual([0.85, 0.7])
    expect(result.confidence).toBe('confirmed')
  })

  it('2/0, 105 °C, engine space: 0.85 × 330 = 280.5, printed 280 A (33 CFR 183.425 note 1 in two tables)', () => {
    exactly(carried({ section: awg(-1), place: 'machinery-space' }).amps, 280.5)
  })

  it('reads insulation between columns in the next lower, and says so', () => {
    const result = carried({ section: awg(4), insulationC: 104 })
    expect(result.amps).toBe(135)
    expect(result.assumptions).toContainEqual({ type: 'lower-column', insulationC: 104, columnC: 90 })
  })

  it('reads a class that came through kelvins in its own column', () => {
    for (const insulationC of [60, 75, 80, 90, 105, 125, 200]) {
      const throughKelvin = insulationC + 273.15 - 273.15
      expect(carried({ section: awg(4), insulationC: throughKelvin }).amps).toBe(
        carried({ section: awg(4), insulationC }).amps,
      )
    }
  })

  it('5 AWG, which has no row, lies between 6 and 4 in proportion to the section', () => {
    // 16.77 mm² between 13.30 (120 A) and 21.15 mm² (160 A), ASTM B258 sections.
    const { amps, assumptions } = carried({ section: awg(5) })
    expect(amps).toBeCloseTo(120 + (40 * (16.77 - 13.3)) / (21.15 - 13.3), 1)
    expect(assumptions.some(({ type }) => type === 'between-rows')).toBe(true)
  })
})

describe('ampacity of metric conductors', () => {
  // ISO 10133:2012 / ISO 13297:2020 Table A.1, from memory, unverified. It is used where it is below Table 5,
  // so that no figure from memory can make a cable look better than the public table does.
  it.each([
    [2.5, 105, 35],
    [16, 105, 130],
    [35, 105, 210],
    [50, 105, 270],
    [70, 105, 330],
    [95, 105, 390],
    [35, 200, 240],
  ])('%s mm², %i °C: %s A (ISO 13297 Table A.1, from memory)', (mm2, insulationC, printed) => {
    expect(carried({ section: metric(mm2), insulationC })).toMatchObject({
      amps: printed,
      table: 'ISO 13297 Table A.1',
      confidence: 'from memory',
    })
  })

  // 13.30 mm² (6 AWG) carries 125 A and 21.15 mm² (4 AWG) 170 A, so 16 mm² carries 140.5 A.
  it('16 mm² at 125 °C, 150 A from memory, is held to Table 5', () => {
    const { amps, table, assumptions } = carried({ section: metric(16), insulationC: 125 })
    expect(table).toBe('33 CFR 183.425 Table 5')
    asPrinted(amps, '140.5')
    expect(assumptions.some(({ type }) => type === 'table-not-lower')).toBe(true)
  })

  it('120 and 150 mm² are past Table 5: as from memory, and said to be so', () => {
    for (const [mm2, amps] of [
      [120, 450],
      [150, 475],
    ] as const) {
      const result = carried({ section: metric(mm2) })
      expect(result).toMatchObject({ amps, confidence: 'from memory' })
      expect(result.assumptions.some(({ type }) => type === 'table-alone')).toBe(true)
    }
  })

  // 150 mm², 105 °C: 475 A (ISO 13297 Table A.1, from memory): a larger conductor carries at least that.
  it.each([185, 240, 1000])(
    '%s mm² is larger than every row: the largest is used, and said to be so',
    (mm2) => {
      const result = carried({ section: metric(mm2) })
      expect(result).toMatchObject({ amps: 475, tables: 'above' })
      expect(result.assumptions.some(({ type }) => type === 'above-rows')).toBe(true)
    },
  )

  // 18 AWG (0.823 mm²), 105 °C: 20 A (33 CFR 183.425 Table 5): a smaller conductor carries less than that.
  it.each([0.82, 0.75, 0.5, 0.1])(
    '%s mm² is smaller than every row: the smallest is only an upper bound',
    (mm2) => {
      const result = carried({ section: metric(mm2) })
      expect(result).toMatchObject({ amps: 20, tables: 'below' })
      expect(result.assumptions.some(({ type }) => type === 'below-rows')).toBe(true)
    },
  )

  it.each([19, 26, 40])('and so is that of %i AWG', (n) => {
    expect(carried({ section: awg(n) })).toMatchObject({ amps: 20, tables: 'below' })
  })

  it.each([0.83, 1, 150])('%s mm² is in the tables', (mm2) => {
    expect(carried({ section: metric(mm2) }).tables).toBe('in')
  })

  it('1 mm², below the ISO rows, is Table 5 between 18 and 16 AWG', () => {
    const { amps, table } = carried({ section: metric(1) })
    expect(table).toBe('33 CFR 183.425 Table 5')
    expect(amps).toBeGreaterThan(20)
    expect(amps).toBeLessThan(25)
  })

  it('takes the stricter bundling set, and says so', () => {
    const { amps, assumptions } = carried({ section: metric(35), bundled: 3 })
    expect(amps).toBe(147)
    expect(assumptions.some(({ type }) => type === 'bundling-us')).toBe(true)
  })
})

describe('what a figure rests on', () => {
  // 33 CFR 183.425 Table 5 is for 30 °C; its note 1 puts an engine space at 50 °C.
  it('is only the ambient where the figure is a row of the public table', () => {
    expect(carried({ section: awg(4) }).assumptions).toEqual([{ type: 'ambient', ambientC: 30 }])
    expect(carried({ section: awg(4), place: 'machinery-space' }).assumptions).toEqual([
      { type: 'ambient', ambientC: 50 },
    ])
  })

  // Recent ABYC E-11 (from memory) derates a DC pair; the note of Table 5 begins at three.
  it('is said of two conductors together, which the US set does not derate', () => {
    const pair = carried({ section: awg(4), bundled: 2 })
    expect(pair.factors).toEqual([])
    expect(pair.assumptions).toEqual([{ type: 'ambient', ambientC: 30 }, { type: 'pair-not-derated' }])
    expect(carried({ section: awg(4), bundled: 3 }).assumptions).toEqual([
      { type: 'ambient', ambientC: 30 },
      { type: 'bundling-us' },
    ])
  })

  it('is memory as soon as the table or one factor is', () => {
    const iso = carried({ section: metric(35) })
    expect(iso.assumptions).toEqual([
      { type: 'ambient', ambientC: 30 },
      { type: 'table-lower', table: 'ISO 13297 Table A.1', than: '33 CFR 183.425 Table 5' },
    ])
    expect(iso.source).toMatch(/105 °C column, from memory$/)
    const us = carried({ section: awg(4), insulationC: 80, place: 'machinery-space' })
    expect(us.source).toMatch(/80 °C column$/)
    expect(us.factors.map(({ confidence }) => confidence)).toEqual(['from memory'])
    expect(us.confidence).toBe('from memory')
  })

  // 16 AWG (1.309 mm², ASTM B258) carries 15 A and 14 AWG 20 A at 60 °C; 1.5 mm² 12 A (ISO 13297 Table A.1, from memory).
  it('a size below the ISO rows alone is within the tables', () => {
    expect(carried({ section: metric(1.4), insulationC: 60 })).toMatchObject({ amps: 12, tables: 'in' })
  })

  it('is no table for insulation below its lowest column', () => {
    expect(() => readTable(usTable5, 21.15e-6, 59)).toThrow(OutOfRange)
  })
})

describe('laws of ampacity', () => {
  const insulation = fc.double({ min: 60, max: 250, noNaN: true })
  const place = fc.constantFrom('open' as const, 'machinery-space' as const)
  const bundled = fc.integer({ min: 1, max: 40 })
  const mm2 = fc.oneof(
    fc.double({ min: 0.01, max: 3, noNaN: true }),
    fc.double({ min: 0.9, max: 1000, noNaN: true }),
  )
  const gauge = fc.integer({ min: -3, max: 40 })
  const section = fc.oneof(mm2.map(metric), gauge.map(awg))

  it('more copper never carries less', () => {
    fc.assert(
      fc.property(
        mm2,
        mm2,
        gauge,
        gauge,
        insulation,
        place,
        bundled,
        (a, b, m, n, insulationC, where, count) => {
          const at = (s: ConductorSection) =>
            carried({ section: s, insulationC, place: where, bundled: count }).amps
          expect(at(metric(Math.max(a, b)))).toBeGreaterThanOrEqual(at(metric(Math.min(a, b))))
          expect(at(awg(Math.min(m, n)))).toBeGreaterThanOrEqual(at(awg(Math.max(m, n))))
        },
      ),
    )
  })

  it('warmer insulation never carries less', () => {
    fc.assert(
      fc.property(section, insulation, insulation, place, bundled, (size, a, b, where, count) => {
        const at = (insulationC: number) =>
          carried({ section: size, insulationC, place: where, bundled: count }).amps
        expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)))
      }),
    )
  })

  it('a machinery space and company take from it', () => {
    fc.assert(
      fc.property(section, insulation, bundled, bundled, (size, insulationC, a, b) => {
        const at = (where: 'open' | 'machinery-space', count: number) =>
          carried({ section: size, insulationC, place: where, bundled: count }).amps
        expect(at('machinery-space', a)).toBeLessThan(at('open', a))
        expect(at('open', Math.max(a, b))).toBeLessThanOrEqual(at('open', Math.min(a, b)))
      }),
    )
  })

  it('a metric conductor never carries more than Table 5 gives its section', () => {
    // 107.2 mm² (4/0, ASTM B258) at 105 °C carries 445 A, 53.48 mm² (1/0) 285 A.
    fc.assert(
      fc.property(fc.double({ min: 53.48, max: 107.2, noNaN: true }), (size) => {
        expect(carried({ section: metric(size) }).amps).toBeLessThanOrEqual(445)
      }),
    )
    expect(carried({ section: metric(53.47) }).amps).toBeLessThanOrEqual(285)
  })
})

describe('bad numbers', () => {
  it.each(badNumbers)('%s is refused', (bad) => {
    expect(() => carried({ section: metric(bad) })).toThrow(OutOfRange)
    expect(() => carried({ section: awg(4), insulationC: bad })).toThrow(OutOfRange)
    expect(() => carried({ section: awg(4), bundled: bad })).toThrow(OutOfRange)
  })

  it.each([59.9, 20, 378.15])('insulation of %s °C is refused', (insulationC) => {
    expect(() => carried({ section: metric(35), insulationC })).toThrow(OutOfRange)
    expect(() => carried({ section: metric(185), insulationC })).toThrow(OutOfRange)
  })
})
