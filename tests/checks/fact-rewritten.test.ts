// A fact that is now written in another way: said with its new form, and rewritten by its fix.
import { describe, expect, it } from 'vitest'
import { applied, offersOf } from './offers.ts'

const rewritten = (text: string): string | undefined => {
  const { offers } = offersOf(text, 'job/fact-unknown')
  const [offer] = offers
  return offer && applied(offer.document, offer.fix)
}

describe('winding-sensor of a motor', () => {
  it('is said to be a sensor block now', () => {
    const { findings } = offersOf('motor m {\n  winding-sensor: pt1000\n}\n', 'job/fact-unknown')
    expect(findings.find(({ check }) => check === 'job/fact-unknown')?.todo).toBe(
      'It is now written as `sensor winding { kind: pt1000 }`.',
    )
  })

  it('becomes one on its line', () => {
    expect(rewritten('motor m {\n  power: 5 kW\n  winding-sensor: pt1000\n}\n')).toBe(
      'motor m {\n  power: 5 kW\n  sensor winding { kind: pt1000 }\n}\n',
    )
  })

  it('becomes one on a line of its own, where it shares one', () => {
    const text = rewritten('drive main {\n  motor { winding-sensor: ntc  power: 5 kW }\n}\n') ?? ''
    expect(
      offersOf(text, 'job/fact-unknown').findings.filter(({ severity }) => severity === 'error'),
    ).toEqual([])
    expect(text).toContain('\n    sensor winding { kind: ntc }\n')
  })
})
