import type { Closure } from '../engineering/alignment/closure.ts'
import { formatFixed, formatNumber, formatSi } from '../quantity/format.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { expanded, type Uncertain } from '../quantity/uncertainty.ts'
import type { Correction } from './alignment.ts'
import { asReadLines } from './alignment-as-read.ts'
import { allUnseen, type Predicted } from './alignment-asked.ts'
import { sayAngle } from './alignment-fault.ts'
import type { Judged } from './alignment-judged.ts'
import { sayRound } from './alignment-readings.ts'
import type { Repeats } from './alignment-repeats.ts'
import type { Way } from './choose-moves.ts'
import { markdownTable } from './markdown-table.ts'
import { type CorrectedFoot, type FootStep, unseen } from './steps.ts'

/** Cautions that belong to moving a machine on its feet; how it is moved is said only where it is to be. */
const moveCaution = ({ adjuster, verdict, withheld }: Correction): string =>
  `Isolate and lock off the drive, prove it dead, and make sure the shaft cannot be turned by the water. Coupling bolts out, machine supported, hands from under it.${verdict === 'within' || withheld ? '' : ` ${atEachFoot[adjuster ?? 'by hand']}`} The maker of the machine and of the coupling, local rules and licensed people have the last word.`

const atEachFoot = {
  'stud-and-nuts':
    'At each foot slacken the upper nut, turn the lower one, clamp again; go round in small steps so that it does not rock, and read again when the nuts are tight.',
  shims:
    'One end at a time slacken its bolts and lift it no more than the shims need; put them in and take them out with a tool, never with fingers under the foot; lower it, tighten the bolts, and read again when all are tight.',
  'by hand':
    'At each foot slacken what holds it, set its height, make it fast again; go round in small steps so that it does not rock, and read again when all are fast.',
} as const

const inch = 0.0254

/** `0.37 mm`, or in the inch system `0.0146 in`, to the hundredth and the ten-thousandth: finer than any feeler. */
export const saidLength = (si: number, system: UnitSystem): string =>
  system === 'inch' ? `${formatFixed(si / inch, 4)} in` : `${formatFixed(si * 1000, 2)} mm`

/** What is allowed, with one digit more than other lengths where it has them, and never more than it is: a limit of 0.125 mm is not 0.13 mm. */
export function saidLimit(si: number, system: UnitSystem): string {
  const [unit, least, name] = system === 'inch' ? [inch, 4, 'in'] : [1e-3, 2, 'mm']
  const down = (decimals: number) => Math.floor((si / unit) * 10 ** decimals + 1e-6) / 10 ** decimals
  const decimals = down(least + 1) > down(least) ? least + 1 : least
  return `${formatFixed(down(decimals), decimals)} ${name}`
}

/** A value with its uncertainty, to the digit that the uncertainty still fills: a small one must not read as none. */
export function saidSure(u: Uncertain, system: UnitSystem): string {
  const unit = system === 'inch' ? inch : 1e-3
  const U = expanded(u) / unit
  const least = system === 'inch' ? 4 : 2
  const decimals = U > 0 && U < 10 ** -least ? least + 1 : least
  return `${formatFixed(u.value / unit, decimals)} ± ${formatFixed(U, decimals)} ${system === 'inch' ? 'in' : 'mm'}`
}

/** A gauge step that is fine enough: rounded down, never up. */
export function saidGauge(step: number, system: UnitSystem): string {
  const unit = system === 'inch' ? inch : 1e-3
  const scale = 10 ** (2 - Math.floor(Math.log10(step / unit)) - 1)
  return `${formatNumber(Math.floor((step / unit) * scale + 1e-9) / scale, 2)} ${system === 'inch' ? 'in' : 'mm'}`
}

const magnitude = (u: Uncertain): Uncertain => ({ ...u, value: Math.abs(u.value) })

const fractions = ['', '¼', '½', '¾'] as const

