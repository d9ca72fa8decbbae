// Any editor with a client for the Language Server Protocol will do: Neovim's own, without a plugin, for one.
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findProgram } from './find-program.ts'

const root = resolve(import.meta.dirname, '../..')
const server = resolve(root, 'server/src/editor/main-node.ts')
const job = resolve(root, 'docs/examples/survey-launch-as-found.wright')

const nvim = findProgram({ title: 'Neovim', names: ['nvim'], debian: 'neovim', variable: 'NEOVIM_PATH' })

type Shown = {
  readonly diagnostics: readonly { line: number; severity: number; message: string }[]
  readonly hover: string
  readonly before: string
  readonly spoilt: string
  readonly after: string
  readonly behindNumber: readonly string[]
  readonly behindUnit: readonly string[]
}

describe('Neovim', () => {
  it('shows findings, a hover, the layout and the offers of a job file', () => {
    const script = resolve(import.meta.dirname, 'neovim.lua')
    const run = spawnSync(nvim, ['--clean', '--headless', '-n', '-c', `luafile ${script}`, '-c', 'qall!'], {
      encoding: 'utf8',
      timeout: 60_000,
      env: { ...process.env, SHAFTWRIGHT_TEST: [process.execPath, server, job].join('\n') },
    })
    expect(run.stderr).toBe('')
    const shown: Shown = JSON.parse(run.stdout)

    const lines = readFileSync(job, 'utf8').split('\n')
    const gaps = lines.findIndex((line) => line.includes('top 1.92 mm'))
    const onGaps = shown.diagnostics.find(({ line }) => line === gaps)
    expect(onGaps?.message).toMatch(/^The gap variation is 0\.26 ± 0\.02 mm; 0\.10 mm is allowed/)
    expect(onGaps?.severity).toBe(1)
    expect(shown.diagnostics.length).toBeGreaterThan(5)

    expect(shown.hover).toContain('outside its limits')
    expect(shown.hover).toMatch(/aft-port.*±.* mm/)

    expect(shown.spoilt).not.toBe(shown.before)
    expect(shown.after).toBe(shown.before)

    expect(shown.behindNumber[0]).toBe('Ah')
    expect(shown.behindUnit).toEqual([])
  })
})
