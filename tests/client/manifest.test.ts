// What package.json promises VS Code, against the files and the code behind it.
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it, vi } from 'vitest'
import type { Command } from '../../client/src/commands/command.ts'
import manifest from '../../package.json' with { type: 'json' }

// Only VS Code has it. What a command does is tried there (tests/workbench); here it is its id that counts.
vi.mock('vscode', () => ({ Uri: {}, window: {}, workspace: {} }))

const root = resolve(import.meta.dirname, '../..')
const folder = join(root, 'client/src/commands')

describe('the extension manifest', () => {
  it('names each command of the client, and no other', async () => {
    const files = readdirSync(folder).filter((name) => name !== 'command.ts')
    type Made = Command | ((extension: unknown) => Command)
    const modules: Record<string, Made>[] = await Promise.all(files.map((name) => import(join(folder, name))))
    const written = modules.flatMap((one) =>
      Object.values(one).map((made) => (typeof made === 'function' ? made({}) : made).id),
    )
    const declared = manifest.contributes.commands.map(({ command }) => command)
    expect(declared.sort()).toEqual(written.sort())
    expect(written.length).toBe(files.length)
  })

  it('puts all commands under its own name', () => {
    expect(new Set(manifest.contributes.commands.map(({ category }) => category))).toEqual(
      new Set(['Shaftwright']),
    )
  })

  it('points at files that are there', () => {
    const [language] = manifest.contributes.languages
    const [grammar] = manifest.contributes.grammars
    const files = [
      manifest.icon,
      language?.configuration,
      language?.icon.light,
      language?.icon.dark,
      grammar?.path,
    ]
    for (const file of files) expect(existsSync(join(root, file ?? 'nowhere')), file).toBe(true)
  })

  it('asks for the oldest VS Code its language client runs in', () => {
    const client = readFileSync(join(root, 'node_modules/vscode-languageclient/package.json'), 'utf8')
    expect(manifest.engines.vscode).toBe(JSON.parse(client).engines.vscode)
  })

  it('has a walkthrough whose buttons are its own steps, each of which can be ticked', () => {
    const [{ steps } = { steps: [] }] = manifest.contributes.walkthroughs
    const source = readFileSync(join(folder, 'get-started.ts'), 'utf8')
    for (const { description, completionEvents } of steps) {
      const taken = [...description.matchAll(/\(command:shaftwright\.getStarted\?%22(\w+)%22\)/g)].map(
        ([, step = '']) => step,
      )
      expect(taken.length).toBe(description.match(/\(command:/g)?.length)
      expect(completionEvents).toEqual(taken.map((step) => `onContext:shaftwright.seen.${step}`))
      for (const step of taken) expect(source).toMatch(new RegExp(`^  ${step}: `, 'm'))
    }
  })

  it('has no line in its walkthrough that would be cut off', () => {
    const pages = join(root, 'docs/get-started')
    for (const page of readdirSync(pages)) {
      const code = readFileSync(join(pages, page), 'utf8').match(/```[\s\S]*?```/g) ?? []
      for (const line of code.join('\n').split('\n')) expect(line.length, line).toBeLessThanOrEqual(44)
    }
    const words = manifest.contributes.walkthroughs[0]?.steps.map(({ title, description }) => ({
      title: title.length,
      description: description.split('\n')[0]?.length,
    }))
    for (const { title, description } of words ?? []) {
      expect(title).toBeLessThanOrEqual(30)
      expect(description).toBeLessThanOrEqual(120)
    }
  })

  it('is ready for a marketplace, and names no address that nobody has', () => {
    expect(manifest.keywords.length).toBeLessThanOrEqual(30)
    expect(manifest.categories).toContain('Programming Languages')
    expect(manifest.galleryBanner).toEqual({ color: expect.stringMatching(/^#[0-9a-f]{6}$/), theme: 'dark' })
    expect(manifest).not.toHaveProperty('repository')
    expect(manifest).not.toHaveProperty('bugs')
  })
})
