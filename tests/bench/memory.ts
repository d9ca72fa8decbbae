// What the server holds after many edits: it may not grow with them.
import { anyEdit, applied, positionAt } from '../fuzz/edits.ts'
import { randomFrom } from '../fuzz/random.ts'
import { type Memory, serve } from '../fuzz/served.ts'
import { jobOf } from './jobs.ts'

export interface Kept {
  readonly edits: number
  readonly memory: Memory
}

interface Options {
  readonly main?: string
  readonly seed: number
  /** After how many edits to look, least first. */
  readonly looks: readonly number[]
}

const uri = 'untitled:Edited'
const size = jobOf(2).length

/** Edits a job at random, asks something now and then, and looks at what is held each time with the job as it was at first. */
export async function measureKept({ main, seed, looks }: Options): Promise<readonly Kept[]> {
  const random = randomFrom(seed)
  const server = await serve({ ...(main !== undefined && { main }) })
  const { connection, published, open } = server.client
  const whole = jobOf(2)
  let text = whole
  let version = 1
  open(uri, text, version)
  const change = (contentChanges: readonly object[]): void => {
    version += 1
    void connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version },
      contentChanges,
    })
  }
  const settled = () => published(uri, (told) => told.version === version)
  const restored = async (): Promise<void> => {
    text = whole
    change([{ text }])
    await settled()
  }
  const kept: Kept[] = []
  const last = looks.at(-1) ?? 0
  for (let edits = 1; edits <= last; edits++) {
    const edit = anyEdit({ text, size, random })
    const [start, end] = [positionAt(text, edit.from), positionAt(text, edit.to)]
    text = applied(text, edit)
    change([{ range: { start, end }, text: edit.text }])
    if (edits % 10 === 0)
      await connection.sendRequest(random.pick(asked), { ...whatever(start), textDocument: { uri } })
    if (edits % 20 === 0) await settled()
    if (edits % 500 === 0) await restored()
    if (looks.includes(edits)) {
      await restored()
      kept.push({ edits, memory: await server.memory() })
    }
  }
  await server.stop()
  return kept
}

const asked = [
  'hover',
  'completion',
  'documentSymbol',
  'semanticTokens/full',
  'inlayHint',
  'codeLens',
  'codeAction',
  'formatting',
  'foldingRange',
  'references',
].map((name) => `textDocument/${name}`)

const whatever = (position: object): object => ({
  position,
  range: { start: { line: 0, character: 0 }, end: { line: 1e4, character: 0 } },
  context: { diagnostics: [], includeDeclaration: true },
  options: { tabSize: 2, insertSpaces: true },
})
