import { csvOf } from './csv.ts'
import type { ResultJson, ResultsJson } from './results-json.ts'

type Cell = string | number | null | undefined
type NoResultJson = ResultsJson['notKnown'][number]

/** Where a result belongs, known or not. */
const anchor: Readonly<Record<string, (result: ResultJson | NoResultJson) => Cell>> = {
  line: ({ range }) => range.start.line + 1,
  block: ({ block }) => block,
  area: ({ area }) => area,
  figure: ({ figure }) => figure,
  title: ({ title }) => title,
}

const amount: Readonly<Record<string, (result: ResultJson) => Cell>> = {
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
  from: ({ from }) => from,
  source: ({ source }) => source.join('; '),
  assumptions: ({ assumptions }) => assumptions.join('; '),
}

/** What is said of each file. */
function heads({ files, jobs }: ResultsJson): ReadonlyMap<string, readonly Cell[]> {
  const jobOf = new Map(jobs.map((job) => [job.file, job]))
  return new Map(
    files.map(({ file, errors }) => {
      const job = jobOf.get(file)
      return [file, [file, errors, job?.vessel, job?.revision]]
    }),
  )
}

/** A heading and a line for each result; then those that are not known, with why. */
export function resultsCsv(json: ResultsJson): string {
  const ofFile = heads(json)
  const row = (one: ResultJson | NoResultJson, cells: readonly Cell[], why: Cell): readonly Cell[] =>
    [...(ofFile.get(one.file) ?? []), ...Object.values(anchor).map((cell) => cell(one)), ...cells, why].map(
      (cell) => cell ?? '',
    )
  return csvOf([
    [
      ...['file', 'file_errors', 'vessel', 'revision'],
      ...Object.keys(anchor),
      ...Object.keys(amount),
      'not_known',
    ],
    ...json.results.map((one) =>
      row(
        one,
        Object.values(amount).map((cell) => cell(one)),
        '',
      ),
    ),
    ...json.notKnown.map((one) =>
      row(
        one,
        Object.keys(amount).map(() => ''),
        one.why,
      ),
    ),
  ])
}
