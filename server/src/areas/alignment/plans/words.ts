import {
  formatGaugeStep,
  formatLength,
  formatLimit,
  formatUncertain,
  formatUncertainSlope,
} from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { expanded } from '../../../quantity/uncertainty.ts'
import { dangers, isolateBriefly, keepClear, lastWord } from '../../common/dangers.ts'
import { code, list, type Markdown, md, paragraphs, prose, table } from '../../common/markdown.ts'
import { asReadLines } from './as-read.ts'
import { ofLimit, verdictWords } from './brief-words.ts'
import type { Correction } from './correction.ts'
import { directionOf } from './directions.ts'
import { formatHeight, formatSideways, formatStep, magnitude } from './foot-words.ts'
import type { JudgedFigure } from './judged.ts'
import { formatNextReading } from './next-reading-words.ts'
import { warningsOf } from './warnings.ts'

/** Cautions that belong to moving a machine on its feet; how it is moved is said only where it is to be. */
const moveCaution = ({ adjuster, verdict, withheld }: Correction): string =>
  `${isolateBriefly} ${dangers['turning-shaft'].guard}${verdict === 'within' ? '' : ` Only then take out the coupling bolts. Support the machine. ${keepClear}`}${verdict === 'within' || withheld ? '' : ` ${atEachFoot[adjuster ?? 'by hand']}`} ${lastWord}`

const atEachFoot = {
  'stud-and-nuts':
    'Slacken all upper nuts, no more than the feet need, so that no foot stays clamped while another is set. Turn the lower nuts in small steps, one end after the other. Let the machine settle, tighten crosswise, and read again when the nuts are tight.',
  shims:
    'Slacken all bolts, no more than the feet need. Lift one end at a time, no more than the shims need. Put shims in and take them out with a tool, never with fingers under the foot. Lower that end before you lift the next. Tighten crosswise, and read again when all are tight.',
  'by hand':
    'Slacken what holds the feet, no more than they need, so that none stays clamped while another is set. Set the heights in small steps, one end after the other. Let the machine settle, tighten crosswise, and read again when all are tight.',
} as const

const judgedLine = (what: string, judged: JudgedFigure, system: UnitSystem): string =>
  `${what} ${formatUncertain(judged.value, system)}, allowed ${formatLimit(judged.limit, system)} (${judged.limitFrom}): ${verdictWords[judged.verdict]}`

/** How the machine leans, as far as the gauge can see: `The far end of the machine is low and to port.` */
export function formatLean({ slope: { vertical, horizontal } }: Correction): string {
  const ways = [
    Math.abs(vertical.value) > expanded(vertical) ? (vertical.value < 0 ? 'low' : 'high') : '',
    Math.abs(horizontal.value) > expanded(horizontal)
      ? horizontal.value < 0
        ? 'to port'
        : 'to starboard'
      : '',
  ].filter(Boolean)
  return ways.length === 0
    ? 'The gauge shows no lean.'
    : `The far end of the machine is ${ways.join(' and ')}.`
}

/** What the figures for the next reading hold for. */
const nextTaken =
  'The ± covers both readings, if the next is taken with the same gauge at the same places. It assumes that the steps are made exactly.'

interface Lines {
  readonly gauge: string
  /** All that was found, in a line. */
  readonly brief: string
  readonly summary: readonly string[]
  readonly warnings: readonly string[]
  readonly next: readonly string[]
  readonly assumed: readonly string[]
}

/** `2.36 ± 0.15 mrad down and 0.18 ± 0.15 mrad to port`. */
const formatSlopeOf = ({ slope }: Correction): string =>
  (['vertical', 'horizontal'] as const)
    .map(
      (plane) =>
        `${formatUncertainSlope(magnitude(slope[plane]))} ${directionOf('slope', plane, slope[plane].value)}`,
    )
    .join(' and ')

function lines(c: Correction, system: UnitSystem): Lines {
  const offset = c.offset
  return {
    gauge: formatGaugeStep(c.gaugeStep, system),
    brief: `${c.target ? 'Counted from the target: gap variation' : 'Gap variation'} ${ofLimit(c.gapVariation, system)}${offset ? `; offset ${ofLimit(offset, system)}` : ''}.${c.target ? '' : ` ${formatLean(c)}`}`,
    summary: [
      judgedLine(c.target ? 'Gap variation, from the target' : 'Gap variation', c.gapVariation, system),
      ...(offset
        ? [
            judgedLine(c.target ? 'Offset, from the target' : 'Offset', offset, system),
            `Machine flange ${(['vertical', 'horizontal'] as const).map((plane) => `${formatLength(Math.abs(offset.parts[plane].value), system)} ${directionOf('offset', plane, offset.parts[plane].value)}`).join(', ')}`,
          ]
        : [c.offsetBasis === 'pilot' ? 'Offset held by the pilot' : 'Offset not read']),
      `Slope ${formatSlopeOf(c)}, going forward`,
      ...asReadLines(c, {
        length: (si) => formatLength(si, system),
        sure: (u) => formatUncertain(u, system),
      }),
    ],
    warnings: warningsOf(c, system),
    assumed: [...c.assumptions, ...c.stepAssumptions],
    next:
      c.predicted && c.verdict !== 'within'
        ? [`${formatNextReading(c, c.predicted, system)} ${nextTaken}`]
        : [],
  }
}

