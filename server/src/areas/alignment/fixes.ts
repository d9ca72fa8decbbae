import type { FixGround } from '../../checks/check.ts'
import type { Fix } from '../../checks/fix.ts'
import { addAfter, blank, rewrite } from '../../checks/fix-text.ts'
import { type Block, childrenOf, factOf } from '../../job/model.ts'
import { formatLength, formatShim } from '../../quantity/format-measures.ts'
import type { UnitSystem } from '../../quantity/kinds.ts'
import type { Part } from '../../syntax/tree.ts'
import { trustedCorrection } from './plan-trust.ts'
import type { Correction } from './plans/correction.ts'
import { lastReading, plannedAfter } from './plans/moves.ts'
import { differsAt } from './plans/planned-move-words.ts'
import type { RoundFact } from './plans/readings.ts'

type Foot = Correction['feet'][number]

/** `1 turn 2.5 flats`. */
const formatTurn = ({ turns, flats }: { readonly turns: number; readonly flats: number }): string =>
  [
    turns > 0 && `${turns} ${turns === 1 ? 'turn' : 'turns'}`,
    flats > 0 && `${flats} ${flats === 1 ? 'flat' : 'flats'}`,
  ]
    .filter(Boolean)
    .join(' ')

const isNothing = (length: string): boolean => Number.parseFloat(length) === 0

function upDown({ step, moved }: Foot, system: UnitSystem): string | undefined {
  if (step.by === 'none') return undefined
  const way = moved < 0 ? 'down' : 'up'
  if (step.by === 'nut' && !step.touch) {
    const turn = formatTurn(step.move)
    return turn === '' ? undefined : `${way} ${turn}`
  }
  const format = step.by === 'shims' ? formatShim : formatLength
  const length = format(Math.abs(moved), system)
  return isNothing(length) ? undefined : `${way} ${length}`
}

function sideways({ slid }: Foot, system: UnitSystem): string | undefined {
  const length = formatLength(Math.abs(slid), system)
  return isNothing(length) ? undefined : `${slid < 0 ? 'port' : 'starboard'} ${length}`
}

/** What the plan asks of a foot, as a line of a move. */
const moveOf = (foot: Foot, system: UnitSystem): string =>
  [upDown(foot, system), sideways(foot, system)].filter((way) => way !== undefined).join(', ') || 'none'

/** The steps of the plan as a move that is planned after the reading: when and by whom it is made is not known yet. None where the plan withholds them, the
 * reading no longer counts, or the move is planned already. `check`: the one whose finding stays. */
export function writeMove(
  { block: reading, lookup, file, findings }: FixGround,
  check: string,
): readonly Fix[] {
  if (reading?.name === undefined || reading.parent?.kind !== 'drive' || !lookup) return []
  const outcome = trustedCorrection(reading, lookup, { file, findings })
  if (!outcome.ok) return []
  const c = outcome.value
  const lines = c.feet.map((foot) => [foot.name, moveOf(foot, lookup.system)] as const)
  const names = new Set(c.feet.map(({ name }) => name))
  // Of two feet of one name it cannot be said which is meant.
  if (names.size < c.feet.length) return []
  if (c.withheld || lines.every(([, move]) => move === 'none')) return []
  const text = [
    `move after ${reading.name} {`,
    ...lines.map(([name, move]) => `  ${name}: ${move}`),
    '}',
  ].join('\n')
  const leaves = [check, 'alignment/move-planned']
  const [planned, ...more] = plannedAfter(reading)
  if (!planned)
    return [
      { title: 'Write this move into the job', edits: [addAfter(reading, text)], preferred: true, leaves },
    ]
  const isWritten = c.planned.some((one) => differsAt(one, c)?.length === 0)
  if (isWritten || more.length > 0) return []
  return [{ title: 'Correct the planned move', edits: [rewrite(planned, text)], preferred: true, leaves }]
}

/** `dry-2` after `dry-1`. */
function nextName(name: string, taken: readonly (string | undefined)[]): string {
  const [, stem = `${name}-`, number = '1'] = /^(.*?)(\d+)$/.exec(name) ?? []
  for (let n = Number(number) + 1; ; n += 1) {
    const next = `${stem}${String(n).padStart(number.length, '0')}`
    if (!taken.includes(next)) return next
  }
}

/** The places of a reading, each with a blank before its unit: `top … mm, starboard … mm`. */
export function placesOf(reading: Block, fact: RoundFact): string | undefined {
  const entries = factOf(reading, `reading.${fact}`)?.node.entries ?? []
  const places = entries.flatMap(({ parts: [place, length] }) => {
    const unit = length && unitIn(length)
    return place && unit
      ? [`${reading.section.text.slice(place.span.start, place.span.end)} ${blank} ${unit}`]
      : []
  })
  return places.length > 0 && places.length === entries.length ? places.join(', ') : undefined
}

function unitIn(part: Part): string | undefined {
  if (part.type === 'negated') return unitIn(part.of)
  return part.type === 'amount' ? part.unit?.text : undefined
}

/** How the reading was taken, which the next one repeats. */
const carriedOn = [
  'afloat',
  'hot',
  'parted-end',
  'offset-gauge',
  'dial-carried-by',
  'bar-droop',
  'rim-dial-at',
  'reverse-dial-at',
] as const

const readRound: readonly RoundFact[] = [
  'gaps',
  'gaps-half-turn',
  'offsets',
  'offsets-half-turn',
  'face-dial',
  'rim-dial',
  'reverse-dial',
]

/** The next reading of the drive, below its last: the same places with the same gauge, today. What is read is for the person to write.
 * `check`: the one whose finding stays until then. */
export function nextReading({ block, today }: FixGround, check?: string): readonly Fix[] {
  const drive = block?.parent
  const last = drive && lastReading(drive)
  if (
    !block ||
    drive?.kind !== 'drive' ||
    last?.name === undefined ||
    (block.kind === 'reading' && block !== last)
  )
    return []
  const log = drive.children.filter(({ kind }) => kind === 'reading' || kind === 'move')
  const below = log.at(-1)
  if (!below) return []
  const writtenValue = (fact: 'gauge' | (typeof carriedOn)[number]): string | undefined => {
    const value = last.facts.get(fact)
    return value && !value.origin
      ? last.section.text.slice(value.node.valueSpan.start, value.node.valueSpan.end)
      : undefined
  }
  const names = childrenOf(drive, 'reading').map(({ name }) => name)
  const name = nextName(last.name, names)
  const kept = (facts: readonly (typeof carriedOn)[number][]) =>
    facts.flatMap((fact) => {
      const value = writtenValue(fact)
      return value === undefined ? [] : [`  ${fact}: ${value}`]
    })
  const round = readRound.flatMap((fact) => {
    const places = placesOf(last, fact)
    return places === undefined ? [] : [`  ${fact}: ${places}`]
  })
  const text = [
    `reading ${name} {`,
    `  taken: ${today}`,
    ...kept(carriedOn.slice(0, 3)),
    `  gauge: ${writtenValue('gauge') ?? blank}`,
    ...kept(carriedOn.slice(3)),
    ...(round.length > 0 ? round : [`  gaps: ${blank}`]),
    '}',
  ].join('\n')
  return [
    {
      title: `Add the next reading, ${name}`,
      edits: [addAfter(below, text)],
      leaves: [...(check === undefined ? [] : [check]), 'job/value-not-allowed', 'job/fact-missing'],
    },
  ]
}
