// `check` of so many files that threads share them: the words and their order are those of one file after the other.
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { checkSchema } from '../../server/src/cli/schemas.ts'

const main = path.resolve(import.meta.dirname, '../../server/src/cli/main.ts')
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'shaftwright-archive-'))
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }))

const check = (...args: readonly string[]) => {
  const run = spawnSync(process.execPath, [main, 'check', ...args], { cwd: folder, encoding: 'utf8' })
  return { code: run.status, out: run.stdout, err: run.stderr }
}

fs.writeFileSync(path.join(folder, 'parts.wright'), 'gear standard { ratio: 2.5 }\n')
const names = Array.from({ length: 90 }, (_, i) => `job-${String(i).padStart(2, '0')}.wright`)
for (const [i, name] of names.entries())
  fs.writeFileSync(
    path.join(folder, name),
    `use "parts.wright"\njob "${i}" { vessel: "V" }\ndrive d {\n  gear { like: standard }\n${i % 3 === 0 ? `  seal { free-length: ${i} kg }\n` : ''}}\n`,
  )

it('is told as one file after the other', () => {
  const json = check('.', '--format', 'json')
  const { files, findings } = checkSchema.parse(JSON.parse(json.out))
  expect(files).toEqual([...names, 'parts.wright'])
  const faulty = names.filter((_, i) => i % 3 === 0)
  expect(findings.filter((f) => f.check === 'job/unit-wrong-kind').map((f) => f.file)).toEqual(faulty)
  const alone = faulty
    .slice(0, 3)
    .flatMap((name) => checkSchema.parse(JSON.parse(check(name, '--format', 'json').out)).findings)
  expect(findings.filter(({ file }) => faulty.slice(0, 3).includes(file))).toEqual(alone)
  expect(json.code).toBe(1)

  const text = check('.')
  const told = [...text.out.matchAll(/^(job-\d\d\.wright):\d+:\d+ {2}error {2}job\/unit-wrong-kind/gm)]
  expect(told.map(([, name]) => name)).toEqual(faulty)
  expect(text.out).toContain(
    `91 files: ${findings.filter(({ severity }) => severity === 'error').length} error`,
  )
})

it('reports an unreadable file in order, and checks the rest', () => {
  const broken = path.join(folder, 'job-70.wright')
  fs.writeFileSync(broken, Buffer.from([0xff, 0xfe, 0x00]))
  const { code, out, err } = check('.')
  expect({ code, err }).toEqual({ code: 2, err: '' })
  const places = ['job-69.wright:', 'job-70.wright:1:1', 'job-72.wright:'].map((words) => out.indexOf(words))
  expect(places).not.toContain(-1)
  expect(places).toEqual(places.toSorted((a, b) => a - b))
  expect(out.slice(places[1])).toMatch(/^job-70\.wright:1:1 {2}error {2}job\/file-not-utf8\n/)
})
