// Every step of replacing a file fails in turn, alone or with all that come after it, as when the process is killed there.
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { CannotRun } from '../../server/src/areas/common/command.ts'
import { replaceText } from '../../server/src/cli/write-file.ts'

const { fault } = vi.hoisted(() => ({
  fault: { calls: 0, at: Number.POSITIVE_INFINITY, forGood: false, names: [] as string[] },
}))

type Call = (...args: readonly unknown[]) => unknown

vi.mock('node:fs', async (original) => {
  const real = await original<typeof import('node:fs')>()
  const failing =
    (name: string, call: Call): Call =>
    (...args) => {
      fault.names.push(name)
      const now = fault.calls++
      if (now < fault.at || (now > fault.at && !fault.forGood)) return call(...args)
      // What is cut off while it writes has written a part.
      if (name === 'writeFileSync') real.writeSync(args[0] as number, String(args[1]).slice(0, 5))
      throw Object.assign(new Error(`EIO in ${name}`), { code: 'EIO' })
    }
  const faulty: Readonly<Record<string, unknown>> = Object.fromEntries(
    Object.entries(real).map(([name, member]) => [
      name,
      name.endsWith('Sync') ? failing(name, member as Call) : member,
    ]),
  )
  return { ...real, default: faulty }
})

const real = await vi.importActual<typeof import('node:fs')>('node:fs')
const folder = real.mkdtempSync(path.join(os.tmpdir(), 'shaftwright-'))
afterAll(() => real.rmSync(folder, { recursive: true }))
const file = path.join(folder, 'a.wright')
const [before, after] = ['the text as it was', 'the text as it is to be']

/** Replaces the text with one fault. Returns whether that was told, and the text that is there. */
function replace(at: number, forGood: boolean) {
  real.writeFileSync(file, before, { mode: 0o640 })
  Object.assign(fault, { calls: 0, at, forGood, names: [] })
  let told: unknown
  try {
    replaceText(file, before, after)
  } catch (error) {
    told = error
  }
  fault.at = Number.POSITIVE_INFINITY
  return { told, text: real.readFileSync(file, 'utf8'), left: real.readdirSync(folder) }
}

describe('a file that is replaced', () => {
  beforeEach(() => {
    for (const name of real.readdirSync(folder)) real.rmSync(path.join(folder, name))
  })

  it('goes through every step when nothing fails', () => {
    const { told, text, left } = replace(Number.POSITIVE_INFINITY, false)
    expect({ told, text, left }).toEqual({ told: undefined, text: after, left: ['a.wright'] })
    // On the disk before it has the name, and the name on the disk too.
    const order = fault.names.filter((name) => /^(writeFile|fchmod|fsync|rename)Sync$/.test(name))
    expect(order).toEqual(['writeFileSync', 'fchmodSync', 'fsyncSync', 'renameSync', 'fsyncSync'])
  })

  it.each([
    ['fails', false],
    ['fails and nothing works any more', true],
  ])('has one of both texts whole wherever a step %s', (_, forGood) => {
    replace(Number.POSITIVE_INFINITY, false)
    const steps = fault.calls
    expect(steps).toBeGreaterThan(12)
    for (let at = 0; at < steps; at++) {
      const { told, text, left } = replace(at, forGood)
      const step = `step ${at}, ${fault.names[at]}`
      expect([before, after], step).toContain(text)
      // Whoever is told nothing has the new text; whoever is told has the old one.
      if (told === undefined) expect(text, step).toBe(after)
      else expect(text, step).toBe(before)
      if (told !== undefined) expect(told, step).toBeInstanceOf(CannotRun)
      if (!forGood) expect(left, step).toEqual(['a.wright'])
      for (const name of left) real.rmSync(path.join(folder, name))
    }
  })
})
