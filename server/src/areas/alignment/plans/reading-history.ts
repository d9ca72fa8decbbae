import { memoizeByIdentity } from '../../../common/memoize-by-identity.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { between, isLater } from '../../common/days.ts'
import { type Correction, correctionOf } from './correction.ts'
import { readingInLog } from './log.ts'
import { readingsOf } from './moves.ts'

/** How the boat lay and whether the machine was warm: the same machine stands differently in each. */
export interface ReadingState {
  /** `not-stated`: the reading is silent, and the job does not show that the boat was still ashore. */
  readonly afloat: 'afloat' | 'dry' | 'not-stated'
  readonly hot: boolean
}

/** A hull goes on changing shape for a day or two after launching. Common practice, no source. */
export const hoursToSettle = 24

/** Hours from the launch to a reading that was taken afloat; below zero where the dates contradict that. */
export function hoursAfloat(reading: Block, lookup: Lookup): number | undefined {
  const launched = launchOf(lookup)
  const taken = factOf(reading, 'reading.taken')?.value
  if (launched === undefined || taken === undefined || factOf(reading, 'reading.afloat')?.value !== 'yes')
    return undefined
  return between(launched, taken) / 3_600_000
}

function launchOf({ ofKind }: Lookup): string | undefined {
  const [job] = ofKind('job')
  return job && factOf(job, 'job.launched')?.value
}

/** The state a reading was taken in; undefined where what it says of that cannot be read. */
export function stateOf(reading: Block, lookup: Lookup): ReadingState | undefined {
  if (reading.unread.has('afloat') || reading.unread.has('hot')) return undefined
  const hot = factOf(reading, 'reading.hot')?.value === 'yes'
  const afloat = factOf(reading, 'reading.afloat')?.value
  if (afloat !== undefined) return { afloat: afloat === 'yes' ? 'afloat' : 'dry', hot }
  const launched = launchOf(lookup)
  const taken = factOf(reading, 'reading.taken')?.value
  const ashore = launched !== undefined && taken !== undefined && isLater(launched, taken)
  return { afloat: ashore ? 'dry' : 'not-stated', hot }
}

/** A reading of a drive, and what replaced it. */
export interface InHistory {
  readonly reading: BlockId
  readonly state: ReadingState | undefined
  /** The later reading that counts instead. Undefined: this one still counts, or cannot be judged itself. */
  readonly replacedBy: BlockId | undefined
}

/** The readings of a drive, oldest first. A reading is history once a later one in the same state judges all that it judged. A dry one is history too once a
 * later one afloat is within: the boat no longer lies as it was read. A reading that is unfinished, contradicts itself or is in doubt replaces none. */
const historyOf = plan((drive: Block, lookup: Lookup): readonly InHistory[] => {
  const [last, lastWithRim] = [new Map<string, BlockId>(), new Map<string, BlockId>()]
  return readingsOf(drive)
    .toReversed()
    .map((reading): InHistory => {
      const [id, state] = [idOf(reading), stateOf(reading, lookup)]
      if (!state || !reading.facts.has('taken')) return { reading: id, state, replacedBy: undefined }
      const key = JSON.stringify(state)
      const replacedBy = (readsRim(reading) ? lastWithRim : last).get(key)
      const judged = judgedIn(reading, lookup.from(reading))
      const replaces = [key]
      if (state.afloat === 'afloat' && judged?.verdict === 'within')
        replaces.push(JSON.stringify({ ...state, afloat: 'dry' } satisfies ReadingState))
      for (const one of judged ? replaces : []) {
        if (!last.has(one)) last.set(one, id)
        if (judged?.offset && !lastWithRim.has(one)) lastWithRim.set(one, id)
      }
      return { reading: id, state, replacedBy }
    })
    .toReversed()
})

const replacedIn = memoizeByIdentity(
  (history: readonly InHistory[]) => new Map(history.map((one) => [one.reading, one.replacedBy])),
)

/** The readings of a drive that no later one has replaced, oldest first: their verdicts count. */
export const standingReadings = (drive: Block, lookup: Lookup): readonly InHistory[] =>
  historyOf(drive, lookup).filter(({ replacedBy }) => replacedBy === undefined)

/** The later reading that counts instead of this one; undefined where it still counts itself. */
export function replacedBy(reading: Block, lookup: Lookup): Block | undefined {
  const drive = reading.parent
  const by = drive && replacedIn(historyOf(drive, lookup.from(drive))).get(idOf(reading))
  return by === undefined ? undefined : lookup.blockOf(by)
}

/** Whether a reading can be relied on and shows where the machine is: within or outside. */
export const isJudged = (reading: Block, lookup: Lookup): boolean =>
  reading.facts.has('taken') && judgedIn(reading, lookup.from(reading)) !== undefined

/** Whether the rims were read, or were meant to be. */
const readsRim = ({ facts, unread }: Block): boolean =>
  ['offsets', 'offsets-half-turn', 'rim-dial', 'reverse-dial'].some(
    (fact) => facts.has(fact) || unread.has(fact),
  )

/** What a reading says, where it can be relied on: worked out, whole, agreeing with itself and the moves before it, and within or outside. The date of another
 * reading may be open: those that are compared here have theirs. */
function judgedIn(reading: Block, lookup: Lookup): Correction | undefined {
  const outcome = correctionOf(reading, lookup)
  if (!outcome.ok) return undefined
  const c = outcome.value
  const isDoubtful =
    c.contradictory ||
    c.soft !== undefined ||
    c.doubts.some(({ type }) => type === 'doubled-names') ||
    readingInLog(reading, lookup).doubt !== undefined
  const isOpen = [c.verdict, c.gapVariation.verdict, c.offset?.verdict].includes('undecided')
  const hours = hoursAfloat(reading, lookup)
  const isUnsettled = hours !== undefined && hours < hoursToSettle
  return isDoubtful || isOpen || isUnsettled ? undefined : c
}
