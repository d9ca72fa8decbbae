import fs from 'node:fs'
import path from 'node:path'
import { CannotRun } from '../areas/common/command.ts'
import { refusalWords } from '../checks/refusal-words.ts'
import { diskErrorWords } from '../host/disk-error.ts'
import { jobEntry, leadsOut, otherSpelling, readInside } from '../host/machine-node.ts'
import { readFileText } from '../host/read-file-node.ts'
import { type Document, documentFrom } from '../job/document.ts'
import { largestFile, type Refusal, textFrom } from '../job/file-text.ts'
import { type JobFile, linkFile } from '../job/files.ts'

/** A file's text, with its byte order mark. */
export function readText(file: string): string {
  const read = readFileText(file)
  if (typeof read !== 'string') throw new CannotRun(refusalWords(file, read))
  return read
}

/** Stands for standard input among the paths. */
const stdinPath = '-'
/** What standard input is called in words and results. */
const stdinName = '<stdin>'

/** All of standard input where one of the paths stands for it, or why it is not read. No more than the limit is taken from it. */
export async function readStdin(paths: readonly string[]): Promise<string | Refusal | undefined> {
  if (!paths.includes(stdinPath)) return undefined
  const chunks: Uint8Array[] = []
  let length = 0
  try {
    for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
      chunks.push(chunk)
      length += chunk.length
      if (length > largestFile) break
    }
  } catch (error) {
    return { type: 'file-unreadable', why: diskErrorWords(error) }
  }
  return textFrom(Buffer.concat(chunks))
}

/** A path to check. */
export interface Listed {
  readonly path: string
  /** Why what is there is not read, where that is known already. */
  readonly refusal?: Refusal
}

/** The job files that paths stand for: themselves, or all below them but for node_modules and dot folders. A folder that cannot be read is among them,
 * with the reason. */
export function jobFiles(paths: readonly string[]): readonly Listed[] {
  const found = new Map<string, Listed>()
  for (const given of paths) for (const listed of filesAt(given)) found.set(listed.path, listed)
  if (found.size === 0) throw new CannotRun(`${paths.join(', ')}: no *.wright files found.`)
  return [...found.values()]
}

function filesAt(given: string): Iterable<Listed> {
  if (given === stdinPath) return [{ path: given }]
  const listed = { path: otherSpelling(process.cwd(), path.resolve(given)) ?? path.normalize(given) }
  try {
    const stat = fs.statSync(given, { throwIfNoEntry: false })
    if (stat) return stat.isDirectory() ? below(given) : [listed]
  } catch (error) {
    return [{ ...listed, refusal: { type: 'file-unreadable', why: diskErrorWords(error) } }]
  }
  throw new CannotRun(`${given}: file or folder not found.`)
}

/** What the editor leaves out of its listing is a finding here: whoever names the folder has asked for all of it. */
function* below(folder: string, root = folder): Generator<Listed> {
  for (const entry of entriesOf(folder)) {
    if ('refusal' in entry) {
      yield entry
      continue
    }
    const job = jobEntry(root, folder, entry)
    if (!job) continue
    if ('folder' in job) yield* below(job.folder, root)
    else if (job.unread === undefined) yield { path: job.file }
    else yield { path: job.file, refusal: { type: 'file-unreadable', why: job.unread } }
  }
}

function entriesOf(folder: string): readonly (fs.Dirent | (Listed & { readonly refusal: Refusal }))[] {
  try {
    const entries = fs.readdirSync(folder, { withFileTypes: true })
    return entries.sort((a, b) => a.name.localeCompare(b.name, 'en'))
  } catch (error) {
    const why = diskErrorWords(error)
    return [{ path: folder, refusal: { type: 'file-unreadable', why, isFolder: true } }]
  }
}

export interface OpenJob {
  readonly file: JobFile
  /** Path of the file, or of one it uses, as whoever runs the command would write it. */
  readonly shown: (file: JobFile) => string
}

const slashes = (file: string): string => file.split(path.sep).join('/')

/** What `openJob` need not read itself. */
export interface Read {
  /** What was read of standard input. */
  readonly stdin?: string | Refusal | undefined
  /** What jobs use, kept from one to the next. */
  readonly opened?: Map<string, Document | undefined>
}

/** Reads a job file and what it uses. Nothing outside the folder it is run in is read, or outside the file's own when that lies elsewhere.
 * Standard input counts as a file of the folder it is run in. */
export function openJob(listed: Listed, { stdin, opened = new Map() }: Read = {}): OpenJob {
  const isStdin = listed.path === stdinPath
  const given = isStdin ? stdinName : listed.path
  const full = path.resolve(given)
  const root = leadsOut(path.relative('', full)) ? path.dirname(full) : process.cwd()
  const document = documentFrom(listed.refusal ?? (isStdin ? (stdin ?? '') : readFileText(given)))
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
  return { file, shown }
}

function within(root: string, file: string): Document | undefined {
  const read = readInside(root, file)
  return read === undefined ? undefined : documentFrom(read)
}
