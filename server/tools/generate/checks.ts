import fs from 'node:fs'
import path from 'node:path'
import type { Check } from '../../src/checks/check.ts'
import { isConcedable } from '../../src/checks/concessions.ts'
import { fence, madeBy, table } from './markdown.ts'

const camel = (id: string): string => id.replace(/[-/](.)/g, (_, letter: string) => letter.toUpperCase())

/** Ids of every check: a file in a folder of `checks/` is one. */
export function checkFiles(root: string): readonly string[] {
  const base = path.join(root, 'server/src/checks')
  return fs
    .readdirSync(base, { withFileTypes: true })
    .filter((area) => area.isDirectory())
    .flatMap((area) =>
      fs
        .readdirSync(path.join(base, area.name))
        .filter((file) => file.endsWith('.ts'))
        .map((file) => `${area.name}/${file.slice(0, -'.ts'.length)}`),
    )
    .sort()
}

/** `server/src/areas/index.ts`. */
export function checkIndex(root: string): string {
  const ids = checkFiles(root)
  const imports = [
    ...ids.map((id) => ({ from: `./${id}.ts`, what: camel(id) })),
    { from: './check.ts', what: 'type { Check }' },
  ].sort((a, b) => (a.from < b.from ? -1 : 1))
  return `// Made by \`npm run generate\` from the files beside it.

${imports.map(({ from, what }) => `import ${what} from '${from}'`).join('\n')}

export const allChecks: readonly Check[] = [
${ids.map((id) => `  ${camel(id)},`).join('\n')}
]
`
}

const page = (check: Check): string => `${madeBy}
# ${check.id}

${check.title}. **${check.severity[0]?.toUpperCase()}${check.severity.slice(1)}.**

${check.why}

Source (${check.source.basis}): ${check.source.text}.

## Found in

${fence(check.fires)}

## Not found in

${fence(check.quiet)}
${
  isConcedable({ check: check.id, severity: check.severity })
    ? `
## Accepting it

A finding is never silenced. It can be accepted with a reason, a name and an end date:

${fence(`concession ${check.id} {
  on:         main.dry-1
  reason:     "why it is accepted"
  granted-by: "who accepts it"
  until:      2026-12-31
}`)}

\`on\` names the block that the finding is in, or a block around it.
`
    : ''
}`

/** A page for each check, and the list of them. */
export function checkPages(checks: readonly Check[]): Record<string, string> {
  const areas = [...new Set(checks.map((c) => c.id.split('/')[0] ?? ''))]
  const section = (area: string): string => {
    const members = checks.filter((c) => c.id.startsWith(`${area}/`))
    const rows = members.map((c) => [`[${c.id}](${c.id}.md)`, c.severity, c.title])
    return `## ${area}\n\n${table(['check', 'severity', 'finds'], rows)}`
  }
  const list = `${madeBy}
# Checks

Error: do not go on. Warning: look again. Information: a danger, an assumption, advice, or a missing fact in a draft.

${areas.map(section).join('\n\n')}
`
  return {
    'docs/checks/README.md': list,
    ...Object.fromEntries(checks.map((check) => [`docs/checks/${check.id}.md`, page(check)])),
  }
}
