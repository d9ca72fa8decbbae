// What a user gets: the extension (.vsix) and the npm package bring the reference, and links in them lead somewhere.
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize, resolve } from 'node:path'
import { listFiles, PackageManager } from '@vscode/vsce'
import { expect, it } from 'vitest'

const root = resolve(import.meta.dirname, '../..')
const pages = readdirSync(join(root, 'docs/checks'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.md'))
  .map((name) => `docs/checks/${name.replaceAll('\\', '/')}`)
const reference = ['docs/reference.md', 'docs/language.md', 'docs/command-line.md', ...pages]

const inExtension = async () =>
  (await listFiles({ cwd: root, packageManager: PackageManager.None })) as readonly string[]

function inNpmPackage(): readonly string[] {
  const { stdout } = spawnSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  })
  const [packed] = JSON.parse(stdout) as { readonly files: readonly { readonly path: string }[] }[]
  return (packed?.files ?? []).map(({ path }) => path)
}

it.each([
  ['the extension', inExtension],
  ['the npm package', inNpmPackage],
])('%s brings the reference, and its links lead to what it brings', { timeout: 60_000 }, async (_, list) => {
  const files = await list()
  expect(files).toEqual(expect.arrayContaining(reference))
  expect(files.filter((file) => /^(server|client\/src|tests|node_modules)\//.test(file))).toEqual([])
  const isThere = (path: string) =>
    files.some((file) => file === path || file.startsWith(`${path.replace(/\/$/, '')}/`))
  const dead = files
    .filter((file) => file.endsWith('.md'))
    .flatMap((file) =>
      [
        ...readFileSync(join(root, file), 'utf8').matchAll(
          /(?<!!)\[[^\]]*\]\((?!https?:|command:)([^)#\s]+)/g,
        ),
      ]
        .map(([, target = '']) => normalize(join(dirname(file), target)).replaceAll('\\', '/'))
        .filter((target) => !isThere(target))
        .map((target) => `${file}: ${target}`),
    )
  expect(dead).toEqual([])
})
