import type { InPlanes } from '../../../engineering/alignment/planes.ts'
import { formatNumber } from '../../../quantity/format.ts'
import { formatLength, formatUncertain } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { expanded, type Uncertain } from '../../../quantity/uncertainty.ts'
import { briefVerdict, formatMoved, ofLimit } from './brief-words.ts'
import type { LogEntry } from './log.ts'
import { formatExplanations } from './move-discrepancy-words.ts'
import type { Comparison, FlangeMisalignment, OtherShape } from './reading-comparison.ts'

interface Part {
  readonly what: string
  readonly predicted: Uncertain
  readonly found: number
}

function partsOf({ predicted, found }: Comparison): readonly Part[] {
  const of = (kind: keyof FlangeMisalignment, [up, across]: readonly [string, string]): readonly Part[] => {
    const [should, is]: readonly (InPlanes<Uncertain> | undefined)[] = [predicted[kind], found[kind]]
    if (!should || !is) return []
    return [
      { what: up, predicted: should.vertical, found: is.vertical.value },
      { what: across, predicted: should.horizontal, found: is.horizontal.value },
    ]
  }
  return [
    ...of('opening', ['gap top minus bottom', 'gap starboard minus port']),
    ...of('offset', ['machine flange high', 'machine flange to starboard']),
  ]
}

/** What was predicted and what was read, only what differs by more than U: `gap top minus bottom 0.02 ± 0.03 mm, read 0.50 mm`. */
export function formatMismatch(comparison: Comparison, system: UnitSystem): string {
  const parts = partsOf(comparison)
  const apart = parts.filter(
    ({ predicted, found }) => Math.abs(found - predicted.value) > expanded(predicted),
  )
  return (apart.length > 0 ? apart : parts)
    .map(
      ({ what, predicted, found }) =>
        `${what} ${formatUncertain(predicted, system)}, read ${formatLength(found, system)}`,
    )
    .join('; ')
}

const shapes: Readonly<Record<OtherShape['type'], string>> = {
  launched: 'Afloat now: the boat changed shape',
  'hauled-out': 'Ashore now: the boat changed shape',
  heated: 'Hot now: the machine grew',
  cooled: 'Cold now: the machine shrank',
  'end-supported': 'The end of the shaft is supported now',
  'end-freed': 'The end of the shaft hangs free now',
}

/** How a reading stands to the one before it and the moves in between. */
function formatAgainst(against: NonNullable<LogEntry['against']>, system: UnitSystem): string {
  if (against.type !== 'compared')
    return `${shapes[against.type]}, so it is not compared with ${against.since}.`
  const { since, noted, mismatch } = against
  if (mismatch.noise)
    return noted
      ? `Matches the moves since ${since}, within U.`
      : `Same as ${since}, within U; no move is noted in between.`
  const why = noted ? `from the moves since ${since}` : `as no move is noted since ${since}`
  return `! Expected, ${why}: ${formatMismatch(against, system)}. ${formatExplanations(against, system)}`
}

/** What an earlier reading put in doubt and this one does not settle. */
const formatStillOpen = ({ at, since }: Comparison): string =>
  `! Still unexplained: ${at} does not match ${since}.`

type Column = (entry: LogEntry, system: UnitSystem) => string

const columns: readonly Column[] = [
  ({ name }) => name,
  ({ taken = '' }) => taken,
  ({ afloat, hot }) =>
    [afloat === undefined ? '' : afloat ? 'afloat' : 'dry', hot ? 'hot' : ''].filter(Boolean).join(', '),
  ({ outcome }, system) => (outcome.ok ? `gap variation ${ofLimit(outcome.value.gapVariation, system)}` : ''),
  ({ outcome }, system) =>
    outcome.ok && outcome.value.offset ? `offset ${ofLimit(outcome.value.offset, system)}` : '',
  ({ outcome }, system) =>
    outcome.ok ? (briefVerdict(outcome.value, system).split(':')[0] ?? '') : 'cannot be worked out',
]

/** For a terminal: a line a reading, what it shows against the moves before it below, then what was moved after it, and what is only planned. */
export function logText(drive: string, log: readonly LogEntry[], system: UnitSystem): string {
  const cells = log.map((entry) => columns.map((column) => column(entry, system)))
  const widths = columns.map((_, i) => Math.max(...cells.map((row) => row[i]?.length ?? 0)))
  return [
    `Readings of ${drive}:`,
    ...log.flatMap(({ against, stillOpen, moved, planned }, i) => [
      `  ${(cells[i] ?? [])
        .map((cell, k) => cell.padEnd(widths[k] ?? 0))
        .filter((cell) => cell !== '')
        .join('  ')}`.trimEnd(),
      ...(against ? [`      ${formatAgainst(against, system)}`] : []),
      ...(stillOpen ? [`      ${formatStillOpen(stillOpen)}`] : []),
      ...(moved.length > 0 ? [`      then ${formatMoved(moved).join('; ')}`] : []),
      ...(planned.length > 0
        ? [`      planned, not marked as done: ${formatMoved(planned).join('; ')}`]
        : []),
    ]),
  ].join('\n')
}

const bars = '▁▂▃▄▅▆▇█'

/** The gap variation over what is allowed, reading by reading: `█▁▁`. Undefined where there is nothing to compare. */
export function sparkline(log: readonly LogEntry[]): string | undefined {
  const shares = log.flatMap(({ outcome }) =>
    outcome.ok ? [outcome.value.gapVariation.value.value / outcome.value.gapVariation.limit] : [],
  )
  if (shares.length < 2) return undefined
  const most = Math.max(1, ...shares)
  const drawn = shares.map((share) => bars[Math.min(7, Math.floor((share / most) * 8))] ?? '').join('')
  return `${drawn} ${shares.map((share) => formatNumber(Number(share.toFixed(2)), 2)).join(' → ')} of the allowed gap variation`
}
