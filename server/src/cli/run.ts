import fs from 'node:fs'
import path from 'node:path'
import { type Document, openDocument } from '../job/document.ts'
import { type JobFile, linkFile } from '../job/files.ts'

/** Why a command could not do its work, in words for whoever called it. */
export class CannotRun extends Error {}

export function today(): string {
  const now = new Date()
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

const read = (file: string): string => {
  try {
    return fs.readFileSync(file, 'utf8')
  } catch (error) {
    throw new CannotRun(`${file} cannot be read: ${(error as NodeJS.ErrnoException).code ?? error}`)
  }
}

/** The job files that paths stand for: themselves, or all below them but for node_modules and dot folders. */
export function jobFiles(paths: readonly string[]): readonly string[] {
  const found = paths.flatMap((given) => {
    const stat = fs.statSync(given, { throwIfNoEntry: false })
    if (!stat) throw new CannotRun(`${given}: there is no such file or folder.`)
    return stat.isDirectory() ? below(given) : [given]
  })
  if (found.length === 0) throw new CannotRun(`There are no *.wright files in ${paths.join(', ')}.`)
  return [...new Set(found)]
}

function below(folder: string): string[] {
  return fs
    .readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => a.name.localeCompare(b.name, 'en'))
    .flatMap((entry) => {
      const full = path.join(folder, entry.name)
      if (entry.isDirectory())
        return entry.name === 'node_modules' || entry.name.startsWith('.') ? [] : below(full)
      return entry.isFile() && entry.name.endsWith('.wright') ? [full] : []
    })
}

export interface OpenJob {
  /** As it was given, for messages. */
  readonly shown: string
  readonly text: string
  readonly file: JobFile
}

const slashes = (file: string): string => file.split(path.sep).join('/')

/** Reads a job file and what it uses. Nothing outside the folder it is run in is read, or outside the file's own when that lies elsewhere. */
export function openJob(given: string, opened: Map<string, Document | undefined> = new Map()): OpenJob {
  const full = path.resolve(given)
  const inside = path.relative(process.cwd(), full)
  const root = inside.startsWith('..') || path.isAbsolute(inside) ? path.dirname(full) : process.cwd()
  const text = read(full)
  const document = openDocument(text)
  const open = (target: string): Document | undefined => {
    const wanted = path.join(root, target)
    if (!opened.has(wanted)) opened.set(wanted, within(root, wanted))
    return opened.get(wanted)
  }
  return { shown: slashes(given), text, file: linkFile(slashes(path.relative(root, full)), document, open) }
}

/** Links are followed before it is decided whether a file lies inside. */
function within(root: string, file: string): Document | undefined {
  try {
    const real = path.relative(fs.realpathSync(root), fs.realpathSync(file))
    if (real.startsWith('..') || path.isAbsolute(real) || !fs.statSync(file).isFile()) return undefined
    return openDocument(fs.readFileSync(file, 'utf8'))
  } catch {
    return undefined
  }
}
