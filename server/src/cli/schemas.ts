import * as z from 'zod'
import { areaCommands } from '../areas/commands.ts'
import { jobOfFile, range, tool } from '../areas/common/command-json.ts'
import { resultsSchema } from './results-json.ts'

const finding = z.object({
  file: z.string(),
  range,
  severity: z.enum(['error', 'warning', 'information']),
  check: z.string().describe('Id of the check: area/slug.'),
  message: z.string().describe('What is wrong, in one line.'),
  detail: z.string().optional().describe('The limit and what follows from it, if the line leaves them out.'),
  todo: z.string().describe('What to do about it.'),
  found: z.string().optional(),
  limit: z.string().optional(),
  source: z.string().describe('Where the limit or the rule comes from.'),
  assumptions: z.array(z.string()).optional(),
  related: z.array(z.object({ file: z.string(), range, message: z.string() })).optional(),
})

export const checkSchema = z
  .object({
    version: z.literal(1),
    tool,
    files: z.array(z.string()),
    jobs: z.array(jobOfFile).describe('The jobs in the files. A library has none.'),
    findings: z.array(finding),
  })
  .describe('Output of `shaftwright check --format json`.')

export type CheckJson = z.infer<typeof checkSchema>
export type FindingJson = z.infer<typeof finding>

/** JSON Schemas of what the commands print, by file name. */
export const schemas = (): Readonly<Record<string, unknown>> => {
  const printed = [
    { name: 'check', schema: checkSchema },
    { name: 'results', schema: resultsSchema },
    ...areaCommands,
  ]
  return Object.fromEntries(
    printed.map(({ name, schema }) => [`${name}.schema.json`, z.toJSONSchema(schema)]),
  )
}
