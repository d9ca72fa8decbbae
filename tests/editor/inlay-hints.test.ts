import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  everyHint,
  type HintSettings,
  type HintSort,
  inlayHints,
} from '../../server/src/editor/hints/inlay-hints.ts'
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

const no: HintSettings = { units: 'off', sums: false, cables: false, moves: false, results: false }

/** The text with its hints in « ». */
function hinted(text: string, settings: HintSort | Partial<HintSettings>): string {
  const on = typeof settings !== 'string' ? settings : { [settings]: everyHint[settings] }
  return sectionsOf(text)
    .map(({ view, section }) =>
      inlayHints(view, section, { settings: { ...no, ...on } }).reduceRight(
        (said, { at, words }) => `${said.slice(0, at)} «${words}»${said.slice(at)}`,
        section.text,
      ),
    )
    .join('')
}

describe('hints of units', () => {
  // Factors: NIST SP 811 (2008), B.8: 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, 1 lbf·ft = 1.355 818 N·m, 1 hp (550 ft·lbf/s) = 745.6999 W.
  it.each([
    ['shaft', 'length: 50.8 mm', 'length: 50.8 mm «(2 in)»'],
    ['shaft', 'length: 12 in', 'length: 12 in «(304.8 mm)»'],
    ['motor', 'mass: 100 lb', 'mass: 100 lb «(45.4 kg)»'],
    ['motor', 'power: 15 kW', 'power: 15 kW «(20 hp)»'],
    ['coupling', 'rated-torque: 300 lbf·ft', 'rated-torque: 300 lbf·ft «(407 N·m)»'],
    ['coupling', 'bolts: 4 x M10 class 8.8, 45 N·m', 'bolts: 4 x M10 class 8.8, 45 N·m «(33.2 lbf·ft)»'],
    ['coupling', 'offset: max 0.254 mm [maker]', 'offset: max 0.254 mm «(0.01 in)» [maker]'],
    ['seal', 'compression: 26 mm +3/-2 mm', 'compression: 26 mm +3/-2 mm «(0.94 to 1.14 in)»'],
    ['foot', 'across: 140 mm port', 'across: 140 mm port «(5.51 in)»'],
    ['bed', 'shims: 0.0508 mm, 0.254 mm', 'shims: 0.0508 mm, 0.254 mm «(0.0020, 0.0100 in)»'],
    // ASTM B258: 2/0 AWG is 67.43 mm2.
    ['cable', 'conductor: 2/0 AWG', 'conductor: 2/0 AWG «(67.43 mm2)»'],
    // ISO 286-2: 35 h9 is 0 to -62 µm.
    ['shaft', 'diameter: 35 mm h9', 'diameter: 35 mm h9 «(1.3755 to 1.3780 in)»'],
    // No finer than it is written, an inch size without decimals being nominal; no finer than gauges and dials read, 0.0001 in and 0.01 mm.
    ['coupling', 'offset: max 0.02 mm', 'offset: max 0.02 mm «(0.0008 in)»'],
    ['coupling', 'offset: max 0.10 mm', 'offset: max 0.10 mm «(0.0039 in)»'],
    ['coupling', 'offset: max 0.0005 in', 'offset: max 0.0005 in «(0.01 mm)»'],
    ['shaft', 'length: 2.5 m', 'length: 2.5 m «(98 in)»'],
    ['shaft', 'length: 420 mm', 'length: 420 mm «(16.54 in)»'],
    ['shaft', 'diameter: 1-1/4 in', 'diameter: 1-1/4 in «(31.75 mm)»'],
    // 98.43 × 25.4 = 2500.122; what is written to 0.01 in, 0.25 mm, is said to 0.1 mm.
    ['shaft', 'length: 98.43 in', 'length: 98.43 in «(2.5001 m)»'],
    ['shaft', 'length: 60-1/16 in', 'length: 60-1/16 in «(1.5256 m)»'],
    ['coupling', 'flange-diameter: 5-1/4 in', 'flange-diameter: 5-1/4 in «(133.35 mm)»'],
    ['coupling', 'flange-diameter: 133.37 mm', 'flange-diameter: 133.37 mm «(5.2508 in)»'],
    // Whole units are not rounded to tens, however few digits are written: 3 m is 118.1 in.
    ['shaft', 'length: 3 m', 'length: 3 m «(118 in)»'],
    ['shaft', 'length: 1 m', 'length: 1 m «(39 in)»'],
    ['shaft', 'length: 9 m', 'length: 9 m «(30 ft)»'],
    // ASTM B258: 2/0 AWG is 67.43 mm2, 3/0 85.03, 4/0 107.2; 120 mm2 are 236.8 thousand circular mils.
    ['cable', 'conductor: 70 mm2', 'conductor: 70 mm2 «(about 2/0 AWG)»'],
    ['cable', 'conductor: 95 mm2', 'conductor: 95 mm2 «(between 3/0 and 4/0 AWG)»'],
    ['cable', 'conductor: 120 mm2', 'conductor: 120 mm2 «(about 237 kcmil)»'],
  ])('stand behind a value of a %s: %s', (kind, fact, expected) => {
    expect(hinted(`${kind} {\n  ${fact}\n}`, 'units')).toBe(`${kind} {\n  ${expected}\n}`)
  })

  it.each([
    'motor { voltage: 58 V }',
    'motor { speed: 1500 rpm  efficiency: 92 %  power-factor: 0.9 }',
    'propeller { blades: 3 }',
    'cable c { insulation: 105 degC }',
    'shaft { length: 2 * 1.2 m }',
    'foot f { across: 0 mm }',
    'shaft { length: 140 }',
    'shaft { length: 140 mn }',
    'motor { speed: ',
  ])('say nothing where there is nothing to say: %s', (text) => {
    expect(hinted(text, 'units')).toBe(text)
  })

  const metric = 'shaft { length: 420 mm }'
  const inch = 'bearing b { at: 10 in }'
  it.each([
    ['a job in one system has none', 'mixed', metric, metric],
    ['kilowatts are of no system', 'mixed', 'shaft { length: 5 ft }\nmotor { power: 5 kW }', ''],
    ['nautical miles are of no system', 'mixed', 'shaft { length: 5 m }\nservice { range: min 20 nmi }', ''],
    ['volts and turns are of no system', 'mixed', `${metric}\nmotor { voltage: 58 V  speed: 1500 rpm }`, ''],
    [
      'a job in both has them',
      'mixed',
      `${metric}\n${inch}`,
      '420 mm «(16.54 in)» }\nbearing b { at: 10 in «(254 mm)» }',
    ],
    [
      'a wire gauge is of the inch system',
      'mixed',
      `${metric}\ncable c { conductor: 2 AWG }`,
      '«(16.54 in)»',
    ],
    ['always', 'always', metric, '«(16.54 in)»'],
    ['off', 'off', `${metric}\n${inch}`, ''],
  ] as const)('are shown in the other system where both are in use: %s', (_, units, text, expected) => {
    const said = hinted(text, { units })
    if (expected === '' || expected === text) expect(said).toBe(text)
    else expect(said).toContain(expected)
  })

  it('count the units of a file that is used', () => {
    const analysis = new Analysis()
    analysis.begin()
    const file = linkFile('boat.wright', openDocument(`use "parts.wright"\n${metric}`), () =>
      openDocument(inch),
    )
    const words = file.document.sections.flatMap((section) =>
      inlayHints({ analysis, file }, section, { settings: { ...no, units: 'mixed' } }).map(
        (hint) => hint.words,
      ),
    )
    expect(words).toEqual(['(16.54 in)'])
  })

  it('say what a calculation comes to, whatever the units', () => {
    expect(hinted('shaft { length: 2 * 1.2 m }', 'sums')).toBe('shaft { length: 2 * 1.2 m «= 2.4 m» }')
  })

  it('stand only where a value is written, not where it is inherited', () => {
    const text = 'shaft stock { diameter: 25.4 mm }\ndrive d { shaft { like: stock } }'
    expect(hinted(text, 'units')).toBe(text.replace('25.4 mm', '25.4 mm «(1 in)»'))
  })
})

