import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import type { NewJobParams } from '../../server/src/editor/client-requests.ts'
import { newJobText } from '../../server/src/editor/new-job/new-job.ts'
import { malformed } from '../../server/src/editor/transport/malformed.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import type { Block } from '../../server/src/job/model.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { findKind } from '../../server/src/vocabulary/index.ts'
import { asks } from '../../server/src/vocabulary/status.ts'

const asked: readonly NewJobParams[] = ([1, 2] as const).flatMap((drives) =>
  (['metric', 'inch'] as const).flatMap((units) =>
    (['studs', 'shims'] as const).map((feet) => ({ vessel: 'Launch 07', drives, units, feet })),
  ),
)

function read(text: string) {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('boat.wright', openDocument(text), () => undefined)
  const findings = new Checker(analysis, allChecks).check(file, { today: '2026-03-09' })
  return { blocks: analysis.blocks(file), findings }
}

const everyBlock = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => [block, ...everyBlock(block.children)])

describe.each(asked)('a new job: $drives, $units, $feet', (params) => {
  const text = newJobText(params)

  it('is laid out', () => {
    expect(formatText(text)).toBe(text)
  })

  it('has no figure that nobody gave', () => {
    expect(text.replaceAll('"Launch 07', '').replaceAll('mm2', '')).not.toMatch(/\d/)
  })

  it('has every part of a drive, its cables, its fuse, its isolator and a reading', () => {
    const [drive] = read(text).blocks.filter(({ kind }) => kind === 'drive')
    expect(drive?.children.map(({ kind }) => kind)).toEqual([
      ...['propeller', 'shaft', 'bearing', 'shaft-log', 'seal', 'coupling', 'gear', 'motor', 'controller'],
      ...['bed', 'cable', 'protection', 'isolator', 'cable', 'phase-map', 'reading'],
    ])
    const bed = drive?.children.find(({ kind }) => kind === 'bed')
    expect(bed?.children.map(({ name }) => name)).toEqual(['aft-port', 'aft-stbd', 'fwd-port', 'fwd-stbd'])
  })

  it('asks for all that a review asks for', () => {
    const left = everyBlock(read(text).blocks).flatMap((block) =>
      Object.entries(findKind(block.kind)?.facts ?? {})
        .filter(([name, { from, when }]) => {
          const counts = !when || block.facts.get(when.fact)?.value === when.is
          return asks('for-review', from) && counts && !block.facts.has(name) && !block.blanks.has(name)
        })
        .map(([name]) => `${block.path}: ${name}`),
    )
    expect(left).toEqual([])
  })

  it('has one quiet finding a block, and no other but cautions', () => {
    const { findings } = read(text)
    expect(new Set(findings.map(({ severity }) => severity))).toEqual(new Set(['information']))
    const others = findings.filter(({ check }) => !check.startsWith('caution/'))
    const places = others.map(({ at }) => `${at.section.text.slice(0, 20)} ${at.span.start}`)
    expect(new Set(places).size).toBe(places.length)
  })

  it('has units of one system', () => {
    const others = params.units === 'metric' ? /\? (?:in|ft|hp|AWG)\b/ : /\? (?:mm2?|m|kW)\b/
    expect(text).not.toMatch(others)
  })
})

describe('the second drive', () => {
  it('is like the first, and says what differs', () => {
    const text = newJobText({ vessel: 'Launch 07', drives: 2, units: 'metric', feet: 'studs' })
    expect(text).toMatch(/drive starboard \{\n {2}like: +port\n/)
    expect(text.slice(text.indexOf('drive starboard')).match(/\?/g)?.length).toBeLessThan(25)
  })
})

describe('the vessel', () => {
  it.each(['The "Heron"', 'a \\ b', 'two\nlines', '\u{1F6A2}', '"'])('may be called %j', (vessel) => {
    const { blocks } = read(newJobText({ vessel, drives: 1, units: 'metric', feet: 'studs' }))
    const job = blocks.find(({ kind }) => kind === 'job')
    expect(job?.facts.get('vessel')?.value).toBe(vessel.replaceAll('\n', ' '))
  })
})

describe('a request for a new job', () => {
  const sound = { vessel: 'Launch 07', drives: 2, units: 'metric', feet: 'studs' }

  it('is answered when it says all that is asked', () => {
    expect(malformed('shaftwright/newJob', sound)).toBeUndefined()
  })

  it.each([{ drives: 3 }, { units: 'imperial' }, { feet: undefined }, { vessel: 7 }])('%j', (wrong) => {
    expect(malformed('shaftwright/newJob', { ...sound, ...wrong })).toBeDefined()
  })
})