function advice(c: Correction): string {
  if (c.withheld === 'moved-since' || c.withheld === 'later-reading')
    return 'Move nothing from this reading. The correction of each foot, as the machine stood then:'
  if (c.withheld === 'order-unknown' || c.withheld === 'doubled-names' || c.withheld === 'errors')
    return 'Move nothing yet. The correction of each foot, as far as the job can be read:'
  if (c.withheld === 'finding')
    return 'Move nothing yet. The correction of each foot, from the reading as it is:'
  if (
    c.withheld === 'contradictory' ||
    c.withheld === 'soft-foot' ||
    c.withheld === 'pilot-engaged' ||
    c.withheld === 'another-effect'
  )
    return 'Move nothing yet. The correction of each foot, if the readings were right:'
  if (c.withheld === 'unsure') return 'Move nothing yet. The correction of each foot, uncertain as it is:'
  if (c.withheld === 'far-off')
    return 'No fine steps yet: rough alignment comes first. The correction of each foot:'
  if (c.verdict === 'within')
    return 'Within limits: leave the feet alone. The correction that would remain at each:'
  return 'Moves, from where each foot stands now:'
}

/** For a terminal: plain text, one line a thing. `work`: how the steps are made, in lines, with their cautions. */
export function correctionText(c: Correction, system: UnitSystem, work: readonly string[] = []): string {
  const planLines = lines(c, system)
  const width = Math.max(...c.feet.map((foot) => foot.name.length), 4)
  const heights = c.feet.map((foot) => formatHeight(foot, c, system))
  const steps = c.feet.map((foot) => formatStep(foot, c, system))
  const widestOf = (texts: readonly string[]) => Math.max(...texts.map((t) => t.length), 0)
  return [
    `${c.drive} ${c.reading}: ${verdictWords[c.verdict]}`,
    `  ${planLines.brief}`,
    ...planLines.warnings.map((line) => `  ! ${line}`),
    ...(c.feet.length > 0
      ? [
          '',
          advice(c),
          ...c.feet.map(
            (foot, i) =>
              `  ${foot.name.padEnd(width)}  ${(heights[i] ?? '').padEnd(widestOf(heights))}  ${(steps[i] ?? '').padEnd(widestOf(steps))}  sideways ${formatSideways(foot, c, system)}`,
          ),
          ...(planLines.next.length > 0 ? ['', ...planLines.next] : []),
          '',
          ...(work.length > 0 ? work : [`Caution: ${moveCaution(c)}`]),
        ]
      : []),
    '',
    'As read:',
    ...planLines.summary.map((line) => `  ${line}`),
    ...(planLines.assumed.length > 0
      ? ['', 'Assumed:', ...planLines.assumed.map((line) => `  - ${line}`)]
      : []),
    '',
    `± is the expanded uncertainty (k = 2) from a gauge step of ${planLines.gauge}. Up, starboard and forward are positive.`,
  ].join('\n')
}

/** For a hover: Markdown with a table of the feet, most wanted first: a hover shows little before it has to be scrolled. */
export function correctionMarkdown(c: Correction, system: UnitSystem): Markdown {
  const planLines = lines(c, system)
  const rows = c.feet.map((foot) => [
    code(foot.name),
    prose(formatHeight(foot, c, system)),
    prose(formatStep(foot, c, system)),
    prose(formatSideways(foot, c, system)),
  ])
  const hasFeet = rows.length > 0
  return paragraphs(
    md`**Reading ${prose(c.reading)}: ${prose(verdictWords[c.verdict])}.** ${prose(formatLean(c))}`,
    list(planLines.warnings.map((line) => md`**${prose(line)}**`)),
    hasFeet ? prose(advice(c)) : undefined,
    hasFeet ? table(['foot', 'height', 'step', 'sideways'], rows) : undefined,
    paragraphs(...planLines.next.map(prose)),
    list(planLines.summary.map(prose)),
    hasFeet ? md`*Caution: ${prose(moveCaution(c))}*` : undefined,
    planLines.assumed.length > 0 ? paragraphs(md`Assumed:`, list(planLines.assumed.map(prose))) : undefined,
    md`± is the expanded uncertainty (k = 2, ISO/IEC Guide 98-3); verdict by the decision rule of ISO 14253-1.`,
  )
}
