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

const turns = z.object({
  nut: z.literal('lower'),
  direction: z.enum(['up', 'down', 'none']),
  seenFromAbove: z.enum(['clockwise', 'counter-clockwise']).optional(),
  turns: z.int().min(0),
  flats: z.number().min(0).lt(6).describe('To the step that the bed says; half a flat where it says none.'),
  untilItTouches: z
    .literal(true)
    .optional()
    .describe('A foot between the ends: about so far, until it just touches.'),
})

const foot = z.object({
  name: z.string(),
  up_mm: figure,
  starboard_mm: figure,
  slide_mm: z
    .number()
    .optional()
    .describe('How far the step takes the foot sideways, + to starboard; absent where no step is given.'),
  moved_mm: z
    .number()
    .optional()
    .describe('What the step does to the height, + up; absent where no step is given.'),
  turns: turns.optional(),
  shims: z
    .object({
      action: z.enum(['put in', 'take out', 'make', 'none']),
      thickness_mm: z.number().min(0),
      from_mm: z.number().optional().describe('The pack there now, where it is known.'),
      to_mm: z.number().optional().describe('The pack then.'),
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
        'finding',
        'soft-foot',
        'pilot-engaged',
        'another-effect',
        'contradictory',
        'unsure',
        'far-off',
      ])
      .nullable()
      .describe(
        'Why no steps are given: moved after this reading; the date of a reading not readable; two feet or readings of one name; a later reading; errors in what the plan is made from; something else found in it that is neither fixed nor accepted by a concession; a soft foot; a pilot that holds the flanges together where the machine is to stand off; moves that had another effect, so that the reading or the bed may not be what the job says; readings that contradict each other; nothing proven and U larger than every move; a foot so far off that rough alignment comes first. null when none are withheld.',
      ),
    slip: z
      .string()
      .nullable()
      .describe('What the log shows of the moves before, where they had another effect than they should.'),
    errors: z
      .array(z.object({ check: z.string(), place: z.string().describe('Line and column, from 1.') }))
      .describe('Errors of the job file in what the plan depends on.'),
    gauge_mm: z.number().describe('Smallest step of the gauge.'),
    decidedBy_mm: z
      .number()
      .nullable()
      .describe('Step of a gauge that could decide, where this one cannot; null where none could.'),
    contradictions: z
      .array(
        z.object({
          read: z.string().describe('The fact it was read into.'),
          type: z.enum(['do not close', 'repeated']),
          difference_mm: z.number(),
          allowed_mm: z.number().describe('What the gauge explains.'),
        }),
      )
      .describe('Values of the reading that do not agree: read again.'),
    findings: z
      .array(
        z.object({
          check: z.string(),
          place: z.string().describe('Line and column, from 1.'),
          message: z.string(),
          todo: z.string().describe('What to do about it.'),
        }),
      )
      .describe(
        'What was found in it that is no error: no steps are given until it is fixed, or accepted by a concession.',
      ),
    gapVariation_mm: figure.extend({ limit: z.number() }).describe('Against the target, where there is one.'),
    offsetDistance_mm: figure
      .extend({ limit: z.number() })
      .nullable()
      .describe('Distance of the machine flange from where it is to stand; null when it was not measured.'),
    slope_mrad: parts,
    offset_mm: parts.nullable().describe('null when it was not measured.'),
    angle_mrad: figure.describe('Of the machine axis from where it is to point.'),
    feet: z.array(foot),
    predicted: z
      .object({
        gapVariation_mm: figure,
        opening_mm: parts.describe('Gap at the top less gap at the bottom, and at starboard less at port.'),
        offset_mm: parts.nullable(),
        fromTarget_mm: z
          .object({ gapVariation: z.number(), offset: z.number().nullable() })
          .describe('What is left to the target; without a target, the same as above.'),
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
            type: z.enum(['finer-step', 'thinner-shim', 'travel', 'hole-clearance', 'off-centre']),
            partsOfFlat: z.int().optional(),
            thickness_mm: z.number().optional(),
            foot: z.string().optional(),
            up_mm: z.number().optional().describe('Travel the foot would need, - down.'),
            clearance_mm: z
              .number()
              .optional()
              .describe('Clearance to either side that its hole would need.'),
            offCentre_mm: z
              .number()
              .optional()
              .describe(
                'How far the machine flange would go at most from where it stands, which was not read.',
              ),
          }),
        ),
      )
      .describe(
        'What would bring the machine inside its limits, where the steps do not: any one of these, and all that stands in it together.',
      ),
    target: target
      .extend({
        opening_mm: plain.describe(
          'Gap at the top less gap at the bottom, and at starboard less at port, where the machine stands right.',
        ),
        parts: z.array(target.extend({ words: z.string().describe('Why.') })),
      })
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
        missing: z
          .object({ foot: z.string(), up_mm: z.number() })
          .nullable()
          .describe('What is missing under the worst; null when no foot stands out.'),
        shim: z
          .object({ foot: z.string(), thickness_mm: z.number(), pieces_mm: z.array(z.number()) })
          .nullable()
          .describe('On a bed with shims: the pack of its stock, or the thickness where none comes near.'),
        nut: turns
          .extend({
            foot: z.string(),
            moved_mm: z.number(),
            smallestStep_mm: z.number().describe('The smallest that is asked of the nut.'),
          })
          .nullable()
          .describe('On a bed with studs: the turn of its nut.'),
      })
      .nullable()
      .describe('Feet that rise when slackened, and what to do at the worst; null when there are none.'),
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
