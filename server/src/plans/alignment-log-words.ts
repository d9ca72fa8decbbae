import type { Hypothesis } from '../engineering/alignment/mismatch.ts'
import type { InPlanes } from '../engineering/alignment/planes.ts'
import { formatNumber, formatSi } from '../quantity/format.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { saidLength, saidSure } from '../quantity/said.ts'
import { expanded, type Uncertain } from '../quantity/uncertainty.ts'
import type { Comparison, LogEntry, OtherShape, Standing } from './alignment-log.ts'
import { briefVerdict, ofLimit, sayMoved } from './brief-words.ts'
import { listed } from './listed.ts'

const shares: readonly (readonly [number, string])[] = [
  [1 / 4, 'a quarter of'],
  [1 / 3, 'a third of'],
  [1 / 2, 'half'],
  [2 / 3, 'two thirds of'],
  [3 / 4, 'three quarters of'],
]

const sayShare = (share: number): string =>
  shares.reduce((best, one) => (Math.abs(one[0] - share) < Math.abs(best[0] - share) ? one : best))[1]

const wrongWay = {
  'stud-and-nuts': (feet: string) => `the nuts at ${feet} were turned the wrong way`,
  shims: (feet: string) => `the shims at ${feet} went the wrong way: in instead of out, or out instead of in`,
  'by hand': (feet: string, many: boolean) => `${feet} ${many ? 'were' : 'was'} moved the wrong way`,
} as const

/** What may have happened, as an installer would say it. */
function sayHypothesis(
  of: Hypothesis & { readonly anyOf?: true },
  comparison: Comparison,
  system: UnitSystem,
): string {
  const { readAt, moves, adjuster } = comparison
  switch (of.type) {
    case 'turned-the-wrong-way':
      return wrongWay[adjuster ?? 'by hand'](
        listed(of.feet, of.anyOf ? 'or' : 'and'),
        !of.anyOf && of.feet.length > 1,
      )
    case 'did-not-follow': {
      const all = new Set(moves.flatMap(({ others }) => [...others.keys()]))
      return !of.anyOf && of.feet.length > 1 && of.feet.length === all.size
        ? 'no foot followed: was this read before the move was made?'
        : `${listed(of.feet, of.anyOf ? 'or' : 'and')} did not follow: look for a soft foot`
    }
    case 'part-of-the-way':
      return `the machine came about ${sayShare(of.share)} the way: were the nuts tight when it was read?`
    case 'other-gauge-diameter': {
      const fits = formatSi(of.factor * readAt.diameter, 'length', system, 2)
      const has = formatSi(readAt.diameter, 'length', system)
      return readAt.stated
        ? `the gauge circle: the figures fit a gauge-diameter of about ${fits}, the file says ${has}`
        : `the gauge circle: the figures fit a gauge-diameter of about ${fits}, the file says none and a flange of ${has}`
    }
    case 'sides-swapped':
      return 'port and starboard are swapped in this reading'
    case 'top-and-bottom-swapped':
      return 'top and bottom are swapped in this reading'
    case 'wrong-side':
      return 'the machine went to the other side than is noted'
    case 'offset-not-carried':
      return 'the offset did not go with the slope: was it read again?'
  }
}

/** Single feet of which each would explain it alike are told together: a stiff machine shows the same for either. */
function together(hypotheses: readonly Hypothesis[]): readonly (Hypothesis & { readonly anyOf?: true })[] {
  const single = (of: Hypothesis) => 'feet' in of && of.feet.length === 1
  const alike = (type: Hypothesis['type']) =>
    hypotheses.flatMap((of) => (of.type === type && 'feet' in of && single(of) ? of.feet : []))
  return hypotheses.flatMap((of) => {
    if (!('feet' in of) || !single(of)) return [of]
    const feet = alike(of.type)
    if (feet.length < 2) return [of]
    return of.feet[0] === feet[0] ? [{ ...of, feet: [...feet].sort(), anyOf: true as const }] : []
  })
}

/** What explains a mismatch: all that do as well as each other, or that none does. Undefined where noise explains it. */
export function sayExplanations(comparison: Comparison, system: UnitSystem): string | undefined {
  const { noise, explanations } = comparison.mismatch
  if (noise) return undefined
  const [first, ...more] = together(explanations.map(({ hypothesis }) => hypothesis)).map((of) =>
    ended(sayHypothesis(of, comparison, system)),
  )
  if (first === undefined) return 'No single slip explains it: read again.'
  return more.length === 0
    ? `Most likely ${first}`
    : `These explain it alike. Either ${[first, ...more].join(' Or ')}`
}

const ended = (words: string): string => (words.endsWith('?') ? words : `${words}.`)

interface Part {
  readonly what: string
  readonly predicted: Uncertain
  readonly found: number
}

function partsOf({ predicted, found }: Comparison): readonly Part[] {
  const of = (kind: keyof Standing, [up, across]: readonly [string, string]): readonly Part[] => {
    const [should, is]: readonly (InPlanes<Uncertain> | undefined)[] = [predicted[kind], found[kind]]
    if (!should || !is) return []
    return [
      { what: up, predicted: should.vertical, found: is.vertical.value },
      { what: across, predicted: should.horizontal, found: is.horizontal.value },
    ]
  }
  return [
    ...of('opening', ['gap top less bottom', 'gap starboard less port']),
    ...of('offset', ['machine flange high', 'machine flange to starboard']),
  ]
}

/** What was predicted and what was read, only what differs by more than U: `gap top less bottom 0.02 ± 0.03 mm, read 0.50 mm`. */
export function sayMismatch(comparison: Comparison, system: UnitSystem): string {
  const parts = partsOf(comparison)
  const apart = parts.filter(
    ({ predicted, found }) => Math.abs(found - predicted.value) > expanded(predicted),
  )
  return (apart.length > 0 ? apart : parts)
    .map(
      ({ what, predicted, found }) =>
        `${what} ${saidSure(predicted, system)}, read ${saidLength(found, system)}`,
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
function sayAgainst(against: NonNullable<LogEntry['against']>, system: UnitSystem): string {
  if (against.type !== 'compared')
    return `${shapes[against.type]}, so it is not held against ${against.since}.`
  if (against.mismatch.noise) return `As the moves since ${against.since} should have brought it, within U.`
  return `! The moves since ${against.since} should have brought ${sayMismatch(against, system)}. ${sayExplanations(against, system)}`
}

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

/** For a terminal: a line a reading, what it shows against the moves before it below, then what was moved after it. */
export function logText(drive: string, log: readonly LogEntry[], system: UnitSystem): string {
  const cells = log.map((entry) => columns.map((column) => column(entry, system)))
  const widths = columns.map((_, i) => Math.max(...cells.map((row) => row[i]?.length ?? 0)))
  return [
    `Readings of ${drive}:`,
    ...log.flatMap(({ against, moved }, i) => [
      `  ${(cells[i] ?? [])
        .map((cell, k) => cell.padEnd(widths[k] ?? 0))
        .filter((cell) => cell !== '')
        .join('  ')}`.trimEnd(),
      ...(against ? [`      ${sayAgainst(against, system)}`] : []),
      ...(moved.length > 0 ? [`      then ${sayMoved(moved).join('; ')}`] : []),
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
  return `${drawn} ${shares.map((share) => formatNumber(share, 2)).join(' → ')} of the gap variation allowed`
}
