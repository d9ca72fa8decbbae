import type { Kind } from '../quantity/kinds.ts'
import {
  bad,
  combine,
  good,
  negate,
  type Outcome,
  type Quantity,
  quantity,
  readQuantity,
} from '../quantity/quantity.ts'
import type { Entry, FactNode, Leaf, Part, Provenance, Span } from '../syntax/tree.ts'
import type { Fact } from '../vocabulary/block.ts'
import { provenanceWords } from '../vocabulary/form.ts'
import { meant } from '../vocabulary/meant.ts'
import { either } from '../vocabulary/shape.ts'
import { decimalComma } from './decimal-comma.ts'
import type { Draft } from './draft.ts'
import { type Evaluation, FactReader } from './fact-reader.ts'
import { alongPath, furthestPath, lookFor } from './look-for.ts'
import { meantPath } from './meant-path.ts'
import type { BindingProblem, Block, Reference, Section, Value } from './model.ts'
import type { BindingScope } from './scope.ts'
import { touchingSign } from './touching-sign.ts'

interface Surroundings {
  readonly section: Section
  readonly roots: readonly Draft[]
  readonly scope: BindingScope
  readonly report: (span: Span, problem: BindingProblem) => void
  readonly refer: (reference: Reference) => void
}

/** More values than this, each taken from the next, are not followed: nobody means them. */
const longestChain = 32

