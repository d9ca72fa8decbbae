// All output of a command goes through here. Control characters from a job, a file name or an argument are shown, so they cannot control the terminal.
import picocolors from 'picocolors'
import { diskErrorWords } from '../host/disk-error.ts'
import { controls, harmless } from '../syntax/harmless.ts'

/** Part of a line, with an optional colour. */
export type Piece = string | readonly ['bold' | 'dim' | 'red' | 'yellow' | 'cyan', string]
export type Line = string | readonly Piece[]

/** Colours on a terminal unless NO_COLOR is set (https://no-color.org). FORCE_COLOR turns them on elsewhere. */
function isColoured(): boolean {
  const { NO_COLOR, FORCE_COLOR } = process.env
  if (NO_COLOR) return false
  return FORCE_COLOR ? FORCE_COLOR !== '0' : process.stdout.isTTY === true
}

export function print(lines: readonly Line[]): void {
  const colours = picocolors.createColors(isColoured())
  const shown = (piece: Piece): string =>
    typeof piece === 'string' ? harmless(piece) : colours[piece[0]](harmless(piece[1]))
  for (const line of lines) console.log(typeof line === 'string' ? shown(line) : line.map(shown).join(''))
}

export function printError(lines: readonly string[]): void {
  for (const line of lines) console.error(harmless(line))
}

/** Control characters are escaped; the value stays the same. */
export const printJson = (value: unknown): void =>
  console.log(
    JSON.stringify(value, null, 2).replace(controls, (sign) =>
      sign === '\n' ? sign : `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
    ),
  )

/** A text to be saved as a file is unchanged when it is redirected to one. */
export const printFile = (text: string): void => {
  if (process.stdout.isTTY) print(text.trimEnd().split('\n'))
  else process.stdout.write(text)
}

/** A result that could not be written is lost, so the command ends with 2. A reader that has read enough, as `head` does, is no failure. */
export function failWithOutput(): void {
  let failed = false
  const watch = (stream: NodeJS.WriteStream, printFailure: (words: string) => void) =>
    stream.on('error', (error: NodeJS.ErrnoException) => {
      // Once it has failed, a stream refuses all that follows.
      if (failed || error.code === 'EPIPE' || error.code === 'ERR_STREAM_DESTROYED') return
      failed = true
      // The command sets its own code when it is done.
      process.once('exit', () => {
        process.exitCode = 2
      })
      printFailure(`The output cannot be written: ${diskErrorWords(error)}.`)
    })
  watch(process.stdout, (words) => printError([words]))
  watch(process.stderr, () => {})
}
