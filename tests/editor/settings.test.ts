import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { bareSettings, readSettings, settingsSchema } from '../../server/src/editor/settings.ts'

interface Property {
  readonly type: string
  readonly properties?: Readonly<Record<string, Property>>
}

/** `findings.delay` and the like, as a settings editor names them. */
function namesOf({ properties = {} }: Property, before: string): Record<string, Property> {
  const named = Object.entries(properties).map(([name, of]) =>
    of.properties ? namesOf(of, `${before}.${name}`) : { [`${before}.${name}`]: of },
  )
  return Object.assign({}, ...named)
}

describe('the settings', () => {
  it('are those that package.json declares, with the same kinds, limits, defaults and words', () => {
    const { contributes } = JSON.parse(readFileSync('package.json', 'utf8'))
    const { 'shaftwright.trace.server': _, ...declared } = contributes.configuration.properties
    expect(declared).toEqual(
      namesOf(z.toJSONSchema(settingsSchema, { io: 'input' }) as Property, 'shaftwright'),
    )
  })

  it.each([7, 'x', [], {}, { findings: 3 }, { findings: { delay: 'long' } }])(
    'stand at their defaults where %j is set',
    (given) => expect(readSettings(given).findings.delay).toBe(300),
  )

  // docs/editors.md: without any, nothing waits. LSP 3.17, workspace/configuration: null where the editor has none.
  it.each([undefined, null])('are those of an editor that has none where it gives %j', (given) =>
    expect(readSettings(given)).toEqual(bareSettings),
  )

  it.each([-1, 0.5, 10_001])('do not take a delay of %d', (delay) =>
    expect(readSettings({ findings: { delay } }).findings.delay).toBe(300),
  )

  it('are taken as they are set, one without the others', () => {
    expect(readSettings({ findings: { delay: 40 }, other: true }).findings.delay).toBe(40)
    expect(bareSettings).toEqual({ ...readSettings({}), findings: { delay: 0 } })
  })
})
