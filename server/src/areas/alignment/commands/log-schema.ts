import * as z from 'zod'
import { figure, parts } from './figure-schema.ts'

const explanation = z.object({
  type: z.enum([
    'turned-the-wrong-way',
    'did-not-follow',
    'not-as-noted',
    'forgotten',
    'nothing-moved',
    'sideways-not-done',
    'wrong-side',
    'part-of-the-way',
    'made-twice',
    'move-not-noted',
    'made-at-the-wrong-end',
    'other-pitch',
    'other-hand',
    'top-and-bottom-swapped',
    'sides-swapped',
    'half-turn',
    'quarter-turn',
    'offset-signs-reversed',
    'gap-signs-reversed',
    'copied',
    'other-gauge-diameter',
    'offset-not-carried',
  ]),
  feet: z.array(z.string()).optional(),
  share: z.number().optional().describe('Share of the move that the machine made.'),
  gaugeDiameter_mm: z.number().optional().describe('The gauge-diameter that the figures fit.'),
  pitch_mm: z.number().optional().describe('The pitch of the thread that the figures fit.'),
  swapped: z
    .enum(['later', 'first', 'both'])
    .optional()
    .describe(
      'Which reading has places swapped or signs reversed: this one, the one it is compared with, or both.',
    ),
  way: z
    .enum(['clockwise', 'counter-clockwise'])
    .optional()
    .describe('Which way the places are a quarter turn off, looking forward.'),
  from: z.string().optional().describe('The reading that the figures are a copy of.'),
  made: z.enum(['all', 'heights']).optional().describe('What was made at the wrong end.'),
})

const flangeMisalignment = z.object({
  opening_mm: parts.describe('Gap at top minus bottom, and at starboard minus port.'),
  offset_mm: parts.nullable().describe('null if it was not read both times.'),
})

const against = z.discriminatedUnion('type', [
  z.object({
    type: z.literal('compared'),
    since: z.string(),
    predicted: flangeMisalignment.describe(
      'What was expected from the moves since the earlier reading. The uncertainty is that of the difference: of both readings and the moves.',
    ),
    found: flangeMisalignment,
    chiSquare: z.number().min(0),
    degreesOfFreedom: z.int().min(1),
    noise: z.boolean().describe('Gauge and adjusters explain the difference (99 %).'),
    explanations: z
      .array(explanation)
      .describe(
        'What explains it instead, best first. Empty if noise does, or if no single mistake does. The plan gives no steps if one of them puts the reading or the bed in doubt.',
      ),
  }),
  z
    .object({
      type: z.enum(['launched', 'hauled-out', 'heated', 'cooled', 'end-supported', 'end-freed']),
      since: z.string(),
    })
    .describe('Boat, machine or the end of the shaft changed shape since, so nothing is compared.'),
])

/** The readings of a drive in the JSON of a plan. */
export const logSchema = z
  .array(
    z.object({
      reading: z.string(),
      taken: z.string().nullable(),
      afloat: z.boolean().nullable(),
      hot: z.boolean().nullable(),
      fault: z.string().nullable().describe('Why it could not be calculated.'),
      verdict: z.enum(['within', 'outside', 'undecided']).nullable(),
      contradictory: z.boolean().describe('Its values do not close, or repeated values differ.'),
      gapVariation_mm: figure.extend({ limit: z.number() }).nullable(),
      offset_mm: parts.extend({ limit: z.number() }).nullable(),
      slope_mrad: parts.nullable(),
      movedAfter: z
        .array(z.object({ foot: z.string(), move: z.string().describe('In the words of the job file.') }))
        .describe('The moves made after it.'),
      plannedAfter: z
        .array(z.object({ foot: z.string(), move: z.string().describe('In the words of the job file.') }))
        .describe('The moves planned after it: those without `done`.'),
      against: against
        .nullable()
        .describe(
          'Comparison with the last reading before it that is complete, comparable and not itself in doubt; null if there is no such comparison.',
        ),
      stillOpen: z
        .object({ reading: z.string(), since: z.string(), explanations: z.array(explanation) })
        .nullable()
        .describe(
          'What an earlier reading, compared with `since`, put in doubt and this one does not settle: the explanations that are left. The plan gives no steps.',
        ),
    }),
  )
  .describe('Readings of the drive up to the one planned from, oldest first.')
