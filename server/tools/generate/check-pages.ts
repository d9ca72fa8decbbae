import { type Check, isFileCheck } from '../../src/checks/check.ts'
import { isConcedable } from '../../src/checks/concessions.ts'
import { fence, madeBy, table } from './markdown.ts'

const areaOf = ({ id }: Check): string => id.slice(0, id.indexOf('/'))

const severities: Readonly<Record<Check['severity'], string>> = {
  error: 'error: do not go on',
  warning: 'warning: look again',
  information: 'information: an assumption, or advice',
}

const concession = (check: Check): string =>
  isConcedable({ check: check.id, severity: check.severity })
    ? `The finding can be accepted: it then stays in sight as information.

${fence(`concession ${check.id} {
  on:         starboard
  reason:     "why it is accepted"
  granted-by: "who accepts it"
  until:      2026-04-15
}`)}

\`on\` names the block the finding stands in, or one around it.`
    : 'It cannot be accepted by a concession: mend the job file.'

const page = (check: Check): string => `${madeBy}
# ${check.title}

- Check: \`${check.id}\`
- Severity: ${severities[check.severity]}
- Looks at: ${isFileCheck(check) ? 'the whole file, after all other checks' : 'one block'}

${check.why}

Source: ${check.source.text} (${check.source.basis}).

## Fires

${fence(check.fires)}

The carets stand under what is marked; words after them are in the message.

## Quiet

${fence(check.quiet)}

## Concession

${concession(check)}

[All checks](../README.md)
`

/** Pages by name below the checks' folder: one a check, and the list of them all. */
export function checkPages(checks: readonly Check[]): ReadonlyMap<string, string> {
  const areas = Map.groupBy(checks, areaOf)
  const lists = [...areas].map(
    ([area, members]) => `## ${area}

${table(
  ['check', 'severity', 'finds'],
  members.map((c) => [`[\`${c.id}\`](${c.id}.md)`, c.severity, c.title]),
)}`,
  )
  return new Map([
    ['README.md', `${madeBy}\n# Checks\n\n${lists.join('\n\n')}\n`],
    ...checks.map((check) => [`${check.id}.md`, page(check)] as const),
  ])
}
