import fs from 'node:fs'
import { formatText } from '../syntax/format.ts'
import { attempt, jobFiles } from './run.ts'

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

/** Bytes that are not UTF-8 would not come back as they were: such a file is left alone. */
const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

function laidOut(file: string): LaidOut {
  const bytes = attempt(`${file} cannot be read`, () => fs.readFileSync(file))
  const before = attempt(`${file} is not text in UTF-8, and is left alone`, () => utf8.decode(bytes))
  return { file, before, after: formatText(before) }
}
