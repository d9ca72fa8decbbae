import fs from 'node:fs'
import path from 'node:path'
import type { Check } from '../../src/checks/check.ts'
import { isConcedable } from '../../src/checks/concessions.ts'

const camel = (id: string): string => id.replace(/[-/](.)/g, (_, letter: string) => letter.toUpperCase())

/** `server/src/checks/index.ts`: every file in a folder of `checks/` is a check. */
export function checkIndex(root: string): string {
  const base = path.join(root, 'server/src/checks')
  const ids = fs
    .readdirSync(base, { withFileTypes: true })
    .filter((area) => area.isDirectory())
    .flatMap((area) =>
      fs
        .readdirSync(path.join(base, area.name))
        .filter((file) => file.endsWith('.ts'))
        .map((file) => `${area.name}/${file.slice(0, -3)}`),
    )
    .sort()
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

const code = (text: string): string => `\`\`\`wright\n${text}\n\`\`\``

const page = (check: Check): string => `# ${check.id}

${check.title}. **${check.severity[0]?.toUpperCase()}${check.severity.slice(1)}.**

${check.why}

Source (${check.source.basis}): ${check.source.text}.

## Found in

${code(check.fires)}

## Not found in

${code(check.quiet)}
${
  isConcedable({ check: check.id, severity: check.severity })
    ? `
## Accepting it

A finding is never silenced. It can be accepted with a reason, a name and an end date:

${code(`concession ${check.id} {
  on:         main.dry-1
  reason:     "why it is accepted"
  granted-by: "who accepts it"
  until:      2026-12-31
}`)}

\`on\` names the block that the finding stands in, or one around it.
`
    : ''
}`

/** A page for each check, and the list of them. */
export function checkPages(checks: readonly Check[]): Record<string, string> {
  const areas = [...new Set(checks.map((c) => c.id.split('/')[0] ?? ''))]
  const table = (area: string): string =>
    [
      `## ${area}`,
      '',
      '| check | severity | finds |',
      '|:--|:--|:--|',
      ...checks
        .filter((c) => c.id.startsWith(`${area}/`))
        .map((c) => `| [${c.id}](${c.id}.md) | ${c.severity} | ${c.title} |`),
    ].join('\n')
  const list = `# Checks

Made by \`npm run generate\` from the checks themselves. Error: do not go on. Warning: look again. Information: an assumption or advice.

${areas.map(table).join('\n\n')}
`
  return {
    'docs/checks/README.md': list,
    ...Object.fromEntries(checks.map((check) => [`docs/checks/${check.id}.md`, page(check)])),
  }
}
