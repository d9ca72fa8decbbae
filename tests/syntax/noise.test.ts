// What no person writes, but a file may hold: it ends, and says little.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { parseSection } from '../../server/src/syntax/parser.ts'
import { print } from '../../server/src/syntax/tree.ts'
import { findingsOf } from '../checks/marks.ts'

const million = 1024 * 1024
const filled = (piece: string): string => piece.repeat(Math.ceil(million / piece.length))

describe('nesting', () => {
  it.each(['{', '(', 'drive x {\n', 'x: (', 'seal { '])(
    '200 deep of %j is read, with few findings',
    (piece) => {
      const text = piece.repeat(200)
      expect(print(parseSection(text).tree)).toBe(text)
      expect(parseSection(text).problems.length).toBeLessThan(200)
    },
  )

  it('200 deep and closed again is one problem, where it is too deep', () => {
    const text = `seal ${'{'.repeat(200)}${'}'.repeat(200)}\n`
    const types = new Set(parseSection(text).problems.map(({ type }) => type))
    expect(types).toContain('too-deep')
    expect(parseSection(text).problems.filter(({ type }) => type === 'too-deep').length).toBeLessThanOrEqual(
      2,
    )
  })
})

describe('a million characters', { timeout: 60_000 }, () => {
  it.each([
    '{',
    '}',
    '(',
    '"',
    '#',
    ';@$',
    '\\',
    ' ',
    '[',
    '- ',
    '- - ',
    '; ',
    '[;',

    '1/',
    '..',
    '\u0000',
    'é',
    '9',
  ])('of %j are read, with few findings', (piece) => {
    const { findings } = findingsOf(filled(piece), allChecks)
    expect(findings.length).toBeLessThanOrEqual(70)
  })

  it.each(['1 mm + ', '-', '- ', '(', '2 * (', '1 mm, ', '..', '1,', '15,000 ', '1, '])(
    'of %j as one value are read, with few findings',
    (piece) => {
      const { findings } = findingsOf(`seal {\n  free-length: ${filled(piece)}\n}`, allChecks)
      expect(findings.length).toBeGreaterThan(0)
      expect(findings.length).toBeLessThanOrEqual(400) // whatever the length of the value
    },
  )

  it('on lines of their own still cost a line each, and no more', () => {
    const lines = 2000
    const { findings } = findingsOf(`seal {\n${';\n'.repeat(lines)}free-length: 148\n}`, allChecks)
    expect(findings.length).toBeLessThanOrEqual(lines + 1)
    expect(findings.some(({ check }) => check === 'job/unit-missing')).toBe(true)
  })
})
