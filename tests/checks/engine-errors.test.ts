// An error of the engine in a formula is a fault of ours: it is reported as such, and never turned into words about the job, nor kept quiet. Common
// practice, no source.
import { readFileSync } from 'node:fs'
import { describe, expect, it, vi } from 'vitest'
import { effectOf } from '../../server/src/areas/alignment/plans/move-effect.ts'
import { allChecks } from '../../server/src/areas/index.ts'
import { blockIn } from '../areas/job-text.ts'
import { findingsOf } from './marks.ts'

const failing = vi.hoisted(() => ({
  calls: 0,
  at: 0,
  error: new RangeError('Maximum call stack size exceeded'),
}))

// Every number that comes into a formula passes a guard.
vi.mock('../../server/src/engineering/guard.ts', async (original) => {
  const guards = await original<Readonly<Record<string, (...of: readonly unknown[]) => unknown>>>()
  const failingOnce = Object.entries(guards).map(([name, guard]) => [
    name,
    (...of: readonly unknown[]) => {
      failing.calls += 1
      if (failing.calls === failing.at) throw failing.error
      return guard(...of)
    },
  ])
  return Object.fromEntries(failingOnce)
})

// Each run works all of it out anew: what a run before has solved would not fail.
vi.mock('../../server/src/store/solve.ts', () => ({ solve: <T>(kernel: T) => kernel }))

const example = (name: string) =>
  readFileSync(new URL(`../../docs/examples/survey-launch-${name}.wright`, import.meta.url), 'utf8')

const softFoot = example('as-found')
  .replace('flexibel', 'flexible')
  .replace(
    /( *)offsets: top .*/,
    '$&\n$1lifts: aft-port 0.02 mm, aft-stbd 0.02 mm, fwd-port 0.30 mm, fwd-stbd 0.02 mm',
  )

/** Checks a job whose formulas fail at the call with this number; 0: at none. */
function checked(text: string, at: number) {
  Object.assign(failing, { calls: 0, at })
  const faults: unknown[] = []
  const { findings } = findingsOf(text, allChecks, { onFault: (_, error) => faults.push(error) })
  return { findings, faults, calls: failing.calls }
}

describe('an error of the engine in a formula', () => {
  it.each([
    ['a job as found', example('as-found')],
    ['a job as built', example('as-built')],
    ['a soft foot', softFoot],
  ])('reaches the guard of the checks wherever it comes, and the other checks go on: %s', (_, text) => {
    const sound = checked(text, 0)
    expect(sound.faults).toEqual([])
    for (let at = 1; at <= sound.calls; at += Math.ceil(sound.calls / 150)) {
      const { findings, faults } = checked(text, at)
      expect(new Set(faults)).toEqual(new Set([failing.error]))
      expect(findings.length).toBeGreaterThan(0)
      const words = findings.map(({ message, detail, todo }) => [message, detail, todo])
      expect(JSON.stringify(words)).not.toContain('stack size')
    }
  })

  it('is not kept quiet in the effect of a move', () => {
    const effect = (at: number) => {
      Object.assign(failing, { calls: 0, at: 0 })
      const { block, lookup } = blockIn(example('as-built'), 'main.move')
      Object.assign(failing, { calls: 0, at })
      return effectOf(block, lookup)
    }
    effect(0)
    for (let at = failing.calls; at > 0; at--) expect(() => effect(at)).toThrow(failing.error)
  })
})
