import { atHead, check, published } from '../../../checks/check.ts'
import { isLikeUnknown } from '../../../checks/missing.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { correctionOf } from '../plans/correction.ts'
import { lastReading, movedAfter } from '../plans/moves.ts'
import { standingReadings } from '../plans/reading-history.ts'

const job = (readings: string) => `job "Launch" {
  vessel: "Launch 07"
  status: as-built
}
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
${readings}}`

const formatName = ({ name }: Block): string => name ?? 'the last reading'

const notAfloat = (reading: Block): string =>
  `${formatName(reading)} ${factOf(reading, 'reading.afloat')?.value === 'no' ? 'was taken dry' : 'does not say that it was afloat'}`

/** What keeps the last reading from showing that the coupling is aligned, in words; undefined where nothing does. A reading that is outside
 * is a finding of its own, which a concession may accept. */
function open(drive: Block, lookup: Lookup): string | undefined {
  const id = standingReadings(drive, lookup).findLast(({ state }) => state?.afloat === 'afloat')?.reading
  const last = lastReading(drive)
  const counting = id && lookup.blockOf(id)
  if (!counting) return last ? notAfloat(last) : 'it has no reading of the coupling'
  const name = formatName(counting)
  if (movedAfter(counting)) return `the machine was moved after ${name}`
  const outcome = correctionOf(counting, lookup.from(counting))
  if (!outcome.ok) return `the alignment cannot be worked out from ${name}`
  if (outcome.value.contradictory) return `the values of ${name} contradict each other`
  return outcome.value.verdict === 'undecided' ? `${name} cannot show that it is within` : undefined
}

export default check({
  id: 'alignment/no-reading-within',
  severity: 'error',
  followsStatus: true,
  claim: {
    from: 'as-built',
    words:
      'Each drive has a reading of the coupling afloat that is within its limits. It is the last one afloat, and no move follows it.',
  },
  title: 'As-built without a reading afloat that is within its limits',
  why: 'An as-built job claims that each machine was left aligned. A hull changes shape when it is launched. So only a reading afloat, with fuel and ballast aboard, shows how the coupling stands in service. The last one counts, with no move after it.',
  source: published('US Army TM 55-1905-220-14: afloat only, fuel and ballast aboard'),
  on: 'drive',
  fires: job('').replace('drive main {', 'drive main {\n#<- no reading'),
  quiet: job(`  reading afloat-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    afloat: yes
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
`),
  run: (_facts, lookup) => {
    const why =
      lookup.status === 'as-built' && !isLikeUnknown(lookup.block) ? open(lookup.block, lookup) : undefined
    return why === undefined
      ? []
      : [
          atHead(lookup.block, {
            message: `The drive is not shown to be aligned: ${why}.`,
            todo: 'Read the coupling afloat, settled, with fuel and ballast aboard, and add the reading. Until then set the status back to issued.',
          }),
        ]
  },
})
