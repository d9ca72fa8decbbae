// No propeller is solved again for what has nothing to do with it.
import { describe, expect, it } from 'vitest'
import { edit, openDocument } from '../../server/src/job/document.ts'
import { boat } from '../areas/propulsion/boat.ts'
import { Session } from './jobs.ts'

const text = `${boat({ more: 'battery lights { nominal: 24 V }\n' })}
protection spare { kind: fuse  rating: 100 A }
`
const powers = /power|bollard|driveSaid|energy/i

/** What is worked out again once `from` is `to`. */
function workAfter(from: string, to: string): readonly string[] {
  const session = new Session()
  const before = openDocument(text)
  session.findings(session.file(before))
  const at = text.indexOf(from)
  return session.worked(session.file(edit(before, at, at + from.length, to)))
}

describe('the power table', () => {
  it('is made again for another pitch', () => {
    expect(workAfter('pitch: 340 mm', 'pitch: 350 mm').some((name) => powers.test(name))).toBe(true)
  })

  it.each([
    ['the rating of a fuse', 'rating: 100 A', 'rating: 125 A'],
    ['a space in the propeller', 'pitch: 340 mm', 'pitch:  340 mm'],
    ['the pitch in another unit', 'pitch: 340 mm', 'pitch: 34 cm'],
  ])('is kept for %s', (_, from, to) => {
    expect(workAfter(from, to).filter((name) => powers.test(name))).toEqual([])
  })
})
