import type * as z from 'zod'
import type { Finding } from '../../checks/check.ts'
import type { Analysis } from '../../job/analysis.ts'
import type { JobFile } from '../../job/files.ts'
import type { JsonHead } from './command-json.ts'

/** Why a command could not do its work, in words for whoever called it. */
export class CannotRun extends Error {}

/** The job file that a command was given, opened and checked. */
export interface CommandJob {
  readonly file: JobFile
  readonly analysis: Analysis
  readonly findings: readonly Finding[]
  /** What its JSON begins with: the path of the file as whoever runs the command wrote it, the day it is made for. */
  readonly head: JsonHead
}

/** A command that an area brings: `shaftwright NAME PATH`, with `--format` and `--today` like other commands. It computes; the command line reads
 * the file and prints. */
export interface AreaCommand<Schema extends z.ZodType = z.ZodType> {
  readonly name: string
  readonly description: string
  /** Each takes a value: `--drive <name>`. */
  readonly options: readonly { readonly flags: string; readonly description: string }[]
  /** It prints a table as CSV too. */
  readonly hasCsv?: true
  /** Of its JSON, in docs/schemas under the name of the command. */
  readonly schema: Schema
  /** Throws `CannotRun` if there is nothing to print. */
  readonly run: (
    job: CommandJob,
    options: Readonly<Record<string, string | undefined>>,
  ) => {
    readonly text: string
    readonly json: z.infer<Schema>
    /** For CSV, the heads first. */
    readonly csv?: readonly (readonly (string | number)[])[]
    readonly exitCode: 0 | 1
  }
}
