import { spawn } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkSchema, schemas } from '../../server/src/cli/schemas.ts'
import { built, ferry, folder, found, held, packageVersion, put, root, shaftwright } from './run-cli.ts'

describe('check', () => {
  it('shows the line, a caret, the words and the source, and ends with 1 on errors', () => {
    const { code, out } = shaftwright(['check', found])
    expect(code).toBe(1)
    expect(out).toContain(`62 |     length: 140
   |             ^^^`)
    for (const id of ['alignment/gap-variation-outside', 'job/fact-missing', 'cable/undersized'])
      expect(out).toContain(id)
    expect(out).toMatch(/1 file: \d+ errors/)
    expect(out).not.toContain('\u001b[')
  })

  it('ends with 0 when there are no errors', () => {
    expect(shaftwright(['check', built, '--today', '2026-06-01']).code).toBe(0)
  })

  it('prints what its schema says, whole, whatever the size', () => {
    const many = put(
      'many.wright',
      Array.from({ length: 2000 }, (_, i) => `seal s${i} { free-length: ${i} }`).join('\n'),
    )
    const { code, out } = shaftwright(['check', many, '--format', 'json'], folder)
    expect(code).toBe(1)
    expect(checkSchema.parse(held('check.schema.json', out)).findings.length).toBeGreaterThanOrEqual(2000)
  })

  it('takes a folder for all job files below it, and no path for the folder it is in', () => {
    put('fleet/a.wright', 'job "a" { vessel: "a" }\n')
    put('fleet/deep/b.wright', 'job "b" { vessel: "b" }\n')
    put('fleet/.hidden/c.wright', 'nonsense\n')
    const { out } = shaftwright(['check', '--format', 'json'], path.join(folder, 'fleet'))
    expect(checkSchema.parse(JSON.parse(out)).files).toEqual(['a.wright', 'deep/b.wright'])
  })

  it('reads nothing outside the folder', () => {
    put('outside.wright', 'seal x { }')
    put('in/deep/loop.wright', 'use "loop.wright"\nuse "../../outside.wright"\nuse "none.wright"\n')
    const { code, out } = shaftwright(['check', 'loop.wright'], path.join(folder, 'in/deep'))
    expect(code).toBe(1)
    for (const id of ['job/file-loop', 'job/file-outside', 'job/file-not-found']) expect(out).toContain(id)
  })

  it('puts carets under the marked text behind tabs and wide signs', () => {
    const name = put('tabs.wright', 'job "船" {\n\tvessel: "船の名" ;\n}\n')
    const { out } = shaftwright(['check', name], folder)
    expect(out).toContain('2 |     vessel: "船の名" ;\n  |                      ^')
  })

  it('does not let a file steer the terminal', () => {
    const name = put('steering.wright', 'seal { free-length: "\u001b[31m\u202e" }\n')
    const { out } = shaftwright(['check', name], folder)
    expect(out).toContain('seal { free-length: "␛[31m\uFFFD" }')
    for (const sign of ['\u001b', '\u202e']) expect(out).not.toContain(sign)
  })

  it('counts columns without a byte order mark', () => {
    expect(shaftwright(['check', put('mark.wright', '\uFEFFnonsense\n')], folder).out).toContain(
      'mark.wright:1:1  error',
    )
  })

  it('shows the part of a long line around the mark', () => {
    const name = put('long.wright', `seal { free-length: ${' '.repeat(5000)}148 }\n`)
    const lines = shaftwright(['check', name, '--today', '2026-06-01'], folder).out.split('\n')
    const at = lines.findIndex((line) => line.includes('job/unit-missing'))
    expect(lines[at + 1]?.length).toBeLessThan(250)
    expect(lines[at + 1]?.indexOf('148')).toBe(lines[at + 2]?.indexOf('^^^'))
  })

  it('takes a file named twice once', () => {
    put('twice/a.wright', 'seal { }\n')
    const { out } = shaftwright(['check', '.', './a.wright', '--format', 'json'], path.join(folder, 'twice'))
    expect(checkSchema.parse(held('check.schema.json', out)).files).toEqual(['a.wright'])
  })

  it('holds concessions against the day it is given', () => {
    const name = put(
      'conceded.wright',
      `concession seal/shaft-size-differs {
  on:         s
  reason:     "on order"
  granted-by: "the yard"
  until:      2026-04-15
}
shaft a { diameter: 35 mm }
seal s { shaft-size: 32 mm }\n`,
    )
    const on = (today: string) => shaftwright(['check', name, '--today', today], folder).out
    expect(on('2026-04-15')).not.toContain('job/concession-expired')
    expect(on('2026-04-16')).toContain('job/concession-expired')
  })

  it('does not wait for its input', async () => {
    const args = [path.join(root, 'server/src/cli/main.ts'), 'check', found]
    const run = spawn(process.execPath, args, { cwd: root, stdio: ['pipe', 'ignore', 'ignore'] })
    const code = await new Promise((resolve) => run.once('exit', resolve))
    expect(run.stdin.writableEnded).toBe(false)
    expect(code).toBe(1)
  })

  it('stays on its feet in a megabyte of noise', () => {
    const name = put('noise.wright', '}{:,][(…"x # é\t±'.repeat(70_000))
    expect(shaftwright(['check', name], folder).code).toBe(1)
  })

  it('counts more findings than a call takes arguments', { timeout: 60_000 }, () => {
    const { code, out } = shaftwright(['check', put('many-faults.wright', '}\n'.repeat(150_000))], folder)
    expect(code).toBe(1)
    expect(out).toContain('1 file: 150000 errors')
  })

  it('shows a hundred findings of a file and counts the others', () => {
    put('hundreds/a.wright', '}\n'.repeat(130))
    put('hundreds/b.wright', '}\n'.repeat(101))
    put('hundreds/c.wright', '}\n'.repeat(100))
    const { code, out } = shaftwright(['check', 'hundreds'], folder)
    expect(code).toBe(1)
    expect(out.match(/^hundreds.*:\d+:1 {2}error/gm)?.length).toBe(300)
    expect(out.split('\n').filter((line) => line.includes(' more '))).toEqual([
      '30 more findings in hundreds/a.wright: fix these first, or use --format json',
      '1 more finding in hundreds/b.wright: fix these first, or use --format json',
    ])
    expect(out).toContain('3 files: 331 errors')
    const json = shaftwright(['check', 'hundreds', '--format', 'json'], folder).out
    expect(checkSchema.parse(JSON.parse(json)).findings.length).toBe(331)
  })

  // https://no-color.org: NO_COLOR, when present and not empty, whatever its value. FORCE_COLOR as it is commonly read (no standard).
  it.each([
    ['piped, plain', {}, false],
    ['with FORCE_COLOR=1, coloured', { FORCE_COLOR: '1' }, true],
    ['with FORCE_COLOR=0, plain', { FORCE_COLOR: '0' }, false],
    ['with NO_COLOR=1 whatever else is set, plain', { NO_COLOR: '1', FORCE_COLOR: '1' }, false],
    ['with NO_COLOR empty, as without', { NO_COLOR: '', FORCE_COLOR: '1' }, true],
  ])('is %s', (_what, env, wanted) => {
    const name = put('colours.wright', 'seal { free-length: 148 }\n')
    const { out } = shaftwright(['check', name], folder, { env })
    expect(out).toContain('job/unit-missing')
    expect(out.includes('\u001b[31m')).toBe(wanted)
    expect(out.includes('\u001b[')).toBe(wanted)
    const json = shaftwright(['check', name, '--format', 'json'], folder, { env }).out
    expect(checkSchema.parse(JSON.parse(json)).findings.length).toBeGreaterThan(0)
  })
})

