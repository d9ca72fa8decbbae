import * as z from 'zod'
import { figure, parts } from './figures.ts'
import { logSchema } from './log-schema.ts'

const position = z.object({ line: z.int().min(0), character: z.int().min(0) })
const range = z
  .object({ start: position, end: position })
  .describe('As in LSP: lines and UTF-16 units from zero, end not included.')

const finding = z.object({
  file: z.string(),
  range,
  severity: z.enum(['error', 'warning', 'information']),
  check: z.string().describe('Id of the check: area/slug.'),
  message: z.string(),
  todo: z.string().describe('What to do about it.'),
  found: z.string().optional(),
  limit: z.string().optional(),
  source: z.string().describe('Where the limit or the rule comes from.'),
  assumptions: z.array(z.string()).optional(),
  related: z.array(z.object({ file: z.string(), range, message: z.string() })).optional(),
})

export const checkSchema = z
  .object({ version: z.literal(1), files: z.array(z.string()), findings: z.array(finding) })
  .describe('Output of `shaftwright check --format json`.')

export type CheckJson = z.infer<typeof checkSchema>
export type FindingJson = z.infer<typeof finding>

const foot = z.object({
  name: z.string(),
  up_mm: figure,
  starboard_mm: figure,
  slide_mm: z
    .number()
    .optional()
    .describe('How far the step takes the foot sideways, + to starboard; absent where no step is given.'),
  turns: z
    .object({
      nut: z.literal('lower'),
      direction: z.enum(['up', 'down', 'none']),
      seenFromAbove: z.enum(['clockwise', 'counter-clockwise']).optional(),
      turns: z.int().min(0),
      flats: z
        .number()
        .min(0)
        .lt(6)
        .describe('To the step that the bed says; half a flat where it says none.'),
    })
    .optional(),
  shims: z
    .object({
      action: z.enum(['put in', 'take out', 'make', 'none']),
      thickness_mm: z.number().min(0),
      from_mm: z.number().optional().describe('Of the pack there now, where it is made anew.'),
      pieces_mm: z.array(z.number()),
    })
    .optional(),
})

const visit = z.object({ feet: z.array(z.string()), up_mm: z.number() })

const work = z.object({
  passes: z
    .array(z.array(visit.extend({ flats: z.number().optional() })))
    .describe(
      'Passes of the lower nuts, feet of one station together, in the order they are set; empty with shims.',
    ),
  packs: z
    .array(visit.extend({ lift_mm: z.number().describe('How far the feet are lifted for it.') }))
    .describe('Changes of packs, in order; empty with nuts.'),
  slack: z
    .array(z.object({ foot: z.string(), slack_mm: z.number() }))
    .describe('How far what holds each foot from above is slackened before.'),
  tilt_mrad: z.number().describe('Greatest angle along the shaft that the machine goes through.'),
})

const plain = z.object({ vertical: z.number(), horizontal: z.number() })

const target = z.object({ offset_mm: plain, slope_mrad: plain })

export const planSchema = z
  .object({
    version: z.literal(1),
    drive: z.string(),
    reading: z.string(),
    verdict: z.enum(['within', 'outside', 'undecided']),
    movedSince: z.boolean().describe('Whether the machine was moved after this reading: read again.'),
    withheld: z
      .enum([
        'moved-since',
        'order-unknown',
        'doubled-names',
        'later-reading',
        'errors',
        'soft-foot',
        'pilot-engaged',
        'another-effect',
        'contradictory',
        'unsure',
        'far-off',
      ])
      .nullable()
      .describe(
        'Why no steps are given: moved after this reading; the date of a reading not readable; two feet or readings of one name; a later reading; errors in what the plan hangs on; a soft foot; a pilot that holds the flanges together where the machine is to stand off; moves that had another effect, so that the reading itself may be wrong; readings that contradict each other; nothing proven and U larger than every move; a foot so far off that rough alignment comes first. null when none are withheld.',
      ),
    slip: z
      .string()
      .nullable()
      .describe('What the log shows of the moves before, where they had another effect than they should.'),
    errors: z
      .array(z.object({ check: z.string(), place: z.string().describe('Line and column, from 1.') }))
      .describe('Errors of the job file in what the plan hangs on.'),
    gapVariation_mm: figure.extend({ limit: z.number() }),
    slope_mrad: parts,
    offset_mm: parts.nullable().describe('null when it was not measured.'),
    feet: z.array(foot),
    predicted: z
      .object({
        gapVariation_mm: figure,
        offset_mm: parts.nullable(),
        inside: z
          .boolean()
          .describe(
            'Whether that is inside the limits: of both where an offset is given, else of the gap variation alone.',
          ),
        provable: z.boolean().describe('Far enough inside those limits for the next reading to prove it.'),
      })
      .nullable()
      .describe(
        'What the next reading should show, with the uncertainty of both readings; null when no moves are given.',
      ),
    ways: z
      .array(
        z.array(
          z.object({
            type: z.enum(['finer-step', 'thinner-shim', 'travel', 'hole-clearance']),
            partsOfFlat: z.int().optional(),
            thickness_mm: z.number().optional(),
            foot: z.string().optional(),
            up_mm: z.number().optional().describe('Travel the foot would need, - down.'),
            clearance_mm: z
              .number()
              .optional()
              .describe('Clearance to either side that its hole would need.'),
          }),
        ),
      )
      .describe(
        'What would bring the machine inside its limits, where the steps do not: any one of these, and all that stands in it together.',
      ),
    target: target
      .extend({ parts: z.array(target.extend({ words: z.string().describe('Why.') })) })
      .nullable()
      .describe(
        'Where the machine is to stand while it is read, and what that is made of; gap variation and offset are judged from there. null for a straight line through the shaft.',
      ),
    runOut_mm: z
      .object({ face: figure.nullable(), rim: figure.nullable() })
      .nullable()
      .describe(
        'What turned with the flange, total indicator reading, averaged out; null when it was not turned.',
      ),
    softFeet: z
      .object({
        feet: z.array(z.string()),
        shim: z.object({ foot: z.string(), thickness_mm: z.number() }).nullable(),
      })
      .nullable()
      .describe('Feet that rise when slackened, and the shim for the worst; null when there are none.'),
    work: work
      .nullable()
      .describe('How the feet get their heights, all fastenings slack; null where no heights are to be set.'),
    assumptions: z.array(z.string()),
    log: logSchema,
  })
  .describe('Output of `shaftwright plan --format json`.')

/** JSON Schemas of what the commands print, by file name. */
export const schemas = (): Readonly<Record<string, unknown>> => ({
  'check.schema.json': z.toJSONSchema(checkSchema),
  'plan.schema.json': z.toJSONSchema(planSchema),
})
