import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type CodeLens, ErrorCodes, LSPErrorCodes } from 'vscode-languageserver'
import { codeLenses } from '../../server/src/editor/hints/code-lens.ts'
import { plannedAt, planOf as sheetOf } from '../../server/src/editor/plan/plan.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { startProcess } from './client.ts'

const examples = resolve(import.meta.dirname, '../../docs/examples')
const demo = readFileSync(resolve(examples, 'survey-launch-as-built.wright'), 'utf8')

function sectionsOf(text: string) {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('boat.wright', openDocument(text), () => undefined)
  return file.document.sections.map((section) => ({ view: { analysis, file }, section }))
}

/** `reading one: Within: …`, one line a lens. */
const lensesOf = (text: string): readonly string[] =>
  sectionsOf(text).flatMap(({ view, section }) =>
    codeLenses(view, section).map(
      ({ span, words }) => `${section.text.slice(span.start, span.end)}: ${words}`,
    ),
  )

/** Two readings of which the second is true, with a move between: common practice, no source, that opposite gaps alike mean no slope. */
const put = (more = '', second = '') => `drive d {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft { from-coupling: 200 mm  across: 0 mm }
    foot port { from-coupling: 600 mm  across: 140 mm port }
    foot stbd { from-coupling: 600 mm  across: 140 mm starboard }
  }
  reading one {
    taken: 2026-03-04
    afloat: no
    gauge: 0.02 mm
    gaps: top 1.20 mm, starboard 1.10 mm, bottom 1.00 mm, port 1.10 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
  ${more}
  reading two {
    taken: 2026-03-05
    afloat: yes
    gauge: 0.02 mm
    gaps: top 1.10 mm, starboard 1.10 mm, bottom 1.10 mm, port 1.10 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
    ${second}
  }
}
`

describe('code lenses', () => {
  it('give a drive its state, and a reading what no finding says of it; both lead to the plan', () => {
    const move = `move after one { done: 2026-03-04
    aft:  up 1 turn
    port: up 3.5 flats, port 0.1 mm
    stbd: up 3.5 flats, port 0.1 mm
  }`
    const change = 'Since one: gap variation 0.20 → 0.00 mm, 3 feet moved'
    expect(lensesOf(put(move))).toEqual([
      'drive d: two: within its limits',
      'drive d: Plan',
      'reading one: Plan',
      'reading two: Within: 0.00, limit 0.10 mm',
      'reading two: Plan',
      `reading two: ${change}`,
    ])
  })

  it('say when nothing was moved, and count only moves in between', () => {
    expect(lensesOf(put('move after two { done: 2026-03-04  aft: up 1 turn }')).join('\n')).toContain(
      'no foot moved',
    )
  })

  it('take the readings in the order they were taken, not written', () => {
    const text = put().replace('2026-03-05', '2026-03-01')
    expect(lensesOf(text)[0]).toBe('drive d: one: outside its limits')
    expect(lensesOf(text).join('\n')).toContain('Since two: gap variation 0.00 → 0.20 mm')
  })

  it('say over a drive that it was moved since', () => {
    expect(lensesOf(put('', '}\n  move after two { done: 2026-03-10  aft: up 1 turn')).at(0)).toBe(
      'drive d: two: moved since, read again',
    )
  })

  it('are silent over a reading that cannot be worked out', () => {
    expect(lensesOf('drive d { reading one { taken: 2026-03-04 } }')).toEqual([])
    expect(lensesOf(put('', 'gaps: top 3')).join('\n')).not.toContain('NaN')
  })

  it('never throw on a prefix of a demo', () => {
    fc.assert(
      fc.property(fc.nat(demo.length), (length) => {
        for (const words of lensesOf(demo.slice(0, length))) expect(words).not.toMatch(/NaN|undefined|\n/)
      }),
      { numRuns: 60 },
    )
  })
})

describe('the plan at a place', () => {
  const planOf = (text: string, at: string) => {
    const [first] = sectionsOf(text)
    const planned = first && plannedAt(first.view, first.section, first.section.text.indexOf(at))
    return planned && sheetOf(first.view, planned)
  }

  it('is that of the reading there, else of the last reading of the drive', () => {
    // Slope 0.20 mm on 100 mm = 2 mrad: foot at 600 mm 1.2 mm up (similar triangles).
    expect(planOf(put(), 'gaps: top 1.20')).toMatch(/^d one: outside its limits.*port +up 1\.20 ±/s)
    expect(planOf(put(), 'drive d')).toMatch(/^d two: within its limits.*Changed since one: gap variation/s)
    expect(planOf(put(), 'gaps: top 1.20')).toContain('Caution: Isolate and lock off the drive')
  })

  it('says why there is none', () => {
    expect(planOf('drive d { }', 'drive')).toContain('no reading yet')
    expect(planOf('drive d { reading one { taken: 2026-03-04 } }', 'taken')).toContain('no coupling block')
    expect(planOf('battery b { }', 'battery')).toBeUndefined()
  })
})

describe('lenses over the server', () => {
  let served: Awaited<ReturnType<typeof startProcess>>
  beforeAll(async () => {
    served = await startProcess()
  })
  afterAll(() => served.stop())

  it('lead to the plan by a command that any client can run', async () => {
    const { connection, initialized, open } = served.client
    const uri = 'file:///jobs/a.wright'
    open(uri, put())
    const lenses = await connection.sendRequest<CodeLens[]>('textDocument/codeLens', {
      textDocument: { uri },
    })
    const [first] = lenses
    expect(first).toMatchObject({ range: { start: { line: 0, character: 0 } } })
    expect(initialized.capabilities.executeCommandProvider?.commands).toContain(first?.command?.command)
    const plan = await connection.sendRequest('workspace/executeCommand', {
      command: first?.command?.command,
      arguments: first?.command?.arguments,
    })
    expect(plan).toMatch(/^Vessel: .*\nFile: +a\.wright\n\nd two: within its limits/s)
  })

  it.each([
    { command: 'shaftwright.plan' },
    { command: 'shaftwright.plan', arguments: [] },
    { command: 'shaftwright.plan', arguments: [{ textDocument: { uri: 'file:///not/open.wright' } }] },
  ])('a command that says too little gets no answer: %j', async (params) => {
    expect(await served.client.connection.sendRequest('workspace/executeCommand', params)).toBeNull()
  })

  it('a command that is not known is an error', async () => {
    await expect(
      served.client.connection.sendRequest('workspace/executeCommand', { command: 'other' }),
    ).rejects.toMatchObject({ code: ErrorCodes.InvalidParams })
  })

  it('of a long file give way to what is typed meanwhile: LSP 3.17, ContentModified', async () => {
    const { connection, open } = served.client
    const textDocument = { uri: 'file:///jobs/long.wright', version: 2 }
    const drives = Array.from({ length: 200 }, (_, i) => put().replace('drive d', `drive d${i}`))
    open(textDocument.uri, drives.join(''))
    const answer = connection.sendRequest('textDocument/codeLens', { textDocument })
    await connection.sendNotification('textDocument/didChange', {
      textDocument,
      contentChanges: [{ text: 'drive d { }' }],
    })
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified })
  })
})
