// What a user installs, against what its pages promise.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join, posix } from 'node:path'
import { lexer, walkTokens } from 'marked'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { sourcesMarkdown } from '../../server/src/editor/hover/sources.ts'
import { checkMarkdown } from '../../server/src/editor/hover/words.ts'
import { blockKinds } from '../../server/src/vocabulary/index.ts'
import { root } from '../../server/tools/bundles.ts'
import { withoutRelativeLinks } from '../../server/tools/packaged-markdown.ts'
import { packageExtension } from '../../server/tools/vsix.ts'

/** What is used of yauzl, which has no types of its own. */
interface Zip {
  readonly eachEntry: () => AsyncIterable<{ readonly fileName: string }>
  readonly openReadStreamPromise: (entry: { readonly fileName: string }) => Promise<AsyncIterable<Buffer>>
}
const { openPromise }: { openPromise: (file: string) => Promise<Zip> } = createRequire(import.meta.url)(
  'yauzl',
)

const folder = mkdtempSync(join(tmpdir(), 'shaftwright-vsix-'))
const entries = new Map<string, string>()

beforeAll(async () => {
  const vsix = join(folder, 'shaftwright.vsix')
  await packageExtension(vsix)
  const zip = await openPromise(vsix)
  for await (const entry of zip.eachEntry()) {
    const stream = await zip.openReadStreamPromise(entry)
    const chunks: Buffer[] = []
    for await (const chunk of stream) chunks.push(chunk)
    entries.set(entry.fileName, Buffer.concat(chunks).toString('utf8'))
  }
}, 120_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const linksIn = (markdown: string): readonly string[] => {
  const found: string[] = []
  void walkTokens(lexer(markdown), (token) => {
    if (token.type === 'link' || token.type === 'image') found.push(token.href)
  })
  return found
}

/** As GitHub and VS Code name the headings of a page. */
const anchorsOf = (markdown: string): readonly string[] =>
  lexer(markdown).flatMap((token) =>
    token.type === 'heading'
      ? token.text
          .toLowerCase()
          .replaceAll(/[^\p{L}\p{N} _-]/gu, '')
          .replaceAll(' ', '-')
      : [],
  )

const packaged = 'https://package.example/extension/'

/** Links of a page that lead to what is not in the package, or to a heading that its page does not have. */
function deadLinks(page: string, links: readonly string[]): readonly string[] {
  return links.filter((link) => {
    const { href, hash } = new URL(link, packaged + page)
    if (!href.startsWith(packaged)) return !/^(?:https|command):/.test(href)
    const [path = ''] = href.slice(packaged.length).split('#')
    const target = `extension/${decodeURIComponent(path)}`
    const text = entries.get(target)
    const isFolder = [...entries.keys()].some((name) => name.startsWith(target.replace(/\/?$/, '/')))
    return text === undefined ? !isFolder : hash !== '' && !anchorsOf(text).includes(hash.slice(1))
  })
}

describe('the package', () => {
  it.each(['readme.md', 'changelog.md'])('has no dead link and no broken picture in %s', (page) => {
    const text = entries.get(`extension/${page}`)
    expect(text?.length).toBeGreaterThan(1000)
    expect(deadLinks(page, linksIn(text ?? ''))).toEqual([])
    expect(text).not.toMatch(/!\[[^\]]*\]\((?!https:)/)
    expect(text).not.toMatch(/<img/)
  })

  it('has no dead link in any page', () => {
    const pages = [...entries].filter(([name]) => name.endsWith('.md'))
    const dead = pages.flatMap(([name, text]) => {
      const page = name.slice('extension/'.length)
      return deadLinks(page, linksIn(text)).map((link) => `${page}: ${link}`)
    })
    expect(pages.flatMap(([, text]) => linksIn(text)).length).toBeGreaterThan(100)
    expect(dead).toEqual([])
  })

  it('has every page that a hover leads to', () => {
    const docs = `${packaged}docs/checks/`
    const hovers = [
      ...blockKinds.map(({ kind }) => sourcesMarkdown(kind, docs)),
      ...allChecks.map((check) => checkMarkdown(check, docs)),
    ]
    const links = hovers.flatMap(linksIn)
    expect(links.length).toBeGreaterThan(allChecks.length)
    expect(deadLinks('', links)).toEqual([])
  })

  it('has one entry for the browser, by a name that each VS Code loads', () => {
    const { browser, type } = JSON.parse(entries.get('extension/package.json') ?? '{}')
    const found = [...entries.keys()].filter((name) => name.includes('extension-web'))
    expect(found).toEqual([posix.join('extension', browser)])
    expect([posix.extname(browser), type]).toEqual(['.js', undefined])
  })

  it('has the licence of each library that is in it', () => {
    const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      dependencies: Readonly<Record<string, string>>
    }
    const licences = entries.get('extension/dist/licences.txt') ?? ''
    for (const name of Object.keys(dependencies)) expect(licences).toContain(`\n${name} `)
    const granted = /Permission (?:is hereby granted|to use, copy)|Apache License/g
    expect(licences.match(granted)?.length).toBeGreaterThan(Object.keys(dependencies).length)
  })

  it('has every file its manifest names', () => {
    const manifest = entries.get('extension/package.json') ?? ''
    const files = [...manifest.matchAll(/"(?:\.\/)?((?:client|dist|docs|syntaxes)\/[^"*]+)"/g)]
      .map(([, file = '']) => file)
      .filter((file) => file !== 'dist/cli.js')
    expect(files.length).toBeGreaterThan(8)
    for (const file of files.filter((name) => !name.includes(' ')))
      expect([...entries.keys()]).toContain(`extension/${file}`)
  })

  it('has the language, the reference and the page of each check', () => {
    const names = [...entries.keys()]
    expect(names).toContain('extension/docs/language.md')
    expect(names).toContain('extension/docs/reference.md')
    expect(names.filter((name) => name.startsWith('extension/docs/checks/')).length).toBeGreaterThan(50)
  })

  it('brings nothing that only its makers need', () => {
    expect(
      [...entries.keys()].filter((name) => /\.ts$|\.map$|node_modules|tests\/|cli\.js/.test(name)),
    ).toEqual([])
  })

  it('names no address that nobody has', () => {
    const { repository, bugs, homepage } = JSON.parse(
      entries.get('extension/package.json') ?? '{}',
    ) as Record<string, unknown>
    expect([repository, bugs, homepage]).toEqual([undefined, undefined, undefined])
  })
})

describe('links of a packaged page', () => {
  it('into the repository are words, those to other places stay', () => {
    expect(
      withoutRelativeLinks(
        '![a](docs/a.png)\n\nSee [the checks](docs/checks/README.md) or [b](https://b.example).',
      ),
    ).toBe('See the checks or [b](https://b.example).')
  })
})
