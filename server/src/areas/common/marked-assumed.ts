import { type Block, isAssumed, type Value } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'

const written = ({ at, origin }: Value<unknown>): string => {
  const { section, span } = origin ?? at
  return elide(section.text.slice(span.start, span.end))
}

/** What the job itself marks as `[assumed]` in these blocks, for whoever reads a result that depends on them: one sentence, or none. */
export function markedAssumed(blocks: readonly (Block | undefined)[]): readonly string[] {
  const marked = [...new Set(blocks)].flatMap((block) =>
    [...(block?.facts.values() ?? [])]
      .filter(isAssumed)
      .map((value) => `${value.name} ${written(value)} of ${block?.name ?? `the ${block?.kind}`}`),
  )
  return marked.length > 0 ? [`the job marks as assumed: ${marked.join('; ')}`] : []
}
