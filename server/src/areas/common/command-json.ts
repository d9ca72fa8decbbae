import * as z from 'zod'

// What the JSON of several commands has in common.

const position = z.object({ line: z.int().min(0), character: z.int().min(0) })
export const range = z
  .object({ start: position, end: position })
  .describe('As in LSP: lines and UTF-16 units from zero, end not included.')

export const tool = z
  .object({ name: z.literal('shaftwright'), version: z.string() })
  .describe('The tool that wrote this output.')

const job = z
  .object({
    vessel: z.string().nullable(),
    title: z.string().nullable(),
    revision: z.string().nullable(),
    status: z.string().nullable(),
  })
  .describe('What the job states about itself; null if not stated.')

export const jobOfFile = job.extend({ file: z.string() })

/** What the JSON of a command of an area begins with, after its version. */
export const head = z.object({
  tool,
  file: z.string(),
  job: job.nullable().describe('null if the file has no job block.'),
  date: z.string().describe('The day it is made for, `YYYY-MM-DD`.'),
})

export type JsonHead = z.infer<typeof head>
export type JobJson = z.infer<typeof jobOfFile>
export type RangeJson = z.infer<typeof range>
