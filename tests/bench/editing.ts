// What an editor asks while somebody types, in the drive in the middle of the job.
import type { Position } from 'vscode-languageserver/node'
import { jobOf, middleOf } from './jobs.ts'
import { type Spread, sampled, timed } from './samples.ts'
import { type Keystroke, type Session, startSession } from './session.ts'

/** Where is typed: what stands just before the place, in the drive in the middle, and the character. */
const typed = {
  number: { before: 'length:   2.6', character: '1' },
  comment: { before: '# Studs with', character: 'n' },
  name: { before: 'drive unit', character: 'n' },
} as const
export type Typed = keyof typeof typed
export const typedPlaces = Object.keys(typed) as readonly Typed[]

export interface Editing {
  readonly lines: number
  readonly keystroke: Readonly<Record<Typed, Spread>>
  readonly floor: Readonly<Record<Typed, Spread>>
  /** A keystroke and the request right behind it, until the answer. What the server does not offer is left out. */
  readonly behind: Readonly<Record<string, Spread>>
  readonly burst: Spread
  /** Publications for a burst of eleven keystrokes, the most there were. */
  readonly publications: number
  /** Resident memory of the server after all this, in bytes; undefined where the system does not tell. */
  readonly memory: number | undefined
}

const often = { times: 200, warmUp: 20 }
const seldom = { times: 40, warmUp: 5 }

export async function measureEditing(
  drives: number,
  { server, floor }: { readonly server: readonly string[]; readonly floor: readonly string[] },
  memoryOf: (pid: number | undefined) => number | undefined,
): Promise<Editing> {
  const text = jobOf(drives)
  const place = (words: string) => placeOf(text, words, middleOf(drives))

  const least = await startSession(floor)
  await least.open(text)
  const floorSpreads = await keystrokes(least, place)
  await least.close()

  const session = await startSession(server)
  await session.open(text)
  const keystroke = await keystrokes(session, place)
  const stroke = strokes(place(typed.number.before), typed.number.character)
  const behind: Record<string, Spread> = {}
  for (const request of requests(place)) {
    if (!session.offers[request.offered]) continue
    behind[request.words] = await sampled(request.rare ? seldom : often, async (turn) => {
      const found = session.type(stroke(turn))
      const took = await timed(() => session.ask(request.method, request.params))
      await found
      return took
    })
  }
  let publications = 0
  const burst = await sampled(seldom, async (turn) => {
    const before = session.publications()
    let last = Promise.resolve()
    for (let i = 0; i < 11; i++) last = session.type(stroke(turn + i))
    const took = await timed(() => last)
    publications = Math.max(publications, session.publications() - before)
    return took
  })
  const memory = memoryOf(session.child.pid)
  await session.close()

  if (session.offers.diagnosticProvider) behind['pulled findings'] = await pulled(server, text, stroke)
  const lines = text.split('\n').length - 1
  return { lines, keystroke, floor: floorSpreads, behind, burst, publications, memory }
}

/** Puts the character in and takes it away by turns. */
const strokes =
  (at: Position, character: string) =>
  (turn: number): Keystroke => ({ at, text: turn % 2 === 0 ? character : '' })

async function keystrokes(
  session: Session,
  place: (words: string) => Position,
): Promise<Record<Typed, Spread>> {
  const measured = async (where: Typed): Promise<Spread> => {
    const { before, character } = typed[where]
    const stroke = strokes(place(before), character)
    return await sampled(often, (turn) => timed(() => session.type(stroke(turn))))
  }
  return {
    number: await measured('number'),
    comment: await measured('comment'),
    name: await measured('name'),
  }
}

interface Request {
  readonly words: string
  readonly method: string
  readonly offered: keyof Session['offers']
  readonly params: object
  readonly rare?: boolean
}

const requests = (place: (words: string) => Position): readonly Request[] => [
  {
    words: 'hover',
    method: 'textDocument/hover',
    offered: 'hoverProvider',
    params: { position: place('reading dry') },
  },
  {
    words: 'completion',
    method: 'textDocument/completion',
    offered: 'completionProvider',
    params: { position: place('in: ') },
  },
  {
    words: 'document symbols',
    method: 'textDocument/documentSymbol',
    offered: 'documentSymbolProvider',
    params: {},
    rare: true,
  },
  {
    words: 'semantic tokens',
    method: 'textDocument/semanticTokens/full',
    offered: 'semanticTokensProvider',
    params: {},
    rare: true,
  },
  {
    words: 'formatting',
    method: 'textDocument/formatting',
    offered: 'documentFormattingProvider',
    params: { options: { tabSize: 2, insertSpaces: true } },
    rare: true,
  },
]

async function pulled(
  server: readonly string[],
  text: string,
  stroke: (turn: number) => Keystroke,
): Promise<Spread> {
  const session = await startSession(server, { pulls: true })
  void session.open(text)
  const spread = await sampled(often, (turn) => {
    void session.type(stroke(turn))
    return timed(() => session.ask('textDocument/diagnostic'))
  })
  await session.close()
  return spread
}

/** Just behind some words, the first time they stand after other words. */
function placeOf(text: string, words: string, after: string): Position {
  const from = text.indexOf(after)
  const at = text.indexOf(words, from)
  if (from < 0 || at < 0) throw new Error(`not in the job: ${words}`)
  const lines = text.slice(0, at + words.length).split('\n')
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 }
}
