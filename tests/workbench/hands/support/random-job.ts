// Short jobs of blocks and facts in any order, their values taken from the examples of the vocabulary. Most of them are
// nonsense as jobs: they are for typing, not for checking. All data invented.
import type { BlockKind } from '../../../../server/src/vocabulary/block.ts'
import { blockKinds } from '../../../../server/src/vocabulary/index.ts'
import type { Random } from '../../../fuzz/random.ts'

const names = ['port', 'main', 'aft-port', 'feed', 'dry-1', 'U-lead', 'm2', 'mm']

/** Lines of a job, without layout, at most `most` of them. */
export function randomJob(random: Random, most: number): readonly string[] {
  const lines: string[] = []
  const tops = blockKinds.filter(({ within }) => within.includes('top'))
  // More short ones than long ones.
  const size = 4 + Math.floor(random.next() ** 2 * (most - 3))
  while (lines.length < size - 2) {
    const kind = random.pick(tops)
    lines.push(...block(random, kind, size - lines.length, 0))
  }
  return lines
}

function block(random: Random, kind: BlockKind, room: number, depth: number): readonly string[] {
  const facts = shuffled(random, factsOf(kind))
  if (random.chance(0.2)) return [`${heading(random, kind)} { ${facts.slice(0, 2).join('  ')} }`]
  const inside: string[] = facts.slice(0, 1 + random.below(Math.max(1, Math.min(6, room - 2))))
  const children = blockKinds.filter(({ within }) => within.includes(kind.kind))
  while (depth < 2 && children.length > 0 && room - inside.length > 5 && random.chance(0.6)) {
    const at = random.below(inside.length + 1)
    // A block may stand before the facts of the one around it.
    inside.splice(at, 0, ...block(random, random.pick(children), room - inside.length - 3, depth + 1))
  }
  return [`${heading(random, kind)} {`, ...inside.slice(0, room - 2), '}']
}

/** What the block may say, a fact a line. */
function factsOf({ facts, bare, others, example }: BlockKind): string[] {
  const named = Object.entries(facts).flatMap(([name, fact]) =>
    name === bare ? [] : [`${name}: ${fact.example}`],
  )
  const own = others ? [`aft-port: ${others.example}`] : []
  const plain = bare === undefined ? [] : (facts[bare]?.example ?? '').split('\n')
  const all = [...named, ...own, ...plain].filter((line) => line !== '' && !line.includes('\n'))
  return all.length > 0 ? all : [example.split('\n')[0] ?? '']
}

function heading(random: Random, { kind, heading }: BlockKind): string {
  switch (heading) {
    case 'title':
      return `${kind} "demo ${random.below(100)}"`
    case 'after':
      return `${kind} after dry-1`
    case 'check':
      return `${kind} alignment/offset-outside`
    case 'name':
      return `${kind} ${random.pick(names)}`
    case 'none':
      return kind
  }
}

function shuffled<T>(random: Random, list: readonly T[]): T[] {
  return list
    .map((item) => ({ item, key: random.next() }))
    .toSorted((a, b) => a.key - b.key)
    .map(({ item }) => item)
}