/** `1 turn 2 flats`, `half a flat`, `1½ flats`, `2¼ flats`. */
export function sayTurns({ turns, flats }: { readonly turns: number; readonly flats: number }): string {
  const quarters = Math.round(flats * 4)
  const [whole, fraction] = [Math.floor(quarters / 4), fractions[quarters % 4] ?? '']
  const said =
    whole === 0 && fraction !== ''
      ? `${{ '¼': 'a quarter of', '½': 'half', '¾': 'three quarters of' }[fraction]} a flat`
      : `${whole}${fraction} ${whole === 1 && fraction === '' ? 'flat' : 'flats'}`
  if (turns === 0) return said
  const full = turns === 1 ? '1 turn' : `${turns} turns`
  return flats === 0 ? full : `${full} ${said}`
}

/** A shim with its own digits, at least those of other lengths: `0.20 mm`, `0.025 mm`. */
export function saidShim(si: number, system: UnitSystem): string {
  const unit = system === 'inch' ? inch : 1e-3
  const [least, most] = system === 'inch' ? [4, 5] : [2, 3]
  const short = formatFixed(si / unit, least)
  const own = Math.abs(Number(short) * unit - si) < 1e-8 ? least : most
  return `${formatFixed(si / unit, own)} ${system === 'inch' ? 'in' : 'mm'}`
}

/** `shims of 0.20 mm + 0.05 mm, together 0.25 mm`; the thickness alone where none is named. */
function sayShims({ pieces, thickness }: Extract<FootStep, { by: 'shims' }>, system: UnitSystem): string {
  const each = pieces.map((piece) => saidShim(piece, system))
  const together = (pieces.length > 0 ? saidShim : saidLength)(thickness, system)
  if (each.length === 0) return together
  return each.length === 1 ? `a shim of ${together}` : `shims of ${each.join(' + ')}, together ${together}`
}

/** What to do at one foot to set its height. */
export function sayStep(foot: CorrectedFoot, c: Correction, system: UnitSystem): string {
  const { step } = foot
  if (c.withheld) return 'no step is given'
  if (step.by === 'nut') {
    const { move } = step
    if (move.direction === 'none') return 'leave as it is'
    return `${move.direction} ${sayTurns(move)}: turn the lower nut ${move.lowerNut}, seen from above`
  }
  if (step.by === 'shims') {
    if (step.action === 'none') return 'leave as it is'
    const shims = sayShims(step, system)
    if (step.action === 'make')
      return step.pieces.length > 0 ? `make the pack of ${shims}` : 'take all shims out'
    return step.action === 'put in' ? `put in ${shims}` : `take out ${shims}, or as near as the pack allows`
  }
  if (step.by === 'none') return 'leave as it is'
  const { value } = foot.vertical
  const by = saidLength(Math.abs(value), system)
  return Number.parseFloat(by) === 0 ? 'leave as it is' : `${value > 0 ? 'raise' : 'lower'} ${by}`
}

/** What to say beside a move whose own uncertainty is larger than it is. */
const doubt = (move: Uncertain, c: Correction): string =>
  c.verdict !== 'within' && unseen(move) ? ' (U is larger than the move)' : ''

const across = (u: Uncertain, system: UnitSystem): string =>
  `${saidSure(magnitude(u), system)} to ${u.value > 0 ? 'starboard' : 'port'}`

/** What the foot is to go sideways, or would have to: by the whole correction, as far as its hole lets it, or not at all. */
const sideways = (foot: CorrectedFoot, c: Correction, system: UnitSystem): string => {
  const { value } = foot.horizontal
  if (Number.parseFloat(saidLength(Math.abs(value), system)) === 0) return 'none'
  const whole = `${across(foot.horizontal, system)}${doubt(foot.horizontal, c)}`
  if (c.verdict === 'within' || c.withheld || foot.step.by === 'none' || Math.abs(foot.slid - value) < 1e-9)
    return whole
  if (foot.slid === 0) return `leave (${across(foot.horizontal, system)} would be the whole)`
  return `${saidLength(Math.abs(foot.slid), system)} to ${foot.slid > 0 ? 'starboard' : 'port'}, as the holes let it (${whole} would be the whole)`
}

const upDown = (foot: CorrectedFoot, c: Correction, system: UnitSystem): string => {
  const { value } = foot.vertical
  return `${value < 0 ? 'down' : 'up'} ${saidSure(magnitude(foot.vertical), system)}${doubt(foot.vertical, c)}`
}

const verdictWords = {
  within: 'within its limits',
  outside: 'outside its limits',
  undecided: 'not decided',
} as const

