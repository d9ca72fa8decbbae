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
import { type Entry, type FactNode, isBlank, type Part } from '../syntax/tree.ts'
import type { Fact } from '../vocabulary/block.ts'
import { type Draft, type Layer, longestChain, type Running } from './draft.ts'
import { type Evaluation, FactReader } from './fact-reader.ts'
import { misreadIn } from './misread.ts'
import type { Block, Place, Value } from './model.ts'
import { namesFor } from './names.ts'
import { originKnown } from './origin-known.ts'
import { Other, type Stated, statedBy } from './other.ts'
import { canBeRead, hasOpenText, withoutQuotes } from './quoted-value.ts'
import { isPending, layerOf, mayBeTaken, statedAbove, takenFrom, unknownBut } from './take-over.ts'

import { type Surroundings, type Text, textsFor } from './texts.ts'
import { unclearPoints } from './unclear-points.ts'

/** Works out facts on demand: `fact` one by name, `inherit` those a block takes from the one it is `like`. */
export function evaluator(around: Surroundings) {
  const { section, scope } = around
  const { own, textOf } = textsFor(around)
  const { findPath, refer, referToFact, unresolved } = namesFor(around)
  /** What is being worked out now, each for the one before it. */
  const running: Running[] = []
  const isRunning = (block: Block, node: FactNode | undefined): boolean =>
    running.some((one) => one.block === block && one.node === node)

  const evaluationOf = (text: Text): Evaluation => ({
    get system() {
      return scope.system()
    },
    report: text.report,
    textOf: ({ start, end }) => text.section.text.slice(start, end),
    evaluate: (part, block, expected) => evaluate(part, block, expected, text),
    refers: (part, block, kinds) => refers(part, block, kinds, text),
  })
  const ownEvaluation = evaluationOf(own)

  function fact(block: Draft, name: string): Value<unknown> | undefined {
    const done = block.facts.get(name) ?? block.others.get(name)
    if (done || block.unread.has(name)) return done
    const known =
      block.definition && Object.hasOwn(block.definition.facts, name)
        ? block.definition.facts[name]
        : undefined
    const node = block.written.get(name)
    const bare = block.definition?.bare === name ? block.lines.flatMap((line) => line.entries) : []
    if (!node && bare.length === 0) return taken(block, name)
    const definition = known ?? block.definition?.others
    if (!definition) {
      block.unread.add(name)
      return undefined
    }
    if (isBlank(node?.entries ?? bare)) block.blanks.add(name)
    const value = block.blanks.has(name)
      ? undefined
      : node
        ? written(block, node, definition, own)
        : fromLines(block, name, bare, definition)
    if (value) (known ? block.facts : block.others).set(name, value)
    else block.unread.add(name)
    return value
  }

  /** A fact that the block takes from that of another drive, worked out where it is taken. */
  function taken(block: Draft, name: string): Value<unknown> | undefined {
    if (block.layers.length === 0 || name === 'like') return undefined
    inherit(block)
    const done = block.facts.get(name)
    const layer = layerOf(block, name)
    const node = layer?.written.get(name)
    const definition = block.definition?.facts[name]
    if (done || block.unread.has(name) || !layer || !node || !definition) return done
    // What is wrong with the text itself is said where it stands.
    if (isDraft(layer.of)) fact(layer.of, name)
    if (layer.of.blanks.has(name)) block.blanks.add(name)
    const text = textOf(block, layer, name)
    const value = layer.of.unread.has(name) ? undefined : written(block, node, definition, text)
    if (value)
      block.facts.set(name, { ...value, origin: { section: layer.of.section, span: node.valueSpan } })
    else block.unread.add(name)
    return value && block.facts.get(name)
  }

  /** Works out all that the block takes from that of another drive, and says what could not be read there. */
  function take(block: Draft): void {
    for (const layer of block.layers) {
      const names = [...layer.written.keys()].filter(
        (name) => name !== 'like' && !block.written.has(name) && layerOf(block, name) === layer,
      )
      for (const name of names) fact(block, name)
      const unread = names.filter(
        (name) => block.unread.has(name) && layer.of.unread.has(name) && !block.blanks.has(name),
      )
      const [first = ''] = unread
      const { path } = layer.of
      if (unread.length > 0)
        textOf(block, layer, first).report(layer.of.node.headSpan, {
          type: 'source-unread',
          path,
          names: unread,
        })
    }
  }

  function written(block: Draft, node: FactNode, definition: Fact, text: Text): Value<unknown> | undefined {
    if (isRunning(block, node)) {
      text.report(node.valueSpan, { type: 'refers-to-itself', path: node.name.text, round: 'value' })
      return undefined
    }
    const given = {
      text: text.section.text,
      fact: definition,
      get system() {
        return scope.system()
      },
    }
    const misread = misreadIn(node.entries, given)
    const doubtful = text === own ? unclearPoints(node.entries, given) : []
    for (const { span, problem } of [...misread, ...doubtful]) text.report(span, problem)
    if (misread.length > 0) return undefined
    if (running.length >= longestChain) {
      text.report(node.valueSpan, { type: 'chain-too-long', path: node.name.text })
      return undefined
    }
    running.push({ block, node })
    try {
      const { mayQuote } = definition.shape
      if (!mayQuote && hasOpenText(node, text.section.text)) return undefined
      const unquoted = mayQuote ? undefined : withoutQuotes(node, text.section.text)
      if (
        unquoted &&
        canBeRead(unquoted.section, (trial) => written(block, unquoted.node, definition, trial))
      ) {
        text.report(unquoted.span, { type: 'value-quoted', meant: unquoted.meant })
        return undefined
      }
      return read(block, node, definition, text)
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
    const rest = { span, valueSpan: span, provenance: undefined, doc: undefined }
    const node: FactNode = { type: 'fact', name: { text: name, span }, entries, ...rest }
    return read(block, node, definition, own)
  }

  function read(block: Draft, node: FactNode, definition: Fact, text: Text): Value<unknown> | undefined {
    const reading = text === own ? ownEvaluation : evaluationOf(text)
    const value = definition.shape.read(node.entries, new FactReader(reading, block, definition))
    const { provenance } = node
    // Of another drive's text it is said there.
    if (provenance && text === own) originKnown(provenance, text)
    if (value === undefined) return undefined
    return {
      value,
      name: node.name.text,
      at: text.placeOf(node.valueSpan),
      node,
      ...(running.at(-1)?.assumes && { assumes: true }),
      ...(provenance && {
        provenance: {
          words: provenance.words.map((w) => w.text),
          texts: provenance.texts.map((t) => t.text),
        },
      }),
    }
  }

  interface Like {
    readonly source: Draft
    readonly part: Part & { readonly type: 'word' }
  }

  /** The block that a block says it is `like`. Undefined where there is none, which is told. */
  function likeOf(block: Draft, node: FactNode, text: Text): Like | undefined {
    const [part] = node.entries[0]?.parts ?? []
    if (node.entries.length !== 1 || part?.type !== 'word') {
      const meant = withoutQuotes(node, text.section.text)?.meant
      const isName = meant !== undefined && /^[a-z][\w.-]*$/i.test(meant)
      const expected = `the name of a ${block.kind}`
      text.report(
        node.valueSpan,
        isName ? { type: 'value-quoted', meant } : { type: 'not-this-value', expected },
      )
      return undefined
    }
    if (running.length >= longestChain) {
      text.report(part.span, { type: 'chain-too-long', path: part.text })
      return undefined
    }
    const path = findPath(block.parent, part.text, [block.kind], block)
    const found = path?.at(-1)
    const source = found instanceof Other ? found.itself : found
    if (!path || !source) {
      unresolved(part, part.text, [block.kind], block, text)
      return undefined
    }
    refer(part, path, text)
    if (running.some((one) => one.block === source && !one.node)) {
      const round = { likeOf: block.kind, isSelf: false }
      text.report(part.span, { type: 'refers-to-itself', path: part.text, round })
      return undefined
    }
    return { source, part }
  }

  /** Takes over what the blocks named by `like` say and this one does not: by its own, then by that of the block it takes from. */
  function inherit(block: Draft): void {
    // A drive takes over blocks too, before anything is worked out.
    if (block.unread.has('like') || block.kind === 'drive') return
    const node = block.written.get('like')
    if (!node && !block.layers.some((layer) => layer.written.has('like'))) return
    block.unread.add('like') // done once, however many ask
    if (node) inheritFrom(block, node, undefined)
    for (const layer of block.layers) {
      const like = layer.written.get('like')
      if (like && layer.of.likeUnknown)
        unknownBut(block, layer) // told in the other drive
      else if (like) inheritFrom(block, like, layer)
    }
  }

  function inheritFrom(block: Draft, node: FactNode, layer: Layer | undefined): void {
    const text = textOf(block, layer, 'like')
    if (block.definition?.isRecord) {
      if (!layer) text.report(node.name.span, { type: 'record-like', kind: block.kind })
      unknownBut(block, layer)
      return
    }
    const isOpen = isBlank(node.entries)
    if (isOpen) block.blanks.add('like')
    const like = isOpen ? undefined : likeOf(block, node, text)
    if (!like) {
      if (!layer) block.likeUnknown = true
      unknownBut(block, layer)
      return
    }
    const { source, part } = like
    const from = layer ? 'drive' : takenFrom(block, source)
    if (!layer) block.likeSource = source
    running.push({ block, node: undefined })
    try {
      if (isDraft(source)) {
        for (const name of source.written.keys()) if (name !== 'like') fact(source, name)
        inherit(source)
        take(source)
      }
      const isStated = statedAbove(block, layer)
      for (const [name, value] of source.facts) {
        if (block.facts.has(name) || isStated(name) || block.unread.has(name)) continue
        const origin = value.origin ?? value.at
        if (!mayBeTaken(block.definition, name, value.provenance?.words, from)) block.left.set(name, origin)
        else block.facts.set(name, { ...value, at: text.placeOf(part.span), origin })
      }
      const taken = [...source.unread].filter(
        (name) =>
          Object.hasOwn(block.definition?.facts ?? {}, name) && !block.facts.has(name) && !isStated(name),
      )
      for (const name of taken) block.unread.add(name)
      // What is not known there yet is not known here.
      for (const name of taken) if (source.blanks.has(name)) block.blanks.add(name)
      const names = taken.filter((name) => !source.blanks.has(name))
      if (names.length > 0) text.report(part.span, { type: 'source-unread', path: part.text, names })
    } finally {
      running.pop()
    }
  }

  const isDraft = (block: Block): block is Draft => block.section === section

  /** What the nearest block that says anything of a fact says of it. */
  function factAt(
    block: Draft,
    part: Part & { readonly type: 'word' },
    text: Text,
  ): { readonly stated: Stated; readonly name: string; readonly holder: Draft | Other } | undefined {
    const dot = part.text.lastIndexOf('.')
    const name = part.text.slice(dot + 1)
    const holders: (Draft | Other | undefined)[] = []
    if (dot >= 0) {
      const path = findPath(block, part.text.slice(0, dot), undefined) ?? []
      refer(part, path, text)
      holders.push(path.at(-1))
    } else for (let b: Draft | undefined = block; b; b = b.parent) holders.push(b)
    for (const holder of holders) {
      if (!holder) continue
      const stated = holder instanceof Other ? holder.stated(name) : statedByOwn(holder, name)
      if (!stated) continue
      referToFact(part, holder, text)
      return { stated, name, holder }
    }
    return undefined
  }

  function statedByOwn(block: Draft, name: string): Stated | undefined {
    if (!block.written.has(name)) inherit(block)
    fact(block, name)
    const stated = statedBy(block, name)
    if (stated || !isRunning(block, block.written.get(name))) return stated
    return [isPending(block, name) ? 'pending' : 'unread']
  }

  /** What is worked out from a value that is not known yet is not known yet either. */
  function dependsOnBlank(): void {
    const asked = running.at(-1)
    if (asked?.node) asked.block.blanks.add(asked.node.name.text)
  }

  function evaluate(part: Part, block: Draft, expected: Kind, text: Text): Outcome<Quantity> | undefined {
    switch (part.type) {
      case 'amount':
        return readQuantity(part.number, part.unit?.text, expected)
      case 'negated': {
        const of = evaluate(part.of, block, expected, text)
        return of?.ok ? negate(of.value) : of
      }
      case 'operation': {
        const left = evaluate(part.left, block, expected, text)
        const right = evaluate(part.right, block, expected, text)
        if (!left?.ok) return left
        if (!right?.ok) return right
        return combine(part.operator, left.value, right.value)
      }
      case 'word': {
        const found = factAt(block, part, text)
        if (found?.stated[0] === 'pending') {
          dependsOnBlank()
          return undefined
        }
        if (found?.stated[0] === 'unread') {
          // In the same section the finding stands where it is written.
          if (found.holder instanceof Other)
            text.report(part.span, { type: 'source-unread', path: part.text, names: [found.name] })
          return undefined
        }
        const [, amount, kind, isAssumed] = found?.stated ?? []
        if (amount === undefined || !kind) {
          unresolved(part, part.text, undefined, block, text)
          return undefined
        }
        const asking = running.at(-1)
        if (asking && isAssumed) asking.assumes = true
        return good(quantity(amount, kind))
      }
      case 'missing':
        return undefined // reported where the text was read
      default:
        return bad({ type: 'not-a-number', text: text.section.text.slice(part.span.start, part.span.end) })
    }
  }

  function refers(part: Part, block: Draft, kinds: readonly string[], text: Text): string | undefined {
    const found = part.type === 'word' && findPath(block.parent ?? block, part.text, kinds)
    if (found) {
      refer(part, found, text)
      return part.text
    }
    const path = part.type === 'word' ? part.text : undefined
    // Two blocks may name each other: a bus bar and the cable that it protects.
    if (path !== undefined && scope.circular(path) && kinds.includes(scope.kindOf(path) ?? '')) return path
    const written = text.section.text.slice(part.span.start, part.span.end)
    unresolved(part, path ?? written, kinds, block, text)
    return undefined
  }

  /** The drive that a drive is `like`, with the word that says so. */
  function driveLike(drive: Draft): { readonly source: Draft; readonly at: Place } | undefined {
    const node = drive.written.get('like')
    const isOpen = node && isBlank(node.entries)
    if (isOpen) drive.blanks.add('like')
    const like = node && !isOpen ? likeOf(drive, node, own) : undefined
    if (node && !like) {
      drive.likeUnknown = true
      unknownBut(drive, undefined)
    }
    return like && { source: like.source as Draft, at: { section, span: like.part.span } }
  }

  return { fact, inherit, take, driveLike }
}
