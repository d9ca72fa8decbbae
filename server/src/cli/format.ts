import fs from 'node:fs'
import { formatText } from '../syntax/format.ts'
import { attempt, jobFiles, readText } from './run.ts'

interface LaidOut {
  readonly file: string
  readonly before: string
  readonly after: string
}

/** `format`: writes only what changes, and names it. All files are read before one is written. */
export function format(paths: readonly string[], { check = false }: { readonly check?: boolean }): void {
  for (const { file, before, after } of jobFiles(paths).map(laidOut)) {
    if (before === after) continue
    if (check) process.exitCode = 1
    else attempt(`${file} cannot be written`, () => fs.writeFileSync(file, after))
    console.log(check ? `${file} would change` : file)
  }
}

function laidOut(file: string): LaidOut {
  const before = readText(file)
  return { file, before, after: formatText(before) }
}
