import { type Block, childrenOf, factOf } from '../job/model.ts'

/** Readings of a drive with the day each was taken, oldest first; of one day in the order of the file. One without a date goes by the one
 * written before it. */
function dated(drive: Block): readonly { readonly reading: Block; readonly day: string }[] {
  let day = ''
  return childrenOf(drive, 'reading')
    .map((reading) => {
      day = factOf(reading, 'reading.taken')?.value ?? day
      return { reading, day }
    })
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0))
}

/** The reading that counts: the last by date, and of one day the last in the file. */
export const lastReading = (drive: Block): Block | undefined => dated(drive).at(-1)?.reading

/** The reading a move says it comes after; the last where several have the name. */
export const readingBefore = (move: Block): Block | undefined =>
  move.parent &&
  dated(move.parent).findLast(
    ({ reading }) => reading.name === move.about?.text || reading.path === move.about?.text,
  )?.reading

/** Whether a move was made after a reading: it says so, comes after a later reading, or was done on a later day. */
function follows(move: Block, reading: Block): boolean {
  const all = move.parent ? dated(move.parent) : []
  const index = (of: Block | undefined) => all.findIndex((entry) => entry.reading === of)
  const done = factOf(move, 'move.done')?.value
  const day = all[index(reading)]?.day
  if (done !== undefined && day && done > day) return true
  const before = readingBefore(move)
  return before !== undefined && index(before) >= index(reading)
}

/** Whether the machine was moved after a reading: then it no longer stands as was read. */
export const movedAfter = (reading: Block): boolean =>
  reading.parent !== undefined && childrenOf(reading.parent, 'move').some((move) => follows(move, reading))

/** The last move of a drive that no reading follows. */
export const moveWithoutReading = (drive: Block): Block | undefined =>
  childrenOf(drive, 'move').findLast(
    (move) =>
      readingBefore(move) !== undefined &&
      childrenOf(drive, 'reading').every((reading) => follows(move, reading)),
  )
