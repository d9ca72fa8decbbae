// A caution stands once a danger and file, where the danger is. Common practice, no source, but for the thresholds, which have theirs in the table.
import { describe, expect, it } from 'vitest'
import type { dangers } from '../../../server/src/areas/common/dangers.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { caution } from '../../checks/wording.ts'
import { randomFrom } from '../../fuzz/random.ts'
import { randomElectrics } from '../electrical/random-electrics.ts'
import { resultsIn } from '../results-in.ts'

const job = 'job "Launch" { vessel: "Launch 07" }\n'
const found = (text: string, danger: keyof typeof dangers) =>
  findingsOf(text, allChecks).findings.filter(({ check }) => check === `caution/${danger}`)
const line = (text: string, danger: keyof typeof dangers) => found(job + text, danger)[0]?.message

describe('a caution', () => {
  it('stands once a file, at the worst place, and names the others', () => {
    const text = `${job}battery a { nominal: 96 V  window: 84..108 V }
battery b { nominal: 144 V  window: 126..162 V }
drive d { }`
    const [one, ...more] = found(text, 'live-voltage')
    expect(more).toEqual([])
    expect(one?.message).toContain('battery b reaches 162 V')
    expect(one?.related?.map(({ message }) => message)).toEqual([
      expect.stringContaining('battery a reaches 108 V'),
    ])
  })

  it('names no more than twenty others, and says how many there are', () => {
    const batteries = (count: number) =>
      Array.from({ length: count }, (_, i) => `battery b${i} { nominal: 96 V  window: 84..108 V }\n`).join('')
    const [twenty] = found(`${job}${batteries(21)}drive d { }`, 'live-voltage')
    expect(twenty?.related).toHaveLength(20)
    expect(twenty?.detail).not.toContain('not listed')
    const [more] = found(`${job}${batteries(23)}drive d { }`, 'live-voltage')
    expect(more?.related).toHaveLength(20)
    expect(more?.detail).toContain('2 more places are not listed.')
  })

  it.each([
    ['live-voltage', 'battery b { nominal: 24 V  window: 20..29.9 V }\ndrive d { }', undefined],
    ['live-voltage', 'battery b { nominal: 24 V  window: 20..30 V }\ndrive d { }', /30 V/],
    ['live-voltage', 'battery b { nominal: 24 V }\ndrive d { }', /30 V/],
    ['live-voltage', 'battery b { nominal: 48 V  window: 44..57 V }\ndrive d { }', /57 V/],
    ['live-voltage', 'battery b { nominal: 24 V  window: min 90 V }\ndrive d { }', /90 V/],
    ['live-voltage', 'battery b { nominal: 48 V }\ndrive d { }', /60 V/],
    ['live-voltage', 'battery b { }\ndrive d { }', /not known/],
    ['live-voltage', 'battery b { nominal: 24 V  window: 20 }\ndrive d { }', /not known/],
    ['stored-charge', 'drive d { controller { input: 72..120 V } }', /not known/],
    // ½ · 1 mF · (20 V)² = 0.2 J
    ['stored-charge', 'drive d { controller { input: 10..20 V  capacitance: 1 mF } }', /0\.2 J/],
    ['stored-charge', 'drive d { controller { input: 10..19 V  capacitance: 1 mF } }', undefined],
    ['short-circuit', 'battery b { nominal: 48 V }\ndrive d { }', /not known/],
    ['heavy-machine', 'drive d { motor { power: 1 kW } }', /not known/],
    ['heavy-machine', 'drive d { motor { power: 1 kW  mass: 24.9 kg } }', undefined],
    ['heavy-machine', 'drive d { motor { power: 1 kW  mass: 25 kg } }', /25 kg/],
    [
      'heavy-machine',
      'drive d { motor { power: 1 kW  mass: 18 kg }  gear { ratio: 2 } }',
      /18 kg \(39\.7 lb\); the weight of the gear/,
    ],
    ['open-hull', 'drive d { seal { } }', /water can enter/],
    ['open-hull', 'drive d { seal { }  reading a { taken: 2026-03-01  afloat: yes } }', /water can enter/],
    ['open-hull', 'drive d { seal { }  reading a { taken: 2026-03-01  afloat: no } }', undefined],
    ['heavy-machine', 'drive d { motor { mass: 18 kg }  gear { ratio: 2  mass: 6.9 kg } }', undefined],
    [
      'heavy-machine',
      'drive d { motor { mass: 18 kg }  gear { ratio: 2  mass: 7 kg } }',
      /motor and the gear weigh 25 kg/,
    ],
    [
      'heavy-machine',
      'drive d { motor { mass: 62 kg }  gear { ratio: 2 } }',
      /weighs 62 kg .*, without the gear/,
    ],
    ['heavy-machine', 'drive d { gear { ratio: 2 } }', /not known/],
    ['heavy-machine', 'drive d { motor { mass: 9 kg }  propeller { mass: 24.9 kg } }', undefined],
    [
      'heavy-machine',
      'drive d { motor { mass: 9 kg }  propeller { mass: 85 kg } }',
      /propeller weighs 85 kg/,
    ],
    ['heavy-machine', 'drive d { motor { mass: 62 kg }  propeller { mass: 40 kg } }', /motor weighs 62 kg/],
    // π/4 · (50 mm)² · 3 m · 8900 kg/m³ = 52.4 kg
    [
      'heavy-machine',
      'drive d { motor { mass: 9 kg }  shaft { diameter: 50 mm  length: 3 m } }',
      /shaft weighs up to 52 kg/,
    ],
    ['heavy-machine', 'drive d { motor { mass: 9 kg }  shaft { diameter: 25 mm  length: 2 m } }', undefined],
    ['turning-shaft', 'drive d { propeller { diameter: 420 mm } }', /can turn/],
  ] as const)(
    'counts from its threshold, and where the figure is not known: %s, %s',
    (danger, text, expected) => {
      if (expected) expect(line(text, danger)).toMatch(expected)
      else expect(line(text, danger)).toBeUndefined()
    },
  )

  it.each([
    ['live-voltage', 'controller { input: 72..120 V }', /controller accepts up to 120 V DC/],
    ['live-voltage', 'controller { input: 10..29 V }', undefined],
    // √2 · 58 V = 82.0 V
    ['live-voltage', 'motor { voltage: 58 V }', /motor needs at least 82 V DC/],
    ['live-voltage', 'motor { voltage: 12 V }', /needs at least 17 V/],
    [
      'live-voltage',
      'controller { input: 10..29 V }  motor { voltage: 400 V }',
      /motor needs at least 566 V/,
    ],
    ['live-voltage', 'controller { input: 72..120 V }  motor { voltage: 58 V }', /controller accepts/],
    ['live-voltage', 'motor { power: 15 kW }', /voltage of this drive is not known/],
    ['live-voltage', 'protection f { kind: fuse }', /not known/],
    ['live-voltage', 'cable feed { }', /not known/],
    ['live-voltage', 'propeller { }', undefined],
    ['short-circuit', 'motor { power: 15 kW }', /not known: the job has no battery/],
    ['short-circuit', 'controller { input: 10..29 V }', /not known/],
    ['short-circuit', 'propeller { }', undefined],
    ['stored-charge', 'motor { power: 15 kW }', /not known/],
    ['stored-charge', 'controller { capacitance: 6.8 mF }', /not known/],
    ['stored-charge', 'controller { input: 72..120 V }', /not known/],
    // ½ · 6.8 mF · (82.0 V)² = 22.9 J
    ['stored-charge', 'controller { capacitance: 6.8 mF }  motor { voltage: 58 V }', /at least 22\.9 J/],
    ['stored-charge', 'controller { capacitance: 0.1 mF }  motor { voltage: 12 V }', /not known/],
    ['stored-charge', 'propeller { }', undefined],
  ] as const)('of a job without a battery: %s, %s', (danger, drive, expected) => {
    if (expected) expect(line(`drive d { ${drive} }`, danger)).toMatch(expected)
    else expect(line(`drive d { ${drive} }`, danger)).toBeUndefined()
  })

  it('of a machine that the battery does not suit goes by the higher voltage', () => {
    const with48 = (drive: string) =>
      line(`battery b { nominal: 24 V  window: 21..29 V }\ndrive d { ${drive} }`, 'live-voltage')
    expect(with48('controller { input: 20..60 V }  motor { voltage: 16 V }')).toBeUndefined()
    expect(with48('controller { input: 20..60 V }  motor { voltage: 230 V }')).toContain('at least 325 V DC')
  })

  it('of stored charge says how long its discharge resistance takes, if the job states that: RC ln(V/30)', () => {
    const stored = (facts: string, rest = 'battery b { nominal: 96 V  window: 84..108 V }') =>
      found(`${job}${rest}\ndrive d { controller { ${facts} } }`, 'stored-charge')[0]?.detail
    // 68 s · ln(108/30) = 87.1 s
    expect(stored('capacitance: 6.8 mF  discharge-resistance: 10 kohm')).toMatch(
      /discharge resistance takes 87\.1 s to bring it down to 30 V\. It can fail/,
    )
    expect(stored('capacitance: 6.8 mF')).not.toContain('discharge')
    expect(stored('discharge-resistance: 10 kohm')).not.toContain('takes')
    // What feeds it is not stated: √2 · 58 V is the least, 68 s · ln(82.02/30) = 68.4 s.
    expect(
      found(
        `${job}drive d { controller { capacitance: 6.8 mF  discharge-resistance: 10 kohm }  motor { voltage: 58 V } }`,
        'stored-charge',
      )[0]?.detail,
    ).toContain('takes at least 68.4 s')
  })

  it('the time until the charge may be touched is a figure, for dry skin from 60 V and for wet from 30 V', () => {
    const text = `${job}battery b { nominal: 96 V  window: 84..108 V }
drive d { controller { capacitance: 6.8 mF  discharge-resistance: 10 kohm } }`
    const times = resultsIn(text).results.filter(({ figure: { id } }) => id === 'caution/discharge-time')
    expect(times.map(({ amount: { key, value } }) => [key?.['skin'], value.toFixed(2)])).toEqual([
      ['dry', (68 * Math.log(108 / 60)).toFixed(2)],
      ['wet', (68 * Math.log(108 / 30)).toFixed(2)],
    ])
  })

  it('of a battery in another file stands in the drive that it feeds', () => {
    const stock = { 'stock.wright': 'battery house { nominal: 96 V  window: 84..108 V }\n' }
    const text = `use "stock.wright"\n${job}drive d {\n  battery: house\n  motor { }\n}\n`
    const { findings } = findingsOf(text, allChecks, { others: stock })
    const of = (danger: string) => findings.filter(({ check }) => check === `caution/${danger}`)
    expect(of('live-voltage').map(({ message }) => message)).toEqual([
      'The battery house reaches 108 V DC and cannot be switched off.',
    ])
    expect(of('short-circuit').map(({ message }) => message)).toEqual([
      'The short-circuit current of battery house is not known.',
    ])
  })

  it('is not given in a library, where nobody works', () => {
    const parts = 'battery b { nominal: 96 V }\nmotor m { power: 15 kW }\ndrive d { like: e  controller { } }'
    expect(findingsOf(parts, allChecks).findings.filter(({ check }) => check.startsWith('caution/'))).toEqual(
      [],
    )
  })

  it('does not follow the status of the job', () => {
    const drive = 'battery b { nominal: 96 V  window: 84..108 V }\ndrive d { controller { } }'
    const at = (status: string) =>
      findingsOf(`job "L" { vessel: "L"  status: ${status} }\n${drive}`, allChecks)
        .findings.filter(({ check }) => check.startsWith('caution/'))
        .map(({ check, message }) => [check, message])
    expect(at('as-built')).toEqual(at('draft'))
    expect(at('draft')).not.toEqual([])
  })

  it('is in no finding of another kind, and at most once a danger, in 200 electrical jobs', () => {
    const random = randomFrom(20_261_130)
    let [all, repeated] = [0, 0]
    for (let i = 0; i < 200; i++) {
      const { findings } = findingsOf(randomElectrics(random), allChecks)
      const cautions = findings.filter(({ check }) => check.startsWith('caution/')).map(({ check }) => check)
      expect(new Set(cautions).size).toBe(cautions.length)
      const others = findings.filter(({ check }) => !check.startsWith('caution/'))
      all += others.length
      repeated += others.filter(({ message, detail = '', todo }) =>
        caution.test(message + detail + todo),
      ).length
    }
    expect(all).toBeGreaterThan(600)
    expect(repeated).toBe(0)
  })
})
