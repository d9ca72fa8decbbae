import { type Dirent, readdirSync, realpathSync, statSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { isAbsolute, join, relative, sep } from 'node:path'
import type { Refusal } from '../job/file-text.ts'
import { elide } from '../quantity/elide.ts'
import { diskErrorWords, isGone } from './disk-error.ts'
import { readFileText, whyNoFile } from './read-file-node.ts'
import { isSearched } from './uri.ts'

/** Whether a relative path leads out of the folder it starts from. */
export const leadsOut = (path: string): boolean =>
  path === '..' || path.startsWith(`..${sep}`) || isAbsolute(path)

/** Where a file of the root really lies, links followed; undefined when that is outside, or when there is no such file. */
function reallyInside(root: string, file: string): string | undefined {
  try {
    const real = realpathSync(file)
    return leadsOut(relative(realpathSync(root), real)) || !statSync(real).isFile() ? undefined : real
  } catch {
    return undefined // gone meanwhile, or a link to nothing
  }
}

/** Text of a file that really lies in the root, or why it is not read; undefined for any other. */
export function readInside(root: string, file: string): string | Refusal | undefined {
  const real = reallyInside(root, file)
  if (real === undefined) return undefined
  const spelling = otherSpelling(root, file)
  if (spelling === undefined) return readFileText(real)
  return { type: 'file-unreadable', why: `on the disk it is named ${elide(spelling.replaceAll(sep, '/'))}` }
}

/** How the disk spells a path below the root that it takes although it is spelled otherwise (capitals, a dot at the end, a short name): one file must
 * not be taken for two, and a job that is read on one disk must be read on every other. */
export function otherSpelling(root: string, file: string): string | undefined {
  const requested = relative(root, file)
  try {
    const real = relative(realpathSync.native(root), realpathSync.native(file))
    if (leadsOut(requested) || isSameName(real, requested)) return undefined
    // It may also be other because of a link on the way: then each name is there as it is asked for.
    let folder = root
    for (const name of requested.split(sep)) {
      if (!readdirSync(folder).some((one) => isSameName(one, name))) return real
      folder = join(folder, name)
    }
  } catch {
    // What cannot be listed has the spelling it is asked for.
  }
  return undefined
}

/** Disks differ in how they keep an accent (Unicode 16.0, section 3.11), which nobody can see. */
const isSameName = (a: string, b: string): boolean => a.normalize() === b.normalize()

/** What an entry of a folder is to whoever lists job files: a folder to go into, or a job file, with the reason where it is not read. */
type JobEntry = { readonly folder: string } | { readonly file: string; readonly unread?: string }

/** The rule for every listing, undefined for what is neither. A link is followed to a file inside the root only: whoever wrote the folder would choose
 * what else is read. Folders that are links are not gone into: what they lead to inside is found where it stands. */
export function jobEntry(root: string, folder: string, entry: Dirent): JobEntry | undefined {
  const path = join(folder, entry.name)
  if (entry.isDirectory()) return isSearched(entry.name) ? { folder: path } : undefined
  if (!entry.name.endsWith('.wright')) return undefined
  const unread = entry.isFile() ? undefined : whyNotFollowed(root, path)
  return { file: path, ...(unread !== undefined && { unread }) }
}

function whyNotFollowed(root: string, link: string): string | undefined {
  try {
    const real = realpathSync(link)
    if (leadsOut(relative(realpathSync(root), real))) return 'the link leads out of the folder'
    return whyNoFile(statSync(real))
  } catch (error) {
    return diskErrorWords(error)
  }
}

/** The job files below a folder that are read, each folder's in order of name. A folder that cannot be read is given to `unread`, unless there is none any
 * more. */
export async function listInside(
  root: string,
  unread: (folder: string, why: string) => void = () => {},
  folder = root,
): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch((error): Dirent[] => {
    if (!isGone(error)) unread(folder, diskErrorWords(error))
    return []
  })
  const found: string[] = []
  for (const entry of entries.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const job = jobEntry(root, folder, entry)
    if (!job) continue
    if ('folder' in job) for (const one of await listInside(root, unread, job.folder)) found.push(one)
    else if (job.unread === undefined) found.push(job.file)
  }
  return found
}

/** A disk may give two changes within this time the same stamp: milliseconds. */
const coarsest = 2000

/** Changes whenever a file does; undefined where there is none, or where it has changed so lately that another change may not show. */
export function stampOf(file: string): string | undefined {
  const stat = statSync(file, { throwIfNoEntry: false })
  if (!stat || Date.now() - Math.max(stat.mtimeMs, stat.ctimeMs) < coarsest) return undefined
  return [stat.dev, stat.ino, stat.size, stat.mtimeMs, stat.ctimeMs].join(' ')
}