/** Works out facts on demand: `fact` one by name, `inherit` those a block takes from the one it is `like`. */
export function evaluator(around: Surroundings) {
  const { section, scope, report } = around
  const system = scope.system()
  /** What is being worked out now, each for the one before it. */
  const running: (FactNode | Draft)[] = []
  const textOf = ({ start, end }: Span): string => section.text.slice(start, end)
  const evaluation: Evaluation = { system, report, textOf, evaluate, refers }

  function fact(block: Draft, name: string): Value<unknown> | undefined {
    const done = block.facts.get(name) ?? block.others.get(name)
    if (done || block.unread.has(name)) return done
    const known =
      block.definition && Object.hasOwn(block.definition.facts, name)
        ? block.definition.facts[name]
        : undefined
    const node = block.written.get(name)
    const bare = block.definition?.bare === name ? block.lines.flatMap((line) => line.entries) : []
    if (!node && bare.length === 0) return undefined
    const definition = known ?? block.definition?.others
    if (!definition) {
      block.unread.add(name)
      return undefined
    }
    const value = node ? written(block, node, definition) : fromLines(block, name, bare, definition)
    if (value) (known ? block.facts : block.others).set(name, value)
    else block.unread.add(name)
    return value
  }

  function written(block: Draft, node: FactNode, definition: Fact): Value<unknown> | undefined {
    if (running.includes(node)) {
      report(node.valueSpan, { type: 'refers-to-itself', path: node.name.text })
      return undefined
    }
    if (node.entries.length === 0) {
      report(node.name.span, {
        type: 'value-empty',
        name: node.name.text,
        words: definition.shape.words,
        example: definition.example,
      })
      return undefined
    }
    const comma = decimalComma(node.entries, section.text)
    if (comma) {
      report(comma.span, { type: 'decimal-comma', meant: comma.meant })
      return undefined
    }
    const touching = touchingSign(node.entries, section.text)
    if (touching) {
      report(touching, { type: 'sign-touches' })
      return undefined
    }
    if (running.length >= longestChain) {
      report(node.valueSpan, { type: 'chain-too-long', path: node.name.text })
      return undefined
    }
    running.push(node)
    try {
      return read(block, node, node.entries, definition)
    } finally {
      running.pop()
    }
  }

  function fromLines(
    block: Draft,
    name: string,
    entries: readonly Entry[],
    definition: Fact,
  ): Value<unknown> | undefined {
    const span = { start: entries[0]?.span.start ?? 0, end: entries.at(-1)?.span.end ?? 0 }
    const own = { span, valueSpan: span, provenance: undefined, doc: undefined }
    const node: FactNode = { type: 'fact', name: { text: name, span }, entries, ...own }
    return read(block, node, entries, definition)
  }

  function read(
    block: Draft,
    node: FactNode,
    entries: readonly Entry[],
    definition: Fact,
  ): Value<unknown> | undefined {
    const value = definition.shape.read(entries, new FactReader(evaluation, block, definition))
    const { provenance } = node
    if (provenance) originKnown(provenance)
    if (value === undefined) return undefined
    return {
      value,
      name: node.name.text,
      at: { section, span: node.valueSpan },
      node,
      ...(provenance && {
        provenance: {
          words: provenance.words.map((w) => w.text),
          texts: provenance.texts.map((t) => t.text),
        },
      }),
    }
  }

  /** A misspelt origin would pass for one: a value that is assumed for one that is not. */
  function originKnown({ words: [word], texts, span }: Provenance): void {
    const known = Object.keys(provenanceWords)
    const isClosed = section.text[span.end - 1] === ']'
    if (word ? known.includes(word.text) : texts.length === 0 && !isClosed) return
    const near = word && meant(word.text, known)
    const expected = `one of ${known.join(', ')}`
    report(word?.span ?? span, { type: 'not-this-value', expected, ...(near && { nearest: near }) })
  }

  /** Takes over what the block named by `like` says and this one does not. */
  function inherit(block: Draft): void {
    const node = block.written.get('like')
    const [part] = node?.entries[0]?.parts ?? []
    if (!node || block.unread.has('like')) return
    block.unread.add('like') // done once, however many ask
    if (node.entries.length !== 1 || part?.type !== 'word') {
      report(node.valueSpan, {
        type: 'not-this-value',
        expected: `the name of a ${block.kind}`,
      })
      return
    }
    if (running.includes(block)) {
      report(part.span, { type: 'refers-to-itself', path: part.text })
      return
    }
    if (running.length >= longestChain) {
      report(part.span, { type: 'chain-too-long', path: part.text })
      unknownBut(block)
      return
    }
    running.push(block)
    try {
      const path = findPath(block.parent, part.text, [block.kind], block)
      const source = path?.at(-1)
      if (!source) {
        unresolved(part.span, part.text, [block.kind], block)
        unknownBut(block)
        return
      }
      if (path) refer(part, path)
      if (isDraft(source)) {
        for (const name of source.written.keys()) if (name !== 'like') fact(source, name)
        inherit(source)
      }
      for (const [name, value] of source.facts)
        if (!block.facts.has(name) && !block.written.has(name) && !block.unread.has(name))
          block.facts.set(name, {
            ...value,
            at: { section, span: part.span },
            origin: value.origin ?? value.at,
          })
      const names = [...source.unread].filter(
        (name) =>
          Object.hasOwn(block.definition?.facts ?? {}, name) &&
          !block.facts.has(name) &&
          !block.written.has(name),
      )
      for (const name of names) block.unread.add(name)
      if (names.length > 0) report(part.span, { type: 'source-unread', path: part.text, names })
    } finally {
      running.pop()
    }
  }

  /** What a block is like is not known: nothing that it does not say itself is absent for sure. */
  function unknownBut(block: Draft): void {
    for (const name of Object.keys(block.definition?.facts ?? {}))
      if (!block.written.has(name)) block.unread.add(name)
  }

  const isDraft = (block: Block): block is Draft => block.section === section

  /** Without kinds, a fact with an amount was wanted. */
  function unresolved(span: Span, path: string, kinds: readonly string[] | undefined, from: Draft): void {
    const wanted = kinds ? `a ${either(kinds)}` : 'a fact with an amount'
    const told = furthest(from, path)
    refer({ text: path, span }, told)
    const other = told.length === path.split('.').length ? told.at(-1) : undefined
    if (
      (other === from && kinds?.includes(from.kind)) ||
      (!other && scope.circular(path.split('.', 1)[0] ?? ''))
    ) {
      report(span, { type: 'refers-to-itself', path })
      return
    }
    if (other) {
      report(span, { type: 'unresolved', path, wanted, is: other.kind })
      return
    }
    const near = meantPath(path, { kinds, from, scope, furthest: (part) => furthest(from, part) })
    report(span, { type: 'unresolved', path, wanted, ...(near && { nearest: near }) })
  }

  const findPath = (
    from: Draft | undefined,
    path: string,
    kinds: readonly string[] | undefined,
    not?: Block,
  ): readonly Block[] | undefined => lookFor(path, { roots: around.roots, scope, from, kinds, not })

  /** The blocks of any kind that a path leads through, as far as it does. */
  const furthest = (from: Draft, path: string): readonly Block[] =>
    furthestPath(path, (part) => findPath(from, part, undefined)) ?? []

  const refer = (path: Leaf, blocks: readonly Block[]): void =>
    alongPath(path, blocks, section).forEach(around.refer)

  function referToFact(part: Leaf, to: Block): void {
    const fact = part.text.slice(part.text.lastIndexOf('.') + 1)
    const value = to.facts.get(fact)
    const node = value?.node ?? (to as Draft).written.get(fact)
    if (!node) return
    const end = section.text.indexOf(part.text, part.span.start) + part.text.length
    around.refer({
      at: { section, span: { start: end - fact.length, end } },
      to,
      fact,
      named: { section: (value?.origin ?? value?.at)?.section ?? to.section, span: node.name.span },
    })
  }

  /** `unread` where it is written but could not be read. */
  function factAt(
    block: Draft,
    part: Part & { readonly type: 'word' },
  ): { readonly value: unknown; readonly kind: Kind | undefined } | { readonly unread: Block } | undefined {
    const dot = part.text.lastIndexOf('.')
    const name = part.text.slice(dot + 1)
    const holders: (Block | undefined)[] = []
    if (dot >= 0) {
      const path = findPath(block, part.text.slice(0, dot), undefined) ?? []
      refer(part, path)
      holders.push(path.at(-1))
    } else for (let b: Draft | undefined = block; b; b = b.parent) holders.push(b)
    for (const holder of holders) {
      if (!holder) continue
      if (isDraft(holder)) {
        if (!holder.written.has(name)) inherit(holder)
        fact(holder, name)
      }
      const value = holder.facts.get(name)
      const definition = (holder as Draft).definition?.facts[name]
      if (value || holder.unread.has(name)) referToFact(part, holder)
      if (value) return { value: value.value, kind: definition?.shape.quantity }
      if (
        holder.unread.has(name) ||
        running.includes((holder as Draft).written.get(name) ?? (holder as Draft))
      )
        return { unread: holder }
    }
    return undefined
  }

  function evaluate(part: Part, block: Draft, expected: Kind): Outcome<Quantity> | undefined {
    switch (part.type) {
      case 'amount':
        return readQuantity(part.number, part.unit?.text, expected)
      case 'negated': {
        const of = evaluate(part.of, block, expected)
        return of?.ok ? negate(of.value) : of
      }
      case 'operation': {
        const left = evaluate(part.left, block, expected)
        const right = evaluate(part.right, block, expected)
        if (!left?.ok) return left
        if (!right?.ok) return right
        return combine(part.operator, left.value, right.value)
      }
      case 'word': {
        const found = factAt(block, part)
        if (found && 'unread' in found) {
          // In the same section the finding stands where it is written.
          const names = [part.text.split('.').at(-1) ?? '']
          if (!isDraft(found.unread)) report(part.span, { type: 'source-unread', path: part.text, names })
          return undefined
        }
        const si =
          typeof found?.value === 'number'
            ? found.value
            : (found?.value as { nominal?: number } | undefined)?.nominal
        if (!found || si === undefined || !found.kind) {
          unresolved(part.span, part.text, undefined, block)
          return undefined
        }
        return good(quantity(si, found.kind))
      }
      case 'missing':
        return undefined // reported where the text was read
      default:
        return bad({ type: 'not-a-number', text: textOf(part.span) })
    }
  }

  function refers(part: Part, block: Draft, kinds: readonly string[]): string | undefined {
    const found = part.type === 'word' && findPath(block.parent ?? block, part.text, kinds)
    if (found) {
      refer(part, found)
      return part.text
    }
    const path = part.type === 'word' ? part.text : undefined
    // Two blocks may name each other: a bus bar and the cable that it protects.
    if (path !== undefined && scope.circular(path) && kinds.includes(scope.kindOf(path) ?? '')) return path
    unresolved(part.span, path ?? textOf(part.span), kinds, block)
    return undefined
  }

  return { fact, inherit }
}
