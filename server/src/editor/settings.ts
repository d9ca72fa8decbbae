import * as z from 'zod/mini'

/** One setting as the settings editor shows it: what it is where nothing sound is set, and in words what it does. */
const shown = (words: string) => ({ scope: 'window', markdownDescription: words })

const hint = (words: string) =>
  z.catch(z._default(z.boolean(), true), true).register(z.globalRegistry, shown(words))

const unitHints = ['off', 'mixed', 'always'] as const

/** What a user may set below `shaftwright.`: one entry a setting, as package.json declares them. */
export const settingsSchema = z.object({
  findings: z.prefault(
    z.object({
      delay: z
        .catch(z._default(z.int().check(z.gte(0), z.lte(10_000)), 300), 300)
        .register(
          z.globalRegistry,
          shown(
            'Milliseconds after the last keystroke until a new finding on the line being written is shown. Fixed findings clear immediately, and findings on other lines show immediately. `0` disables the delay.',
          ),
        ),
    }),
    {},
  ),
  inlayHints: z.prefault(
    z.object({
      units: z
        .catch(z._default(z.enum(unitHints), 'mixed'), 'mixed')
        .register(
          z.globalRegistry,
          shown(
            'Show each amount in the other system of units too: millimetres as inches, inches as millimetres. `mixed`: only in a job that uses both systems. The hover always shows both.',
          ),
        ),
      sums: hint('Show the result after a calculation or a reference.'),
      cables: hint('Show the current of a cable and what it can carry, if the cable is large enough.'),
      moves: hint('Show the flats of a move as a length, and a length as flats.'),
      results: hint(
        'Show other results that are within their limits, such as the compression of the bellows.',
      ),
    }),
    {},
  ),
})

export type Settings = z.infer<typeof settingsSchema>

const defaults = settingsSchema.parse({})

/** For an editor that has no settings to give: nothing waits. */
export const bareSettings: Settings = { ...defaults, findings: { ...defaults.findings, delay: 0 } }

/** Settings as an editor gives them. One that is missing or makes no sense stands at its default. */
export const readSettings = (given: unknown): Settings =>
  given === undefined || given === null ? bareSettings : (settingsSchema.safeParse(given).data ?? defaults)
