import type { Draft } from './draft.ts'
import { lookFor } from './look-for.ts'
import type { Place } from './model.ts'
import { Other } from './other.ts'
import type { Surroundings } from './texts.ts'

/** Finds the block that a part is `like`, with the word that says so. What is wrong with it is reported where its facts are taken. */
export const partLikeIn =
  ({ section, roots, scope }: Pick<Surroundings, 'section' | 'roots' | 'scope'>) =>
  (block: Draft): { readonly source: Draft; readonly at: Place } | undefined => {
    const [entry, more] = block.written.get('like')?.entries ?? []
    const [part] = entry?.parts ?? []
    if (!part || more || part.type !== 'word' || block.definition?.isRecord) return undefined
    const around = { roots, scope, from: block.parent, kinds: [block.kind], not: block }
    const found = lookFor<Draft | Other>(part.text, around)?.at(-1)
    const source = found instanceof Other ? found.itself : found
    return source && { source: source as Draft, at: { section, span: part.span } }
  }
