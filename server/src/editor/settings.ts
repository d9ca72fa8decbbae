import * as z from 'zod'

/** One setting as the settings editor shows it: what it is where nothing sound is set, and in words what it does. */
const shown = (words: string) => ({ scope: 'window', markdownDescription: words })

/** What a user may set below `shaftwright.`: one entry a setting, as package.json declares them. */
export const settingsSchema = z.object({
  findings: z
    .object({
      delay: z
        .int()
        .min(0)
        .max(10_000)
        .default(300)
        .catch(300)
        .meta(
          shown(
            'How many milliseconds after the last keystroke a new finding on the line being written is shown. What is put right clears at once, and findings on other lines show at once. `0`: nothing waits.',
          ),
        ),
    })
    .prefault({}),
})

export type Settings = z.infer<typeof settingsSchema>

const defaults = settingsSchema.parse({})

/** Settings as an editor gives them. One that is missing or makes no sense stands at its default. */
export const readSettings = (given: unknown): Settings =>
  settingsSchema.safeParse(given ?? {}).data ?? defaults

/** For an editor that has no settings to give: nothing waits. */
export const bareSettings: Settings = { ...defaults, findings: { ...defaults.findings, delay: 0 } }