const judgedLine = (what: string, judged: Judged, system: UnitSystem): string =>
  `${what} ${saidSure(judged.value, system)}, allowed ${saidLimit(judged.limit, system)} (${judged.limitFrom}): ${verdictWords[judged.verdict]}`

/** Why nothing can be said for certain, and what would help. */
function undecided(c: Correction, system: UnitSystem): string | undefined {
  if (c.verdict !== 'undecided') return undefined
  if (c.gapVariation.verdict === 'within' && !c.offset)
    return 'The offset was not read, so the machine is not shown to be aligned. Read the rims as well.'
  return c.decidedBy === undefined
    ? 'The reading lies too near the limit, or what was read agrees too badly, for any gauge to decide: read again.'
    : `A gauge with steps of ${saidGauge(c.decidedBy, system)} or finer could decide.`
}

/** A coupling is brought near by straightedge before it is read by feeler. Common practice, no source. */
const nearByEye = 5e-3

const tooFar = (c: Correction, system: UnitSystem): string | undefined =>
  c.feet.some(({ moved, slid }) => Math.max(Math.abs(moved), Math.abs(slid)) > nearByEye)
    ? `A foot would go more than ${saidLength(nearByEye, system)}: check the gaps, the diameters and the places of the feet, and bring the machine near by straightedge first.`
    : undefined

/** One way to bring the machine inside, in words. */
function sayWay(way: Way, system: UnitSystem): string {
  switch (way.type) {
    case 'finer-step':
      return `turning the nuts by ${{ 2: 'half flats', 4: 'quarter flats', 8: 'eighths of a flat' }[way.partsOfFlat] ?? 'finer steps'}`
    case 'thinner-shim':
      return `shims of ${saidShim(way.thickness, system)}`
    case 'travel':
      return `${saidLength(Math.abs(way.up), system)} of travel ${way.up < 0 ? 'down' : 'up'} at ${way.foot}`
    case 'hole-clearance':
      return `a hole at ${way.foot} that lets it ${saidLength(way.sideways, system)} to either side`
  }
}

/** Steps that leave the machine outside, and what would not; or inside, but nearer to a limit than the gauge can tell. */
function notReached(c: Correction, system: UnitSystem): string | undefined {
  if (!c.predicted || c.verdict === 'within' || c.withheld) return undefined
  if (!c.predicted.inside)
    return `${
      c.untried
        ? 'No steps were found that bring the machine inside its limits, but not all could be tried'
        : 'No steps that the adjusters can make bring the machine inside its limits'
    }; these bring it nearest. ${
      c.ways.length > 0
        ? `What would: ${c.ways.map((together) => together.map((way) => sayWay(way, system)).join(' and ')).join('; or ')}.`
        : 'Set each foot to its height by gauge.'
    }`
  return c.predicted.provable
    ? undefined
    : `These steps bring the machine inside its limits, but nearer to one of them than the next reading can prove with steps of ${formatSi(c.gaugeStep, 'length', system)}: read with a finer gauge.`
}

function closureLine(closure: Closure, what: string, system: UnitSystem): string | undefined {
  if (closure.state !== 'open') return undefined
  return `The ${what} do not close: opposite pairs differ by ${saidLength(closure.difference, system)}, the gauge explains ${saidLimit(closure.allowed, system)}. Read again before anything is moved: no moves are given from these.`
}

function repeatsLine(repeats: Repeats | undefined, what: string, system: UnitSystem): string | undefined {
  if (!repeats) return undefined
  return `The ${what} read more than once at ${sayAngle(repeats.angle)} differ by ${saidLength(repeats.difference, system)}, the gauge explains ${saidLimit(repeats.allowed, system)}. Read again before anything is moved: no moves are given from these.`
}

/** What the reading is still good for once the machine was moved. */
const moved = ({ movedSince, laterReading }: Correction): string | undefined =>
  movedSince
    ? `The machine was moved after this reading: read again${laterReading ? `, or go by the last reading, ${laterReading}` : ''}. No moves are given from this one.`
    : undefined

const errors = ({ errors: all = [] }: Correction): string | undefined =>
  all.length === 0
    ? undefined
    : `${all.length === 1 ? 'An error stands' : `${all.length} errors stand`} in what this plan hangs on; put ${all.length === 1 ? 'it' : 'them'} right first: ${all.map(({ check, place }) => `${check} at ${place}`).join(', ')}.`

