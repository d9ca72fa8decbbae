import { readFileSync, realpathSync, statSync } from 'node:fs'
import { isAbsolute, relative, sep } from 'node:path'

/** The day by the clock of this machine, `YYYY-MM-DD`. */
export function today(): string {
  const now = new Date()
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** Whether a relative path leads out of the folder it starts from. */
export const leadsOut = (path: string): boolean =>
  path === '..' || path.startsWith(`..${sep}`) || isAbsolute(path)

const utf8 = new TextDecoder('utf-8', { fatal: true })

/** Text of a file that really lies in the root, links followed, without its byte order mark; undefined for any other, and for what is not UTF-8. */
export function readInside(root: string, file: string): string | undefined {
  try {
    const real = realpathSync(file)
    const inside = !leadsOut(relative(realpathSync(root), real))
    return inside && statSync(real).isFile() ? utf8.decode(readFileSync(real)) : undefined
  } catch {
    return undefined
  }
}