describe('hints of moves', () => {
  const bed = (thread: string) => `drive d {
  bed { adjuster: stud-and-nuts  thread: ${thread} }
  reading one { taken: 2026-03-04 }
`
  // ISO 262: M16 coarse has 2 mm pitch; a hexagon has six flats, so a flat is 1/3 mm.
  it.each([
    ['up 1 turn 2 flats', 'up 1 turn 2 flats «(2.67 mm)»'],
    ['down 3 flats, port 0.2 mm', 'down 3 flats «(1.00 mm)», port 0.2 mm'],
    ['up 1 mm', 'up 1 mm «(3 flats)»'],
    ['down 0.5 mm', 'down 0.5 mm «(1½ flats)»'],
    ['up 0.7 mm', 'up 0.7 mm «(about 2 flats)»'],
    ['up 0.01 mm', 'up 0.01 mm «(less than half a flat)»'],
    ['port 0.2 mm', 'port 0.2 mm'],
    ['none', 'none'],
  ])('give flats as a length and a length as flats: %s', (move, expected) => {
    const text = `${bed('M16')}  move after one { f: ${move} }\n}`
    expect(hinted(text, 'moves')).toBe(text.replace(`f: ${move}`, `f: ${expected}`))
  })

  it('say nothing where the thread is not known', () => {
    const text = `${bed('M17')}  move after one { f: up 1 flat }\n}`
    expect(hinted(text, 'moves')).toBe(text)
  })
})

