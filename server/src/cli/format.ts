import { CannotRun } from '../areas/common/command.ts'
import { refusalWords } from '../checks/refusal-words.ts'
import { largestFile, utf8Length } from '../job/file-text.ts'
import { formatText } from '../syntax/format.ts'
import { jobFiles, readText } from './run.ts'
import { print, printError } from './terminal.ts'
import { replaceText } from './write-file.ts'

/** `format`: writes only what changes, and names it. A file that cannot be formatted does not stop the others. */
export function format(paths: readonly string[], { check = false }: { readonly check?: boolean }): void {
  let failed = false
  for (const { path: file, refusal } of jobFiles(paths)) {
    try {
      if (refusal) throw new CannotRun(refusalWords(file, refusal))
      const before = readText(file)
      if (before.includes('\0'))
        throw new CannotRun(`${file} is no text file: it contains NUL (U+0000). It is left as it is.`)
      const after = formatText(before)
      if (before === after) continue
      if (utf8Length(after) > largestFile)
        throw new CannotRun(`${file} would become larger than 5 MB, and then not be read any more.`)
      if (check) process.exitCode = 1
      if (check || replaceText(file, before, after)) print([check ? `${file} would change` : file])
    } catch (error) {
      if (!(error instanceof CannotRun)) throw error
      printError([error.message])
      failed = true
    }
  }
  if (failed) process.exitCode = 2
}
