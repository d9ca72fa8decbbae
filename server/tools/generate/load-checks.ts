import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Check } from '../../src/checks/check.ts'
import { checkFiles } from './checks.ts'

/** Every check, in order of its id: read from the files themselves, since the lists are made from them too. */
export const loadChecks = (root: string): Promise<readonly Check[]> =>
  Promise.all(
    [...checkFiles(root)].map(async ([id, path]) => {
      const module = (await import(pathToFileURL(join(root, path)).href)) as { default?: Check }
      if (module.default?.id !== id) throw new Error(`${path} exports no check of the id ${id}.`)
      return module.default
    }),
  )
