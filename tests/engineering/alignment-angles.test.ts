import { describe, expect, it } from 'vitest'
import { angleProblem, byPlace, normalAngle } from '../../server/src/engineering/alignment/angles.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { deg } from './alignment-helpers.ts'

// Three unknowns need three places; a closed half turn leaves the far side unread (geometry; no outside
// figure needed).
const inDegrees = (of: readonly number[]) => {
  const found = angleProblem(of.map((a) => a * deg))
  const arc = (a: { from: number; to: number } | undefined) =>
    a && [a.from, a.to].map((v) => Math.round(v / deg))
  return (
    found && {
      type: found.type,
      places: found.places,
      missing: arc(found.missing),
      read: arc(found.readBetween),
    }
  )
}

describe('angles of a set of readings', () => {
  it.each([
    [[0, 90, 180, 270]],
    [[0, 120, 240]],
    [[10, 130, 250]],
    [[0, 90, 181]],
    [[350, 100, 200]],
    [[-10, 100, 200, 100, 350]],
    [[30, 60, 90, 120, 150, 180, 211]],
  ])('%j do', (angles) => {
    expect(inDegrees(angles)).toBeUndefined()
  })

  it('none, one and two places are too few, and say what part of the turn is missing', () => {
    expect(inDegrees([])).toEqual({ type: 'too-few-angles', places: 0, missing: [0, 0], read: undefined })
    expect(inDegrees([90])).toEqual({ type: 'too-few-angles', places: 1, missing: [90, 90], read: undefined })
    expect(inDegrees([0, 90])).toEqual({
      type: 'too-few-angles',
      places: 2,
      missing: [90, 0],
      read: [180, 270],
    })
    expect(inDegrees([90, 0])).toEqual(inDegrees([0, 90]))
  })
  it('the same place read again or written otherwise is not another place', () => {
    expect(inDegrees([0, 360, -360, 720, 90, 90])).toMatchObject({ type: 'too-few-angles', places: 2 })
  })
  it('top, starboard and bottom alone leave the port side unread', () => {
    expect(inDegrees([0, 90, 180])).toEqual({
      type: 'within-half-turn',
      places: 3,
      missing: [180, 0],
      read: [180, 0],
    })
  })
  it('bottom, port and top alone leave the starboard side unread', () => {
    expect(inDegrees([180, 270, 0])).toMatchObject({ type: 'within-half-turn', missing: [0, 180] })
  })
  it('an arc over the top counts as one: 300 to 60 degrees', () => {
    expect(inDegrees([300, 0, 60])).toMatchObject({
      type: 'within-half-turn',
      missing: [60, 300],
      read: [120, 240],
    })
  })
  it.each([[[300, 0, 60]], [[0, 45, 90]], [[10, 60, 170]], [[0, 90]]])(
    'one reading in the middle of `readBetween` mends %j',
    (angles) => {
      const found = angleProblem(angles.map((a) => a * deg))
      const { from, to } = found?.readBetween ?? { from: Number.NaN, to: Number.NaN }
      const middle = from + ((((to - from) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)) / 2
      expect(angleProblem([...angles.map((a) => a * deg), middle])).toBeUndefined()
    },
  )

  it('a full turn is the same place, across the top as well', () => {
    expect(normalAngle(-90 * deg)).toBeCloseTo(270 * deg, 12)
    expect(byPlace([-1e-9, 1e-9]).map(({ of }) => of)).toEqual([[1, 0]])
    expect(byPlace([359 * deg, 1 * deg]).map(({ of }) => of)).toEqual([[0], [1]])
    expect(byPlace([1, 0, 1 + 2 * Math.PI, 2 * Math.PI]).map(({ of }) => of)).toEqual([
      [0, 2],
      [1, 3],
    ])
  })
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e9])('%d is not an angle', (bad) => {
    expect(() => angleProblem([0, 1, bad])).toThrow(OutOfRange)
  })
})
