import { describe, expect, it } from 'vitest'
import threadUnknown from '../../../server/src/areas/alignment/checks/thread-unknown.ts'
import { Checker } from '../../../server/src/checks/run.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'

const found = (thread: string) => {
  const analysis = new Analysis()
  analysis.begin()
  const text = `drive main {\n  bed {\n    adjuster: stud-and-nuts\n    thread: ${thread}\n  }\n}\n`
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  return new Checker(analysis, [threadUnknown]).check(file, { today: '2026-03-05' })
}

// Sizes and pitches: ISO 261, ISO 262, ASME B1.1.
describe('a thread', () => {
  it.each(['M17', '"M16x1,5"', '"M16 left"', '"3/4-16 UNC"', 'M16x2.5', '"3/4"'])(
    'that gives no pitch is told how to be written: %s',
    (thread) => {
      const [finding] = found(thread)
      expect(finding).toMatchObject({ severity: 'warning', found: thread.replaceAll('"', '') })
      for (const form of ['"M16x1.5"', '"3/4-10 UNC"', '"M16x1.5 LH"']) expect(finding?.todo).toContain(form)
    },
  )
  it.each(['M16', '"M16x1.5"', '"M17x1"', '"3/4-16 UNF-2A"', '"LH M16"', '"M16 LH"', '"3/4-10 UNC LH"'])(
    'that gives its pitch is quiet: %s',
    (thread) => expect(found(thread)).toEqual([]),
  )
  it('is answered with the pitch of its series', () => {
    // 25.4 mm / 10 threads.
    expect(found('"3/4-16 UNC"')[0]?.message).toContain('2.54 mm')
    // Coarse M16: 2 mm (ISO 261).
    expect(found('M16x2.5')[0]?.message).toContain(
      'has a pitch of 2.5 mm; the series named, or the coarse thread of that size, has 2 mm.',
    )
  })
})
