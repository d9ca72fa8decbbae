// Requests of every kind, sound and not.
import type { Diagnostic, InitializeResult } from 'vscode-languageserver/node'
import { features } from '../../server/src/editor/features.ts'
import { positionAt } from './edits.ts'
import type { Random } from './random.ts'

/** What an editor knows of a text, and sends back with what it asks. */
export interface Known {
  readonly diagnostics: readonly Diagnostic[]
  readonly resultId: string | undefined
  readonly items: readonly unknown[]
}

export const nothingKnown: Known = { diagnostics: [], resultId: undefined, items: [] }

interface About {
  readonly uri: string
  readonly text: string
  readonly known: Known
  readonly offers: InitializeResult['capabilities']
  readonly random: Random
}

/** Everything the server offers. */
export const methods: readonly string[] = [
  ...features.map(({ method }) => method),
  'textDocument/diagnostic',
  'workspace/diagnostic',
]

/** Nobody has ever heard of these, or they come at the wrong time. */
export const strays: readonly string[] = ['textDocument/nothing', 'initialize', '$/nothing', '']

/** Sound parameters for whichever request: each takes what it needs. */
export function soundParams({ uri, text, known, offers, random }: About): Readonly<Record<string, unknown>> {
  const at = () => positionAt(text, random.below(text.length + 1))
  const [one, other] = [random.below(text.length + 1), random.below(text.length + 1)]
  const range = {
    start: positionAt(text, Math.min(one, other)),
    end: positionAt(text, Math.max(one, other)),
  }
  return {
    textDocument: { uri },
    position: at(),
    positions: [at(), at()],
    range,
    context: {
      diagnostics: known.diagnostics.filter(() => random.chance(0.3)),
      includeDeclaration: random.chance(0.5),
      triggerKind: 1,
      isRetrigger: false,
    },
    options: { tabSize: 2, insertSpaces: true },
    ch: random.pick(['}', '\n', ':']),
    vessel: random.pick(['Launch 07', '', '"', '\\', '\u{1F6A2}\n']),
    drives: random.pick([1, 2]),
    units: random.pick(['metric', 'inch']),
    feet: random.pick(['studs', 'shims']),
    newName: random.pick(['spare', 'main', 'a b', '', 'drive', 'x'.repeat(300), '\u{1F6A2}']),
    query: random.pick(['', 'drive', 'd', '.*', '\u0000']),
    files: [{ oldUri: uri, newUri: random.pick([uri, 'file:///fuzzed/renamed.wright', 'untitled:Renamed']) }],
    command: random.pick(offers.executeCommandProvider?.commands ?? ['none']),
    arguments: [{ textDocument: { uri }, position: at() }],
    ...(known.items.length > 0 && { item: random.pick(known.items) }),
    previousResultId: known.resultId ?? 'none',
    previousResultIds: [],
  }
}

const junk: readonly unknown[] = [
  ...[
    null,
    true,
    '',
    'x',
    -1,
    0,
    1.5,
    1e9,
    2 ** 53,
    [],
    {},
    [null],
    'file:///fuzzed/nowhere.wright',
    'file://%',
    '%',
  ],
  { line: -1, character: 0 },
  { line: 0, character: -1 },
  { line: 1e9, character: 1e9 },
  { line: '0', character: null },
  { start: { line: 9, character: 9 }, end: { line: 0, character: 0 } },
]

/** The same with something in it left out or put in its place, anywhere. */
export function mangled(value: unknown, random: Random): unknown {
  if (typeof value !== 'object' || value === null || random.chance(0.1)) return random.pick(junk)
  if (Array.isArray(value)) {
    if (value.length === 0) return random.pick(junk)
    const place = random.below(value.length)
    return value.map((item: unknown, i) => (i === place ? mangled(item, random) : item))
  }
  const keys = Object.keys(value)
  if (keys.length === 0) return random.pick(junk)
  const place = random.pick(keys)
  const entries = Object.entries(value)
  return Object.fromEntries(
    random.chance(0.2)
      ? entries.filter(([key]) => key !== place)
      : entries.map(([key, inner]) => [key, key === place ? mangled(inner, random) : inner]),
  )
}
