import * as z from 'zod'
import { head } from '../../common/command-json.ts'
import { figure, parts } from './figure-schema.ts'
import { logSchema } from './log-schema.ts'

const turns = z.object({
  nut: z.literal('lower'),
  direction: z.enum(['up', 'down', 'none']),
  seenFromAbove: z.enum(['clockwise', 'counter-clockwise']).optional(),
  turns: z.int().min(0),
  flats: z.number().min(0).lt(6).describe('To the step that the bed states; half a flat if it states none.'),
  untilItTouches: z
    .literal(true)
    .optional()
    .describe('A foot between the ends: about this far, until it just touches.'),
})

const foot = z.object({
  name: z.string(),
  up_mm: figure,
  starboard_mm: figure,
  slide_mm: z
    .number()
    .optional()
    .describe('How far the step moves the foot sideways, + to starboard; absent if no step is given.'),
  moved_mm: z
    .number()
    .optional()
    .describe('How far the step moves the foot in height, + up; absent if no step is given.'),
  turns: turns.optional(),
  shims: z
    .object({
      action: z.enum(['put in', 'take out', 'make', 'none']),
      thickness_mm: z.number().min(0),
      from_mm: z.number().optional().describe('The pack now, if known.'),
      to_mm: z.number().optional().describe('The pack after the step.'),
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
    .array(visit.extend({ lift_mm: z.number().describe('How far the feet are lifted for this.') }))
    .describe('Changes of packs, in order; empty with nuts.'),
  slack: z
    .array(z.object({ foot: z.string(), slack_mm: z.number() }))
    .describe('How far the upper fastening of each foot is slackened first.'),
  tilt_mrad: z.number().describe('Greatest angle along the shaft that the machine goes through.'),
})

const plain = z.object({ vertical: z.number(), horizontal: z.number() })

const target = z.object({ offset_mm: plain, slope_mrad: plain })

export const drivePlanSchema = z
  .object({
    drive: z.string(),
    reading: z.string(),
    fault: z.null(),
    verdict: z.enum(['within', 'outside', 'undecided']),
    movedSince: z.boolean().describe('Whether the machine was moved after this reading: read again.'),
    planned: z
      .array(
        z.object({
          feet: z.array(
            z.object({ foot: z.string(), move: z.string().describe('In the words of the job file.') }),
          ),
          differsAt: z
            .array(z.string())
            .nullable()
            .describe(
              'Feet where the planned move is not what the plan asks; empty if it agrees; null if that cannot be said.',
            ),
        }),
      )
      .describe('Planned moves after this reading: those without `done`.'),
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
        'Why no steps are given; null if none are withheld. `moved-since`: the machine was moved after this reading. `order-unknown`: the date of a reading is missing or cannot be read. `doubled-names`: two feet or two readings have the same name. `later-reading`: there is a later reading. `errors`: see `errors`. `finding`: see `findings`. `soft-foot`: a foot is soft. `pilot-engaged`: a pilot holds the flanges concentric, but the target is off centre. `another-effect`: earlier moves had an unexpected effect; see `slip`. `contradictory`: the readings contradict each other. `unsure`: nothing is proven, and U is larger than every move. `far-off`: a foot is so far off that rough alignment comes first.',
      ),
    slip: z
      .string()
      .nullable()
      .describe(
        'Why earlier moves did not have the expected effect, and what to do first; null if they had.',
      ),
    errors: z
      .array(z.object({ check: z.string(), place: z.string().describe('Line and column, from 1.') }))
      .describe('Errors in the parts of the job file that the plan depends on.'),
    gauge_mm: z.number().describe('Smallest step of the gauge.'),
    decidedBy_mm: z
      .number()
      .nullable()
      .describe('Step of a gauge that could decide, if this one cannot; null if none could.'),
    contradictions: z
      .array(
        z.object({
          read: z.string().describe('The fact that holds it.'),
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
        'Findings that are not errors. The plan gives no steps until they are fixed, or accepted by a concession.',
      ),
    accepted: z
      .array(
        z.object({
          check: z.string(),
          place: z.string().describe('Line and column, from 1.'),
          message: z.string(),
          by: z.string().describe('Who accepts it.'),
          until: z.string().describe('Last day on which the concession is valid.'),
          isPast: z.literal(true).optional().describe('That day has passed. An as-built job keeps it.'),
        }),
      )
      .describe('Findings in the drive that a concession accepts.'),
    gapVariation_mm: figure
      .extend({ limit: z.number() })
      .describe('Measured from the target, if there is one.'),
    offsetDistance_mm: figure
      .extend({ limit: z.number() })
      .nullable()
      .describe('Distance of the machine flange from its target; null if it was not measured.'),
    slope_mrad: parts,
    offset_mm: parts.nullable().describe('null if it was not measured.'),
    angle_mrad: figure.describe('Angle of the machine axis from its target.'),
    feet: z.array(foot),
    predicted: z
      .object({
        gapVariation_mm: figure,
        opening_mm: parts.describe('Gap at top minus gap at bottom, and at starboard minus at port.'),
        offset_mm: parts.nullable(),
        fromTarget_mm: z
          .object({ gapVariation: z.number(), offset: z.number().nullable() })
          .describe('What remains to the target; without a target, the same as above.'),
        inside: z
          .boolean()
          .describe(
            'Whether that is within the limits: both if an offset is given, otherwise gap variation alone.',
          ),
        provable: z
          .boolean()
          .describe('Whether it is far enough within those limits for the next reading to prove it.'),
      })
      .nullable()
      .describe(
        'What the next reading should show, with the uncertainty of both readings; null if no moves are given.',
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
            clearance_mm: z.number().optional().describe('Clearance to each side that its hole would need.'),
            offCentre_mm: z
              .number()
              .optional()
              .describe(
                'How far the machine flange would move at most from its present place, which was not read.',
              ),
          }),
        ),
      )
      .describe(
        'What would bring the machine within its limits if the steps do not: any one entry, with all that it lists.',
      ),
    target: target
      .extend({
        opening_mm: plain.describe(
          'Gap at top minus gap at bottom, and at starboard minus at port, when the machine is on target.',
        ),
        parts: z.array(target.extend({ words: z.string().describe('Why.') })),
      })
      .nullable()
      .describe(
        'Where the machine must stand during a reading, and the parts of that. Gap variation and offset are judged from there. null for a straight line through the shaft.',
      ),
    runOut_mm: z
      .object({ face: figure.nullable(), rim: figure.nullable() })
      .nullable()
      .describe(
        'What turned with the flange, total indicator reading, averaged out; null if it was not turned.',
      ),
    softFeet: z
      .object({
        feet: z.array(z.string()),
        missing: z
          .object({ foot: z.string(), up_mm: z.number() })
          .nullable()
          .describe('What is missing under the worst foot; null if no foot stands out.'),
        shim: z
          .object({ foot: z.string(), thickness_mm: z.number(), pieces_mm: z.array(z.number()) })
          .nullable()
          .describe('On a bed with shims: the pack from its stock, or the thickness if none fits.'),
        nut: turns
          .extend({
            foot: z.string(),
            moved_mm: z.number(),
            smallestStep_mm: z.number().describe('Smallest step of the nut.'),
          })
          .nullable()
          .describe('On a bed with studs: the turn of its nut.'),
      })
      .nullable()
      .describe('Feet that rise when slackened, and what to do at the worst one; null if there are none.'),
    work: work
      .nullable()
      .describe(
        'How the heights of the feet are set, with all fastenings slack; null if there are none to set.',
      ),
    assumptions: z.array(z.string()),
    log: logSchema,
  })
  .describe('The plan of a drive.')

const noPlan = z
  .object({
    drive: z.string(),
    reading: z.string().nullable().describe('null if the drive has none.'),
    fault: z.string().describe('Why there is no plan.'),
  })
  .describe('A drive that cannot be planned.')

export const planSchema = z
  .object({
    version: z.literal(2),
    ...head.shape,
    plans: z
      .array(z.union([drivePlanSchema, noPlan]))
      .describe('One entry for each drive, in the order of the file.'),
  })
  .describe('Output of `shaftwright plan --format json`.')

export type PlansJson = z.infer<typeof planSchema>
