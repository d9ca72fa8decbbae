import { type Dirent, readFileSync, realpathSync, statSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { isAbsolute, join, relative, sep } from 'node:path'

/** Whether a relative path leads out of the folder it starts from. */
export const leadsOut = (path: string): boolean =>
  path === '..' || path.startsWith(`..${sep}`) || isAbsolute(path)

const utf8 = new TextDecoder('utf-8', { fatal: true })

function reallyInside(root: string, file: string): string | undefined {
  const real = realpathSync(file)
  return leadsOut(relative(realpathSync(root), real)) || !statSync(real).isFile() ? undefined : real
}

/** Text of a file that really lies in the root, links followed, without its byte order mark; undefined for any other, and for what is not UTF-8. */
export function readInside(root: string, file: string): string | undefined {
  try {
    const real = reallyInside(root, file)
    return real === undefined ? undefined : utf8.decode(readFileSync(real))
  } catch {
    return undefined
  }
}

/** The job files below a folder, each folder's in order of name. Folders that are links are not gone into: what they lead to inside is found
 * where it stands. */
export async function listInside(root: string, folder = root): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch((): Dirent[] => [])
  const found: string[] = []
  for (const entry of entries.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = join(folder, entry.name)
    if (entry.isDirectory() && entry.name !== 'node_modules' && !entry.name.startsWith('.'))
      found.push(...(await listInside(root, path)))
    else if (entry.name.endsWith('.wright') && isInside(root, path)) found.push(path)
  }
  return found
}

function isInside(root: string, file: string): boolean {
  try {
    return reallyInside(root, file) !== undefined
  } catch {
    return false // gone meanwhile, or a link to nothing
  }
}
