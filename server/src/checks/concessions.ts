import type { Block, Section } from '../job/model.ts'
import type { FileView, Finding } from './check.ts'

/** Whether a finding of this check may be accepted: a text that cannot be read, or says the wrong thing, has to be mended. */
export const isConcedable = ({ check, severity }: Pick<Finding, 'check' | 'severity'>): boolean =>
  !(check.startsWith('job/') && severity === 'error')

export interface Concession {
  readonly block: Block
  /** Id of the check. */
  readonly check: string
  readonly on: string
  readonly grantedBy: string
  readonly until: string
  readonly reason: string
}

const said = (block: Block, fact: string): string | undefined => {
  const value = block.facts.get(fact)?.value
  return typeof value === 'string' && value.trim() !== '' ? value : undefined
}

/** The concessions that are complete; each that is not is a finding of its own. */
export function concessionsOf(blocks: readonly Block[]): readonly Concession[] {
  return blocks.flatMap((block) => {
    if (block.kind !== 'concession') return []
    const check = block.about?.text
    const on = said(block, 'on')
    const grantedBy = said(block, 'granted-by')
    const until = said(block, 'until')?.slice(0, 10)
    const reason = said(block, 'reason')
    return check && on && grantedBy && until && reason ? [{ block, check, on, grantedBy, until, reason }] : []
  })
}

/** The last day counts. Dates of ISO 8601 compare as they are written. */
export const isInForce = (concession: Concession, today: string): boolean => today <= concession.until

function* within(blocks: readonly Block[]): Generator<Block> {
  for (const block of blocks) {
    yield block
    yield* within(block.children)
  }
}

/** Blocks of this path: `starboard.dry-2`. */
export const blocksAt = (blocks: readonly Block[], path: string): readonly Block[] =>
  [...within(blocks)].filter((block) => block.path === path)

const standsIn = (finding: Finding, section: Section, block: Block): boolean =>
  finding.at.section === section &&
  block.node.span.start <= finding.at.span.start &&
  finding.at.span.end <= block.node.span.end

/** Findings the concession is about, whether or not it is in force. */
export function coveredBy(concession: Concession, view: FileView): readonly Finding[] {
  const named = blocksAt(view.blocks, concession.on)
  return view.findings.filter(
    (finding) =>
      finding.check === concession.check &&
      isConcedable(finding) &&
      named.some((block) => standsIn(finding, block.section, block)),
  )
}

/** The findings with those accepted marked as such. None is left out. */
export function applyConcessions(view: FileView): readonly Finding[] {
  const accepted = new Map<Finding, Concession>()
  for (const concession of concessionsOf(view.blocks)) {
    if (!isInForce(concession, view.today)) continue
    for (const finding of coveredBy(concession, view))
      if (!accepted.has(finding)) accepted.set(finding, concession)
  }
  return view.findings.map((finding) => {
    const by = accepted.get(finding)
    if (!by) return finding
    const { grantedBy, until, reason } = by
    return {
      ...finding,
      severity: 'information',
      accepted: true,
      message: `${finding.message} Accepted by ${grantedBy} until ${until}: ${reason}`,
    }
  })
}
