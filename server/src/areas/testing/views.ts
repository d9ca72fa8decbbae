import { factOf } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { isolateFirst } from '../common/dangers.ts'
import { figuresMarkdown, formatAmount } from '../common/figure-words.ts'
import { code, headed, type Markdown, md, paragraphs, prose } from '../common/markdown.ts'
import { type Result, resultOf } from '../common/result.ts'
import type { View } from '../common/view.ts'
import { figures } from './figures/index.ts'
import { imbalance, insulation, reading } from './figures/test.ts'
import { replacedBy, type TestKind } from './plans/test-log.ts'

/** What is in danger while a test is done. */
const cautions: Readonly<Partial<Record<TestKind, string>>> = {
  'insulation-resistance': `${isolateFirst} Disconnect the controller, the sensors and what protects from surges: the voltage of the tester destroys them. Touch nothing while it is on. The winding stays charged afterwards: short it to earth until it is discharged.`,
  'phase-resistance': isolateFirst,
  discharge: 'Measure the voltage before anything is touched: a discharge resistor can fail.',
}

/** The verdict of the figure that each kind of test is about. */
const main: Readonly<Partial<Record<TestKind, typeof insulation>>> = {
  'insulation-resistance': insulation,
  'phase-resistance': imbalance,
  'no-load-current': imbalance,
  sensor: reading,
}

function resultFor(lookup: Lookup): Result | undefined {
  const kind = factOf(lookup.block, 'test.kind')?.value
  const figure = kind && main[kind]
  return figure && resultOf(figure, lookup)
}

const inWords = (result: Result, { system }: Lookup): Markdown =>
  md`${prose(formatAmount(result.figure, result.amount, system))}${result.verdict ? prose(`: ${result.verdict}`) : md``}`

const test: View = {
  on: 'test',
  hover: (lookup, ground) => {
    const kind = factOf(lookup.block, 'test.kind')?.value
    const table = figuresMarkdown(headed('Test', lookup.block.name, prose), figures, lookup, ground)
    const caution = kind && cautions[kind]
    if (!table && caution === undefined) return undefined
    return paragraphs(table, caution === undefined ? undefined : md`**Caution.** ${prose(caution)}`)
  },
  inDrive: (lookup) => {
    const result = resultFor(lookup)
    // What a later record replaced is history.
    return result && replacedBy(lookup.block, lookup) === undefined
      ? [[headed('test', lookup.block.name, code), inWords(result, lookup)]]
      : []
  },
  hints: (lookup) => {
    const result = resultFor(lookup)
    const resistance = factOf(lookup.block, 'test.resistance')
    if (!result || !resistance || resistance.origin || result.verdict !== 'within') return []
    const at40 = result.figure === insulation && result.amount.from !== undefined ? ' at 40 °C' : ''
    return [
      {
        setting: 'results',
        at: resistance.at.span.end,
        words: `(${formatAmount(result.figure, result.amount, lookup.system)}${at40})`,
        tooltip: `${result.amount.from ?? result.figure.title}. Source: ${result.figure.source.text}.`,
      },
    ]
  },
}

export const views: readonly View[] = [test]
