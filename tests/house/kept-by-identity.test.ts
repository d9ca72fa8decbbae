// A block stays the same object while what it says changes. So nothing that reads a block may be kept by the identity of blocks: it would never be made
// again. Plans are kept by what they ask (server/src/store/plan.ts).
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, it } from 'vitest'

const src = resolve(import.meta.dirname, '../../server/src')

/** What else is kept by identity in areas, and why that is safe. */
const allowed: Readonly<Record<string, string>> = {
  'areas/fixes.ts': 'of blocks as they are bound, which never change',
  'areas/alignment/plans/feet.ts': 'feet as they were worked out, which never change',
  'areas/alignment/plans/lifts.ts': 'a list as a set: nothing of the blocks is read',
  'areas/alignment/plans/reading-history.ts': 'a list of results as a map',
  'areas/alignment/plans/steps.ts': 'a list of thicknesses',
  'areas/alignment/plans/work.ts': 'a correction, which never changes',
}

it('nothing in areas is kept by the identity of blocks', () => {
  const found = readdirSync(join(src, 'areas'), { recursive: true, encoding: 'utf8' })
    .map((name) => `areas/${name.replaceAll('\\', '/')}`)
    .filter((name) => name.endsWith('.ts'))
    .filter((name) => readFileSync(join(src, name), 'utf8').includes('memoizeByIdentity('))
  expect(found.toSorted()).toEqual(Object.keys(allowed).toSorted())
})
