import fs from 'node:fs'
import path from 'node:path'
import { leadsOut, readInside } from '../editor/machine-node.ts'
import { type Document, openDocument } from '../job/document.ts'
import { type JobFile, linkFile } from '../job/files.ts'

/** Why a command could not do its work, in words for whoever called it. */
export class CannotRun extends Error {}

/** What the disk commonly refuses, in plain words. */
const refusals: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder, not a file',
  EACCES: 'it may not be opened',
  EPERM: 'it may not be opened',
}

/** Does what the disk may refuse; the words say what could not be done. */
export function attempt<T>(words: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    throw new CannotRun(`${words}: ${refusals[code ?? ''] ?? code ?? error}.`)
  }
}

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** A file's text, with its byte order mark. Other bytes than UTF-8 are refused: they would be checked for what they are not, and not come
 * back as they were. */
export function readText(file: string): string {
  const refused = `${file} cannot be read`
  const stat = attempt(refused, () => fs.statSync(file))
  // A pipe or a device may never end.
  if (!stat.isFile() && !stat.isDirectory()) throw new CannotRun(`${refused}: it is not a regular file.`)
  const bytes = attempt(refused, () => fs.readFileSync(file))
  try {
    return utf8.decode(bytes)
  } catch {
    throw new CannotRun(`${file} is not text in UTF-8: save it as UTF-8 first.`)
  }
}

const withoutMark = (text: string): string => text.replace(/^\uFEFF/, '')

/** The job files that paths stand for: themselves, or all below them but for node_modules and dot folders. */
export function jobFiles(paths: readonly string[]): readonly string[] {
  const found = paths.flatMap((given) => {
    const stat = attempt(`${given} cannot be read`, () => fs.statSync(given, { throwIfNoEntry: false }))
    if (!stat) throw new CannotRun(`${given}: there is no such file or folder.`)
    return stat.isDirectory() ? below(given) : [path.normalize(given)]
  })
  if (found.length === 0) throw new CannotRun(`There are no *.wright files in ${paths.join(', ')}.`)
  return [...new Set(found)]
}

function below(folder: string): string[] {
  return attempt(`${folder} cannot be read`, () => fs.readdirSync(folder, { withFileTypes: true }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'))
    .flatMap((entry) => {
      const full = path.join(folder, entry.name)
      if (entry.isDirectory())
        return entry.name === 'node_modules' || entry.name.startsWith('.') ? [] : below(full)
      return entry.isFile() && entry.name.endsWith('.wright') ? [full] : []
    })
}

export interface OpenJob {
  readonly text: string
  readonly file: JobFile
  /** Path of the file, or of one it uses, as whoever runs the command would write it. */
  readonly shown: (file: JobFile) => string
}

const slashes = (file: string): string => file.split(path.sep).join('/')

/** Reads a job file and what it uses. Nothing outside the folder it is run in is read, or outside the file's own when that lies elsewhere. */
export function openJob(given: string, opened: Map<string, Document | undefined> = new Map()): OpenJob {
  const full = path.resolve(given)
  const root = leadsOut(path.relative('', full)) ? path.dirname(full) : process.cwd()
  const text = withoutMark(readText(given))
  const document = openDocument(text)
  const open = (target: string): Document | undefined => {
    const wanted = path.join(root, target)
    if (!opened.has(wanted)) opened.set(wanted, within(root, wanted))
    return opened.get(wanted)
  }
  const file = linkFile(slashes(path.relative(root, full)), document, open)
  const shown = (one: JobFile) =>
    slashes(
      one === file ? given : path.join(path.dirname(given), path.relative(path.dirname(file.path), one.path)),
    )
  return { text, file, shown }
}

function within(root: string, file: string): Document | undefined {
  const text = readInside(root, file)
  return text === undefined ? undefined : openDocument(text)
}
