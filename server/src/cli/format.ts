import fs from 'node:fs'
import { formatText } from '../syntax/format.ts'
import { CannotRun, jobFiles } from './run.ts'

/** `format`: writes only what changes, and names it. */
export function format(paths: readonly string[], { check = false }: { readonly check?: boolean }): void {
  for (const file of jobFiles(paths)) {
    const { before, after } = laidOut(file)
    if (before === after) continue
    console.log(check ? `${file} would change` : file)
    if (check) process.exitCode = 1
    else fs.writeFileSync(file, after)
  }
}

function laidOut(file: string): { readonly before: string; readonly after: string } {
  try {
    const before = fs.readFileSync(file, 'utf8')
    return { before, after: formatText(before) }
  } catch (error) {
    throw new CannotRun(`${file} cannot be read: ${error instanceof Error ? error.message : error}`)
  }
}
