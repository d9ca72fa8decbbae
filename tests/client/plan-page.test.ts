import { describe, expect, it } from 'vitest'
import { pageText } from '../../client/src/plan-page.ts'
import { planLocation, subjectOf } from '../../client/src/plan-subject.ts'
import manifest from '../../package.json' with { type: 'json' }

const made = new Date(2026, 2, 4, 9, 5, 0)
const plan = { text: 'Vessel: …\n\nmain dry-1: outside', made }

describe('the page of a plan', () => {
  it('is the plan while it holds', () => {
    expect(pageText({ plan })).toBe('Vessel: …\n\nmain dry-1: outside\n')
  })

  it('says in its first line of when it is, and why, once it may no longer hold', () => {
    const text = pageText({ plan, outdated: 'The job no longer has main.' })
    expect(text.split('\n')[0]).toBe(
      'Out of date: this plan was made at 2026-03-04 09:05:00. The job no longer has main.',
    )
    expect(text).toContain('main dry-1: outside')
  })

  it('says why there is none', () => {
    expect(pageText({ outdated: 'The job file is closed or deleted.' })).toBe(
      'No plan: The job file is closed or deleted.\n',
    )
    expect(pageText({})).toBe('Making the plan…\n')
  })
})

describe('the address of a plan', () => {
  it.each([
    { job: 'file:///boats/launch.wright', path: 'main.dry-1' },
    { job: 'git:/boats/launch.wright?%7B%22ref%22%3A%22HEAD%22%7D', path: 'port' },
    { job: 'untitled:Untitled-1', path: 'drive' },
  ])('leads back to what it is of, in the folder that has the language: %j', (subject) => {
    const location = planLocation(subject)
    expect(subjectOf(location)).toEqual(subject)
    const language = manifest.contributes.languages.find(({ id }) => id === 'shaftwright-plan')
    expect(language?.filenamePatterns).toEqual(['/Shaftwright plan/**'])
    expect(location.path).toMatch(/^\/Shaftwright plan\/[^/]+\/Plan of [^/]+$/)
    expect(language?.aliases, 'a language without a name is not in the picker').toEqual([])
  })

  it.each(['', '[]', 'null', '{"job":1,"path":"a"}', '{"job":"a"}', '{'])('is no other: %s', (query) => {
    expect(subjectOf({ query })).toBeUndefined()
  })
})
