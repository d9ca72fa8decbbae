// Findings about what a drive takes from the one it is `like`: the language's own rules (design decisions, no outside source).
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { awaitedUnder } from '../../server/src/areas/alignment/plan-trust.ts'
import { correctionOf } from '../../server/src/areas/alignment/plans/correction.ts'
import { lastReading } from '../../server/src/areas/alignment/plans/moves.ts'
import { fixesFor } from '../../server/src/areas/fixes.ts'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import type { Place } from '../../server/src/job/model.ts'
import { lookupFrom } from '../../server/src/store/store.ts'

const today = '2026-06-01'
const written = ({ section, span }: Place) => section.text.slice(span.start, span.end)

function checked(text: string) {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const plan = (name: string) => {
    const drive = analysis.blocks(file).find((block) => block.name === name)
    const reading = drive && lastReading(drive)
    if (!reading) throw new Error(`${name} has no reading`)
    const lookup = lookupFrom(reading, { analysis, file })
    return {
      outcome: correctionOf(reading, lookup),
      awaited: awaitedUnder(reading, lookup, { file, findings }),
    }
  }
  return { findings, plan, given: { analysis, file, today, findings } }
}

const parts = (coupling: string) => `
  coupling { ${coupling}  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
`
const reading = `
  reading dry-1 {
    taken: 2026-05-11
    afloat: no
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
  }
`
const sound = 'flange-diameter: 125 mm  gauge-diameter: 110 mm'
const tooLarge = 'flange-diameter: 125 mm  gauge-diameter: 130 mm'
const fault = 'alignment/gauge-diameter-beyond-flange'
const twins = (coupling: string, starboard = '') =>
  `drive port {${parts(coupling)}}\ndrive starboard {\n  like: port\n${starboard}${reading}}\n`

describe('a finding about what a drive takes', () => {
  const { findings } = checked(twins(tooLarge))
  const [port, starboard] = findings.filter(({ check }) => check === fault)

  it('stands in that drive, says which block it is of, and points to where that is written', () => {
    expect(port && written(port.at)).toBe('130 mm')
    expect(starboard && written(starboard.at)).toBe('port')
    // Its line would be too long with the name of the block.
    expect(starboard?.message).toBe(port?.message)
    expect(starboard?.detail).toBe('At starboard.coupling.')
    expect(starboard?.related?.map(({ at }) => written(at))).toEqual(['125 mm', '130 mm'])
  })

  it('goes when the drive says it right itself', () => {
    const own = checked(twins(tooLarge, '  coupling { gauge-diameter: 110 mm }'))
    expect(own.findings.filter(({ check }) => check === fault)).toHaveLength(1)
  })

  it('stands at the fact of the drive itself that is wrong', () => {
    const own = checked(twins(sound, '  coupling { gauge-diameter: 140 mm }'))
    expect(own.findings.filter(({ check }) => check === fault).map(({ at }) => written(at))).toEqual([
      '140 mm',
    ])
  })

  it('has no fix: its text is that of the other drive', () => {
    const all = checked(twins(tooLarge))
    const there = all.findings.filter(({ at }) => at.taken)
    expect(there.length).toBeGreaterThan(0)
    for (const finding of there) expect(fixesFor(finding, all.given)).toEqual([])
  })

  it.each([
    ['starboard.coupling', ['error', 'information']],
    ['starboard', ['error', 'information']],
    ['starboard.bed', ['error', 'error']],
    ['port.coupling', ['information', 'error']],
  ])('is accepted by a concession on its own block: %s', (on, severities) => {
    const accepted = checked(
      `${twins(tooLarge)}concession ${fault} { on: ${on}  reason: "a"  granted-by: "b"  until: 2026-12-31 }\n`,
    )
    expect(accepted.findings.filter(({ check }) => check === fault).map(({ severity }) => severity)).toEqual(
      severities,
    )
  })
})

describe('the plan of a drive that takes coupling and bed', () => {
  it('is that of the same drive written out', () => {
    const taking = checked(twins(sound)).plan('starboard')
    const whole = checked(`drive starboard {${parts(sound)}${reading}}\n`).plan('starboard')
    expect(taking.outcome.ok && whole.outcome.ok).toBe(true)
    expect(taking.awaited).toEqual([])
    const plain = (of: unknown) => JSON.stringify(of)
    expect(plain(taking.outcome)).toBe(plain(whole.outcome))
  })

  it('waits for what is wrong in the coupling that it takes', () => {
    expect(
      checked(twins(tooLarge))
        .plan('starboard')
        .awaited.map(({ check }) => check),
    ).toEqual([fault])
    const unread = checked(twins('flange-diameter: 125 mm  gauge-diameter: 11 kg')).plan('starboard')
    expect(
      unread.awaited.map(({ check, message, detail = '' }) => [
        check,
        /starboard\.coupling/.exec(`${message} ${detail}`)?.[0],
      ]),
    ).toEqual([['job/source-unread', 'starboard.coupling']])
  })

  it('does not wait for what no plan asks for', () => {
    const { awaited } = checked(twins(`${sound}  rated-torque: 400 mm`)).plan('starboard')
    expect(awaited.map(({ check }) => check)).toEqual([])
  })
})

describe('the twin-screw demo', () => {
  const examples = resolve(import.meta.dirname, '../../docs/examples')
  const text = readFileSync(resolve(examples, 'twin-screw-ferry.wright'), 'utf8')
  const library = openDocument(readFileSync(resolve(examples, 'parts/drivetrain.wright'), 'utf8'))

  it('has nothing to find, and its second drive is less than half as long as the first', () => {
    const analysis = new Analysis()
    analysis.begin()
    const file = linkFile('a.wright', openDocument(text), () => library)
    const found = new Checker(analysis, allChecks).check(file, { today })
    expect(found.filter(({ check }) => !check.startsWith('caution/'))).toEqual([])
    const lines = (name: string) => text.split(`drive ${name} {`)[1]?.split('\n}')[0]?.split('\n').length ?? 0
    expect(lines('starboard')).toBeLessThan(lines('port') / 2)
  })
})
