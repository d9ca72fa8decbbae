// Work grows with what a person writes, not with its square: counted, not timed, so that a busy machine says the same.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { usualActions } from './input.ts'
import { inputs } from './inputs.ts'
import type { Work } from './work.ts'

/** From twice to four times as much is twice the step from once to twice, where work is in proportion; four times where it grows with the
 * square. What is done once, however long the text, drops out. For n log n it is 2.3 here. V8 takes some bytes more or fewer, as it likes. */
const atMost = { steps: 2.6, bytes: 3 }

/** Fewer bytes are lost among those that V8 takes for itself. */
const leastBytes = 4e6

/** Code that V8 has made faster counts less, and takes fewer bytes. */
const flags = [
  '--no-opt',
  '--no-maglev',
  '--no-sparkplug',
  '--expose-gc',
  '--min-semi-space-size=256',
  '--max-semi-space-size=256',
]

type Works = Readonly<Record<string, readonly [Work, Work, Work]>>

/** Counts in a process of its own: of all inputs, or of those whose name begins so. */
function counted(name = ''): Works {
  const work = join(import.meta.dirname, 'work.ts')
  const { stdout, stderr } = spawnSync(process.execPath, [...flags, work, name], {
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  })
  if (stdout === '') throw new Error(stderr)
  return JSON.parse(stdout)
}

const works = counted()

/** What grows faster than it may, and how fast. */
function tooFast(of: Works[string] | undefined): Readonly<Record<string, number>> {
  if (!of) throw new Error('nothing was counted')
  const [once, twice, fourTimes] = of
  const units = fourTimes.bytes < leastBytes ? (['steps'] as const) : (['steps', 'bytes'] as const)
  return Object.fromEntries(
    units
      .map((unit) => [unit, (fourTimes[unit] - twice[unit]) / (twice[unit] - once[unit])] as const)
      .filter(([unit, growth]) => growth > atMost[unit]),
  )
}

describe('work grows with the number of', () => {
  const names = Object.entries(inputs).flatMap(([input, { by = usualActions }]) =>
    by.map((action) => `${input}: ${action}`),
  )
  it.each(names)('%s', { timeout: 60_000 }, (name) => {
    if (Object.keys(tooFast(works[name])).length === 0) return
    // What V8 does besides differs from one time to the next; what grows with the square does so each time.
    expect(tooFast(counted(name)[name])).toEqual({})
  })
})
