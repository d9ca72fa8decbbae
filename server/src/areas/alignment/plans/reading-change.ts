import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { correctionOf } from './correction.ts'
import { type MovedInWords, movedIn } from './moved-in-words.ts'
import { movesBetween, readingAhead } from './moves.ts'

/** What a reading shows against the one taken before it. */
export interface ReadingChange {
  /** Name of the reading before. */
  readonly since: string
  /** m, before and now. */
  readonly gapVariation: readonly [number, number]
  /** m, before and now, where both were read. */
  readonly offset?: readonly [number, number]
  /** What the moves in between did to each foot, in the words of the job file. */
  readonly moved: readonly MovedInWords[]
  /** Whether the boat is afloat now, where that changed. */
  readonly launched?: boolean
}

/** Undefined for the first reading of a drive, and where either of the two cannot be worked out. */
export function changeOf(reading: Block, lookup: Lookup): ReadingChange | undefined {
  const earlier = readingAhead(reading)
  if (!earlier) return undefined
  const now = correctionOf(reading, lookup)
  const before = correctionOf(earlier, lookup.from(earlier))
  if (!now.ok || !before.ok) return undefined
  const moved = movesBetween(earlier, reading).flatMap(movedIn)
  const [wasAfloat, isAfloat] = [earlier, reading].map((block) => factOf(block, 'reading.afloat')?.value)
  return {
    since: earlier.name ?? '',
    gapVariation: [before.value.gapVariation.value.value, now.value.gapVariation.value.value],
    ...(before.value.offset &&
      now.value.offset && { offset: [before.value.offset.value.value, now.value.offset.value.value] }),
    moved,
    ...(wasAfloat !== undefined &&
      isAfloat !== undefined &&
      wasAfloat !== isAfloat && { launched: isAfloat === 'yes' }),
  }
}
