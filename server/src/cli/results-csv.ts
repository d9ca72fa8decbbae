import { stringify } from 'csv-stringify/sync'
import type { ResultJson, ResultsJson } from './results-json.ts'

const columns: Readonly<Record<string, (result: ResultJson) => string | number | null | undefined>> = {
  file: ({ file }) => file,
  line: ({ range }) => range.start.line + 1,
  block: ({ block }) => block,
  area: ({ area }) => area,
  figure: ({ figure }) => figure,
  title: ({ title }) => title,
  key: ({ key }) => Object.values(key).join('; '),
  at: ({ at }) => at?.value,
  at_unit: ({ at }) => at?.unit,
  value: ({ value }) => value,
  uncertainty: ({ uncertainty }) => uncertainty,
  unit: ({ unit }) => unit,
  bound: ({ bound }) => bound,
  limit_low: ({ limit }) => limit?.low,
  limit_high: ({ limit }) => limit?.high,
  limit_from: ({ limitFrom }) => limitFrom,
  margin: ({ margin }) => margin,
  margin_share: ({ marginShare }) => marginShare,
  verdict: ({ verdict }) => verdict,
  doubt: ({ doubt }) => doubt,
  source: ({ source }) => source.join('; '),
  assumptions: ({ assumptions }) => assumptions.join('; '),
  not_known: () => undefined,
}

/** RFC 4180, a heading and a line for each result; then those that are not known, with why. A text that a spreadsheet would take for a formula is
 * marked as text. */
export const resultsCsv = ({ results, notKnown }: ResultsJson): string =>
  stringify(
    [
      Object.keys(columns),
      ...results.map((result) => Object.values(columns).map((cell) => cell(result) ?? '')),
      ...notKnown.map((one) =>
        Object.keys(columns).map((name) => {
          if (name === 'not_known') return one.why
          if (name === 'line') return one.range.start.line + 1
          return (one as Readonly<Record<string, unknown>>)[name] ?? ''
        }),
      ),
    ],
    {
      record_delimiter: 'windows',
      escape_formulas: true,
      // A negative number is no formula.
      cast: { number: (value) => ({ value: String(value), escape_formulas: false }) },
    },
  )
