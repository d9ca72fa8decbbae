import type { Check } from '../../src/checks/check.ts'
import { severityOfMissing } from '../../src/checks/missing.ts'
import { type BlockKind, formatBeside, formatRequirement, needsOf } from '../../src/vocabulary/block.ts'
import { blockKinds } from '../../src/vocabulary/index.ts'
import { type Status, silentStatus, statuses } from '../../src/vocabulary/status.ts'
import { code, madeBy, table } from './markdown.ts'

const purposes: Readonly<Record<Status, string>> = {
  draft: 'The job is still being written.',
  'for-review': 'Every calculation can run, and a reviewer sees what it assumes.',
  issued: 'The yard can order, cut, drill and tighten from the job.',
  'as-built': 'The job records the finished install, as measured.',
}

const reportedAs = { error: 'errors', warning: 'warnings', information: 'information' } as const

/** Facts of a kind that are asked for from a status on, with what else it depends on. */
const factsFrom = (kind: BlockKind, status: Status): readonly string[] =>
  Object.entries(kind.facts).flatMap(([name, fact]) =>
    fact.from === status
      ? [`${code(name)}${formatRequirement(fact)?.slice(status.length).replace(/^,/, '') ?? ''}`]
      : [],
  )

/** Facts of a kind that are found out on the boat, besides those that as-built is the first to ask for. */
const onBoat = ({ kind, facts, others }: BlockKind): readonly string[] => {
  const named = Object.entries(facts).flatMap(([name, fact]) => (fact.onBoat ? [code(name)] : []))
  const names = others?.onBoat ? [...named, 'what was done to each foot'] : named
  return names.length > 0 ? [`${code(kind)}: ${names.join(', ')}`] : []
}

const blockWords = (kind: BlockKind): string => (kind.kind === 'job' ? 'file' : kind.kind)

function section(status: Status, checks: readonly Check[]): string {
  const facts = blockKinds.flatMap((kind) => {
    const names = factsFrom(kind, status)
    return names.length > 0 ? [[code(kind.kind), names.join(', ')]] : []
  })
  const blocks = blockKinds.flatMap((kind) => {
    const needed = needsOf(kind).filter(({ from }) => from === status)
    return needed.length > 0
      ? [[blockWords(kind), needed.map((one) => `${code(one.kind)}${formatBeside(one)}`).join(', ')]]
      : []
  })
  const held = checks.flatMap(({ id, claim }) =>
    claim?.from === status ? [`- ${claim.words} ([${id}](checks/${id}.md))`] : [],
  )
  return [
    `## ${status}`,
    `${purposes[status]} Missing facts and blocks are reported as ${reportedAs[severityOfMissing(status)]}.`,
    ...(blocks.length > 0 ? [table(['in each', 'blocks'], blocks)] : []),
    table(['block', 'facts'], facts),
    ...(status === 'as-built'
      ? [
          `These facts are found out on the boat, so none of them may be \`[assumed]\` ([job/fact-assumed](checks/job/fact-assumed.md)). Neither may these:\n\n${blockKinds
            .flatMap(onBoat)
            .map((line) => `- ${line}`)
            .join('\n')}`,
        ]
      : []),
    ...(held.length > 0 ? [`The job also claims:\n\n${held.join('\n')}`] : []),
  ].join('\n\n')
}

/** `docs/status.md`: what each status asks for, from the vocabulary, and what it claims, from the checks. */
export const statusPage = (checks: readonly Check[]): string => `${madeBy}
# What each status asks for

A job has a \`status\`: ${statuses.map(code).join(', ')}. Each asks for the facts and blocks listed below, and for everything that the earlier ones ask for. A job without a status counts as ${code(silentStatus)}.

- All missing facts of a block are one finding ([job/fact-missing](checks/job/fact-missing.md)), and so are its missing blocks ([job/block-missing](checks/job/block-missing.md)). The severity depends on the status.
- A fact with a \`?\` in its value counts as missing, even if the status does not ask for it yet.
- A fact is asked for only where it makes sense. For example, the thread is asked for only if the feet stand on studs.
- A file without a \`job\` is a library of parts: no facts are asked for. The same holds for a part at the top of a job that other blocks take with \`like\`.
- Only missing and assumed facts, missing blocks, and the claims below follow the status. Every other finding has the same severity in all four. One exception: in an as-built job, a concession still accepts its finding after its last day.
- A concession makes its finding information. In an as-built job, a missing or assumed fact, a missing block and an unproven claim stay a warning: the concession does not fill them in.

${statuses.map((status) => section(status, checks)).join('\n\n')}
`
