import fs from 'node:fs'
import path from 'node:path'
import { checkIndex, checkPages } from './generate/checks.ts'
import { grammar } from './generate/grammar.ts'
import { reference } from './generate/reference.ts'

/** Writes what follows from a declaration elsewhere; with `--check`, only says what differs. */
const root = path.resolve(import.meta.dirname, '../..')
const checkOnly = process.argv.includes('--check')

const read = (file: string): string | undefined => {
  const full = path.join(root, file)
  return fs.existsSync(full) ? fs.readFileSync(full, 'utf8') : undefined
}

// The index comes first: the pages are made from the checks it names.
const index = checkIndex(root)
const differs: string[] = []
function put(file: string, text: string): void {
  if (read(file) === text) return
  differs.push(file)
  if (checkOnly) return
  fs.mkdirSync(path.dirname(path.join(root, file)), { recursive: true })
  fs.writeFileSync(path.join(root, file), text)
}
put('server/src/checks/index.ts', index)

const { allChecks } = (await import('../src/checks/index.ts')) as typeof import('../src/checks/index.ts')
const { schemas } = (await import('../src/cli/schemas.ts')) as typeof import('../src/cli/schemas.ts')
const pages = checkPages(allChecks)
for (const [file, text] of Object.entries(pages)) put(file, text)
put('docs/reference.md', reference())
put('syntaxes/shaftwright.tmLanguage.json', grammar())
for (const [file, schema] of Object.entries(schemas()))
  put(`docs/schemas/${file}`, `${JSON.stringify(schema, null, 2)}\n`)

const stale = (fs.readdirSync(path.join(root, 'docs/checks'), { recursive: true }) as string[])
  .map((file) => `docs/checks/${file.replaceAll(path.sep, '/')}`)
  .filter((file) => file.endsWith('.md') && !(file in pages))
for (const file of stale) {
  differs.push(file)
  if (!checkOnly) fs.rmSync(path.join(root, file))
}

if (differs.length > 0) console.log(`${checkOnly ? 'out of date' : 'written'}: ${differs.join(', ')}`)
if (checkOnly && differs.length > 0) {
  console.log('Run `npm run generate` and commit what it writes.')
  process.exitCode = 1
}
