// Each function and table that the engineering floor offers is named in a test of its own, besides the run of its @example.
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const root = new URL('../../', import.meta.url)
const textsIn = (folder: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(new URL(folder, root), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .map((file) => [file, readFileSync(new URL(folder + file, root), 'utf8')]),
  )

/** The names that a test file takes from a module of the floor. */
const imported = (text: string): readonly string[] =>
  [...text.matchAll(/^import \{([^}]*)\} from '[^']*\/engineering\/[^']*'/gm)].flatMap(([, names = '']) =>
    names.split(',').map((name) => name.trim().replace(/ as .*/, '')),
  )

describe('the engineering floor', () => {
  const tested = new Set([...textsIn('tests/').values()].flatMap(imported))

  it.each([...textsIn('server/src/engineering/')])('%s is tested, all that it offers', (_, text) => {
    const offered = [...text.matchAll(/^export (?:async )?(?:const|function\*?) (\w+)/gm)].map(
      ([, name = '']) => name,
    )
    expect(offered.filter((name) => !tested.has(name))).toEqual([])
  })
})
