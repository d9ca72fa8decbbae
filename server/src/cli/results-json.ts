import * as z from 'zod'
import { jobOfFile, range, tool } from '../areas/common/command-json.ts'
import type { Figure } from '../areas/common/figure.ts'
import { differenceIn, unitOf, valueIn } from '../areas/common/figure-units.ts'
import { distinct } from '../areas/common/figure-words.ts'
import { isResult, type Result } from '../areas/common/result.ts'
import { allFigures, areas } from '../areas/index.ts'
import type { Anchor, FileResults } from './file-results.ts'
import { tool as program } from './tool.ts'

const figureIds = allFigures.map(({ id }) => id)
const areaNames = areas.filter(({ figures }) => figures.length > 0).map(({ name }) => name)
const units = distinct(allFigures.map((figure) => unitOf(figure)?.name ?? '1'))

const anchor = {
  file: z.string(),
  range: range.describe(
    'The heading of the block, as in LSP: lines and UTF-16 units from zero, end not included.',
  ),
  block: z
    .string()
    .describe(
      'The block: names from the drive down, and what a block without a name is about: `main.feed`, `main.move after dry-1`. Doubles are numbered: `~2`.',
    ),
  area: z.enum(areaNames),
  figure: z.enum(figureIds).describe('Id of the figure; docs/results has a page for each area.'),
  title: z.string(),
}

const result = z.object({
  ...anchor,
  key: z
    .record(z.string(), z.string())
    .describe(
      'What tells it from the other values of its figure, by name: `{"foot": "aft-port"}`. Doubles are numbered: `~2`. Empty for a single value.',
    ),
  at: z
    .object({ value: z.number(), unit: z.string() })
    .nullable()
    .describe('Where it is in a series; null if the figure is none.'),
  value: z.number(),
  uncertainty: z.number().min(0).nullable().describe('Expanded, k = 2; null if none is known.'),
  unit: z.enum(units).describe('Of the value, its uncertainty, limit and margin. `1` is a plain number.'),
  bound: z
    .enum(['at-least', 'less-than'])
    .nullable()
    .describe('Beyond the ends of a table the value is only a bound.'),
  limit: z.object({ low: z.number().optional(), high: z.number().optional() }).nullable(),
  limitFrom: z.string().nullable().describe('What sets the limit.'),
  margin: z
    .number()
    .nullable()
    .describe(
      'Distance to the nearest limit less the uncertainty: positive inside. null without a limit, or where a bound leaves it open.',
    ),
  marginShare: z
    .number()
    .nullable()
    .describe('The margin as a share of the limit; of a range, of half its width.'),
  verdict: z.enum(['within', 'outside', 'undecided']).nullable().describe('null without a limit.'),
  doubt: z.string().nullable().describe('Why it proves nothing, whatever its value.'),
  from: z.string().nullable().describe('How it comes about in this job.'),
  source: z.array(z.string()),
  assumptions: z.array(z.string()).describe('What it depends on that the job does not say.'),
})

const noResult = z.object({ ...anchor, why: z.string().describe('Why it cannot be worked out.') })

export const resultsSchema = z
  .object({
    version: z.literal(1),
    tool,
    date: z.string().describe('The day of the run, `YYYY-MM-DD`: what is an error may depend on it.'),
    files: z.array(
      z.object({
        file: z.string(),
        errors: z
          .int()
          .min(0)
          .describe('Errors that `check` finds in it: results may be missing, or rest on what is wrong.'),
      }),
    ),
    jobs: z.array(jobOfFile).describe('The jobs in the files. A library has none.'),
    results: z.array(result),
    notKnown: z.array(noResult).describe('Figures that cannot be worked out.'),
  })
  .describe('Output of `shaftwright results --format json`.')

export type ResultsJson = z.infer<typeof resultsSchema>
export type ResultJson = z.infer<typeof result>
type NoResultJson = z.infer<typeof noResult>

/** What the results of some files are in JSON. */
export function resultsJson(found: readonly FileResults[], date: string): ResultsJson {
  const blocks = found.flatMap((file) => file.blocks)
  return {
    version: 1,
    tool: program,
    date,
    files: found.map(({ file, errors }) => ({ file, errors })),
    jobs: found.flatMap(({ job }) => job ?? []),
    results: blocks.flatMap(({ at, results }) => results.filter(isResult).map((one) => resultJson(one, at))),
    notKnown: blocks.flatMap(({ at, results }) =>
      results.flatMap((one): NoResultJson[] =>
        isResult(one) ? [] : [{ ...anchored(at, one.figure), why: one.fault }],
      ),
    ),
  }
}

const areaOf = (figure: Figure): string => areas.find(({ figures }) => figures.includes(figure))?.name ?? ''

const anchored = (at: Anchor, figure: Figure) => ({
  ...at,
  area: areaOf(figure),
  figure: figure.id,
  title: figure.title,
})

function resultJson({ figure, amount, verdict, margin }: Result, at: Anchor): ResultJson {
  const unit = unitOf(figure)
  const along = figure.over && unitOf(figure.over)
  const { limit, uncertainty } = amount
  return {
    ...anchored(at, figure),
    key: { ...amount.key },
    at:
      amount.at === undefined || !figure.over
        ? null
        : { value: valueIn(along, amount.at), unit: along?.name ?? '1' },
    value: valueIn(unit, amount.value),
    uncertainty: uncertainty === undefined ? null : differenceIn(unit, uncertainty),
    unit: unit?.name ?? '1',
    bound: amount.bound ?? null,
    limit: limit
      ? {
          ...(limit.low !== undefined && { low: valueIn(unit, limit.low) }),
          ...(limit.high !== undefined && { high: valueIn(unit, limit.high) }),
        }
      : null,
    limitFrom: amount.limitFrom ?? null,
    margin: margin ? differenceIn(unit, margin.size) : null,
    marginShare: margin?.share === undefined ? null : Number(margin.share.toPrecision(6)),
    verdict: verdict ?? null,
    doubt: amount.doubt ?? null,
    from: amount.from ?? null,
    source: [...distinct([figure.source.text, ...(amount.sources ?? [])])],
    assumptions: [...distinct(amount.assumptions ?? [])],
  }
}
