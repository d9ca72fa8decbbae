// What each status of a job asks for: the table of the vocabulary, and every code in it.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { formatMissing, missingChecks, severityOfMissing } from '../../server/src/checks/missing.ts'
import type { BlockKind, Fact } from '../../server/src/vocabulary/block.ts'
import { isFoundOnBoat, needsOf } from '../../server/src/vocabulary/block.ts'
import { blockKinds, vocabulary } from '../../server/src/vocabulary/index.ts'
import { asks, type Status, statuses } from '../../server/src/vocabulary/status.ts'
import { randomDrive } from '../areas/random-drive.ts'
import { randomFrom } from '../fuzz/random.ts'
import { findingsOf } from './marks.ts'

/** How a block of the kind is begun in a job. */
const headings: Readonly<Record<string, string>> = {
  job: 'job "x"',
  move: 'move after r',
  concession: 'concession seal/shaft-size-differs',
}
const heading = ({ kind, heading: form }: BlockKind): string =>
  headings[kind] ?? (form === 'name' ? `${kind} ${kind}-1` : kind)

/** A job of this status with the block of this kind, each of these facts in it. */
function jobWith(kind: BlockKind, facts: readonly (readonly [string, string])[], status: Status): string {
  const lines = facts.map(([name, value]) => `    ${name}: ${value}\n`).join('')
  const own = `  ${heading(kind)} {\n${lines}  }\n`
  if (kind.kind === 'job') return own
  const job = `job "x" {\n  status: ${status}\n}\n`
  if (kind.within[0] === 'top') return `${job}${own}`
  const around = kind.within[0] === 'bed' ? `bed {\n${own}}\n` : own
  return `${job}drive main {\n${around}}\n`
}

/** What is found missing in the block of the kind, with its severity. */
function missingIn(kind: BlockKind, text: string, check: string): readonly string[] {
  const begins = heading(kind)
  return findingsOf(text, allChecks)
    .findings.filter((one) => one.check === check)
    .filter(({ at }) => at.section.text.slice(at.span.start, at.span.end) === begins)
    .flatMap(({ limit, severity }) => (limit?.split(', ') ?? []).map((name) => `${severity} ${name}`))
}

/** Values for every fact of the kind but one; what the one depends on says what asks for it. */
function valuesWithout(
  kind: BlockKind,
  left: string,
  status: Status,
): readonly (readonly [string, string])[] {
  const { when, or } = kind.facts[left] ?? ({} as Fact)
  return Object.entries(kind.facts)
    .filter(([name]) => name !== left && name !== or)
    .map(([name, { example }]) => {
      if (name === when?.fact && when.is !== undefined) return [name, [when.is].flat()[0] ?? '']
      return [name, kind.kind === 'job' && name === 'status' ? status : example]
    })
}

const codes = blockKinds.flatMap((kind) =>
  Object.entries(kind.facts).map(([name, fact]) => ({ path: `${kind.kind}.${name}`, kind, name, fact })),
)

describe.each(codes)('$path', ({ kind, name, fact }) => {
  it.each(statuses)('left out of a job that is %s', (status) => {
    // Without a status a job counts as for-review.
    const counts = kind.kind === 'job' && name === 'status' ? 'for-review' : status
    const text = jobWith(kind, valuesWithout(kind, name, status), status)
    const found = missingIn(kind, text, 'job/fact-missing')
    expect(found).toEqual(asks(counts, fact.from) ? [`${severityOfMissing(counts)} ${name}`] : [])
  })

  it('is not known yet where a blank stands', () => {
    if (name === 'status') return
    const values = [...valuesWithout(kind, name, 'draft'), [name, '?'] as const]
    expect(missingIn(kind, jobWith(kind, values, 'draft'), 'job/fact-missing')).toEqual([
      `information ${name}`,
    ])
  })
})

