import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { fixed, titles } from '../../checks/offers.ts'
import { loopAt105, withDrop } from './with-drop.ts'

/** 15 kW at 92 % and 96 % from 84 V at the lowest: 15000 / 0.92 / 0.96 / 84 ≈ 202 A, P = U · I. */
const job = (conductor: string, { length = '2.5 m', fuse = '' } = {}) => `battery house {
  nominal: 96 V
  window:  84..108 V
}
drive main {
  motor main {
    power:        15 kW
    efficiency:   92 %
    voltage:      58 V
    power-factor: 0.9
  }
  controller { efficiency: 96 % }
  cable feed {
    from:       house
    to:         controller
    conductor:  ${conductor}
    length:     ${length}
    insulation: 105 degC
    place:      machinery-space
  }
${fuse}}
`

const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.filter((finding) => finding.check === check)
const codes = (text: string) => findingsOf(text, allChecks).findings.map(({ check }) => check)

/** Nominal sections in mm², IEC 60228:2004 table 1. */
const sections = [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240]
/** Even gauges and those above, AWG: the rows of 33 CFR 183.425 table 5. */
const gauges = ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1', '1/0', '2/0', '3/0', '4/0']

/** Whether a cable without a fuse is too thin for its load, or for every fuse that its load asks for. */
const isTooThin = (text: string): boolean =>
  codes(text).some((id) => id === 'cable/undersized' || id === 'cable/voltage-drop') ||
  titles(text, 'protection/none').length === 0

describe('the conductor offered', () => {
  it.each([
    ['cable/undersized', '2.5 m'],
    ['cable/undersized', '0.5 m'],
    ['cable/voltage-drop', '20 m'],
  ])('for %s at %s passes, and the section of IEC 60228 below it does not', (check, length) => {
    const text = job('25 mm2', { length })
    const [title = ''] = titles(text, check)
    const size = Number(/^Use (\S+) mm²$/.exec(title)?.[1])
    expect(sections).toContain(size)
    const after = codes(fixed(text, check, title))
    expect(after).not.toContain('cable/undersized')
    expect(after).not.toContain('cable/voltage-drop')
    expect(isTooThin(job(`${sections[sections.indexOf(size) - 1]} mm2`, { length }))).toBe(true)
  })

  it('is a wire gauge where the cable has one', () => {
    const text = job('4 AWG')
    const [title = ''] = titles(text, 'cable/undersized')
    const gauge = /^Use (\S+) AWG$/.exec(title)?.[1] ?? ''
    expect(gauges).toContain(gauge)
    expect(codes(fixed(text, 'cable/undersized', title))).not.toContain('cable/undersized')
    expect(isTooThin(job(`${gauges[gauges.indexOf(gauge) - 1]} AWG`))).toBe(true)
  })

  it('no longer says that it comes from the old drawing', () => {
    const text = job('25 mm2 [drawing "E-01"]')
    const [title = ''] = titles(text, 'cable/undersized')
    expect(fixed(text, 'cable/undersized', title)).not.toContain('E-01')
  })

  it('is none where no section that is made is enough', () => {
    expect(titles(job('95 mm2', { length: '90 m' }), 'cable/voltage-drop')).toEqual([])
  })

  it('may be larger than the tables of ampacity, whose largest row it carries at least', () => {
    expect(titles(job('95 mm2', { length: '40 m' }), 'cable/voltage-drop')).toEqual(['Use 185 mm²'])
  })
})

/** Rated currents of gG fuse-links in A, IEC 60269 (above 200 A by R10, from memory). */
const ratings = [6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630]
const fuse = (rating: number) => `  protection main-fuse {
    rating:   ${rating} A
    in: feed
  }
`
const faults = ['protection/below-load', 'protection/above-cable', 'protection/none']

describe('a conductor that needs a fuse', () => {
  // Two sizes carry the load; the smaller one is too thin for the next rating above 1.25 times it (33 CFR 183.455(c)(2), IEC 60269).
  it.each([
    ['with one', fuse(200)],
    ['from a battery', ''],
  ])('%s is made large enough for one', (_, of) => {
    const text = job('25 mm2', { fuse: of })
    const larger = fixed(text, 'cable/undersized', titles(text, 'cable/undersized')[0] ?? '')
    const check = of === '' ? 'protection/none' : 'protection/below-load'
    const [title = ''] = titles(larger, check)
    expect(title).toMatch(/250 A|315 A/)
    const after = codes(fixed(larger, check, title))
    expect(after.filter((id) => [...faults, 'cable/undersized'].includes(id))).toEqual([])
  })

  it('is the smallest that carries the load where it needs none: a phase cable', () => {
    // 15000 / (√3 · 58 · 0.9 · 0.92) ≈ 180 A. Of three together 50 mm² carries 160 A and 70 mm² 196 A (ISO 13297 table A.1, from memory;
    // 33 CFR 183.425 table 5, notes: 0.85 and 0.7): less than any rating of at least 225 A asks for.
    const phase = job('25 mm2', { length: '0.5 m' }).replace(
      'house\n    to:         controller',
      'controller\n    to:         main',
    )
    expect(titles(phase, 'cable/undersized')).toEqual(['Use 70 mm²'])
  })
})

