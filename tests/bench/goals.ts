import { type Editing, typedPlaces } from './editing.ts'
import type { Spread } from './samples.ts'
import type { Archive, Cold } from './starting.ts'

export interface Measured {
  readonly editing: readonly Editing[]
  readonly cold: Cold
  readonly archive: Archive
  /** Bytes of the server as the package ships it. */
  readonly bundle: number
}

export interface Goal {
  readonly what: string
  readonly goal: string
  readonly measured: string
  /** Undefined where the server does not offer it. */
  readonly met: boolean | undefined
}

const ms = (n: number): string => `${n.toFixed(n < 10 ? 2 : 0)} ms`
const count = (n: number): string => Math.round(n).toLocaleString('en')

/** The slowest of the places typed in: what a goal has to hold for. */
const slowest = (of: Editing['keystroke']): Spread => ({
  p50: Math.max(...typedPlaces.map((where) => of[where].p50)),
  p95: Math.max(...typedPlaces.map((where) => of[where].p95)),
})

const below = (what: string, value: number | undefined, limit: number, unit: Unit): Goal => ({
  what,
  goal: `< ${unit.goal(limit)}`,
  measured: value === undefined ? 'not offered' : unit.said(value),
  met: value === undefined ? undefined : value < limit,
})

interface Unit {
  readonly goal: (n: number) => string
  readonly said: (n: number) => string
}
const inMs: Unit = { goal: (n) => `${n} ms`, said: ms }
const inKb: Unit = { goal: (n) => `${n / 1e3} kB`, said: (n) => `${count(n / 1e3)} kB` }
const inMb: Unit = { goal: (n) => `${n / 1e6} MB`, said: (n) => `${count(n / 1e6)} MB` }

/** What was measured beside what it should be. */
export function goals({ editing, cold, archive, bundle }: Measured): readonly Goal[] {
  const [, thousand, tenThousand] = editing
  if (!thousand || !tenThousand) throw new Error('jobs of three lengths were expected')
  const at1 = slowest(thousand.keystroke)
  const at10 = slowest(tenThousand.keystroke)
  const floor = slowest(thousand.floor)
  const { behind, burst, publications, memory } = tenThousand
  return [
    {
      what: 'keystroke to findings, 1,000 lines, p50',
      goal: `≤ 1.5 × floor (${ms(1.5 * floor.p50)})`,
      measured: `${ms(at1.p50)}: ${(at1.p50 / floor.p50).toFixed(2)} × floor`,
      met: at1.p50 <= 1.5 * floor.p50,
    },
    below('keystroke to findings, 1,000 lines, p50', at1.p50, 2, inMs),
    below('keystroke to findings, 10,000 lines, p50', at10.p50, 4, inMs),
    below('keystroke to findings, 10,000 lines, p95', at10.p95, 16, inMs),
    {
      what: 'ten times the lines, 1,000 to 10,000, p50',
      goal: '≤ 2 × time',
      measured: `${(at10.p50 / at1.p50).toFixed(2)} ×`,
      met: at10.p50 <= 2 * at1.p50,
    },
    below('hover behind a keystroke, 10,000 lines, p95', behind['hover']?.p95, 5, inMs),
    below('completion behind a keystroke, 10,000 lines, p95', behind['completion']?.p95, 10, inMs),
    below('document symbols, 10,000 lines, p50', behind['document symbols']?.p50, 30, inMs),
    below('formatting, 10,000 lines, p50', behind['formatting']?.p50, 60, inMs),
    below(
      `burst of 11 keystrokes settles, 10,000 lines, p50 (at most ${publications} publications)`,
      burst.p50,
      20,
      inMs,
    ),
    below('10,000 lines opened in a fresh server to findings, p50', cold.firstFindings.p50, 300, inMs),
    below('start to initialized, p50', cold.initialized.p50, 120, inMs),
    below('server bundle, minified', bundle, 700e3, inKb),
    below('memory of the server after all this', memory, 150e6, inMb),
    {
      what: `check of ${count(archive.jobs)} jobs, ${count(archive.lines)} lines`,
      goal: '> 100,000 lines/s',
      measured: `${count(archive.linesPerSecond)} lines/s`,
      met: archive.linesPerSecond > 100_000,
    },
    below('memory of that check, at most', archive.memory, 400e6, inMb),
  ]
}

const rows = (head: readonly string[], body: readonly (readonly string[])[]): string =>
  [head, head.map(() => ':--'), ...body].map((cells) => `| ${cells.join(' | ')} |`).join('\n')

const pair = ({ p50, p95 }: Spread): string => `${p50.toFixed(2)} / ${p95.toFixed(2)}`

/** The goals as a Markdown table, and below it every spread (p50 / p95 in ms). */
export function report(measured: Measured): string {
  const said = { true: 'yes', false: '**no**', undefined: '–' }
  const table = rows(
    ['what', 'goal', 'measured', 'met'],
    goals(measured).map(({ what, goal, measured: value, met }) => [what, goal, value, said[`${met}`]]),
  )
  const { editing, cold } = measured
  const asked = [...new Set(editing.flatMap(({ behind }) => Object.keys(behind)))]
  const spreads = rows(
    ['p50 / p95, ms', ...editing.map(({ lines }) => `${count(lines)} lines`)],
    [
      ...typedPlaces.map((where) => [
        `keystroke in a ${where}`,
        ...editing.map((e) => pair(e.keystroke[where])),
      ]),
      ...typedPlaces.map((where) => [`floor, in a ${where}`, ...editing.map((e) => pair(e.floor[where]))]),
      ...asked.map((words) => [
        `${words} behind a keystroke`,
        ...editing.map(({ behind }) => (behind[words] ? pair(behind[words]) : '–')),
      ]),
      ['burst of 11 keystrokes', ...editing.map(({ burst }) => pair(burst))],
      [
        'opened in a fresh server',
        ...editing.map((_, i) => (i === editing.length - 1 ? pair(cold.firstFindings) : '')),
      ],
      ['start to initialized', pair(cold.initialized), '', ''],
    ],
  )
  return `${table}\n\n${spreads}`
}