it('a fact is asked for only where it makes sense', () => {
  const bed = vocabulary.bed as unknown as BlockKind
  const missing = (adjuster: string, status: Status) =>
    missingIn(bed, jobWith(bed, [['adjuster', adjuster]], status), 'job/fact-missing')
  expect(missing('shims', 'issued')).toEqual(['error shims', 'error torque'])
  expect(missing('stud-and-nuts', 'issued')).toEqual(['error thread', 'error torque'])
  const battery = vocabulary.battery as unknown as BlockKind
  const facts = [
    ['nominal', '96 V'],
    ['capacity', '210 Ah'],
    ['window', '84..108 V'],
    ['stud', 'M10'],
    ['torque', '12 N·m'],
  ] as const
  const of = (more: readonly (readonly [string, string])[]) =>
    missingIn(battery, jobWith(battery, [...facts, ...more], 'issued'), 'job/fact-missing')
  expect(of([])).toEqual(['error internal-resistance'])
  expect(of([['short-circuit-current', '8 kA']])).toEqual([])
})

const needed = blockKinds.flatMap((kind) =>
  needsOf(kind).map((need) => ({ ...need, in: kind.kind, of: kind })),
)

describe.each(needed)('$kind in $in beside $beside', ({ kind, from, of, beside = [] }) => {
  const found = (status: Status, others: string) =>
    missingIn(of, jobWith(of, valuesWithout(of, '', status), status) + others, 'job/block-missing')
  const others = beside
    .map((name) => blockKinds.find((one) => one.kind === name))
    .map((one) => {
      if (!one) throw new Error('no such kind')
      const block = `${heading(one)} { }\n`
      return one.within[0] === 'top' ? block : `drive other { ${block} }\n`
    })
  it.each(statuses)('left out of a job that is %s', (status) => {
    const wanted = `${severityOfMissing(status)} ${kind}`
    expect(found(status, others.join('')).includes(wanted)).toBe(asks(status, from))
  })

  const few = others.map((left) => others.filter((other) => other !== left).join(''))
  it.each(few)('is asked for only where all of them are there, not with %s', (text) => {
    expect(found('as-built', text)).not.toContain(`error ${kind}`)
  })
})

it('a job that only aligns a shaft is not asked for a hull, nor for a service', () => {
  for (const status of statuses) {
    const text = `job "x" { vessel: "v"  status: ${status} }\ndrive main { propeller { diameter: 420 mm } shaft { diameter: 35 mm } }\n`
    const blocks = findingsOf(text, allChecks).findings.filter(({ check }) => check === 'job/block-missing')
    expect(blocks.flatMap(({ limit }) => limit?.split(', ') ?? [])).not.toContain('hull')
    expect(blocks.flatMap(({ limit }) => limit?.split(', ') ?? [])).not.toContain('service')
  }
})

it('a block that two others ask for is missing once', () => {
  const text =
    'job "x" { vessel: "v"  status: issued }\nservice { }\nbattery b { }\ndrive main { propeller { } }\n'
  const { findings } = findingsOf(text, allChecks)
  const [of] = findings.filter(({ check, limit }) => check === 'job/block-missing' && limit?.includes('hull'))
  expect(of?.limit).toBe('hull')
})

