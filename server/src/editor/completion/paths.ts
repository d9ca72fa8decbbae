import { ours } from '../../areas/common/markdown.ts'
import { provenanceWords } from '../../vocabulary/form.ts'
import { type CompletionContext, type Offer, word } from './offer.ts'

/** A path as a `use` line writes it, from the file at `from` to another of the same root. */
export function relativePath(from: string, to: string): string {
  const here = from.split('/').slice(0, -1)
  const there = to.split('/')
  let same = 0
  while (same < here.length && same < there.length - 1 && here[same] === there[same]) same += 1
  return [...here.slice(same).map(() => '..'), ...there.slice(same)].join('/')
}

/** Files that may be used: those of the folder that are not used yet. */
export function pathOffers({ file, paths, context }: CompletionContext, quoted: boolean): readonly Offer[] {
  const used = new Set(file.used.map(({ path }) => path))
  const written = relativeTo(file.path)
  return paths()
    .filter((path) => path !== file.path && (!used.has(path) || written(path) === context.word))
    .map((path) => {
      const relative = written(path)
      return word(relative, { kind: 'file', insert: [quoted ? relative : `"${relative}"`] })
    })
}

const relativeTo = (from: string) => (to: string) => relativePath(from, to)

const origins: readonly Offer[] = Object.entries(provenanceWords).map(([text, doc]) =>
  word(text, {
    doc: ours(doc),
    ...(text === 'drawing' && { insert: ['drawing "', { value: 'number' }, '"'] }),
  }),
)

/** What may stand in the brackets behind a value. */
export function provenanceOffers(words: readonly string[], today: string): readonly Offer[] {
  if (words.length === 0) return origins
  return words.length === 1 && words[0] === 'measured' ? [word(today, { kind: 'date', detail: 'today' })] : []
}
