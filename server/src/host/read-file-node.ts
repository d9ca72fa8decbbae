import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs'
import { largestFile, type Refusal, textFrom } from '../job/file-text.ts'
import { diskErrorWords } from './disk-error.ts'

const unreadable = (why: string): Refusal => ({ type: 'file-unreadable', why })

/** The text of a file, with its byte order mark, or why it is not read. Only a regular file is read, and never more of it than the limit: a pipe or
 * a device may never end. */
export function readFileText(file: string): string | Refusal {
  let handle: number | undefined
  try {
    const refusal = refusalOf(statSync(file))
    if (refusal) return refusal
    // It may have become a pipe by now; opening that must not wait for its other end.
    handle = openSync(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0))
    return refusalOf(fstatSync(handle)) ?? textFrom(readUpTo(handle, largestFile + 1))
  } catch (error) {
    return unreadable(diskErrorWords(error))
  } finally {
    if (handle !== undefined) closeSync(handle)
  }
}

/** Why what is there is no file to read; undefined where it is one. */
export function whyNoFile(stat: Stats): string | undefined {
  if (stat.isDirectory()) return 'it is a folder, not a file'
  return stat.isFile() ? undefined : 'it is not a regular file'
}

function refusalOf(stat: Stats): Refusal | undefined {
  const why = whyNoFile(stat)
  if (why !== undefined) return unreadable(why)
  return stat.size > largestFile ? { type: 'file-too-large' } : undefined
}

/** So many bytes at most, whatever size the file says it has: it may grow meanwhile. */
function readUpTo(handle: number, most: number): Uint8Array {
  const size = Math.min(most, fstatSync(handle).size + 1)
  let bytes = Buffer.alloc(size)
  let length = 0
  for (;;) {
    const read = readSync(handle, bytes, length, bytes.length - length, null)
    length += read
    if (read === 0 || length === most) return bytes.subarray(0, length)
    if (length === bytes.length) bytes = Buffer.concat([bytes], Math.min(most, 2 * length))
  }
}
