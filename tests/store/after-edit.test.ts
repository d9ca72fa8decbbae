// Edits of one block that change what is shown of another: all is as if read for the first time.
import { setImmediate } from 'node:timers/promises'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { describe, expect, it } from 'vitest'
import { type Document, edit, openDocument, textOf } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import type { Section } from '../../server/src/job/model.ts'
import { blockNear, idOf } from '../../server/src/store/block-by-id.ts'
import { plan } from '../../server/src/store/plan.ts'
import { storeOf } from '../../server/src/store/store.ts'
import { Session } from './jobs.ts'

/** The same text with one part put in the place of another: all other sections stay the same objects. */
function changed(document: Document, from: string, to: string): Document {
  const at = textOf(document).indexOf(from)
  if (at < 0) throw new Error(`no ${from}`)
  return edit(document, at, at + from.length, to)
}

/** What is seen after an edit there and back, and what a first reading of the same text sees. */
function seenAfter(text: string, from: string, to: string) {
  const session = new Session()
  const before = openDocument(text)
  session.seen(before)
  const after = changed(before, from, to)
  const fresh = (document: Document) => new Session().seen(textOf(document))
  return [
    { kept: session.seen(after), fresh: fresh(after) },
    { kept: session.seen(before), fresh: fresh(before) },
  ]
}

const drive = (name: string): string => `drive ${name} {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 60 V }
  controller { efficiency: 96 % }
  seal { free-length: 100 mm + 20 mm }
}
`
const job = (volts: number, system: string): string => `job "Two" {
  vessel: "Two 01"
  show-in: ${system}
}
battery house {
  nominal: ${volts} V
  window: ${volts}..${volts} V
}
${drive('port')}${drive('starboard')}`

describe('after an edit of another block', () => {
  it('a result of arithmetic is shown in the units that the job asks for', () => {
    const [there, back] = seenAfter(job(96, 'metric'), 'show-in: metric', 'show-in: inch')
    expect(JSON.stringify(there?.fresh.hints)).toContain('= 4.7')
    expect(there?.kept).toEqual(there?.fresh)
    expect(back?.kept).toEqual(back?.fresh)
  })

  // √2 × 60 V
  it('a motor that needs more than the batteries give is a danger in each drive', () => {
    const [there, back] = seenAfter(job(144, 'metric'), '144 V\n  window: 144..144', '36 V\n  window: 36..36')
    expect(JSON.stringify(there?.fresh.findings)).toContain('needs at least 84.9 V')
    expect(there?.kept).toEqual(there?.fresh)
    expect(back?.kept).toEqual(back?.fresh)
  })
})

describe('libraries with blocks of one name', () => {
  const battery = (name: string, volts: number) => `battery ${name} { nominal: ${volts} V }\n`
  const use = (...paths: readonly string[]) => paths.map((path) => `use "${path}"\n`).join('')
  const feed = `drive main {
  battery: house
  motor main { power: 15 kW  efficiency: 92 %  voltage: 10 V }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 10 mm2  length: 2 m  insulation: 105 degC }
}
`
  const asFile = (session: Session, own: Document, libraries: Readonly<Record<string, Document>>) => {
    session.analysis.begin()
    return linkFile('main.wright', own, (path) => libraries[path])
  }
  const messages = (session: Session, own: Document, libraries: Readonly<Record<string, Document>>) =>
    session.findings(asFile(session, own, libraries)).map(({ message }) => message)

  it('are asked for the one of the nearest, whichever that comes to be', () => {
    const own = openDocument(use('a', 'b') + feed)
    const swapped = changed(own, use('a', 'b'), use('b', 'a'))
    const b = openDocument(battery('house', 96) + battery('other', 24))
    const states = [
      { own, libraries: { a: openDocument(battery('spare', 24)), b } },
      { own, libraries: { a: openDocument(battery('spare', 24) + battery('house', 48)), b } },
      { own: swapped, libraries: { a: openDocument(battery('spare', 24) + battery('house', 48)), b } },
      { own, libraries: { a: openDocument(battery('house', 48)), b: openDocument(battery('house', 96)) } },
      {
        own: swapped,
        libraries: { a: openDocument(battery('house', 48)), b: openDocument(battery('house', 96)) },
      },
    ]
    const session = new Session()
    const found = states.map((state) => messages(session, state.own, state.libraries))
    expect(found).toEqual(states.map((state) => messages(new Session(), state.own, state.libraries)))
    expect(new Set(found.map(String)).size).toBe(2)
  })

  it.each([
    ['another library', use('a', 'b')],
    ['the job itself', `${use('b')}drive base { coupling { flange-diameter: 90 mm } }\n`],
  ])(
    'cause no work after a comment but to look where findings stand, where one that is taken over has a namesake in %s',
    (_, head) => {
      const libraries = {
        a: openDocument('drive base { coupling { flange-diameter: 100 mm } }\n'),
        b: openDocument(
          'drive base { coupling { flange-diameter: 120 mm } }\ndrive special { like: base }\n',
        ),
      }
      const own = openDocument(
        `${head}drive main {\n  like: special\n  bed { foot aft { across: 0 mm } }\n}\n`,
      )
      const session = new Session()
      expect(session.worked(asFile(session, own, libraries))).toContain('checks of main')
      expect(
        session.worked(asFile(session, changed(own, 'drive main', '# ready\ndrive main'), libraries)),
      ).toEqual(['#findingsInSection'])
    },
  )
})