describe('check of jobs by name', () => {
  it('names itself, and what each job says it is', () => {
    put('named/a.wright', 'job "A" { vessel: "Ann"  revision: "C"  status: issued }\n')
    put('named/b.wright', 'seal s { free-length: 148 mm }\n')
    put('named/c.wright', 'job { vessel: "Cat" }\n')
    const { out } = shaftwright(['check', 'named', '--format', 'json'], folder)
    const { tool, jobs, files } = checkSchema.parse(held('check.schema.json', out))
    expect(tool).toEqual({ name: 'shaftwright', version: packageVersion })
    expect(files.length).toBe(3)
    expect(jobs).toEqual([
      { file: 'named/a.wright', vessel: 'Ann', title: 'A', revision: 'C', status: 'issued' },
      { file: 'named/c.wright', vessel: 'Cat', title: null, revision: null, status: null },
    ])
  })

  it('ends with 1 when there are more warnings than allowed, and says so', () => {
    const unused = `drive main { gear { ratio: 2.5 } }
concession alignment/gaps-impossible {
  on:         main
  reason:     "read again after launch"
  granted-by: "design office"
  until:      2099-04-15
}
`
    const name = put('warnings.wright', unused)
    const counted = shaftwright(['check', name, '--format', 'json'], folder)
    const { findings } = checkSchema.parse(JSON.parse(counted.out))
    const warnings = findings.filter(({ severity }) => severity === 'warning').length
    expect(warnings).toBeGreaterThan(0)
    expect(counted.code).toBe(0)
    const upTo = (most: number) => shaftwright(['check', name, '--max-warnings', String(most)], folder)
    expect(upTo(warnings)).toMatchObject({ code: 0, err: '' })
    expect(upTo(warnings - 1)).toMatchObject({
      code: 1,
      err: `Too many warnings: ${warnings}, but at most ${warnings - 1} are allowed.\n`,
    })
  })
})

