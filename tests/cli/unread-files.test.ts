// A file that cannot be read is a finding of its own; the others are checked all the same.
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkSchema } from '../../server/src/cli/schemas.ts'
import { largestFile } from '../../server/src/job/file-text.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { folder, held, put, shaftwright } from './run-cli.ts'

const at = (name: string): string => path.join(folder, name)
const job = 'job "A" { vessel: "A" }\nseal s{ free-length: 148 }\n'

/** Files that no user can read, and two that are as they should be. */
function fleet(name: string): void {
  put(`${name}/a.wright`, job)
  fs.writeFileSync(at(put(`${name}/latin.wright`, '')), Buffer.from('job "Caf\xe9" {', 'latin1'))
  fs.writeFileSync(at(put(`${name}/utf-16.wright`, '')), Buffer.from('\uFEFFseal { }\n', 'utf16le'))
  fs.truncateSync(at(put(`${name}/large.wright`, '')), largestFile + 1)
  put(`${name}/most.wright`, `${'#'.repeat(largestFile - 1)}\n`)
  put(`${name}/deep/z.wright`, job)
  // A name that is no UTF-8 cannot be asked for again: this fails for root too.
  fs.mkdirSync(Buffer.concat([Buffer.from(at(`${name}/bad`)), Buffer.from([0xff])]))
  fs.writeFileSync(
    Buffer.concat([Buffer.from(at(`${name}/bad`)), Buffer.from([0xfe]), Buffer.from('.wright')]),
    job,
  )
}

describe('check', () => {
  it('goes on, and has every finding, the summary and its JSON', () => {
    fleet('fleet')
    const { code, out, err } = shaftwright(['check', 'fleet', '--format', 'json'], folder)
    expect({ code, err }).toEqual({ code: 2, err: '' })
    const { files, findings } = checkSchema.parse(held('check.schema.json', out))
    const said = findings.map(({ file, check }) => `${file} ${check}`)
    expect(said.filter((words) => words.includes('job/file-')).sort()).toEqual([
      'fleet/bad\uFFFD job/file-unreadable',
      'fleet/bad\uFFFD.wright job/file-unreadable',
      'fleet/large.wright job/file-too-large',
      'fleet/latin.wright job/file-not-utf8',
      'fleet/utf-16.wright job/file-not-utf8',
    ])
    const only = said.filter((words) => /(latin|large|utf-16|bad)/.test(words))
    expect(only.length, 'one finding each').toBe(5)
    for (const name of ['fleet/a.wright', 'fleet/deep/z.wright'])
      expect(said).toContain(`${name} job/unit-missing`)
    expect(files).toContain('fleet/most.wright')
    expect(files).not.toContain('fleet/bad\uFFFD') // a folder
    const messages = findings.map(({ message }) => message)
    expect(messages).toContain('This folder cannot be read: its name is not UTF-8 text.')
    expect(messages).toContain('This file is UTF-16, not UTF-8 text.')
    expect(messages).toContain('This file is larger than 5 MB, so it is not read.')

    const text = shaftwright(['check', 'fleet'], folder)
    expect(text.code).toBe(2)
    expect(text.out).toContain(`fleet/latin.wright:1:1  error  job/file-not-utf8
  This file is not UTF-8 text.
  Save the file as UTF-8.
`)
    expect(text.out).toMatch(/\n7 files: \d+ errors, /)
  })

  it('goes on in many files too, in threads', () => {
    for (let i = 0; i < 70; i++) put(`many/${i}.wright`, job)
    fs.writeFileSync(at('many/35.wright'), Buffer.from([0xff]))
    const { code, out } = shaftwright(['check', 'many'], folder)
    expect(code).toBe(2)
    expect(out).toContain('many/35.wright:1:1  error  job/file-not-utf8')
    expect(out).toContain('70 files: ')
  })

  it.each([
    [
      'a link in a circle',
      (name: string) => fs.symlinkSync(path.basename(name), name),
      'its links lead in a circle',
    ],
    [
      'a pipe',
      (name: string) => spawnSync('sh', ['-c', 'mkfifo "$1"', 'sh', name]),
      'it is not a regular file',
    ],
    ['a device', (name: string) => fs.symlinkSync('/dev/zero', name), 'it is not a regular file'],
  ])('does not wait for %s', (what, make, why) => {
    put('odd/a.wright', job)
    const name = `odd/${what.replaceAll(' ', '-')}.wright`
    make(at(name))
    const { code, out } = shaftwright(['check', name, 'odd/a.wright'], folder)
    expect(code).toBe(2)
    expect(out).toContain(`${name}:1:1  error  job/file-unreadable\n  This file cannot be read: ${why}.\n`)
    expect(out).toContain('2 files: ')
  })

  it('says at the `use` why a file is not used', () => {
    fs.truncateSync(at(put('uses/large.wright', '')), largestFile + 1)
    fs.writeFileSync(at('uses/latin.wright'), Buffer.from([0xe9]))
    const name = put('uses/a.wright', 'use "large.wright"\nuse "latin.wright"\nuse "none.wright"\n')
    const { code, out } = shaftwright(['check', name], folder)
    expect(code).toBe(1)
    expect(out).toContain('uses/a.wright:1:5  error  job/file-too-large')
    expect(out).toContain('large.wright is larger than 5 MB, so it is not read.')
    expect(out).toContain('uses/a.wright:2:5  error  job/file-not-utf8')
    expect(out).toContain('uses/a.wright:3:5  error  job/file-not-found')
  })
})