it('a block that was inside another for a while is checked as it stands at the top again', () => {
  const session = new Session()
  const alone = openDocument(
    'drive port {\n  seal {}\n}\nshaft s {}\nmotor m { power: 15 kW  voltage: 144 V }\nshaft t {}\n}\n',
  )
  const inside = changed(alone, '{}\n}', '{}')
  const again = changed(inside, '{}', '{}\n}')
  const withBattery = changed(again, 'drive port', 'battery house { window: 84..108 V }\ndrive port')
  for (const document of [alone, inside, again]) session.seen(document)
  expect(inside.sections).toHaveLength(1)
  const fresh = new Session().seen(textOf(withBattery))
  expect(JSON.stringify(fresh.findings)).toContain('reaches only 108 V')
  expect(session.seen(withBattery)).toEqual(fresh)
})

describe('a block that is found by its id', () => {
  const asked = <R>(
    session: Session,
    file: ReturnType<typeof linkFile>,
    work: ReturnType<typeof plan<R>>,
  ) => {
    const { fileLookup } = storeOf(session.analysis, file)
    const [root] = session.analysis.blocks(file)
    if (!root) throw new Error('no block')
    return work(root, fileLookup.from(root))
  }

  it('is another one after it was taken out and put in again, though nobody asked in between', () => {
    const cables = plan((drive) => drive.children.map(idOf))
    const lengths = plan((drive, lookup) =>
      cables(drive, lookup).map((id) => blockNear(drive, id).facts.get('length')?.value),
    )
    const session = new Session()
    const before = openDocument('drive main { cable feed {} }\n')
    expect(asked(session, session.file(before), lengths)).toEqual([undefined])
    const without = changed(before, 'cable feed {}', '')
    storeOf(session.analysis, session.file(without))
    const after = changed(without, '{ ', '{ cable feed { length: 2 m }')
    expect(asked(session, session.file(after), lengths)).toEqual([2])
  })

  it('is that of the library that is used now', () => {
    const house = plan((_, lookup) => {
      const found = lookup.named('house')
      return found && idOf(found)
    })
    const nominal = plan((drive, lookup) => {
      const id = house(drive, lookup)
      return id && lookup.blockOf(id).facts.get('nominal')?.value
    })
    const libraries: Readonly<Record<string, Document>> = {
      a: openDocument('battery house {}\n'),
      b: openDocument('battery house { nominal: 96 V }\n'),
    }
    const session = new Session()
    const own = openDocument('use "a"\ndrive main {}\n')
    const using = (document: Document) => {
      session.analysis.begin()
      return linkFile('main.wright', document, (path) => libraries[path])
    }
    expect(asked(session, using(own), nominal)).toBeUndefined()
    expect(asked(session, using(changed(own, 'use "a"', 'use "b"')), nominal)).toBe(96)
  })
})

it('a fault while a text is taken in is forgotten with the next look at it', () => {
  const session = new Session()
  const before = openDocument(job(96, 'metric'))
  session.seen(before)
  const after = changed(before, 'power: 15 kW', 'power: ?')
  const { bound } = session.analysis
  const file = session.file(after)
  session.analysis.bound = () => {
    throw new RangeError('Maximum call stack size exceeded')
  }
  expect(() => storeOf(session.analysis, file)).toThrow('call stack')
  session.analysis.bound = bound
  const fresh = new Session()
  expect(session.findings(file).map(({ message }) => message)).toEqual(
    fresh.findings(fresh.file(textOf(after))).map(({ message }) => message),
  )
})

it('sections that are no longer in the text are let go', async () => {
  setFlagsFromString('--expose-gc')
  const collect = runInNewContext('gc') as () => void
  const session = new Session()
  let document = openDocument(job(96, 'metric'))
  const seen: WeakRef<Section>[] = []
  // Asked once and not again, it keeps the block as it was then.
  const spanOf = plan((block) => block.node.span)
  const file = session.file(document)
  const { fileLookup } = storeOf(session.analysis, file)
  for (const root of session.analysis.blocks(file)) spanOf(root, fileLookup.from(root))
  for (let n = 0; n < 40; n++) {
    session.seen(document)
    seen.push(...document.sections.map((section) => new WeakRef(section)))
    const name = n % 2 === 0 ? 'port' : 'starboard'
    document = changed(document, `drive ${name} {`, `# ${n}\ndrive ${name} {`)
  }
  // What a weak reference was made to in this turn is held until its end.
  await setImmediate()
  collect()
  const left = new Set(seen.flatMap((section) => section.deref() ?? []))
  expect(left.size).toBeLessThan(20)
})