describe('hints of results', () => {
  it('give the current of a cable and what it can carry', () => {
    // 15 kW / (√3 · 58 V · 0.9 · 0.92) = 180.3 A (IEC 60034-1: rated output is at the shaft); 70 mm2 at 105 °C carries 330 A
    // (ISO 13297 Table A.1, from memory), 0.85 in a machinery space and 0.7 bundled (33 CFR 183.425 Table 5): 196 A.
    const text = `drive d {
  motor main { power: 15 kW  voltage: 58 V  power-factor: 0.9  efficiency: 92 % }
  controller { input: 72..120 V }
  cable c { from: controller  to: main  conductor: 70 mm2  length: 1.8 m  insulation: 105 degC }
}`
    expect(hinted(text, 'cables')).toContain('cable c «181 A, can carry 196 A» {')
    // Of one that is too thin the finding says it.
    const thin = text.replace('70 mm2', '25 mm2')
    expect(hinted(thin, 'cables')).toBe(thin)
  })
})

describe('hints anywhere', () => {
  it('come only for the part that is asked for, and only of the sorts that are on', () => {
    for (const { view, section } of sectionsOf(demo)) {
      const all = inlayHints(view, section)
      const [first, last] = [all[0], all.at(-1)]
      if (!first || !last || first === last) continue
      const some = inlayHints(view, section, { from: first.at + 1, to: last.at })
      expect(some.length).toBeLessThan(all.length)
      expect(some.every(({ at }) => at > first.at)).toBe(true)
      expect(inlayHints(view, section, { settings: no })).toEqual([])
    }
  })

  it('follow what they depend on in another section', () => {
    const text = (thread: string) => `bed { adjuster: stud-and-nuts  thread: ${thread} }
drive d { reading one { taken: 2026-03-04 }  move after one { f: up 1 flat } }`
    // ISO 262: M10 coarse has 1.5 mm pitch.
    expect(hinted(text('M16'), 'moves')).toContain('«(0.33 mm)»')
    expect(hinted(text('M10'), 'moves')).toContain('«(0.25 mm)»')
  })

  it('never throw on a prefix of a demo, stand within the text, and say something', () => {
    fc.assert(
      fc.property(fc.nat(demo.length), (length) => {
        for (const { view, section } of sectionsOf(demo.slice(0, length)))
          for (const { at, words, tooltip } of inlayHints(view, section)) {
            expect(at).toBeLessThanOrEqual(section.text.length)
            expect(words).toMatch(/^[^\n]{1,60}$/)
            expect(words).not.toMatch(/NaN|undefined|Infinity/)
            expect(tooltip).toMatch(/\S/)
          }
      }),
      { numRuns: 60 },
    )
  })
})

describe('hints over the server', () => {
  let served: Awaited<ReturnType<typeof startProcess>>
  beforeAll(async () => {
    served = await startProcess({
      capabilities: {
        workspace: { inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } },
      },
    })
  })
  afterAll(() => served.stop())

  it('are offered, and come for the lines asked for', async () => {
    const { client } = served
    expect(client.initialized.capabilities.inlayHintProvider).toBeTruthy()
    const uri = 'file:///jobs/a.wright'
    client.open(
      uri,
      'shaft a {\n  diameter: 25.4 mm\n}\nshaft b {\n  diameter: 50.8 mm\n}\nbearing c { at: 10 in }\n',
    )
    const hints = await client.connection.sendRequest('textDocument/inlayHint', {
      textDocument: { uri },
      range: { start: { line: 2, character: 0 }, end: { line: 5, character: 0 } },
    })
    expect(hints).toMatchObject([
      { position: { line: 4, character: 19 }, label: '(2 in)', paddingLeft: true },
    ])
  })

  it('go when their setting is off, and the editor is told to ask again', async () => {
    const { connection, open } = served.client
    const asked = new Promise((told) => connection.onRequest('workspace/inlayHint/refresh', () => told(true)))
    const uri = 'file:///jobs/off.wright'
    open(uri, 'shaft a { diameter: 25.4 mm }\n')
    const ask = () =>
      connection.sendRequest('textDocument/inlayHint', {
        textDocument: { uri },
        range: { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } },
      })
    const set = (units: 'off' | 'always') =>
      connection.sendNotification('workspace/didChangeConfiguration', {
        settings: { shaftwright: { inlayHints: { units } } },
      })
    await set('off')
    expect(await ask()).toEqual([])
    expect(await asked).toBe(true)
    await set('always')
    expect(await ask()).toMatchObject([{ label: '(1 in)' }])
  })

  it('are to be asked for again, and lenses too, when a file that is used becomes another', async () => {
    const { connection, open } = served.client
    const [hints, lenses] = ['workspace/inlayHint/refresh', 'workspace/codeLens/refresh'].map(
      (method) => new Promise((told) => connection.onRequest(method, () => told(null))),
    )
    const parts = 'file:///jobs/parts.wright'
    open('file:///jobs/uses.wright', 'use "parts.wright"\ndrive d {\n  gear { like: spare }\n}\n')
    open(parts, 'gear spare { ratio: 2.5 }\n')
    void connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: parts, version: 2 },
      contentChanges: [{ text: 'gear spare { ratio: 3 }\n' }],
    })
    await Promise.all([hints, lenses])
  })
})
