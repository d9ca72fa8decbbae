import type { Block } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { findKind } from '../../vocabulary/index.ts'
import { asks, type Status, statuses } from '../../vocabulary/status.ts'
import { atHead, check, type FixGround, theLanguage } from '../check.ts'
import type { Edit } from '../fix.ts'
import { addAtEnd, addBlock, blank } from '../fix-text.ts'
import { formatMissing, missingBlocks, severityOfMissing, whyRequired } from '../missing.ts'

/** A block with a blank for each fact that the status asks for. */
function skeleton(name: string, status: Status, indent = ''): string {
  const kind = findKind(name)
  if (!kind) return ''
  const own = kind.heading === 'name' ? ` ${kind.example.split(' ')[1]}` : ''
  const facts = Object.entries(kind.facts).filter(([, { from, when }]) => asks(status, from) && !when)
  const inside = kind.kind === 'drive' ? [] : statuses.flatMap((from) => kind.needs?.[from] ?? [])
  return [
    `${indent}${kind.kind}${own} {`,
    ...facts.map(([fact]) => `${indent}  ${fact}: ${blank}`),
    ...inside.map((needed) => skeleton(needed, status, `${indent}  `)),
    `${indent}}`,
  ].join('\n')
}

/** What stands at the top goes to the end of the file, all else into the block that needs it; what a job needs, into its first drive. */
function edit(
  name: string,
  block: Block,
  { file, lookup }: FixGround & { lookup: Lookup },
): Edit | undefined {
  const lines = skeleton(name, lookup.status ?? 'draft')
  const isAtTop = findKind(name)?.within[0] === 'top'
  if (isAtTop) return addAtEnd(file.document.sections, lines)
  const [drive] = lookup.ofKind('drive')
  const within = block.kind === 'job' ? drive : block
  return within && addBlock(within, lines)
}

export default check({
  id: 'job/block-missing',
  severity: 'warning',
  followsStatus: true,
  title: 'Blocks that the job still needs',
  why: 'What the job does not describe cannot be checked. [docs/status.md](../../status.md) lists the blocks that each status needs. Missing blocks are information in a draft, a warning in a job for review or without a status, and an error from `issued` on.',
  source: theLanguage,
  on: 'every kind',
  fires: `job "Launch" {
  vessel: "Launch 07"
  status: draft
}
drive main {
  bed { adjuster: shims }
# ^^^ One block is still missing: foot.
}`,
  quiet: `job "Launch" {
  vessel: "Launch 07"
  status: draft
}
drive main {
  bed {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 0 mm }
  }
}`,
  run: (_facts, lookup) => {
    const names = missingBlocks(lookup)
    return names.length === 0
      ? []
      : [
          atHead(lookup.block, {
            severity: severityOfMissing(lookup.status),
            plan: lookup.block.kind === 'bed' ? 'waits' : 'goes-on',
            message: formatMissing('block', names),
            detail: whyRequired(lookup.status),
            todo: names.length === 1 ? 'Add the block.' : 'Add the blocks.',
            limit: names.join(', '),
            data: { names },
          }),
        ]
  },
  fixes: (_finding, ground) => {
    const { block, lookup } = ground
    if (!block || !lookup) return []
    const leaves = ['job/fact-missing', 'job/block-missing']
    const each = missingBlocks(lookup).flatMap((name) => {
      const made = edit(name, block, { ...ground, lookup })
      return made ? [{ title: `Add a ${name}`, edits: [made], leaves }] : []
    })
    const [only] = each
    if (each.length < 2) return only ? [{ ...only, preferred: true }] : []
    const edits = each.flatMap((fix) => fix.edits)
    return [{ title: `Add the ${each.length} missing blocks`, edits, leaves, preferred: true }, ...each]
  },
})
