// What the server and an editor that knows it say to each other beside LSP. Shared by both sides, so without either's library.

import type { Refusal } from '../job/file-text.ts'

export { largestFile, textFrom } from '../job/file-text.ts'

// Asked by a server that has no files of its own:

export const readFile = 'shaftwright/readFile'
export interface ReadFileParams {
  readonly uri: string
  /** The folder that the file must lie in. */
  readonly root: string
}
/** The text or why it is not read; null when there is no such file, or when it lies outside. */
export type ReadFileResult = string | Refusal | null

export const listFiles = 'shaftwright/listFiles'
export interface ListFilesParams {
  readonly root: string
}
/** URIs of the job files below the folder: without those in `node_modules`, or in folders whose name begins with a dot. */
export type ListFilesResult = readonly string[]

// Asked by the editor:

/** The command that a lens over a drive or a reading runs. */
export const planCommand = 'shaftwright.plan'

export const planRequest = 'shaftwright/plan'
export interface PlanParams {
  readonly textDocument: { readonly uri: string }
  /** A place in the drive or the reading. */
  readonly position?: { readonly line: number; readonly character: number } | undefined
  /** The drive or the reading by its path: `port`, `port.dry-1`. Without either, the only drive. */
  readonly path?: string | undefined
}
export type PlanResult =
  | { readonly type: 'plan'; readonly path: string; readonly text: string }
  /** No drive is meant, or there is none of that path any more. `drives`: the paths of those there are. */
  | { readonly type: 'no-such-drive'; readonly drives: readonly string[] }
  | { readonly type: 'no-file' }

/** Told once after each `shaftwright/plan`, when the file or one that it uses has changed. */
export const planChanged = 'shaftwright/planChanged'
export interface PlanChangedParams {
  readonly uris: readonly string[]
}

/** Answers with the text of a new job, each value a `?` to fill in. */
export const newJobRequest = 'shaftwright/newJob'
export interface NewJobParams {
  readonly vessel: string
  readonly drives: 1 | 2
  readonly units: 'metric' | 'inch'
  /** How the feet of the motor get their height. */
  readonly feet: 'studs' | 'shims'
}

/** Why a vessel cannot go by this name, in words for whoever typed it. */
export function vesselFault(name: string): string | undefined {
  // Nothing that can be seen: only spaces, control characters and the like.
  if (!/[^\p{Z}\p{C}]/u.test(name)) return 'Enter the name of the vessel.'
  if (/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(name))
    return 'A name cannot contain line breaks or control characters.'
  return name.length > longestName ? `A name has ${longestName} characters at most.` : undefined
}

const longestName = 100
