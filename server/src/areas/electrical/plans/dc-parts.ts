import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import type { FactValue } from '../../../vocabulary/index.ts'
import { readable } from '../../common/stated-fact.ts'
import { endsOf, systemOf } from './cable-circuit.ts'

/** What a drive, or the top of the file, has of the DC network. */
export interface DcParts {
  readonly cables: readonly DcCable[]
  readonly switches: readonly Switch[]
  readonly batteries: readonly BlockId[]
  readonly feeders: readonly Feeder[]
  /** The ends of cables that carry no DC, as far as they are known. */
  readonly phases: readonly (readonly PartEnd[])[]
  /** Cables whose ends, or what they carry, cannot be read. */
  readonly unread: readonly BlockId[]
  /** The parts at which cables end, whatever those carry; undefined where an end could not be read. */
  readonly ended: readonly (BlockId | undefined)[]
}

export interface PartEnd {
  readonly at: BlockId
  readonly kind: string
}

export interface DcCable {
  readonly cable: BlockId
  /** In the order from, to. */
  readonly ends: readonly [PartEnd, PartEnd]
  /** m. */
  readonly length: number | undefined
  readonly pole: FactValue<'cable.pole'> | undefined
}

export const switchKinds = ['protection', 'isolator', 'contactor'] as const
export type SwitchKind = (typeof switchKinds)[number]
export const isSwitch = (kind: string): kind is SwitchKind => switchKinds.some((one) => one === kind)

/** What opens a circuit: a fuse or breaker by itself, a switch when it is operated. */
export interface Switch {
  readonly device: BlockId
  readonly kind: SwitchKind
  /** Of a fuse or breaker, A. One that is not known lets nothing through: what is found holds whatever it turns out to be. */
  readonly rating: number
  readonly in: BlockId | undefined
  /** Length of that cable from its `from` end, m. */
  readonly at: number | undefined
  /** The cable that it is in could not be read: it may be any. */
  readonly isUnread: boolean
  /** By hand, or as its maker states. */
  readonly isolates: boolean
  /** Bolted on without a cable. */
  readonly from: PartEnd | undefined
  readonly to: PartEnd | undefined
}

/** A charger, or a converter at its output: it limits the current that it gives. */
export interface Feeder {
  readonly feeder: BlockId
  readonly kind: 'charger' | 'converter'
  /** A; not known: 0. */
  readonly current: number
}

/** Those of a drive, or of the top of the file. */
function partsOf(ofKind: (kind: string) => readonly Block[], from: (block: Block) => Lookup): DcParts {
  const all = ofKind('cable')
  const read = all.map((cable) => readable(() => endsRead(cable, from(cable))))
  return {
    cables: all.flatMap((cable, i) => (read[i] ? (dcCable(cable, read[i]) ?? []) : [])),
    switches: switchKinds.flatMap((kind) => ofKind(kind).map((block) => switchOf(block, kind, from(block)))),
    batteries: ofKind('battery').map(idOf),
    feeders: (['charger', 'converter'] as const).flatMap((kind) =>
      ofKind(kind).map((block) => ({
        feeder: idOf(block),
        kind,
        current: factOf(block, `${kind}.current`)?.value ?? 0,
      })),
    ),
    phases: read.flatMap((one) => (one && !one.isDc ? [one.ends] : [])),
    unread: all.flatMap((cable, i) => (read[i] ? [] : [idOf(cable)])),
    ended: all.flatMap((cable) => endedAt(cable, from(cable))),
  }
}

function endedAt(cable: Block, lookup: Lookup): readonly (BlockId | undefined)[] {
  const ends = readable(() => endsOf(cable, lookup).flatMap((end) => end ?? []))
  return ends ? ends.map(idOf) : [undefined]
}

interface Ends {
  /** As far as they are known. */
  readonly ends: readonly PartEnd[]
  readonly isDc: boolean
}

/** Throws Unreadable. */
const endsRead = (cable: Block, lookup: Lookup): Ends => ({
  ends: endsOf(cable, lookup).flatMap((end) => (end ? [partEnd(end)] : [])),
  isDc: systemOf(cable, lookup) === 'dc',
})

const partsOfDrive = plan((drive, { from }): DcParts => partsOf((kind) => childrenOf(drive, kind), from))
const sharedParts = ({ ofKind, from }: FileLookup): DcParts => partsOf(ofKind, from)

export const partsOfFile = ({ ofKind, ofFile, from }: FileLookup): DcParts => {
  const all = [...ofKind('drive').map((drive) => partsOfDrive(drive, from(drive))), ofFile(sharedParts)]
  return {
    cables: all.flatMap(({ cables }) => cables),
    phases: all.flatMap(({ phases }) => phases),
    unread: all.flatMap(({ unread }) => unread),
    switches: all.flatMap(({ switches }) => switches),
    batteries: all.flatMap(({ batteries }) => batteries),
    feeders: all.flatMap(({ feeders }) => feeders),
    ended: all.flatMap(({ ended }) => ended),
  }
}

/** Undefined where it carries no DC, or an end is not known. */
function dcCable(cable: Block, { ends: [from, to], isDc }: Ends): DcCable | undefined {
  return isDc && from && to
    ? {
        cable: idOf(cable),
        ends: [from, to],
        length: factOf(cable, 'cable.length')?.value,
        pole: factOf(cable, 'cable.pole')?.value,
      }
    : undefined
}

function switchOf(block: Block, kind: SwitchKind, lookup: Lookup): Switch {
  const cable = lookup.referred('in')
  return {
    device: idOf(block),
    kind,
    rating: kind === 'protection' ? (factOf(block, 'protection.rating')?.value ?? 0) : 0,
    in: cable && idOf(cable),
    at: factOf(block, `${kind}.at`)?.value,
    isolates:
      kind === 'isolator'
        ? factOf(block, 'isolator.poles')?.value !== 'negative'
        : factOf(block, 'protection.isolates')?.value === 'yes',
    isUnread: kind === 'protection' && block.unread.has('in'),
    from: boltedTo(block, 'from', lookup),
    to: boltedTo(block, 'to', lookup),
  }
}

function boltedTo(block: Block, end: 'from' | 'to', lookup: Lookup): PartEnd | undefined {
  const part = lookup.referred(end)
  return part && part !== block ? partEnd(part) : undefined
}

const partEnd = (block: Block): PartEnd => ({ at: idOf(block), kind: block.kind })
