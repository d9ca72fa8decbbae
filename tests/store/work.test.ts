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

/** The work after an edit that puts one text in the place of another, behind a place. */
function workAfter(text: string, behind: string, from: string, to: string): number {
  const session = new Session()
  const before = openDocument(text)
  session.findings(session.file(before))
  const at = text.indexOf(from, text.indexOf(behind))
  if (at < 0) throw new Error(`no ${from} behind ${behind}`)
  const changed: Document = edit(before, at, at + from.length, to)
  expect(textOf(changed)).not.toBe(text)
  return session.worked(session.file(changed))
}

describe('work after an edit', () => {
  it.each([
    ['a space in a battery that all drives share', 'battery house {', '\n  nominal', '\n   nominal'],
    ['a comment before a drive', 'drive d5', 'drive d5', '# ready\ndrive d5'],
    ['an amount written in another unit', 'drive d5', '2.5 m', '2500 mm'],
  ])('is none for %s', (_, behind, from, to) => {
    expect(workAfter(job(10), behind, from, to)).toBe(0)
  })

  it('is the same in one of a hundred drives as in one of ten', () => {
    for (const [from, to] of [
      ['power: 15 kW', 'power: 16 kW'],
      ['top 1.80 mm', 'top 1.81 mm'],
    ] as const) {
      const [few, many] = [10, 100].map((drives) => workAfter(job(drives), 'drive d5', from, to))
      expect(few).toBeGreaterThan(0)
      expect(many).toBe(few)
    }
  })

  it('leaves the alignment alone where only the cable is another', () => {
    const cable = workAfter(job(3), 'drive d1', '95 mm2', '70 mm2')
    const reading = workAfter(job(3), 'drive d1', 'top 1.80 mm', 'top 1.90 mm')
    const both = workAfter(job(3).replace('  cable feed', '#'), 'drive d1', 'top 1.80 mm', 'top 1.90 mm')
    expect(reading).toBe(both)
    expect(cable).toBeGreaterThan(0)
  })

  it('of a job that is long is none when nothing is changed', () => {
    const session = new Session()
    const document = openDocument(jobOf(20))
    session.findings(session.file(document))
    expect(session.worked(session.file(document))).toBe(0)
  })
})
