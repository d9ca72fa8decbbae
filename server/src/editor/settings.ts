import * as z from 'zod/mini'

/** One setting as the settings editor shows it: what it is where nothing sound is set, and in words what it does. */
const shown = (words: string) => ({ scope: 'window', markdownDescription: words })

const hint = (words: string) =>
  z.catch(z._default(z.boolean(), true), true).register(z.globalRegistry, shown(words))

/** What a user may set below `shaftwright.`: one entry a setting, as package.json declares them. */
export const settingsSchema = z.object({
  findings: z.prefault(
    z.object({
      delay: z
        .catch(z._default(z.int().check(z.gte(0), z.lte(10_000)), 300), 300)
        .register(
          z.globalRegistry,
          shown(
            'How many milliseconds after the last keystroke a new finding on the line being written is shown. What is put right clears at once, and findings on other lines show at once. `0`: nothing waits.',
          ),
        ),
    }),
    {},
  ),
  inlayHints: z.prefault(
    z.object({
      units: hint(
        'Show amounts in the other units behind them: millimetres as inches, inches as millimetres.',
      ),
      cables: hint('Show beside a cable what it has to carry and what it can.'),
      moves: hint('Show flats of a move as a length, and a length as flats.'),
      verdicts: hint('Show beside a reading whether it is within its limits.'),
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
