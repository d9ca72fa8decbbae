import { type Document, rangeOf } from '../job/document.ts'
import { type Cancellation, closedFiles } from './around.ts'
import { type BlockSymbol, symbolsOf } from './symbols.ts'
import { keyOf } from './uri.ts'
import type { Range, Workspace } from './workspace.ts'

/** A block somewhere in the workspace. It holds on to no text. */
export interface WorkspaceSymbol {
  readonly name: string
  readonly kind: string
  /** The blocks around it: `main.bed`. */
  readonly container: string
  readonly location: { readonly uri: string; readonly range: Range }
}

interface Kept {
  readonly revision: number
  readonly paths: readonly string[]
  readonly symbols: readonly WorkspaceSymbol[]
}

const kept = new WeakMap<Workspace, Kept>()

/** The blocks of every job file that is open, in the folders, or used; kept until something changes, so while a query is typed. */
export async function allSymbols(
  workspace: Workspace,
  stop?: Cancellation,
): Promise<readonly WorkspaceSymbol[]> {
  const { paths } = workspace
  const { revision } = workspace.analysis
  const last = kept.get(workspace)
  if (last && last.revision === revision && last.paths === paths) return last.symbols
  const symbols = new Map<string, readonly WorkspaceSymbol[]>()
  const add = (uri: string, document: Document): void => {
    if (!symbols.has(keyOf(uri))) symbols.set(keyOf(uri), symbolsIn(uri, document))
  }
  for (const open of workspace.openFiles) add(open.uri, open.document)
  for (const open of workspace.openFiles)
    for (const { path, document } of workspace.link(open).used) {
      const uri = workspace.uriAt(open, path)
      if (uri !== undefined) add(uri, document)
    }
  for await (const { uri, document } of closedFiles(workspace, stop)) add(uri, document)
  const all = [...symbols.values()].flat()
  if (!stop?.isCancellationRequested) kept.set(workspace, { revision, paths, symbols: all })
  return all
}

/** Every block of a text, outer before inner. */
export function symbolsIn(uri: string, document: Document): readonly WorkspaceSymbol[] {
  const found: WorkspaceSymbol[] = []
  for (const section of document.sections) {
    const visit = ({ name, kind, nameSpan, children }: BlockSymbol, container: string): void => {
      const range = rangeOf(document, { section, span: nameSpan })
      found.push({ name, kind, container, location: { uri, range } })
      for (const child of children) visit(child, container === '' ? name : `${container}.${name}`)
    }
    for (const symbol of symbolsOf(section)) visit(symbol, '')
  }
  return found
}

/** Those whose name, kind or path goes with the query, the best first. Without a query all of them. */
export function matching(query: string, symbols: readonly WorkspaceSymbol[]): readonly WorkspaceSymbol[] {
  const wanted = plain(query)
  return symbols
    .flatMap((symbol) => {
      const rank = rankOf(wanted, symbol)
      return rank === undefined ? [] : [{ symbol, rank }]
    })
    .sort((a, b) => a.rank - b.rank)
    .map(({ symbol }) => symbol)
}

const plain = (text: string): string => text.toLowerCase().replace(/\s+/g, '')

/** How well a block goes with what is wanted: by its name's beginning, a part of it, its kind, or letters of path and kind in order. */
function rankOf(wanted: string, { name, kind, container }: WorkspaceSymbol): number | undefined {
  const lower = plain(name)
  if (lower.startsWith(wanted)) return 0
  if (lower.includes(wanted)) return 1
  if (kind.startsWith(wanted)) return 2
  return isWithin(wanted, plain(`${container}.${name}.${kind}`)) ? 3 : undefined
}

/** Whether the letters stand in the text in their order. */
function isWithin(letters: string, text: string): boolean {
  let at = 0
  for (const letter of letters) {
    const found = text.indexOf(letter, at)
    if (found < 0) return false
    at = found + letter.length
  }
  return true
}
