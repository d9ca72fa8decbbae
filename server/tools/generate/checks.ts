import fs from 'node:fs'
import path from 'node:path'
import type { Check } from '../../src/checks/check.ts'
import { isConcedable } from '../../src/checks/concessions.ts'
import { fence, madeBy, table } from './markdown.ts'

const camel = (id: string): string => id.replace(/[-/](.)/g, (_, letter: string) => letter.toUpperCase())

/** Folders of checks, from the root, and how the ids in them begin. */
function checkFolders(root: string): readonly { readonly folder: string; readonly name: string }[] {
  const areas = fs
    .readdirSync(path.join(root, 'server/src/areas'))
    .map((name) => ({ folder: `server/src/areas/${name}/checks`, name }))
    .filter(({ folder }) => fs.existsSync(path.join(root, folder)))
  return [{ folder: 'server/src/checks/job', name: 'job' }, ...areas]
}

/** The files of a folder of checks by the ids of their checks. A check that lies in a folder of its own there has its name instead of the area's. */
const checksIn = (root: string, folder: string, name: string): ReadonlyMap<string, string> =>
  new Map(
    fs
      .readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .map((file) => file.replaceAll('\\', '/'))
      .filter((file) => file.endsWith('.ts') && file !== 'index.ts')
      .map((file): [string, string] => {
        const id = file.slice(0, -'.ts'.length)
        return [id.includes('/') ? id : `${name}/${id}`, file]
      })
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  )

/** The file of every check, from the root, by the id of the check and in order of the ids. */
export const checkFiles = (root: string): ReadonlyMap<string, string> =>
  new Map(
    checkFolders(root)
      .flatMap(({ folder, name }) =>
        [...checksIn(root, folder, name)].map(([id, file]): [string, string] => [id, `${folder}/${file}`]),
      )
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  )

/** The list of checks of each folder, by its path. */
export const checkLists = (root: string): Record<string, string> =>
  Object.fromEntries(
    checkFolders(root).map(({ folder, name }) => [
      `${folder}/index.ts`,
      checkList(checksIn(root, folder, name), path.posix.relative(folder, 'server/src/checks/check.ts')),
    ]),
  )

/** As the linter sorts: `too-low.ts` before `too-low-at-peak.ts`. */
const withoutEnding = (file: string): string => file.slice(0, -'.ts'.length)

function checkList(files: ReadonlyMap<string, string>, check: string): string {
  const imports = [
    ...[...files].map(([id, file]) => ({ from: `./${file}`, what: camel(id) })),
    { from: check, what: 'type { Check }' },
  ].sort((a, b) => (withoutEnding(a.from) < withoutEnding(b.from) ? -1 : 1))
  return `// Made by \`npm run generate\` from the files beside it.

${imports.map(({ from, what }) => `import ${what} from '${from}'`).join('\n')}

export const checks: readonly Check[] = [
${[...files.keys()].map((id) => `  ${camel(id)},`).join('\n')}
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
