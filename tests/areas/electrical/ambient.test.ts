// Cables and fuses in warm air: √((Tc − Ta) / (Tc − 30)) from the tables of 30 °C, one factor for heat and never two.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { titles } from '../../checks/offers.ts'
import { resultsIn } from '../results-in.ts'

/** 8.4 kW at 84 V is 100 A. */
const job = (cable: string, fuse = '') => `battery b { nominal: 96 V  window: 84..108 V }
drive main {
  motor m { power: 8.4 kW  efficiency: 100 %  voltage: 50 V  power-factor: 1 }
  controller { input: 72..120 V  efficiency: 100 % }
  cable feed { from: b  to: controller  conductor: 2 AWG  bundled: 1  length: 1 m  design-current: 100 A  insulation: 105 degC  ${cable} }
  protection f { kind: fuse  rating: 125 A  in: feed  at: 0 mm  ${fuse} }
}
`
const figureOf = (text: string, id: string) => resultsIn(text).results.find(({ figure }) => figure.id === id)
const carries = (cable: string) => figureOf(job(cable), 'cable/ampacity')?.amount
const found = (text: string) => findingsOf(text, allChecks).findings.map(({ check }) => check)

describe('a cable in a stated ambient', () => {
  // 33 CFR 183.425 Table 5: 2 AWG of 105 °C can carry 210 A.
  it.each([
    ['place: open', 210],
    ['place: open  ambient: 55 degC', 210 * Math.sqrt(50 / 75)],
    ['ambient: 55 degC', 210 * Math.sqrt(50 / 75)],
    ['place: machinery-space', 210 * 0.85],
    ['place: machinery-space  ambient: 70 degC', 210 * Math.sqrt(35 / 75)],
    // No milder than the place itself.
    ['place: machinery-space  ambient: 35 degC', 210 * 0.85],
    ['place: open  ambient: 10 degC', 210],
  ])('%s', (cable, amps) => {
    expect(carries(cable)?.value).toBeCloseTo(amps, 6)
  })

  it('says which ambient counts where that is not the stated one', () => {
    expect(carries('place: machinery-space  ambient: 35 degC')?.assumptions).toContain(
      'ambient counts as 50 °C, that of the place: less is stated',
    )
    expect(carries('place: open  ambient: 55 degC')?.assumptions?.join()).not.toContain('ambient')
    expect(carries('ambient: 55 degC')?.assumptions?.join()).not.toContain('place is not stated')
  })

  it('is not worked out where its ambient is not known yet', () => {
    expect(carries('place: open  ambient: ?')).toBeUndefined()
  })

  it('is too thin in warm air for what it carries in cool air', () => {
    expect(found(job('place: open'))).not.toContain('cable/undersized')
    // 210 · √(15/75) = 93.9 A.
    expect(found(job('place: open  ambient: 90 degC'))).toContain('cable/undersized')
  })

  it.each(['105 degC', '110 degC', '221 degF'])(
    'carries nothing at %s, and one finding says so',
    (ambient) => {
      const text = job(`place: open  ambient: ${ambient}`)
      expect(carries(`place: open  ambient: ${ambient}`)?.value).toBe(0)
      expect(figureOf(text, 'protection/rating')?.verdict).not.toBe('within')
      const errors = findingsOf(text, allChecks).findings.filter(({ severity }) => severity === 'error')
      expect(errors.map(({ check }) => check)).toContain('cable/ambient-too-hot')
      expect(errors.map(({ check }) => check)).not.toContain('cable/undersized')
    },
  )

  it('lets nothing pass either where its load is not known', () => {
    const text = job('place: open  ambient: 110 degC').replace('power: 8.4 kW', '')
    expect(found(text)).toContain('cable/ambient-too-hot')
  })

  // NEC adds no factor for the place at a terminal: what fails only with one is a warning.
  it('warms its terminals too', () => {
    const text = job('place: open  ambient: 60 degC').replace(
      'input: 72..120 V',
      'input: 72..120 V  terminal-temperature: 75 degC',
    )
    // 170 · √(15/45) = 98.1 A.
    const [finding] = findingsOf(text, allChecks).findings.filter(
      ({ check }) => check === 'cable/terminal-temperature',
    )
    expect(finding).toMatchObject({ severity: 'warning', limit: 'at most 98 A' })
  })
})

describe('a fuse in a stated ambient', () => {
  // A fuse maker's guide: 0.5 % less for each kelvin above 40 °C. 1.25 · 100 A = 125 A.
  it.each([
    ['', 125],
    ['ambient: 40 degC', 125],
    ['ambient: 20 degC', 125],
    ['ambient: 60 degC', 125 / 0.9],
    ['place: machinery-space', 125 / 0.95],
    ['place: machinery-space  ambient: 45 degC', 125 / 0.95],
    ['place: machinery-space  ambient: 60 degC', 125 / 0.9],
    ['place: open  ambient: 60 degC', 125 / 0.9],
  ])('needs a larger rating for its load: %j', (fuse, low) => {
    const text = job('place: open', fuse)
    const { amount, verdict } = figureOf(text, 'protection/rating') ?? {}
    expect(amount?.limit?.low).toBeCloseTo(low, 9)
    expect(verdict).toBe(low > 125 ? 'outside' : 'within')
    expect(found(text).includes('protection/below-load')).toBe(low > 125)
  })

  const warm = job('place: open', 'ambient: 60 degC')
  const finding = () =>
    findingsOf(warm, allChecks).findings.find(({ check }) => check === 'protection/below-load')

  it('says whose figure that is, and what it assumes', () => {
    expect(finding()).toMatchObject({ limit: 'at least 139 A' })
    expect(finding()?.detail).toContain('over the 90 % of its rating that it carries at 60 °C')
    expect(finding()?.assumptions?.join()).toContain('one fuse maker’s guide')
    expect(figureOf(warm, 'protection/rating')?.amount?.assumptions?.join()).toContain('maker’s guide')
  })

  it('is offered a rating that carries the load in that heat', () => {
    expect(titles(warm, 'protection/below-load')).toEqual(['Use 150 A'])
    // 1.25 · 100 A / 0.7 = 178.6 A.
    expect(titles(job('place: open', 'ambient: 100 degC'), 'protection/below-load')).toEqual(['Use 200 A'])
  })

  it('needs a larger cable where no rating suits both', () => {
    // 6 AWG of 105 °C can carry 120 A: 125 A is allowed above it. 1.25 · 100 A / 0.9 is 139 A.
    const text = warm.replace('2 AWG', '6 AWG').replace('rating: 125 A', 'rating: 110 A')
    expect(titles(text, 'protection/below-load')).toEqual([])
    expect(titles(text.replace('ambient: 60 degC', ''), 'protection/below-load')).toEqual(['Use 125 A'])
  })

  it.each(['ambient: ?', 'ambient: 60 m', 'place: ?'])('proves nothing with %s', (fuse) => {
    const { verdict } = figureOf(job('place: open', fuse), 'protection/rating') ?? {}
    expect(verdict).not.toBe('within')
    // What it does not carry in cool air it does not carry in warm air.
    expect(found(job('place: open', fuse).replace('125 A', '110 A'))).toContain('protection/below-load')
  })
})