/** Moves that the gauge cannot see. An error that is proven outside is still an error: the moves then stay, with the doubt said. */
function unsure(c: Correction): string | undefined {
  if (c.verdict === 'within' || !allUnseen(c.feet)) return undefined
  return c.verdict === 'undecided'
    ? 'At every foot U is larger than the move: it is not worth moving until a finer gauge or a better reading shows more.'
    : 'The machine is proven outside its limits, yet at every foot U is larger than the move: a finer gauge or a better reading would place the feet better.'
}

/** How the machine leans, as far as the gauge can see: `The far end of the machine is low and to port.` */
export function sayLean({ slope: { vertical, horizontal } }: Correction): string {
  const ways = [
    Math.abs(vertical.value) > expanded(vertical) ? (vertical.value < 0 ? 'low' : 'high') : '',
    Math.abs(horizontal.value) > expanded(horizontal)
      ? horizontal.value < 0
        ? 'to port'
        : 'to starboard'
      : '',
  ].filter(Boolean)
  return ways.length === 0
    ? 'The gauge can see no lean.'
    : `The far end of the machine is ${ways.join(' and ')}.`
}

const milliradians = (u: Uncertain): string =>
  `${formatFixed(u.value * 1000, 2)} ± ${formatFixed(expanded(u) * 1000, 2)} mrad`

/** What the figures for the next reading hold for. */
const nextTaken =
  ' Its ± is of both readings, the next with the same gauge at the same places; the steps are taken as made exactly.'

interface Lines {
  readonly gauge: string
  readonly summary: readonly string[]
  readonly warnings: readonly string[]
  readonly next: readonly string[]
}

/** `0.09 ± 0.01 mm low`, `0.02 ± 0.01 mm to port`. */
const placed = (u: Uncertain, [more, less]: readonly [string, string], system: UnitSystem): string =>
  `${saidSure(magnitude(u), system)} ${u.value < 0 ? less : more}`

function nextReading({ gapVariation, offset }: Predicted, system: UnitSystem): string {
  const flange =
    offset &&
    `machine flange ${placed(offset.vertical, ['high', 'low'], system)}, ${placed(offset.horizontal, ['to starboard', 'to port'], system)}`
  return [`gap variation ${saidSure(gapVariation, system)}`, flange].filter(Boolean).join('; ')
}

function lines(c: Correction, system: UnitSystem): Lines {
  const offset = c.offset
  return {
    gauge: formatSi(c.gaugeStep, 'length', system),
    summary: [
      judgedLine('Gap variation', c.gapVariation, system),
      ...(offset
        ? [
            judgedLine('Offset', offset, system),
            `Machine flange ${saidLength(Math.abs(offset.parts.vertical.value), system)} ${offset.parts.vertical.value < 0 ? 'low' : 'high'}, ${saidLength(Math.abs(offset.parts.horizontal.value), system)} to ${offset.parts.horizontal.value < 0 ? 'port' : 'starboard'}`,
          ]
        : [c.offsetBasis === 'pilot' ? 'Offset held by the pilot' : 'Offset not read']),
      `Slope ${milliradians(c.slope.vertical)} up, ${milliradians(c.slope.horizontal)} to starboard going forward. ${sayLean(c)}`,
      ...asReadLines(c, {
        length: (si) => saidLength(si, system),
        sure: (u) => saidSure(u, system),
      }),
    ],
    warnings: [
      c.slip,
      moved(c),
      ...c.doubts.filter(({ type }) => !(c.movedSince && type === 'later-reading')).map(({ words }) => words),
      errors(c),
      undecided(c, system),
      unsure(c),
      repeatsLine(c.repeats?.gaps, sayRound(c.readBy.face), system),
      repeatsLine(c.repeats?.offsets, sayRound(c.readBy.rim ?? 'offsets'), system),
      closureLine(c.closure, sayRound(c.readBy.face), system),
      c.rimClosure && closureLine(c.rimClosure, sayRound(c.readBy.rim ?? 'offsets'), system),
      c.feetFault?.words,
      tooFar(c, system),
      notReached(c, system),
    ].filter((line): line is string => line !== undefined),
    next: c.predicted ? [nextReading(c.predicted, system)] : [],
  }
}

