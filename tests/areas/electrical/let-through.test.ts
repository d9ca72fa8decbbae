// Every conductor against what protects it where it begins and where its section falls: 33 CFR 183.455(a), (b).
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { applied, offersOf } from '../../checks/offers.ts'

const bank = (name = 'b') =>
  `battery ${name} { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }\n`
const cable = (name: string, from: string, to: string, area = '95 mm2', length = '1 m') =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: ${area}  length: ${length}  insulation: 105 degC  place: open }\n`
const fuse = (name: string, amps: number, more = '') =>
  `protection ${name} { kind: fuse  rating: ${amps} A  interrupts: 20 kA  voltage: 125 V ${more} }\n`
const drive = (...inside: readonly string[]) =>
  `drive d {\n  controller { input: 72..120 V }\n${inside.join('')}}\n`

/** What is found of one check, by the block it stands in. */
const at = (text: string, check: string) => {
  const { findings } = findingsOf(text, allChecks)
  return findings
    .filter((finding) => finding.check === check)
    .map(({ at: { section, span }, message }) => {
      const before = section.text.slice(0, span.end)
      return `${[...before.matchAll(/(?:cable|protection) (\S+)/g)].at(-1)?.[1]}: ${message}`
    })
}
const unprotected = (text: string) => at(text, 'protection/none').map((one) => one.split(':')[0])
const behind = (text: string) => at(text, 'cable/behind-large-fuse')

describe('a thin conductor behind a large fuse', () => {
  it('is found where no fuse is where its section falls', () => {
    const text =
      bank() + drive(cable('lead', 'b', 'f'), fuse('f', 400), cable('feed', 'f', 'controller', '4 mm2'))
    expect(unprotected(text)).toEqual([])
    // 4 mm², 105 °C: ISO 10133:2012 Table A.1 45 A (from memory); the next R10 rating is 50 A.
    expect(behind(text)).toEqual(['feed: It lies behind a fuse or breaker of 400 A; it allows at most 50 A.'])
  })

  it('is found in each branch of a bus that is too thin, and in none that has its own fuse', () => {
    const text =
      bank() +
      drive(
        cable('lead', 'b', 'f'),
        fuse('f', 400),
        'controller c { input: 72..120 V }\ncontroller e { input: 72..120 V }\ncontroller g { input: 72..120 V }\n',
        cable('thin', 'f', 'c', '4 mm2'),
        cable('fused', 'f', 'e', '4 mm2'),
        fuse('own', 40, 'in: fused'),
        cable('wide', 'f', 'g', '120 mm2'),
      )
    expect(behind(text).map((one) => one.split(':')[0])).toEqual(['thin'])
  })

  it('is found behind a controller that the current goes on from', () => {
    const text =
      bank() +
      `drive d {
  controller c { input: 72..120 V }
  controller e { input: 72..120 V }
${cable('feed', 'b', 'c')}${fuse('f', 315, 'in: feed')}${cable('on', 'c', 'e', '4 mm2').replace('place', 'system: dc  place')}}\n`
    expect(behind(text)).toEqual(['on: It lies behind a fuse or breaker of 315 A; it allows at most 50 A.'])
  })

  it('counts the fuses of all banks on one bus', () => {
    const text =
      bank() +
      bank('s') +
      drive(
        cable('lead', 'b', 'f'),
        fuse('f', 250),
        cable('lead-s', 's', 'g'),
        fuse('g', 250),
        cable('to-bus', 'f', 'controller', '120 mm2'),
        cable('to-bus-s', 'g', 'controller', '120 mm2'),
      )
    // Each cable is fed by its own fuse from one end and by the other one from the controller: 250 A, and 120 mm² allows them.
    expect(behind(text)).toEqual([])
    const bus = text.replace('to: controller', 'to: h').replace('to: controller', 'to: h')
    const joined = bus.replace(
      'drive d {\n',
      `drive d {\n${fuse('h', 630)}${cable('feed', 'h', 'controller', '95 mm2')}`,
    )
    // 630 A on the bus lets both fuses through: 500 A; 95 mm², 105 °C: ISO 10133:2012 Table A.1 390 A (from memory).
    expect(behind(joined)).toEqual([
      'feed: It lies behind fuses or breakers of 500 A together; it allows at most 390 A.'.replace(
        'protects',
        'protect',
      ),
    ])
  })

  it('is not found where a rating is not known: nothing is claimed then', () => {
    const text =
      bank() +
      drive(
        cable('lead', 'b', 'f'),
        'protection f { kind: fuse }\n',
        cable('feed', 'f', 'controller', '4 mm2'),
      )
    expect(behind(text)).toEqual([])
    expect(unprotected(text)).toEqual([])
  })

  it("is held against its share where cables lie side by side: by section and length, Ohm's law", () => {
    const pair = (area: string, length: string) =>
      bank() +
      drive(
        cable('lead', 'b', 'f', '120 mm2'),
        fuse('f', 400),
        cable('one', 'f', 'controller', '50 mm2', '2 m'),
        cable('two', 'f', 'controller', area, length),
      )
    // 50 mm², 105 °C: ISO 10133:2012 Table A.1 270 A (from memory). Half of 400 A is 200 A; of 2 m and 8 m side by side the short one takes 4/5.
    expect(behind(pair('50 mm2', '2 m'))).toEqual([])
    expect(behind(pair('50 mm2', '8 m'))).toEqual([
      'one: It takes 320 A behind a fuse or breaker of 400 A; it allows at most 270 A.',
    ])
    expect(behind(pair('10 mm2', '2 m'))).toEqual([
      'one: It takes 334 A behind a fuse or breaker of 400 A; it allows at most 270 A.',
    ])
  })

  it('is no share of a cable with a fuse of its own, which leaves all of it to the other when it opens', () => {
    const text =
      bank() +
      drive(
        cable('lead', 'b', 'f', '120 mm2'),
        fuse('f', 400),
        cable('one', 'f', 'controller', '50 mm2', '2 m'),
        cable('two', 'f', 'controller', '50 mm2', '2 m'),
        fuse('own', 100, 'in: one'),
      )
    // And a fault in the one with the fuse is fed by the other from the far end.
    expect(behind(text)).toEqual(
      ['one', 'two'].map(
        (name) => `${name}: It lies behind a fuse or breaker of 400 A; it allows at most 315 A.`,
      ),
    )
  })

  it('is found in three cables side by side with a fuse at one end of each: the others feed a fault in one', () => {
    const feed = (n: number) =>
      cable(`k${n}`, 'b', 'controller', '50 mm2', '2 m') + fuse(`f${n}`, 250, `in: k${n}`)
    // IEC 60364-4-43, 434.4: two may have a fuse at the supply end alone, three or more need one at each end.
    expect(behind(bank() + drive(feed(1), feed(2)))).toEqual([])
    expect(behind(bank() + drive(feed(1), feed(2), feed(3)))).toHaveLength(3)
  })

  it('is found in a lead: what it passes on ends where the fuse behind it opens', () => {
    const text = (area: string) =>
      bank() +
      drive(
        cable('lead', 'b', 'f', area, '300 mm'),
        fuse('f', 400),
        cable('feed', 'f', 'controller', '120 mm2'),
      )
    expect(behind(text('95 mm2'))).toEqual([])
    expect(behind(text('4 mm2'))).toEqual([
      'lead: It leads to a fuse or breaker of 400 A; it allows at most 50 A.',
    ])
    const pair = text('50 mm2').replace(
      'protection f',
      `${cable('lead-2', 'b', 'f', '50 mm2', '300 mm')}protection f`,
    )
    expect(behind(pair)).toEqual([])
    expect(behind(pair.replaceAll('50 mm2', '25 mm2'))).toEqual([
      'lead: It takes 200 A on the way to a fuse or breaker of 400 A; it allows at most 170 A.',
      'lead-2: It takes 200 A on the way to a fuse or breaker of 400 A; it allows at most 170 A.',
    ])
  })

  it('names only what is known: a fuse without a rating is none of them', () => {
    const text =
      bank() +
      drive(
        cable('lead', 'b', 'f'),
        fuse('f', 400),
        cable('lead-2', 'b', 'g'),
        'protection g { kind: fuse }\n',
        cable('bus', 'g', 'controller', '120 mm2'),
        cable('bus-2', 'f', 'controller', '120 mm2'),
        'motor m { power: 1 kW }\n',
        cable('on', 'controller', 'm', '4 mm2').replace('place', 'system: dc  place'),
      )
    expect(behind(text)).toEqual(['on: It lies behind a fuse or breaker of 400 A; it allows at most 50 A.'])
  })

  it('is found in cables side by side, whichever way each is written', () => {
    const between = (name: string, from: string, to: string) =>
      cable(name, from, to, '4 mm2').replace('place', 'system: dc  place')
    const text =
      bank() +
      `drive d {
  controller c { input: 72..120 V }
  controller e { input: 72..120 V }
${cable('feed', 'b', 'c')}${fuse('f', 315, 'in: feed')}${between('one', 'c', 'e')}${between('two', 'e', 'c')}}\n`
    const found = 'It takes 158 A behind a fuse or breaker of 315 A; it allows at most 45 A.'
    expect(behind(text)).toEqual([`one: ${found}`, `two: ${found}`])
  })

  it('is left to the check of the fuse where that one is in the cable', () => {
    const text = bank() + drive(cable('feed', 'b', 'controller', '4 mm2'), fuse('f', 400, 'in: feed'))
    expect(behind(text)).toEqual([])
    expect(at(text, 'protection/above-cable')).toHaveLength(1)
  })
})

describe('a fuse protects what lies behind it', () => {
  it('and not the lead before it, whatever it claims', () => {
    const text = (length: string) =>
      bank() +
      drive(
        cable('lead', 'b', 'f', '95 mm2', length),
        fuse('f', 250, 'in: lead  at: 150 mm'),
        cable('feed', 'f', 'controller'),
      )
    expect(unprotected(text('6 m'))).toEqual(['lead'])
    // 33 CFR 183.455(b)(2): 40 in.
    expect(unprotected(text('1.016 m'))).toEqual([])
  })

  it('and not a cable that goes past it', () => {
    const text =
      bank() +
      drive(
        cable('lead', 'b', 'f'),
        fuse('f', 250, 'in: feed'),
        cable('feed', 'b', 'controller'),
        cable('other', 'f', 'controller'),
      )
    expect(unprotected(text)).toEqual(['feed', 'other'])
  })

  it('whichever way its cables are written', () => {
    for (const lead of [cable('lead', 'b', 'f'), cable('lead', 'f', 'b')])
      for (const feed of [cable('feed', 'f', 'controller'), cable('feed', 'controller', 'f')]) {
        const text = bank() + drive(lead, fuse('f', 250), feed)
        expect(unprotected(text)).toEqual([])
      }
  })

  it('and is at the end of a cable from which more comes, whichever way that is written', () => {
    const feed = (name: string, ends: readonly [string, string]) =>
      cable(name, ...ends, '120 mm2') + fuse(`fuse-${name}`, 250, `in: ${name}`)
    const two = (ends: readonly [string, string]) =>
      bank() + bank('s') + drive(feed('one', ends), feed('two', ['s', 'controller']))
    expect(unprotected(two(['b', 'controller']))).toEqual([])
    expect(unprotected(two(['controller', 'b']))).toEqual([])
  })

  it('a link between two banks needs one at each end', () => {
    const banks = bank() + bank('s')
    const link = cable('link', 'b', 's', '95 mm2', '1.5 m')
    const one = fuse('f', 250, 'in: link')
    const two = fuse('g', 250, 'in: link')
    expect(unprotected(banks + link)).toEqual(['link'])
    expect(unprotected(banks + link + one)).toEqual(['link'])
    expect(unprotected(banks + link + one + two)).toEqual([])
  })
})

describe('banks that a link joins', () => {
  it('are found to be too much by one of them alone, where the other says nothing of its own', () => {
    const text =
      bank() +
      'battery s { nominal: 96 V  window: 84..108 V }\n' +
      cable('link', 'b', 's') +
      drive(
        cable('feed', 'b', 'controller'),
        'protection f { kind: fuse  rating: 250 A  in: feed  interrupts: 5 kA  voltage: 125 V }\n',
      )
    // 108 V over 14 mΩ (Ohm's law).
    expect(at(text, 'protection/interrupts-too-little')).toEqual([
      'f: It can interrupt 5000 A; a short circuit at its place reaches 7715 A.',
    ])
  })

  it('add up in fault current', () => {
    const text = (interrupts: string) =>
      bank() +
      bank('s') +
      cable('link', 'b', 's', '95 mm2', '1.428571 m') +
      drive(
        cable('feed', 'b', 'controller'),
        `protection f { kind: fuse  rating: 250 A  in: feed  interrupts: ${interrupts}  voltage: 125 V }\n`,
      )
    // 108 V over 14 mΩ twice, 0.6 mΩ of link between (0.210 Ω/km at 20 °C, IEC 60228): 15.11 kA by nodal analysis.
    expect(at(text('15 kA'), 'protection/interrupts-too-little')).toEqual([
      'f: It can interrupt 15000 A; a short circuit at its place reaches 15112 A.',
    ])
    expect(at(text('15.12 kA'), 'protection/interrupts-too-little')).toEqual([])
  })
})

describe('a job of five hundred cables', () => {
  const feeds = (from: string, to: (n: number) => string) =>
    Array.from(
      { length: 500 },
      (_, n) =>
        `controller c${n} { input: 72..120 V }\n${cable(`k${n}`, from, to(n))}${fuse(`f${n}`, 250, `in: k${n}`)}`,
    )
  it.each([
    ['each with a fuse, from one bank', bank() + drive(...feeds('b', (n) => `c${n}`))],
    [
      'behind one fuse',
      bank() + drive(cable('lead', 'b', 'f'), fuse('f', 250), ...feeds('f', (n) => `c${n}`)),
    ],
  ])(
    'is judged: %s',
    (_, text) => {
      // About half a second; it was minutes when each cable walked the circuit for each other.
      expect(unprotected(text)).toEqual([])
    },
    60_000,
  )
})

describe('a fuse with cables at its ends that names none with `in`', () => {
  const text = (within: string, more = '') =>
    bank() +
    `drive d {
  motor m { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { input: 72..120 V  efficiency: 96 % }
${cable('lead', 'b', 'f')}  protection f { kind: fuse  rating: 100 A  ${more}  voltage: 32 V  ${within} }
${cable('feed', 'f', 'controller')}${cable('phases', 'controller', 'm')}}\n`
  const ids = ['below-load', 'interrupts-too-little', 'interrupts-unknown', 'voltage-below', 'cannot-open']
  const foundIn = (job: string) => ids.flatMap((id) => at(job, `protection/${id}`))

  it('is judged as one that names the cable behind it', () => {
    for (const more of ['interrupts: 1 kA', '']) {
      expect(foundIn(text('', more))).toEqual(foundIn(text('in: feed', more)))
      expect(foundIn(text('', more))).toHaveLength(3)
    }
  })

  it('is judged by the lead before it where several cables leave it', () => {
    const branch = cable('branch', 'f', 'm', '95 mm2').replace('place', 'design-current: 100 A  place')
    const of = (within: string) =>
      text(within, 'interrupts: 1 kA').replace('  protection', `${branch}  protection`)
    const [job, named] = [of(''), of('in: lead')]
    expect(foundIn(job)).toHaveLength(3)
    expect(foundIn(job)).toEqual(foundIn(named))
  })
})

describe('the fix that adds a fuse', () => {
  const offered = (text: string) =>
    offersOf(text, undefined).offers.filter(({ fix }) => fix.title.startsWith('Add a fuse'))
  const job = (inside: string) =>
    bank() +
    bank('s') +
    `drive d {
  motor m { power: 1 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller c { input: 72..120 V  efficiency: 96 % }
${inside}${cable('phases', 'c', 'm')}}\n`

  it('is offered where one is enough, and the finding goes', () => {
    const text = job(cable('lead', 'b', 'f') + fuse('f', 400) + cable('feed', 'f', 'c', '4 mm2'))
    const [offer, ...others] = offered(text)
    expect(others).toEqual([])
    const after = offer ? applied(offer.document, offer.fix) : ''
    expect([...behind(after), ...unprotected(after)]).toEqual([])
  })

  it('is not where the cable is fed without a fuse from both ends, or shares its current', () => {
    expect(offered(job(cable('one', 'b', 'c') + cable('two', 's', 'c')))).toEqual([])
    const pair = cable('one', 'f', 'c', '16 mm2') + cable('two', 'f', 'c', '16 mm2')
    expect(offered(job(cable('lead', 'b', 'f') + fuse('f', 400) + pair))).toEqual([])
  })
})