describe('a fuse above its cable', () => {
  const above = (conductor: string, rating: number, nominal = '96 V', window = '84..108 V') =>
    found(
      job(conductor, { fuse: fuse(rating) })
        .replace('96 V', nominal)
        .replace('84..108 V', window),
      'protection/above-cable',
    )[0]

  // 50 mm² of 105 °C in a machinery space carries 229 A (ISO 13297 table A.1, from memory, × 0.85); 250 A is the next of IEC 60269.
  it('is held against the next standard rating, which is borne (33 CFR 183.455(c)(2))', () => {
    expect(above('50 mm2', 250)).toBeUndefined()
    expect(above('50 mm2', 251)).toMatchObject({
      message: 'The rating is 251 A; the cable allows at most 250 A.',
      detail: 'The cable can carry 229 A. The next standard rating above that is allowed.',
      limit: 'at most 250 A',
      source: { text: expect.stringMatching(/183\.455\(c\)\(2\).*IEC 60269/) },
    })
  })

  it('is held against half as much again below 50 V, which is borne (33 CFR 183.455(c)(1))', () => {
    expect(above('50 mm2', 344, '44 V', '40..48 V')).toBeUndefined()
    expect(above('50 mm2', 345, '44 V', '40..48 V')).toMatchObject({
      message: 'The rating is 345 A; the cable allows at most 344 A.',
      detail: 'The cable can carry 229 A. Below 50 V a rating up to 150 % of that is allowed.',
      limit: 'at most 344 A',
      source: { text: expect.stringMatching(/183\.455\(c\)\(1\)/) },
    })
  })
})

describe('a fuse below its load', () => {
  const below = (conductor: string) => found(job(conductor, { fuse: fuse(200) }), 'protection/below-load')[0]

  it('shows a load that gives the least rating when multiplied', () => {
    const load = withDrop(15000 / 0.92 / 0.96, 84, 2.5 * loopAt105(0.21)).toFixed(1)
    expect(below('95 mm2')?.detail).toContain(`1.25 times the continuous current of ${load} A`)
    expect(below('95 mm2')?.limit).toBe('at least 254 A')
  })

  it('asks for a larger cable where no rating fits, and only there', () => {
    for (const section of sections) {
      const text = job(`${section} mm2`, { fuse: fuse(200) })
      if (!codes(text).includes('protection/below-load')) continue
      const tooThin = below(`${section} mm2`)?.todo.includes('too little for any fuse')
      expect(titles(text, 'protection/below-load').length === 0).toBe(tooThin)
    }
  })
})

describe('the rating offered', () => {
  it.each([
    ['protection/below-load', fuse(200)],
    ['protection/above-cable', fuse(630)],
    ['protection/none', ''],
  ])('for %s is a standard one that fits, and the one below it opens in service', (check, of) => {
    const text = job('95 mm2', { fuse: of })
    const [title = ''] = titles(text, check)
    const amps = Number(/(\d+) A$/.exec(title)?.[1])
    expect(ratings).toContain(amps)
    const after = codes(fixed(text, check, title))
    expect(faults.filter((id) => after.includes(id))).toEqual([])
    const below = ratings[ratings.indexOf(amps) - 1] ?? 0
    expect(codes(job('95 mm2', { fuse: fuse(below) }))).toContain('protection/below-load')
  })

  it('is none where the cable is too thin for any', () => {
    expect(titles(job('25 mm2', { fuse: fuse(200) }), 'protection/below-load')).toEqual([])
    expect(titles(job('25 mm2'), 'protection/none')).toEqual([])
  })

  it('is none where it is not known what the cable carries', () => {
    const text = job('95 mm2', { fuse: fuse(200) }).replace('    conductor:  95 mm2\n', '')
    expect(codes(text)).toContain('protection/below-load')
    expect(titles(text, 'protection/below-load')).toEqual([])
  })

  it('is none for a rating that is stated elsewhere', () => {
    const common = 'protection common { rating: 200 A }\n'
    const text = common + job('95 mm2', { fuse: fuse(200).replace('rating:   200 A', 'like:     common') })
    expect(codes(text)).toContain('protection/below-load')
    expect(titles(text, 'protection/below-load')).toEqual([])
  })

  it('gets a name that nothing goes by', () => {
    const text = job('95 mm2').replace('drive main {', 'shaft feed-fuse { diameter: 35 mm }\ndrive main {')
    const [title = ''] = titles(text, 'protection/none')
    expect(fixed(text, 'protection/none', title)).toContain('protection feed-fuse-2 {')
  })
})

const map = (pairs: string) => `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    ${pairs}
  }
}
`

describe('a phase map', () => {
  it('is completed when one terminal is left on each side', () => {
    expect(fixed(map('A to U, C to W'), 'phases/incomplete', 'Add B to V')).toBe(
      map('A to U, C to W, B to V'),
    )
  })

  it('is not when two are left: which goes to which is not to be guessed', () => {
    expect(titles(map('A to U'), 'phases/incomplete')).toEqual([])
  })

  it('gets the one terminal that is free, or the one written in other letters', () => {
    expect(fixed(map('A to U, B to V, X to W'), 'phases/unknown-terminal', 'Write C')).toBe(
      map('A to U, B to V, C to W'),
    )
    expect(titles(map('A to U, b to V, X to W'), 'phases/unknown-terminal')).toEqual(['Write B'])
  })

  it('is completed by the two that are left, whatever else is wrong in it', () => {
    expect(titles(map('A to U, B to V, X to V'), 'phases/incomplete')).toEqual(['Add C to W'])
  })

  it('gets each end of a pair from its own side, though both are written alike', () => {
    const both = map('X to X, B to V, C to W')
    expect(fixed(both, 'phases/unknown-terminal', 'Write A')).toBe(map('A to X, B to V, C to W'))
    expect(fixed(both, 'phases/unknown-terminal', 'Write U')).toBe(map('X to U, B to V, C to W'))
    const apart = map('X to U, B to V, C to X')
    expect(fixed(apart, 'phases/unknown-terminal', 'Write W')).toBe(map('X to U, B to V, C to W'))
  })
})
