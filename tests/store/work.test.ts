// How much is worked out again after an edit, as work counted: nothing that does not depend on it.
import { describe, expect, it } from 'vitest'
import { type Document, edit, openDocument, textOf } from '../../server/src/job/document.ts'
import { jobOf } from '../bench/jobs.ts'
import { Session } from './jobs.ts'

const head = 'job "Ten" { vessel: "Ten 01"  revision: "A"  status: for-review  show-in: metric }\n'
const battery = 'battery house {\n  nominal: 96 V\n  window: 84..108 V\n  capacity: 210 Ah\n}\n'
const drive = (n: number): string => `drive d${n} {
  battery: house
  motor main { power: ${10 + n} kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 %  terminals: A, B, C }
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC  place: open }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}
`
const job = (drives: number): string =>
  [head, battery, ...Array.from({ length: drives }, (_, i) => drive(i))].join('\n')

/** A document with one text in the place of another, behind a place. */
function changed(before: Document, behind: string, from: string, to: string): Document {
  const text = textOf(before)
  const at = text.indexOf(from, text.indexOf(behind))
  if (at < 0) throw new Error(`no ${from} behind ${behind}`)
  const after = edit(before, at, at + from.length, to)
  expect(textOf(after)).not.toBe(text)
  return after
}

/** The work after such an edit. */
function workAfter(text: string, behind: string, from: string, to: string): readonly string[] {
  const session = new Session()
  const before = openDocument(text)
  session.findings(session.file(before))
  return session.worked(session.file(changed(before, behind, from, to)))
}

/** How many sections are bound after such an edit. */
function boundAfter(text: string, behind: string, from: string, to: string): number {
  const session = new Session()
  const before = openDocument(text)
  session.findings(session.file(before))
  return session.bound(session.file(changed(before, behind, from, to)))
}

describe('work after an edit', () => {
  it.each([
    ['a space in a battery that all drives share', 'battery house {', '\n  nominal', '\n   nominal'],
    ['a comment before a drive', 'drive d5', 'drive d5', '# ready\ndrive d5'],
    ['an amount written in another unit', 'drive d5', '2.5 m', '2500 mm'],
  ])('is to look where findings stand, for %s', (_, behind, from, to) => {
    // Of the section itself, and of the battery whose finding names a controller in it.
    const work = workAfter(job(10), behind, from, to)
    expect(work.length).toBeLessThanOrEqual(2)
    expect(new Set(work)).toEqual(new Set(['#findingsInSection']))
  })

  it('is the same in one of a hundred drives as in one of ten', () => {
    for (const [from, to] of [
      ['power: 15 kW', 'power: 16 kW'],
      ['top 1.80 mm', 'top 1.81 mm'],
    ] as const) {
      // What one network says of each drive that a battery feeds is looked up for each, and is the same.
      const [few, many] = [10, 100].map((drives) =>
        workAfter(job(drives), 'drive d5', from, to).filter(
          (work) => !/^flowAt of (d(?!5\b)|house)/.test(work),
        ),
      )
      expect(few).not.toEqual([])
      expect(many).toEqual(few)
    }
  })

  it('leaves the alignment alone where only the cable is another', () => {
    const cable = workAfter(job(3), 'drive d1', '95 mm2', '70 mm2')
    const reading = workAfter(job(3), 'drive d1', 'top 1.80 mm', 'top 1.90 mm')
    const both = workAfter(job(3).replace('  cable feed', '#'), 'drive d1', 'top 1.80 mm', 'top 1.90 mm')
    expect(reading).toEqual(both)
    expect(cable).toContain('checks of d1.feed')
  })

  it('of a job that is long is none when nothing is changed', () => {
    const session = new Session()
    const document = openDocument(jobOf(20))
    session.findings(session.file(document))
    expect(session.worked(session.file(document))).toEqual([])
  })
})

describe('binding after an edit', () => {
  const hundred = job(100)
  /** Some of the drives ask for the voltage of the battery. */
  const asking = (...drives: readonly number[]) =>
    drives.reduce(
      (text, n) =>
        text.replace(
          `${10 + n} kW  efficiency: 92 %  voltage: 58 V`,
          `${10 + n} kW  efficiency: 92 %  voltage: house.nominal`,
        ),
      hundred,
    )

  it.each([
    ['a space in a battery that all drives share', 'battery house {', '\n  nominal', '\n   nominal'],
    ['a comment in that battery', 'battery house {', '\n  nominal', '\n  # lithium\n  nominal'],
    ['another amount in that battery, for which no drive asks', 'battery house {', '96 V', '97 V'],
    ['a comment in a drive', 'drive d5', '{\n', '{\n  # ready\n'],
    ['a figure in a drive', 'drive d5', 'power: 15 kW', 'power: 16 kW'],
  ])('is that of one section of a hundred for %s', (_, behind, from, to) => {
    expect(boundAfter(hundred, behind, from, to)).toBe(1)
  })

  it('of a library that is used is that of what is edited there', () => {
    const session = new Session()
    const own = openDocument(`use "parts/drivetrain.wright"\n${hundred.replace(battery, '')}`)
    const library = openDocument(`${battery}\ncontroller spare { efficiency: 96 % }\n`)
    const findings = session.findings(session.file(own, library))
    const after = changed(library, 'battery house {', '84..108 V', '0.084 kV..108 V')
    expect(session.bound(session.file(own, after))).toBe(1)
    expect(session.findings(session.file(own, after))).toEqual(findings)
  })

  it('is that of those that ask for the amount that is another', () => {
    const text = asking(3, 14, 15)
    expect(boundAfter(text, 'battery house {', '96 V', '97 V')).toBe(4)
    expect(boundAfter(text, 'battery house {', '96 V', '0.096 kV')).toBe(1)
    expect(boundAfter(text, 'battery house {', '210 Ah', '211 Ah')).toBe(1)
  })

  it('is that of those that ask for an amount where it comes to be assumed', () => {
    expect(boundAfter(asking(3), 'battery house {', '96 V', '96 V [assumed]')).toBe(2)
  })

  it('is that of those that name a block where it is no longer there', () => {
    // The list of names is another too: the nearest is offered.
    expect(boundAfter(job(10), 'battery house {', 'battery house', 'battery other')).toBe(11)
  })

  it('is that of what takes from a drive too, which holds where that is written', () => {
    const two = `${job(3)}\ndrive twin { like: d1 }\n`
    expect(boundAfter(two, 'drive d1', '\n  motor', '\n   motor')).toBe(2)
  })
})
