import { folderKey, keyOf } from '../../host/uri.ts'
import { usesOf } from '../../job/files.ts'
import type { Place } from '../../job/model.ts'
import { relativePath } from '../completion/paths.ts'
import type { FileAround, FilesAround, KnownFile } from '../navigation/around.ts'

export interface Moved {
  readonly oldUri: string
  readonly newUri: string
}

export interface RewrittenUse {
  readonly in: FileAround
  readonly at: Place
  readonly text: string
}

/** How `use` lines have to be written once files or folders are moved, so that they mean the same files. */
export async function* rewrittenUses(
  around: FilesAround,
  moves: readonly Moved[],
): AsyncGenerator<RewrittenUse> {
  const then = movedBy(moves)
  const textFor = (key: string, used: string): string | undefined => {
    const text = relativePath(then(key), then(used))
    return text === relativePath(key, used) || text.includes('"') ? undefined : `"${text}"`
  }
  const isTouched = ({ key, uses }: KnownFile) => uses.some((used) => textFor(key, used) !== undefined)
  for await (const of of around.files(isTouched)) {
    const key = keyOf(of.uri)
    const { path, document } = of.file
    const root = key.slice(0, key.length - path.length)
    for (const { at, target } of usesOf(path, document)) {
      const text = target === undefined ? undefined : textFor(key, root + target)
      if (text !== undefined) yield { in: of, at, text }
    }
  }
}

/** Where a file is after the moves. The nearest one decides: a file may be moved out of a folder that is moved, too. */
function movedBy(moves: readonly Moved[]): (key: string) => string {
  const nearest = moves
    .map(({ oldUri, newUri }) => ({ from: folderKey(oldUri), to: folderKey(newUri) }))
    .toSorted((a, b) => b.from.length - a.from.length)
  return (key) => {
    const move = nearest.find(({ from }) => key === from || key.startsWith(`${from}/`))
    return move ? move.to + key.slice(move.from.length) : key
  }
}
