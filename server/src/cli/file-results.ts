import type { JobJson, RangeJson } from '../areas/common/command-json.ts'
import type { Figure } from '../areas/common/figure.ts'
import { type NoResult, type Result, resultsOf } from '../areas/common/result.ts'
import { allChecks } from '../areas/index.ts'
import { Checker } from '../checks/run.ts'
import { Analysis } from '../job/analysis.ts'
import { rangeOf } from '../job/document.ts'
import { identityOf } from '../job/identity.ts'
import type { Block } from '../job/model.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { lookupFrom } from '../store/store.ts'
import { jobJson } from './job-json.ts'
import type { OpenJob } from './run.ts'

/** Where a result belongs. */
export interface Anchor {
  readonly file: string
  /** The heading of the block. */
  readonly range: RangeJson
  /** Names from the drive down, and what a block without a name is about: `main.feed`, `main.move after dry-1`. Doubles are numbered. */
  readonly block: string
}

/** The results of a block. */
export interface BlockResults {
  readonly kind: string
  readonly at: Anchor
  readonly system: UnitSystem
  readonly results: readonly (Result | NoResult)[]
}

/** The results of a file. */
export interface FileResults {
  readonly file: string
  /** How many errors `check` finds in it: results may be missing, or rest on what is wrong. */
  readonly errors: number
  /** Undefined for a library. */
  readonly job: JobJson | undefined
  readonly blocks: readonly BlockResults[]
}

/** What the figures come to at each block of a file, outer before inner. */
export function resultsOfFile(
  { file, shown }: OpenJob,
  figures: readonly Figure[],
  today: string,
): FileResults {
  const analysis = new Analysis()
  analysis.begin()
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const blocks = analysis.blocks(file)
  const name = shown(file)
  const named = namer()
  const ofBlock = (block: Block): readonly BlockResults[] => {
    const lookup = lookupFrom(block, { analysis, file })
    const results = resultsOf(figures, lookup, { file, findings: () => findings })
    const at = { file: name, range: rangeOf(file.document, block.head), block: named(block) }
    const own = { kind: block.kind, at, system: lookup.system, results }
    return [...(results.length > 0 ? [own] : []), ...block.children.flatMap(ofBlock)]
  }
  const identity = identityOf(blocks)
  return {
    file: name,
    errors: findings.filter(({ severity }) => severity === 'error').length,
    job: identity && { file: name, ...jobJson(identity) },
    blocks: blocks.flatMap(ofBlock),
  }
}

/** Names blocks, each by another name. */
function namer(): (block: Block) => string {
  const used = new Map<string, number>()
  return ({ path, kind, about }) => {
    const name = about ? `${path} ${kind === 'move' ? 'after ' : ''}${about.text}` : path
    const count = (used.get(name) ?? 0) + 1
    used.set(name, count)
    return count === 1 ? name : `${name}~${count}`
  }
}
