// Laws that hold for every text, whatever is in it.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseSection, validateGrammar } from '../../server/src/syntax/parser.ts'
import { cutSections } from '../../server/src/syntax/sections.ts'
import { type Entry, type Item, type Part, print, type Span } from '../../server/src/syntax/tree.ts'
import { texts } from './texts.ts'

const within = (inner: Span, outer: Span, what: string): void => {
  expect(inner.start, what).toBeLessThanOrEqual(inner.end)
  expect(inner.start, what).toBeGreaterThanOrEqual(outer.start)
  expect(inner.end, what).toBeLessThanOrEqual(outer.end)
}

const partsOf = (part: Part): readonly Part[] => {
  switch (part.type) {
    case 'plus-minus':
      return [part.by]
    case 'range':
      return [part.low, part.high]
    case 'operation':
      return [part.left, part.right]
    case 'negated':
      return [part.of]
    default:
      return []
  }
}

function partNests(part: Part, outer: Span): void {
  within(part.span, outer, part.type)
  if ('unit' in part && part.unit) within(part.unit.span, part.span, 'unit')
  for (const inner of partsOf(part)) partNests(inner, part.span)
}

function entriesNest(entries: readonly Entry[], outer: Span): void {
  for (const entry of entries) {
    within(entry.span, outer, 'entry')
    for (const part of entry.parts) partNests(part, entry.span)
  }
}

function itemNests(item: Item, outer: Span): void {
  within(item.span, outer, item.type)
  if (item.type === 'block') {
    within(item.headSpan, item.span, 'head')
    within(item.kind.span, item.headSpan, 'kind')
    for (const part of item.heading) partNests(part, item.headSpan)
    for (const inner of item.items) itemNests(inner, item.span)
    return
  }
  if (item.type === 'fact') {
    within(item.name.span, item.span, 'name')
    within(item.valueSpan, item.span, 'value')
  }
  entriesNest(item.entries, item.type === 'fact' ? item.valueSpan : item.span)
  if (item.provenance) within(item.provenance.span, item.span, 'provenance')
}

describe('any text', () => {
  it('is cut into sections that together are the text', () => {
    fc.assert(
      fc.property(texts, (text) => {
        expect(cutSections(text).join('')).toBe(text)
      }),
    )
  })

  it('is given back by printing its tree', () => {
    fc.assert(
      fc.property(texts, (text) => {
        expect(print(parseSection(text).tree)).toBe(text)
      }),
      {
        numRuns: 500,
      },
    )
  })

  it('has every span inside it, and inside the span around it', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const all = { start: 0, end: text.length }
        const { tree, problems } = parseSection(text)
        for (const item of tree.items) itemNests(item, all)
        for (const problem of problems) within(problem.span, all, problem.type)
      }),
      { numRuns: 500 },
    )
  })

  it('reads the same a second time: nothing is left over from the text before', () => {
    fc.assert(
      fc.property(texts, texts, (text, before) => {
        const first = parseSection(text)
        parseSection(before)
        const { problems, tree } = parseSection(text)
        expect(problems).toEqual(first.problems)
        expect(tree.items).toEqual(first.tree.items)
      }),
    )
  })
})

describe('the grammar', () => {
  it("passes its parser generator's own validations", () => {
    expect(validateGrammar).not.toThrow()
  })
})
