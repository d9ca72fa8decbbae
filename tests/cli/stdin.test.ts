import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkSchema } from '../../server/src/cli/schemas.ts'
import { folder, found, held, put, root, shaftwright } from './run-cli.ts'

describe('standard input', () => {
  const job = 'use "parts/p.wright"\njob "J" { vessel: "V" }\ndrive d { seal { like: spare } }\n'

  it('is checked as a file of the current folder, under a name of its own', () => {
    put('piped/parts/p.wright', 'seal spare { free-length: 148 }\n')
    const from = (cwd: string) =>
      shaftwright(['check', '-', '--format', 'json'], path.join(folder, cwd), { input: job }).out
    const { files, findings } = checkSchema.parse(held('check.schema.json', from('piped')))
    expect(files).toEqual(['<stdin>'])
    expect(findings.map(({ check }) => check)).not.toContain('job/file-not-found')
    expect(findings.every(({ file }) => file === '<stdin>')).toBe(true)
    const elsewhere = checkSchema.parse(JSON.parse(from('piped/parts'))).findings
    expect(elsewhere.map(({ check }) => check)).toContain('job/file-not-found')
  })

  it('says where in it something was found, and is checked beside other files', () => {
    put('piped/other.wright', 'seal { }\n')
    const { code, out } = shaftwright(['check', '-', 'other.wright'], path.join(folder, 'piped'), {
      input: 'nonsense\n',
    })
    expect(code).toBe(1)
    expect(out).toContain('<stdin>:1:1  error')
    expect(out).toContain('2 files: ')
  })

  it('is planned', () => {
    const input = fs.readFileSync(path.join(root, found))
    const { code, out } = shaftwright(['plan', '-'], folder, { input })
    expect(code).toBe(0)
    expect(out).toMatch(/^File: +<stdin>$/m)
    expect(out).toContain('fwd-stbd  up 1.27 ± 0.08 mm')
  })

  it('is not read where it is not UTF-8, or longer than any job', () => {
    const latin = { input: Buffer.from([0x61, 0xe9]) }
    const checked = shaftwright(['check', '-'], folder, latin)
    expect(checked.code).toBe(2)
    expect(checked.out).toContain('<stdin>:1:1  error  job/file-not-utf8\n')
    const planned = shaftwright(['plan', '-'], folder, latin)
    expect(planned).toEqual({ code: 2, out: '', err: '<stdin> is not UTF-8 text.\n' })
    const long = shaftwright(['check', '-'], folder, { input: 'seal { }\n'.repeat(1_000_000) })
    expect(long.code).toBe(2)
    expect(long.out).toContain('<stdin>:1:1  error  job/file-too-large\n')
  })

  it('that never ends is not waited for', () => {
    const endless = `cat /dev/zero | ${JSON.stringify(process.execPath)} "$@"`
    const args = [path.join(root, 'server/src/cli/main.ts'), 'check', '-']
    const { status, stdout } = spawnSync('sh', ['-c', endless, 'sh', ...args], { encoding: 'utf8' })
    expect(status).toBe(2)
    expect(stdout).toContain('job/file-too-large')
  })

  it('may be empty', () => {
    expect(shaftwright(['check', '-']).out).toContain('1 file: ')
    expect(shaftwright(['plan', '-'])).toMatchObject({ code: 2, err: 'The job has no drive.\n' })
  })
})
