import * as z from 'zod'

/** A value as a command prints it. */
export const figure = z.object({
  value: z.number(),
  uncertainty: z.number().min(0).describe('Expanded uncertainty, k = 2.'),
})
export const parts = z
  .object({ vertical: figure, horizontal: figure })
  .describe('Vertical: up is positive. Horizontal: starboard is positive.')
