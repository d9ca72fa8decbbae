import { isRevision } from '../../host/revision.ts'
import { keyOf } from '../../host/uri.ts'
import { type Document, documentFrom, rangeOf } from '../../job/document.ts'
import type { Refusal } from '../../job/file-text.ts'
import { type BlockSymbol, symbolsOf } from '../outline/symbols.ts'
import type { Range, Workspace } from '../workspace/workspace.ts'
import { breather, type Search } from './search.ts'

/** A block somewhere in the workspace. It holds on to no text. */
export interface WorkspaceSymbol {
  readonly name: string
  readonly kind: string
  /** The blocks around it: `main.bed`. */
  readonly container: string
  readonly location: { readonly uri: string; readonly range: Range }
}

interface CachedSymbols {
  readonly revision: number
  readonly paths: readonly string[]
  readonly symbols: readonly WorkspaceSymbol[]
  /** Those of each file that is not open, with its text: by key. */
  readonly closed: ReadonlyMap<string, SymbolsOfText>
}

interface SymbolsOfText {
  readonly text: string | Refusal
  readonly symbols: readonly WorkspaceSymbol[]
}

const kept = new WeakMap<Workspace, CachedSymbols>()

/** The blocks of every job file that is open, in the folders, or used; kept until something changes, so while a query is typed. */
export async function allSymbols(
  workspace: Workspace,
  search: Search = {},
): Promise<readonly WorkspaceSymbol[]> {
  const paths = await workspace.listed()
  const { revision } = workspace.analysis
  const last = kept.get(workspace)
  if (last && last.revision === revision && last.paths === paths) return last.symbols
  const symbols = new Map<string, readonly WorkspaceSymbol[]>()
  const add = (uri: string, document: Document): void => {
    if (!symbols.has(keyOf(uri))) symbols.set(keyOf(uri), symbolsIn(uri, document))
  }
  const current = workspace.openFiles.filter(({ uri }) => !isRevision(uri))
  for (const open of current) add(open.uri, open.document)
  for (const open of current)
    for (const { path, document } of workspace.link(open).used) {
      const uri = workspace.uriAt(open, path)
      if (uri !== undefined) add(uri, document)
    }
  const closed = new Map<string, SymbolsOfText>()
  const breathe = breather(search)
  for (const [done, uri] of paths.entries()) {
    await breathe(done, paths.length)
    const text = workspace.get(uri) ? undefined : await workspace.textOf(uri)
    if (text === undefined) continue
    const key = keyOf(uri)
    const before = last?.closed.get(key)
    const found = before?.text === text ? before.symbols : symbolsIn(uri, documentFrom(text))
    closed.set(key, { text, symbols: found })
    if (!symbols.has(key)) symbols.set(key, found)
  }
  const all = [...symbols.values()].flat()
  kept.set(workspace, { revision, paths, symbols: all, closed })
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
  const wanted = wordsOf(query).join('')
  return symbols
    .flatMap((symbol) => {
      const rank = rankOf(wanted, symbol)
      return rank === undefined ? [] : [{ symbol, rank }]
    })
    .sort((a, b) => a.rank - b.rank)
    .map(({ symbol }) => symbol)
}

/** The words of a text, as a name parts them: by hyphens, dots, spaces and capitals. */
const wordsOf = (text: string): readonly string[] =>
  (text.replace(/(?<=[\p{Ll}\p{N}])(?=\p{Lu})/gu, ' ').match(/[\p{L}\p{N}]+/gu) ?? []).map((word) =>
    word.toLowerCase(),
  )

/** How well a block goes with what is wanted: by the beginning of its name, by words of it, by its kind, or by words of its path and kind. */
function rankOf(wanted: string, { name, kind, container }: WorkspaceSymbol): number | undefined {
  const names = wordsOf(name)
  if (names.join('').startsWith(wanted)) return 0
  if (matchesWords(wanted, names)) return 1
  if (matchesWords(wanted, [kind])) return 2
  return matchesWords(wanted, [...wordsOf(container), ...names, ...wordsOf(kind)]) ? 3 : undefined
}

/** Whether beginnings of the words, in their order, spell what is wanted: `ab` and `aftbe` those of `aft-bearing`, but not `ft`. */
function matchesWords(wanted: string, words: readonly string[]): boolean {
  /** How much of what is wanted the words so far can spell. */
  const spelt = new Set([0])
  for (const word of words)
    for (const from of [...spelt])
      for (let n = 0; n < word.length && wanted[from + n] === word[n]; n += 1) spelt.add(from + n + 1)
  return spelt.has(wanted.length)
}
