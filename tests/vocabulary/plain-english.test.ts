// What hovers, completion, settings, commands and plans say is plain English: none of the phrases that read as translated, and no long sentences in
// what is shown in a small window (common practice, no source).
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../server/src/areas/alignment/plans/correction.ts'
import { planText } from '../../server/src/areas/alignment/plans/plan-text.ts'
import { correctionMarkdown } from '../../server/src/areas/alignment/plans/words.ts'
import { units } from '../../server/src/quantity/units.ts'
import { provenanceWords } from '../../server/src/vocabulary/form.ts'
import { findKind, vocabulary } from '../../server/src/vocabulary/index.ts'
import { blockIn } from '../areas/job-text.ts'
import { forbidden, mostWords, sentencesOf, wordsIn } from '../checks/wording.ts'

const root = path.resolve(import.meta.dirname, '../..')
const translated = (text: string): readonly string[] =>
  forbidden.flatMap((phrase) => phrase.exec(text)?.[0] ?? [])
const long = (text: string): readonly string[] =>
  sentencesOf(text).filter((sentence) => wordsIn(sentence) > mostWords)

const kinds = Object.keys(vocabulary).flatMap((name) => findKind(name) ?? [])
const docs: readonly (readonly [string, string])[] = [
  ...kinds.flatMap((kind) => [
    [kind.kind, kind.doc] as const,
    ...Object.entries(kind.facts).flatMap(([name, { doc, shape }]) => [
      [`${kind.kind}.${name}`, doc] as const,
      ...(shape.forms ?? []).flatMap(({ entries }) =>
        entries.flat().map((slot) => [`${kind.kind}.${name} (${slot.label})`, slot.doc] as const),
      ),
    ]),
  ]),
  ...Object.entries(provenanceWords),
  ...units.map(({ name, doc }) => [name, doc] as const),
]

/** All texts of the manifest that a person reads. */
function texts(json: unknown, key = ''): readonly string[] {
  if (typeof json === 'string') return /title|description/i.test(key) ? [json] : []
  if (typeof json !== 'object' || json === null) return []
  return Object.entries(json).flatMap(([name, value]) => texts(value, Array.isArray(json) ? key : name))
}

describe('plain English', () => {
  it.each(docs)('in the docs of %s', (_, doc) => {
    expect(translated(doc)).toEqual([])
    expect(long(doc)).toEqual([])
  })

  it('in titles, settings and the walkthrough', () => {
    const said = texts(JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')))
    expect(said.length).toBeGreaterThan(20)
    for (const text of said) {
      expect(translated(text), text).toEqual([])
      expect(long(text), text).toEqual([])
    }
  })

  const examples = path.join(root, 'docs/examples')
  it('in plans and hovers of a demo job', () => {
    expect(readdirSync(examples)).toContain('survey-launch-as-found.wright')
    const { block, lookup } = blockIn(
      readFileSync(path.join(examples, 'survey-launch-as-found.wright'), 'utf8'),
      'main.dry-1',
    )
    const outcome = correctionOf(block, lookup)
    if (!outcome.ok) throw new Error(outcome.fault.words)
    for (const text of [planText(outcome.value, [], 'metric'), correctionMarkdown(outcome.value, 'inch')])
      expect(translated(text)).toEqual([])
  })

  it('would be missed in what reads as translated', () => {
    expect(translated('The offset is taken as nought, and all is well.')).toHaveLength(2)
    expect(long(`${'word '.repeat(mostWords + 1)}.`)).toHaveLength(1)
  })
})
