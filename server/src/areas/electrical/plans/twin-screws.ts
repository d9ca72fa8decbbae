import { type Hand, screwHand } from '../../../engineering/rotation.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import type { FactValue } from '../../../vocabulary/index.ts'

/** What keeps the screws of a boat from turning as the job states. */
interface ScrewFault {
  readonly message: string
  readonly detail?: string
  readonly todo: string
  readonly found: string
  /** Nothing shows whether they do. */
  readonly isOpen?: true
}

interface Screw {
  readonly name: string
  readonly hand: Hand | undefined
  readonly side: 'port' | 'starboard' | undefined
}

function screwOf(drive: Block, lookup: FileLookup): Screw {
  const [propeller] = childrenOf(drive, 'propeller')
  const near = propeller ?? lookup.from(drive).near('propeller')
  const across = factOf(drive, 'drive.across')?.value
  return {
    name: drive.name ?? 'without a name',
    hand: near && factOf(near, 'propeller.turns')?.value,
    side: across === undefined || across === 0 ? undefined : across < 0 ? 'port' : 'starboard',
  }
}

/** How the screws of two drives turn against how the job wants them to. */
export function screwsOf(screws: FactValue<'job.screws'>, lookup: FileLookup): readonly ScrewFault[] {
  const all = lookup.ofKind('drive').map((drive) => screwOf(drive, lookup))
  const [one, other] = all
  if (!one || !other || all.length !== 2)
    return [
      {
        message: `\`screws\` is about two drives; this job has ${all.length}.`,
        todo: 'Remove `screws`, or write the other drive.',
        found: `${all.length}`,
        isOpen: true,
      },
    ]
  const silent = all.filter(({ hand }) => hand === undefined).map(({ name }) => name)
  if (!one.hand || !other.hand)
    return [
      {
        message: `Whether the screws turn ${screws} is not known: ${silent.join(' and ')} has no \`turns\`.`,
        todo: 'State the hand of each propeller.',
        found: 'not known',
        isOpen: true,
      },
    ]
  const isSame = one.hand === other.hand
  const found = `${one.name} ${one.hand}, ${other.name} ${other.hand}`
  if (isSame !== (screws === 'same-hand'))
    return [
      {
        message: `The job wants ${screws} screws, but both propellers ${isSame ? 'are' : 'are not'} of one hand.`,
        detail: `Drive ${one.name} is ${one.hand}, ${other.name} ${other.hand}.`,
        todo: 'Correct the hand of a propeller, or `screws`.',
        found,
      },
    ]
  if (screws === 'same-hand') return []
  if (!one.side || !other.side)
    return [
      {
        message: `Whether the screws turn ${screws} is not known: a drive does not state its side.`,
        todo: 'State `across` of both drives: the distance from the centreline, port or starboard.',
        found: 'not known',
        isOpen: true,
      },
    ]
  if (one.side === other.side)
    return [
      {
        message: `Both drives are to ${one.side}, so the screws cannot turn ${screws}.`,
        todo: 'Correct `across` of a drive.',
        found,
      },
    ]
  const wanted = screwHand(screws, one.side)
  if (one.hand === wanted) return []
  return [
    {
      message: `For ${screws} screws drive ${one.name} (${one.side}) needs a ${wanted} propeller, not ${one.hand}.`,
      detail: `Seen from astern, going ahead. Drive ${other.name} (${other.side}) needs ${other.hand === 'right-hand' ? 'left-hand' : 'right-hand'}.`,
      todo: 'Correct the hand of both propellers, or `screws`.',
      found,
    },
  ]
}