describe('a fact that is assumed', () => {
  const found = (text: string) =>
    findingsOf(text, allChecks)
      .findings.filter(({ check }) => check === 'job/fact-assumed')
      .map(({ severity, message }) => `${severity} ${message.split(' ', 1)[0]}`)

  it.each(codes.filter(({ name }) => name !== 'status'))(
    'is not known in a job that is as-built, where it is found out on the boat: $path',
    ({ kind, name, fact }) => {
      const assumed = [name, `${fact.example} [assumed]`] as const
      const of = (status: Status) =>
        found(jobWith(kind, [...valuesWithout(kind, name, status), assumed], status))
      const wanted = isFoundOnBoat(fact) ? [`error ${name}`] : []
      expect(of('as-built').filter((one) => one.endsWith(` ${name}`))).toEqual(wanted)
      for (const status of ['draft', 'for-review', 'issued'] as const) expect(of(status)).toEqual([])
    },
  )

  it('counts for all that as-built asks for first, and for the seal, the feet, readings and moves', () => {
    expect(
      codes.filter(({ fact }) => fact.from === 'as-built').every(({ fact }) => isFoundOnBoat(fact)),
    ).toBe(true)
    const seal = (facts: string) =>
      found(`job "x" { vessel: "v"  status: as-built }\ndrive main {\n  seal {\n${facts}\n  }\n}\n`)
    expect(seal('free-length: 148 mm [assumed]\nfitted-length: 121 mm')).toEqual(['error free-length'])
    expect(seal('free-length: 148 mm [assumed]\nfitted-length: free-length - 27 mm')).toEqual([
      'error free-length',
      'error fitted-length',
    ])
    expect(seal('free-length: 148 mm\nfitted-length: 121 mm [measured]')).toEqual([])
    expect(
      found(
        'job "x" { vessel: "v"  status: as-built }\ndrive main {\n  move after a { aft: up 1 flat [assumed] }\n}\n',
      ),
    ).toEqual(['error aft'])
  })

  it('is told in the drive that takes it too, and not in a library', () => {
    const port = 'drive port { seal { free-length: 148 mm [assumed] } }\n'
    expect(
      found(`job "x" { vessel: "v"  status: as-built }\n${port}drive starboard { like: port }\n`),
    ).toEqual(['error free-length', 'error starboard.seal:'])
    expect(found(port)).toEqual([])
  })
})

describe('which files are asked', () => {
  const ids = (text: string) =>
    findingsOf(text, allChecks).findings.map(({ check, severity }) => `${severity} ${check}`)

  it('not a library of parts', () => {
    expect(ids('shaft stock-35 { }\ncable lead { }\n')).toEqual([])
  })

  it('a library shows its blanks, quietly', () => {
    expect(ids('shaft stock-35 { diameter: ?  length: }\n')).toEqual(['information job/fact-missing'])
  })

  it('nor a part of a job that others take over; the block that takes it is asked', () => {
    const text = `job "x" { vessel: "v"  status: draft }
shaft stock { }
drive main { shaft { like: stock } }
`
    const found = findingsOf(text, allChecks).findings
    expect(found.map(({ check, message }) => [check, message])).toEqual([
      ['job/fact-missing', 'One fact is still missing: diameter.'],
    ])
    expect(found[0]?.at.section.text).toContain('drive main')
  })

  it('a drive without a job is told so once, and an empty file is no job', () => {
    expect(ids('drive main { }\ndrive port { }\n')).toEqual(['information job/job-missing'])
    for (const text of ['', '\n\n', '# only this\n', 'use "x.wright"\n'])
      expect(ids(text)).toContain('error job/job-missing')
  })
})