describe('format', () => {
  it('goes on, and leaves what it cannot read as it is', () => {
    fleet('laid')
    const before = fs.readFileSync(at('laid/utf-16.wright'))
    const { code, out, err } = shaftwright(['format', 'laid'], folder)
    expect(code).toBe(2)
    expect(out).toBe('laid/a.wright\nlaid/deep/z.wright\n')
    expect(err.trimEnd().split('\n').length).toBe(5)
    expect(err).toContain('laid/utf-16.wright is UTF-16, not UTF-8 text.\n')
    expect(fs.readFileSync(at('laid/a.wright'), 'utf8')).toBe(formatText(job))
    expect(fs.readFileSync(at('laid/utf-16.wright'))).toEqual(before)
    expect(fs.statSync(at('laid/large.wright')).size).toBe(largestFile + 1)
  })

  it.each([
    ['nothing but NUL', '\0'.repeat(2_000_000)],
    ['a NUL somewhere', `${job}\0\n`],
  ])('leaves a file alone that is no text: %s', (_, text) => {
    put('nul/a.wright', text)
    put('nul/b.wright', job)
    for (const options of [['--check'], []]) {
      const { code, out, err } = shaftwright(['format', ...options, 'nul'], folder)
      expect({ code, err }).toEqual({
        code: 2,
        err: 'nul/a.wright is no text file: it contains NUL (U+0000). It is left as it is.\n',
      })
      expect(out).toBe(options.length > 0 ? 'nul/b.wright would change\n' : 'nul/b.wright\n')
      expect(fs.readFileSync(at('nul/a.wright'), 'utf8') === text).toBe(true)
    }
    expect(shaftwright(['check', 'nul/a.wright'], folder).out).toContain('U+0000')
  })

  it('makes no file that would not be read any more', () => {
    const most = '#'.repeat(largestFile)
    const { code, err } = shaftwright(['format', put('most/a.wright', most)], folder)
    expect(code).toBe(2)
    expect(err).toBe('most/a.wright would become larger than 5 MB, and then not be read any more.\n')
    expect(fs.readFileSync(at('most/a.wright'), 'utf8') === most).toBe(true)
  })
})

describe('plan', () => {
  it('says why a file is not read', () => {
    fs.truncateSync(at(put('planned/large.wright', '')), largestFile + 1)
    const { code, out, err } = shaftwright(['plan', 'planned/large.wright'], folder)
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toBe('planned/large.wright is larger than 5 MB, so it is not read.\n')
  })
})

describe('what is called .wright and is no file', () => {
  it('is named, and a link inside the folder is read', () => {
    put('outside.wright', job)
    put('links/real/a.wright', job)
    fs.symlinkSync('real/a.wright', at('links/inside.wright'))
    fs.symlinkSync('gone.wright', at('links/dangling.wright'))
    fs.symlinkSync('circle.wright', at('links/circle.wright'))
    fs.symlinkSync('../outside.wright', at('links/outside.wright'))
    spawnSync('sh', ['-c', 'mkfifo "$1"', '-', at('links/pipe.wright')])
    const { code, out } = shaftwright(['check', 'links', '--format', 'json'], folder)
    expect(code).toBe(2)
    const { findings } = checkSchema.parse(held('check.schema.json', out))
    const unread = findings.filter(({ check }) => check === 'job/file-unreadable')
    expect(unread.map(({ file, message }) => `${file}: ${message}`)).toEqual([
      'links/circle.wright: This file cannot be read: its links lead in a circle.',
      'links/dangling.wright: This file cannot be read: the file does not exist.',
      'links/outside.wright: This file cannot be read: the link leads out of the folder.',
      'links/pipe.wright: This file cannot be read: it is not a regular file.',
    ])
    const read = findings.filter(({ check }) => check === 'job/unit-missing').map(({ file }) => file)
    expect(read).toEqual(['links/inside.wright', 'links/real/a.wright'])
  })
})