function advice(c: Correction): string {
  if (c.withheld === 'moved-since' || c.withheld === 'later-reading')
    return 'Nothing is to be moved from this reading. What it asked of each foot as the machine stood then:'
  if (c.verdict === 'within') return 'Within limits: leave the feet alone. What is left of the error at each:'
  if (c.withheld === 'order-unknown' || c.withheld === 'doubled-names' || c.withheld === 'errors')
    return 'Nothing is to be moved yet. What the job, as far as it can be read, would ask of each foot:'
  if (
    c.withheld === 'contradictory' ||
    c.withheld === 'soft-foot' ||
    c.withheld === 'pilot-engaged' ||
    c.withheld === 'another-effect'
  )
    return 'Nothing is to be moved yet. What the readings would ask of each foot, if they were right:'
  if (c.withheld === 'unsure')
    return 'Nothing is to be moved yet. What the reading asks of each foot, unsure as it is:'
  return 'Moves, from where each foot stands now:'
}

/** For a terminal: plain text, one line a thing. `work`: how the steps are made, in lines, with their cautions. */
export function correctionText(c: Correction, system: UnitSystem, work: readonly string[] = []): string {
  const said = lines(c, system)
  const width = Math.max(...c.feet.map((foot) => foot.name.length), 4)
  const heights = c.feet.map((foot) => upDown(foot, c, system))
  const steps = c.feet.map((foot) => sayStep(foot, c, system))
  const wide = (texts: readonly string[]) => Math.max(...texts.map((t) => t.length), 0)
  return [
    `${c.drive} ${c.reading}: ${verdictWords[c.verdict]}`,
    ...said.summary.map((line) => `  ${line}`),
    ...said.warnings.map((line) => `  ! ${line}`),
    ...(c.feet.length > 0
      ? [
          '',
          advice(c),
          ...c.feet.map(
            (foot, i) =>
              `  ${foot.name.padEnd(width)}  ${(heights[i] ?? '').padEnd(wide(heights))}  ${(steps[i] ?? '').padEnd(wide(steps))}  sideways ${sideways(foot, c, system)}`,
          ),
          ...(said.next.length > 0
            ? ['', `The next reading should show ${said.next.join('; ')}.${nextTaken}`]
            : []),
          '',
          ...(work.length > 0 ? work : [`Caution: ${moveCaution(c)}`]),
        ]
      : []),
    ...(c.assumptions.length > 0 ? ['', 'Assumed:', ...c.assumptions.map((line) => `  - ${line}`)] : []),
    '',
    `± is the expanded uncertainty (k = 2) from a gauge step of ${said.gauge}. Up, starboard and forward are positive.`,
  ].join('\n')
}

/** For a hover: Markdown with a table of the feet, most wanted first: a hover shows little before it has to be scrolled. */
export function correctionMarkdown(c: Correction, system: UnitSystem): string {
  const said = lines(c, system)
  const rows = c.feet.map((foot) => [
    `\`${foot.name}\``,
    upDown(foot, c, system),
    sayStep(foot, c, system),
    sideways(foot, c, system),
  ])
  const table =
    rows.length === 0 ? [] : [advice(c), '', markdownTable(['foot', 'height', 'step', 'sideways'], rows), '']
  const next = said.next.map((line) => `The next reading should show ${line}.${nextTaken}`)
  return [
    `**Reading ${c.reading}: ${verdictWords[c.verdict]}.** ${sayLean(c)}`,
    '',
    ...said.warnings.map((line) => `- **${line}**`),
    ...(said.warnings.length > 0 ? [''] : []),
    ...table,
    ...next,
    '',
    ...said.summary.map((line) => `- ${line}`),
    ...(rows.length > 0 ? ['', `*Caution: ${moveCaution(c)}*`] : []),
    ...(c.assumptions.length > 0 ? ['', 'Assumed:', '', ...c.assumptions.map((line) => `- ${line}`)] : []),
    '',
    '± is the expanded uncertainty (k = 2, ISO/IEC Guide 98-3); verdict by the decision rule of ISO 14253-1.',
  ].join('\n')
}