describe('format', () => {
  it('names what would change, changes it, and is then content', () => {
    const name = put('wild.wright', 'seal{\nfree-length:148mm}\n')
    expect(shaftwright(['format', '--check', name], folder)).toMatchObject({
      code: 1,
      out: `${name} would change\n`,
    })
    expect(shaftwright(['format', name], folder).code).toBe(0)
    expect(shaftwright(['format', '--check', name], folder)).toMatchObject({ code: 0, out: '' })
  })

  it('leaves a file alone that is not UTF-8, and formats the others', () => {
    const good = put('bytes/a.wright', 'seal{}\n')
    const bytes = Buffer.from([0x61, 0x3a, 0xe9, 0x0a])
    fs.writeFileSync(path.join(folder, 'bytes/b.wright'), bytes)
    const { code, err } = shaftwright(['format', 'bytes'], folder)
    expect(code).toBe(2)
    expect(err).toContain('b.wright is not UTF-8 text')
    expect(fs.readFileSync(path.join(folder, 'bytes/b.wright'))).toEqual(bytes)
    expect(fs.readFileSync(path.join(folder, good), 'utf8')).toBe('seal { }\n')
  })
})

describe('anything else', () => {
  it('tells its version', () => {
    expect(shaftwright(['--version'])).toEqual({ code: 0, out: `${packageVersion}\n`, err: '' })
  })

  it.each([
    ['check', 'no-such-file.wright'],
    ['check', '--format', 'xml'],
    ['check', '--today', '2026-02-30'],
    ['check', 'docs/checks'],
    ['plan', 'docs'],
    ['plan', found, '--reading', 'none'],
    ['plan'],
    ['plan', found, '--drive', 'none'],
    ['plan', ferry, '--drive', 'port', '--reading', 'none'],
    ['check', found, '--max-warnings', '-1'],
    ['check', found, '--max-warnings', 'few'],
    ['nonsense'],
    ['serve'],
  ])('could not run: %s %s', (...args) => {
    const { code, err } = shaftwright(args)
    expect(code).toBe(2)
    expect(err).not.toBe('')
  })

  it.each(['check', 'plan', 'format'])('says in words that there is no such file: %s', (command) => {
    const { err } = shaftwright([command, 'nothing.wright'])
    expect(err).toMatch(/^nothing\.wright.*(does not exist|not found)/)
    expect(err).not.toContain('ENOENT')
  })

  it('says in words that a folder is no job file', () => {
    expect(shaftwright(['plan', 'docs']).err).toBe('docs cannot be read: it is a folder, not a file.\n')
  })

  it.each(['check', 'plan', 'format'])('reads regular files only, as a pipe may never end: %s', (command) => {
    const { code, out, err } = shaftwright([command, os.devNull])
    expect(code).toBe(2)
    expect(out + err).toContain('cannot be read: it is not a regular file.')
  })

  it('has its schemas in docs', () => {
    for (const [name, schema] of Object.entries(schemas())) {
      const text = fs.readFileSync(path.join(root, 'docs/schemas', name), 'utf8')
      expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(schema)))
    }
  })
})
