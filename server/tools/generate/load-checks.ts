import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Check } from '../../src/checks/check.ts'

export interface CheckFile {
  /** `area/slug`, from where the file stands. */
  readonly id: string
  readonly check: Check
}

/** Every check in the folder, sorted by its path: read from the files, since the index is made from them. */
export async function loadChecks(folder: string): Promise<readonly CheckFile[]> {
  const areas = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  const ids = areas.flatMap(({ name }) =>
    readdirSync(join(folder, name))
      .filter((file) => file.endsWith('.ts'))
      .map((file) => `${name}/${file.slice(0, -'.ts'.length)}`),
  )
  return Promise.all(
    ids.sort().map(async (id) => {
      const module = (await import(pathToFileURL(join(folder, `${id}.ts`)).href)) as { default?: Check }
      if (!module.default) throw new Error(`server/src/checks/${id}.ts exports no check.`)
      return { id, check: module.default }
    }),
  )
}
