// In a folder that is not trusted, VS Code frames every sign beyond ASCII as suspicious unless it is allowed. Common practice, no source.
import { readdirSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }
import { drivesOf, planOf } from '../../server/src/editor/plan/plan.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'

const examples = resolve(import.meta.dirname, '../../docs/examples')
const textOf = (path: string) => readFileSync(resolve(examples, path), 'utf8')
const jobs = readdirSync(examples).filter((name) => name.endsWith('.wright'))

const plansOf = (name: string): readonly string[] => {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile(name, openDocument(textOf(name)), (path) => openDocument(textOf(path)))
  const view = { analysis, file }
  return drivesOf(view)
    .flatMap((drive) => [drive, ...drive.children.filter(({ kind }) => kind === 'reading')])
    .map((planned) => planOf(view, planned))
}

it.each([
  ['job', '[shaftwright]', jobs.map(textOf)],
  ['plan', '[shaftwright-plan]', jobs.flatMap(plansOf)],
] as const)('no sign of a demo %s is suspicious', (_, language, texts) => {
  const allowed =
    manifest.contributes.configurationDefaults[language]['editor.unicodeHighlight.allowedCharacters']
  const signs = new Set(texts.join('').match(/[^\n -~]/gu))
  expect(signs.size).toBeGreaterThan(0)
  expect([...signs].filter((sign) => !Object.hasOwn(allowed, sign))).toEqual([])
})

it('a plan has no links: VS Code would make them of any text of a job', () => {
  expect(manifest.contributes.configurationDefaults['[shaftwright-plan]']['editor.links']).toBe(false)
})
