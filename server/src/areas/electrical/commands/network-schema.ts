import * as z from 'zod'
import { head } from '../../common/command-json.ts'

const index = z.int().min(0).describe('Of a part in the same network.')

const part = z.object({
  block: z.string().describe('The block, with its drive: `port.feed`.'),
  kind: z.string(),
  before: index
    .nullable()
    .describe('The part before it on the way from the first source; null at that source.'),
  closesAt: index
    .nullable()
    .describe('Where another way has led to its other end before, the part there: it closes a ring.'),
  length_m: z.number().nullable().describe('Of the cable, or of the piece of it between devices.'),
  carries_A: z.number().nullable().describe('What it can carry, or is rated for; null if it is not known.'),
  cases: z
    .array(
      z.object({
        case: index.describe('Index in `cases`.'),
        current_A: z.number().nullable().describe('Out of a battery; negative while it is charged.'),
        voltage_V: z.number().nullable().describe('At what takes power.'),
      }),
    )
    .describe('What the solved network says of it.'),
})

export const networkSchema = z
  .object({
    version: z.literal(1),
    ...head.shape,
    cases: z.array(z.string()).describe('What is on: `all at rated power`.'),
    networks: z
      .array(z.object({ parts: z.array(part) }))
      .describe(
        'What hangs together by cables and closed switches, both poles as one; parts in the order of the way.',
      ),
    assumptions: z.array(z.string()),
    source: z.array(z.string()),
  })
  .describe('Output of `shaftwright network --format json`.')

export type NetworkJson = z.infer<typeof networkSchema>
