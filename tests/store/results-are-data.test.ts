// What is kept of a job is data: it survives structuredClone, and holds no block, no text and no function.
import { describe, expect, it } from 'vitest'
import { Anchor } from '../../server/src/store/anchor.ts'
import { equal } from '../../server/src/store/equal.ts'
import { storeOf } from '../../server/src/store/store.ts'
import { randomDrive } from '../areas/random-drive.ts'
import { randomFrom } from '../fuzz/random.ts'
import { demo, Session } from './jobs.ts'

const parts = demo('parts/drivetrain.wright')

/** What no data has in it, by the way that leads there. */
function noData(value: unknown, way: string, mayHave: (value: object) => boolean): readonly string[] {
  if (typeof value === 'function') return [`${way}: function`]
  if (typeof value !== 'object' || value === null || mayHave(value)) return []
  if (value instanceof Map)
    return [...value].flatMap(([key, one]) => [
      ...noData(key, `${way}.key`, mayHave),
      ...noData(one, `${way}.value`, mayHave),
    ])
  if (value instanceof Set) return [...value].flatMap((one) => noData(one, `${way}.item`, mayHave))
  if (![Object.prototype, Array.prototype].includes(Object.getPrototypeOf(value)))
    return [`${way}: ${value.constructor.name}`]
  return Object.entries(value).flatMap(([name, one]) =>
    noData(one, Array.isArray(value) ? `${way}[]` : `${way}.${name}`, mayHave),
  )
}

/** A finding stands at an anchor, which looks up where that is now. */
const isAnchor = (value: object): boolean => value instanceof Anchor

function faultsIn(text: string): readonly string[] {
  const session = new Session()
  session.seen(text, parts)
  const { kept } = storeOf(session.analysis, session.file(text, parts))
  expect(kept.length).toBeGreaterThan(0)
  return kept.flatMap(({ ended }) => {
    const value = ended && 'value' in ended ? ended.value : undefined
    const isOfChecks = typeof value === 'object' && value !== null && 'faults' in value
    const found = noData(value, 'result', isOfChecks ? isAnchor : () => false)
    if (isOfChecks || found.length > 0) return found
    return equal(structuredClone(value), value) ? [] : ['a clone is another']
  })
}

describe('what is kept of a job is data', () => {
  it.each([
    'inch-day-boat.wright',
    'survey-launch-as-built.wright',
    'survey-launch-as-found.wright',
    'twin-screw-ferry.wright',
    'parts/drivetrain.wright',
  ])('in %s', (name) => {
    expect(new Set(faultsIn(demo(name)))).toEqual(new Set())
  })

  it('in drives that look random', () => {
    const found = Array.from({ length: 25 }, (_, seed) => faultsIn(randomDrive(randomFrom(seed + 1))))
    expect(new Set(found.flat())).toEqual(new Set())
  })
})
