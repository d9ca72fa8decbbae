import { randomBytes } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { CannotRun } from '../areas/common/command.ts'
import { diskErrorWords } from '../host/disk-error.ts'

/** Replaces the text of a user's file, whole or not at all. The only place that writes such a file.
 *
 * The new text goes into a temporary file beside the old one, then takes its name (POSIX `rename`). So the old text stays whole whenever this
 * fails, even if the process is killed. A symbolic link stays a link. Throws `CannotRun` if the file is no longer as `before` says.
 * @returns whether this call wrote the file; another process may already have written the same text. */
export function replaceText(file: string, before: string, after: string): boolean {
  const refused = `${file} cannot be written`
  return attempt(refused, () => {
    const target = fs.realpathSync(file)
    const folder = path.dirname(target)
    const old = fs.statSync(target)
    const obstacle = obstacleTo(old, fs.statSync(folder))
    if (obstacle !== undefined) throw new CannotRun(`${refused}: ${obstacle}.`)
    fs.accessSync(target, fs.constants.W_OK)
    attempt(`${refused}, as its folder cannot`, () => fs.accessSync(folder, fs.constants.W_OK))
    const temporary = path.join(folder, `.shaftwright-${randomBytes(8).toString('hex')}.tmp`)
    try {
      writeNew(temporary, after, old)
      const now = fs.readFileSync(target)
      if (now.equals(Buffer.from(after))) return false
      if (!now.equals(Buffer.from(before)))
        throw new CannotRun(`${refused}: another program changed it. Run the command again.`)
      fs.renameSync(temporary, target)
    } finally {
      succeeds(() => fs.rmSync(temporary, { force: true }))
    }
    syncFolder(folder)
    return true
  })
}

/** Does what the disk may refuse; the words say what could not be done. */
function attempt<T>(words: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof CannotRun) throw error
    throw new CannotRun(`${words}: ${diskErrorWords(error)}.`)
  }
}

const noWriter = (mode: number): boolean => (mode & 0o222) === 0
/** Windows marks a folder read-only for other reasons. */
const foldersHaveModes = process.platform !== 'win32'

/** Why a file is left alone that `rename` would replace. A file or folder that nobody may write is protected on purpose: root respects that too. */
function obstacleTo({ mode, nlink }: fs.Stats, folder: fs.Stats): string | undefined {
  if (noWriter(mode)) return 'it is read-only'
  if (foldersHaveModes && noWriter(folder.mode)) return 'its folder is read-only'
  if (nlink > 1)
    return `it has ${nlink} names (hard links), and only this one would get the new text. Copy it to a file of its own`
  return undefined
}

/** Writes a file that did not exist, on to the disk, with owner and mode of another. */
function writeNew(file: string, text: string, like: fs.Stats): void {
  const handle = fs.openSync(file, 'wx', 0o600)
  try {
    fs.writeFileSync(handle, text)
    giveRights(handle, like)
    fs.fsyncSync(handle)
  } finally {
    fs.closeSync(handle)
  }
}

/** A group that cannot be kept must not hand its rights to another group. */
function giveRights(handle: number, { uid, gid, mode }: fs.Stats): void {
  const own = fs.fstatSync(handle)
  const keepsGroup = own.gid === gid || succeeds(() => fs.fchownSync(handle, own.uid, gid))
  if (own.uid !== uid) succeeds(() => fs.fchownSync(handle, uid, keepsGroup ? gid : own.gid))
  const wanted = keepsGroup ? mode & 0o777 : (mode & 0o707) | ((mode & 0o007) << 3)
  // Some disks give every file the same mode, and allow no other.
  if ((fs.fstatSync(handle).mode & 0o777) !== wanted) fs.fchmodSync(handle, wanted)
}

/** Makes the new name survive a power cut. Not every system can sync a folder; the file is whole either way. */
function syncFolder(folder: string): void {
  succeeds(() => {
    const handle = fs.openSync(folder, 'r')
    try {
      fs.fsyncSync(handle)
    } finally {
      fs.closeSync(handle)
    }
  })
}

function succeeds(work: () => void): boolean {
  try {
    work()
    return true
  } catch {
    return false
  }
}