describe('one finding a block', () => {
  const shown = (facts: string) =>
    findingsOf(`job "x" { vessel: "v"  status: issued }\ndrive main {\n  coupling {${facts}}\n}\n`, allChecks)
      .findings.filter(({ at }) => at.section.text.slice(at.span.start, at.span.end) === 'coupling')
      .map(({ message }) => message)

  it('names all that is missing, in the order of the vocabulary', () => {
    expect(shown(' kind: rigid  pilot: no  offset: max 0.1 mm  rated-torque: 400 N·m ')).toEqual([
      'Three facts are still missing: flange-diameter, gap-variation, bolts.',
    ])
  })

  it('takes in a text with nothing in it', () => {
    const found = findingsOf('job "x" { vessel: " "  status: draft }\ndrive main { }\n', allChecks).findings
    expect(found.map(({ message }) => message)).toEqual(['One fact is still missing: vessel.'])
  })

  it('is one line, however many there are', () => {
    const names = (count: number) => Array.from({ length: count }, (_, i) => `fact-${i}`)
    expect(formatMissing('fact', names(30))).toBe(
      '30 facts are still missing: fact-0, fact-1, fact-2, fact-3, fact-4, fact-5, fact-6 and 23 more.',
    )
    for (let count = 1; count < 40; count += 1)
      expect(formatMissing('block', names(count)).length).toBeLessThanOrEqual(100)
  })

  it('says what to do in one or in many', () => {
    const todo = (text: string) =>
      findingsOf(text, allChecks).findings.flatMap(({ check, todo }) =>
        check === 'job/fact-missing' ? todo : [],
      )
    expect(todo('shaft stock { diameter: ? mm }\n')).toEqual(['Fill it in, such as `diameter: 35 mm h9`.'])
    expect(todo('shaft stock { diameter: ?  length: ? }\n')).toEqual(['Fill them in.'])
    expect(todo('job "J" { status: issued }\nbattery house { nominal: ? V }\n')).toContain(
      'Write them, with a `?` for what is not known yet.',
    )
    // The feet of a move go by names of the user's own.
    expect(todo('drive main {\n  move after dry-1 { aft: ? }\n}\n')).toEqual([
      'Fill it in, such as `aft: up 1 turn 2 flats`.',
    ])
    expect(todo('drive main { shaft { like: ? } }\n')).toEqual(['Fill it in.'])
  })

  it('takes in what is begun, and what is blank', () => {
    expect(
      shown(' kind:\n flange-diameter: ? mm\n pilot: no\n gap-variation: max 0.1 mm\n offset:\n')[0],
    ).toBe('Five facts are still missing: kind, flange-diameter, offset, rated-torque, bolts.')
  })
})

describe('what a missing fact means for the plan', () => {
  const plans = (reading: string) =>
    findingsOf(`job "x" { status: as-built }\ndrive main {\n  reading a {${reading}}\n}\n`, allChecks)
      .findings.filter(({ check, at }) => check === 'job/fact-missing' && at.section.text.startsWith('drive'))
      .map(({ plan }) => plan)

  it('it waits where it cannot do without, or would assume something', () => {
    expect(plans(' gauge: 0.02 mm  afloat: yes  by: "x" ')).toEqual(['waits'])
    expect(plans(' taken: 2026-03-04  gauge: 0.02 mm  afloat: yes  by: "x"  rim-dial-at: ? ')).toEqual([
      'waits',
    ])
  })

  it('it goes on where it never asks', () => {
    expect(plans(' taken: 2026-03-04  gauge: 0.02 mm ')).toEqual(['goes-on'])
  })
})

describe('only what is missing, and what a status claims, follows the status', () => {
  const follow = allChecks.filter((c) => c.followsStatus).map(({ id }) => id)

  it('which is said of each such check', () => {
    const claims = allChecks.filter(({ claim }) => claim).map(({ id }) => id)
    expect(claims.length).toBeGreaterThan(0)
    expect([...follow].sort()).toEqual([...missingChecks, ...claims].sort())
  })

  const others = (text: string, status: Status) =>
    findingsOf(text.replace('STATUS', status), allChecks)
      .findings.filter(({ check }) => !follow.includes(check))
      .map(({ check, severity, message, plan }) => [check, severity, message, plan])
  const same = (text: string) => {
    const draft = others(text, 'draft')
    for (const status of statuses) expect(others(text, status)).toEqual(draft)
  }

  // A concession that ran out goes on accepting in an as-built job: archives do not turn red by the calendar.
  const examples = allChecks.filter(({ id }) => id !== 'job/concession-expired')
  it.each(examples.map(({ id, fires }) => [id, fires]))('in the example of %s', (_id, fires) => {
    const job = 'job "x" {\n  vessel: "v"\n  status: STATUS\n}\n'
    const own = fires
      .replace(/^( *)status: \S+$/m, '$1status: STATUS')
      .replace(/status: \S+(?= )/, 'status: STATUS')
    same(own.includes('STATUS') ? own : /^job/m.test(fires) ? fires : job + fires)
  })

  it('in random jobs', () => {
    for (let seed = 1; seed <= 60; seed += 1)
      same(`job "x" {\n  status: STATUS\n}\n${randomDrive(randomFrom(seed))}`)
  })
})
