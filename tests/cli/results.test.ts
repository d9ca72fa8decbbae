import fs from 'node:fs'
import path from 'node:path'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { allFigures, areas } from '../../server/src/areas/index.ts'
import type { FileResults } from '../../server/src/cli/file-results.ts'
import { resultsCsv } from '../../server/src/cli/results-csv.ts'
import { resultsJson, resultsSchema } from '../../server/src/cli/results-json.ts'
import { resultsText } from '../../server/src/cli/results-text.ts'
import { built, ferry, folder, found, held, put, shaftwright } from './run-cli.ts'

const jsonOf = (args: readonly string[], cwd?: string) =>
  resultsSchema.parse(
    held('results.schema.json', shaftwright(['results', ...args, '--format', 'json'], cwd).out),
  )

describe('results', () => {
  it('prints value, limit, margin and verdict of a block, what it depends on and where it is from', () => {
    const { code, out } = shaftwright(['results', found])
    expect(code).toBe(0)
    expect(out).toMatch(
      /^docs\/examples\/survey-launch-as-found\.wright {2}Launch 07, .*, revision B \(for-review\)\n/,
    )
    expect(out).toContain('7 errors: results may be missing or wrong. Run `shaftwright check`.')
    expect(out).toMatch(/^main\.dry-1 \(reading\) {2}.*wright:\d+$/m)
    expect(out).toMatch(
      /^ {2}Gap variation +0\.26 ± 0\.02 mm +limit at most 0\.10 mm +margin -0\.18 mm \(-180 %\) +outside$/m,
    )
    expect(out).toMatch(/^ {2}Correction in height, aft-port +0\.37 ± 0\.03 mm$/m)
    expect(out).toMatch(/^ {2}Assumed: .*ambient is 50 °C/m)
    expect(out).toMatch(/^ {2}Source: .*33 CFR 183\.425 Table 5/m)
  })

  // Similar triangles and the definition of a mean: 0.02 mm feelers, gaps of the demo job read on 110 mm.
  it('gives the numbers behind it, whatever units the job shows', () => {
    const { results, files, jobs } = jsonOf([found])
    expect(files).toEqual([{ file: found, errors: 7 }])
    expect(jobs).toMatchObject([{ vessel: 'Launch 07', revision: 'B' }])
    const gaps = results.find(({ figure }) => figure === 'alignment/gap-variation')
    expect(gaps).toMatchObject({ block: 'main.dry-1', unit: 'mm', limit: { high: 0.1 }, verdict: 'outside' })
    expect(gaps?.margin).toBeCloseTo(0.1 - (gaps?.value ?? 0) - (gaps?.uncertainty ?? 0), 9)
    expect(gaps?.marginShare).toBeCloseTo((gaps?.margin ?? 0) / 0.1, 5)
    const text = fs.readFileSync(found, 'utf8').replace('show-in:  metric', 'show-in:  inch')
    const name = put('inch.wright', text)
    put('parts/drivetrain.wright', fs.readFileSync('docs/examples/parts/drivetrain.wright', 'utf8'))
    const numbers = (all: typeof results) =>
      all.map(
        ({ file: _, range: _r, from: _f, limitFrom: _l, assumptions: _a, doubt: _d, source: _s, ...one }) =>
          one,
      )
    expect(numbers(jsonOf([name], folder).results)).toEqual(numbers(results))
  })

  it('of all demos agree with their schema, and say the same as CSV', () => {
    const json = jsonOf(['docs/examples'])
    expect(json.files.map(({ file }) => file)).toEqual(expect.arrayContaining([found, built, ferry]))
    const { code, out } = shaftwright(['results', 'docs/examples', '--format', 'csv'])
    expect(code).toBe(0)
    const rows: readonly Readonly<Record<string, string>>[] = parse(out, { columns: true, bom: true })
    expect(rows.length).toBe(json.results.length + json.notKnown.length)
    expect(rows.slice(0, json.results.length)).toEqual(
      json.results.map((one) =>
        expect.objectContaining({
          file: one.file,
          file_errors: String(json.files.find(({ file }) => file === one.file)?.errors),
          block: one.block,
          figure: one.figure,
          key: Object.values(one.key).join('; '),
          value: String(one.value),
          unit: one.unit,
          margin: one.margin === null ? '' : String(one.margin),
          verdict: one.verdict ?? '',
          source: one.source.join('; '),
        }),
      ),
    )
    expect(rows.slice(json.results.length).every(({ not_known }) => not_known !== '')).toBe(true)
    const text = shaftwright(['results', 'docs/examples'])
    expect(text.code).toBe(0)
    // A block that has no name is called by its kind.
    const headings = new Set(text.out.split('\n').map((line) => line.split(/ \(| {2}/)[0]))
    for (const { block } of json.results) expect(headings).toContain(block)
  })

  it('of one area are those of its folder', () => {
    const { results } = jsonOf([built, '--area', 'electrical'])
    expect(new Set(results.map(({ area }) => area))).toEqual(new Set(['electrical']))
    expect(new Set(results.map(({ figure }) => figure.split('/')[0]))).toEqual(
      new Set(['battery', 'cable', 'controller', 'isolator', 'phases', 'protection']),
    )
    const wrong = shaftwright(['results', built, '--area', 'cable'])
    expect(wrong.code).toBe(2)
    const names = areas.filter(({ figures }) => figures.length > 0).map(({ name }) => name)
    expect(wrong.err).toContain(`Allowed choices are ${names.join(', ')}.`)
  })

  it('says why a figure is not known', () => {
    const input = 'drive d { cable f { length: 3 m } }'
    const { out } = shaftwright(['results', '-', '--format', 'json'], undefined, { input })
    const { notKnown, results } = resultsSchema.parse(JSON.parse(out))
    expect(results).toEqual([])
    expect(notKnown).toContainEqual(
      expect.objectContaining({
        block: 'd.f',
        figure: 'cable/ampacity',
        why: expect.stringContaining('does not state'),
      }),
    )
    expect(shaftwright(['results', '-'], undefined, { input }).out).toContain(
      'Can carry: The cable cannot be worked out',
    )
  })

  it('prints what it can, and ends with 2 where a file cannot be read', () => {
    const good = put('good/a.wright', 'drive d { seal { free-length: 148 mm  fitted-length: 121 mm } }')
    fs.writeFileSync(path.join(folder, 'good/b.wright'), Buffer.from([0xff, 0xfe, 0x00]))
    const { code, out, err } = shaftwright(['results', 'good'], folder)
    expect(code).toBe(2)
    expect(out).toContain(good)
    expect(out).toContain('Compression  27 mm')
    expect(err).toContain('good/b.wright')
    expect(shaftwright(['results', 'nowhere'], folder).code).toBe(2)
  })

  it('lets no name act as a formula in a spreadsheet, and no control character reach the terminal', () => {
    put('=1+1.wright', 'drive d { seal { free-length: 148 mm  fitted-length: 150 mm } }')
    const { out } = shaftwright(['results', '=1+1.wright', '--format', 'csv'], folder)
    const [row] = parse(out, { columns: true, bom: true }) as readonly Readonly<Record<string, string>>[]
    expect(row).toMatchObject({ file: "'=1+1.wright", value: '-2' })
    const input =
      'job "a\u001b[31m" { vessel: "x" }\ndrive d { seal { free-length: 148 mm  fitted-length: 150 mm } }'
    expect(shaftwright(['results', '-'], undefined, { input }).out).not.toContain('\u001b')
  })
})

describe('a series', () => {
  // Invented: no area has one yet. What is held is how one is printed.
  const [example] = allFigures
  if (!example) throw new Error('There is no figure.')
  const figure = {
    ...example,
    title: 'Range',
    kind: 'length' as const,
    unit: 'mm',
    over: { title: 'speed', kind: 'speed' as const },
  }
  const point = (at: number, value: number) => ({
    figure,
    amount: { at, value, key: { load: 'full' }, limit: { low: 1 } },
    verdict: 'within' as const,
    margin: { size: value - 1, share: value - 1 },
  })
  const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 5 } }
  const file: FileResults = {
    file: 'a.wright',
    errors: 0,
    job: undefined,
    blocks: [
      {
        kind: 'drive',
        at: { file: 'a.wright', range, block: 'd' },
        system: 'metric',
        // A knot is 1852 m an hour.
        results: [point(1852 / 3600, 3), point(3704 / 3600, 2)],
      },
    ],
  }

  it('has its places in text, JSON and CSV', () => {
    const lines = resultsText(file).map((line) => (typeof line === 'string' ? line : line.flat().join(' ')))
    expect(lines.join('\n')).toMatch(
      /Range, full, 1 kn +3 m +limit at least 1 m[\s\S]*Range, full, 2 kn +2 m/,
    )
    const json = resultsJson([file], '2026-11-30')
    expect(json.results.map(({ at, value, margin }) => ({ at, value, margin }))).toEqual([
      { at: { value: 1, unit: 'kn' }, value: 3000, margin: 2000 },
      { at: { value: 2, unit: 'kn' }, value: 2000, margin: 1000 },
    ])
    const rows: readonly Readonly<Record<string, string>>[] = parse(resultsCsv(json), {
      columns: true,
      bom: true,
    })
    expect(rows.map(({ at, at_unit, key, value }) => ({ at, at_unit, key, value }))).toEqual([
      { at: '1', at_unit: 'kn', key: 'full', value: '3000' },
      { at: '2', at_unit: 'kn', key: 'full', value: '2000' },
    ])
  })
})
