// docs/engineering/alignment.md, worked out anew from its own text: what it gives is read from there, and so is what must come out.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { rimFromDial } from '../../server/src/engineering/alignment/dial.ts'
import { footCorrections } from '../../server/src/engineering/alignment/feet.ts'
import { shareUsed } from '../../server/src/engineering/alignment/move-search.ts'
import { type Pose, poseFromFace, poseFromTwoPlanes } from '../../server/src/engineering/alignment/pose.ts'
import { rigidMachine } from '../../server/src/engineering/alignment/rigid-move.ts'
import { softFeet } from '../../server/src/engineering/alignment/soft-foot.ts'
import { exactly } from '../../server/src/quantity/uncertainty.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { findingsOf } from '../checks/marks.ts'
import { face, feetOf, inch, mm, ok, rim, round } from '../engineering/alignment-helpers.ts'
import { tally } from '../engineering/simulated-machine.ts'

const root = resolve(import.meta.dirname, '../..')
const folder = 'docs/engineering'
const file = join(folder, 'alignment.md')
const text = readFileSync(join(root, file), 'utf8')

/** The rows of the first table below some words, without its head. */
function tableAfter(words: string): readonly (readonly string[])[] {
  const lines = text.slice(text.indexOf(words) + words.length).split('\n')
  const from = lines.findIndex((line) => /^\|[-:| ]+\|$/.test(line)) + 1
  const until = lines.findIndex((line, i) => i >= from && !line.startsWith('|'))
  return lines.slice(from, until).map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  )
}

const numbersIn = (words: string): readonly number[] => (words.match(/-?\d+(\.\d+)?/g) ?? []).map(Number)

/** As many decimals as are printed. */
const toPrinted = (value: number, printed: string): number =>
  Number(value.toFixed(/\.(\d+)/.exec(printed)?.[1]?.length ?? 0))

describe('the pages of docs/engineering', () => {
  it('link only to what is there, and show every drawing', () => {
    const files = readdirSync(join(root, folder))
    const targets = files
      .filter((name) => name.endsWith('.md'))
      .flatMap((name) => [
        ...readFileSync(join(root, folder, name), 'utf8').matchAll(/\]\((?!https?:)([^)#]+)/g),
      ])
      .map(([, target = '']) => target)
    for (const target of targets) expect(existsSync(join(root, folder, target)), target).toBe(true)
    const drawings = files.filter((name) => name.endsWith('.svg'))
    expect([...new Set(targets.filter((target) => target.endsWith('.svg')))].sort()).toEqual(drawings.sort())
  })
})

describe(file, () => {
  it('is linked from the overview, and links back', () => {
    expect(readFileSync(join(root, 'docs/engineering.md'), 'utf8')).toContain('](engineering/alignment.md)')
    expect(text).toContain('](../engineering.md)')
  })

  it('names only files and commands that there are', () => {
    for (const [, path = ''] of text.matchAll(/`((?:server|tests|docs)\/[\w./-]+)`/g))
      expect(existsSync(join(root, path)), path).toBe(true)
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: object }
    for (const [, script = ''] of text.matchAll(/npm run ([\w:-]+)/g)) expect(scripts).toHaveProperty(script)
  })
})

interface Value {
  readonly value: number
  readonly uncertainty: number
}
interface Plan {
  readonly verdict: string
  readonly gapVariation_mm: Value & { readonly limit: number }
  readonly slope_mrad: { readonly vertical: Value; readonly horizontal: Value }
  readonly offset_mm: { readonly vertical: Value; readonly horizontal: Value }
  readonly feet: readonly {
    readonly name: string
    readonly up_mm: Value
    readonly starboard_mm: Value
    readonly turns: { readonly direction: string; readonly seenFromAbove: string } & Turns
  }[]
  readonly predicted: Pick<Plan, 'gapVariation_mm' | 'offset_mm'> & { readonly provable: boolean }
}
interface Turns {
  readonly turns: number
  readonly flats: number
}

function planOf(job: string): Plan {
  const made = mkdtempSync(join(tmpdir(), 'shaftwright-'))
  try {
    writeFileSync(join(made, 'a.wright'), job)
    const main = join(root, 'server/src/cli/main.ts')
    const ran = spawnSync(process.execPath, [main, 'plan', '--format', 'json', 'a.wright'], {
      cwd: made,
      encoding: 'utf8',
    })
    const { plans } = JSON.parse(ran.stdout) as { readonly plans: readonly [Plan] }
    return plans[0]
  } finally {
    rmSync(made, { recursive: true })
  }
}

const fence = (head: string): string =>
  new RegExp(`^\`\`\`${head}\\n([\\s\\S]*?)^\`\`\``, 'm').exec(text)?.[1] ?? ''

describe('the worked case', () => {
  const job = fence('wright')
  const log = job.replace(/\}\n*$/, `\n${fence('wright inside drive')}}\n`)
  const plan = planOf(job)

  /** What the job gives, by the names that the document uses, and a flat of M16 (pitch 2 mm: ISO 261). */
  const stated = (word: string) => numbersIn(new RegExp(`${word}: +(.*)`).exec(job)?.[1] ?? '')
  const [g0, g90, g180, g270] = stated('gaps')
  const [R0, R90, R180, R270] = stated('offsets')
  const [xa = 0, , xf = 0] = [...job.matchAll(/from-coupling: (\d+)/g)].map((m) => Number(m[1]))
  const given = { g0, g90, g180, g270, R0, R90, R180, R270, xa, xf, flat: 2 / 6 }
  const limits = {
    D: stated('gauge-diameter')[0],
    s: stated('gauge')[0],
    Lg: stated('gap-variation')[0],
    Lo: stated(' offset')[0],
  }
  const { hypot, sqrt, abs, min, log: ln } = Math
  const scope: Record<string, unknown> = { ...given, ...limits, hypot, sqrt, abs, min, log: ln }

  const sums = [...tableAfter('## Worked case'), ...tableAfter('The next reading should show')].map(
    ([what = '', name = '', sum = '', figure = '']) => {
      const key = name.replaceAll('`', '')
      const code = sum.replaceAll('`', '')
      scope[key] = new Function(...Object.keys(scope), `return ${code}`)(...Object.values(scope)) as number
      return { what, name: key, code, figure, value: scope[key] as number }
    },
  )
  const foot = (name: string) => plan.feet.find((one) => one.name === name)
  const { predicted } = plan
  const inPlan: Record<string, number | undefined> = {
    tv: plan.slope_mrad.vertical.value,
    th: plan.slope_mrad.horizontal.value,
    G: plan.gapVariation_mm.value,
    UG: plan.gapVariation_mm.uncertainty,
    oz: plan.offset_mm.vertical.value,
    oy: plan.offset_mm.horizontal.value,
    Uo: plan.offset_mm.vertical.uncertainty,
    za: foot('aft-port')?.up_mm.value,
    ya: foot('aft-stbd')?.starboard_mm.value,
    Ua: foot('aft-stbd')?.up_mm.uncertainty,
    zf: foot('fwd-port')?.up_mm.value,
    yf: foot('fwd-stbd')?.starboard_mm.value,
    Uf: foot('fwd-stbd')?.starboard_mm.uncertainty,
    G2: predicted.gapVariation_mm.value,
    U2: predicted.gapVariation_mm.uncertainty,
    oz2: predicted.offset_mm.vertical.value,
    Uo2: predicted.offset_mm.vertical.uncertainty,
  }

  it.each(sums)('$what: $name = $code = $figure', ({ name, figure, value }) => {
    expect(toPrinted(value, figure)).toBe(Number(figure))
    // The plan prints four decimals.
    if (name in inPlan) expect(Math.abs(value - (inPlan[name] ?? Number.NaN))).toBeLessThan(0.51e-4)
  })
  it('holds every figure of the plan', () => {
    expect(Object.keys(inPlan).filter((name) => !sums.some((sum) => sum.name === name))).toEqual([])
  })

  const choices = tableAfter('the search finds the second').map((row) => ({
    row,
    flats: [Number(row[0]), Number(row[1])] as const,
  }))
  const bySum = Object.fromEntries(sums.map(({ name, value }) => [name, value]))
  const used = ([aft, fore]: readonly [number, number]) => {
    const machine = ok(rigidMachine(feetOf([xa * mm, 0], [xf * mm, 0])))
    const { vertical } = machine(
      [aft, fore].map((flats) => ({
        vertical: exactly(flats * given.flat * mm),
        horizontal: exactly(0),
      })),
    )
    const left = {
      offset: (bySum['oz'] ?? 0) * mm + vertical.offset.value,
      slope: (bySum['tv'] ?? 0) * 1e-3 + vertical.slope.value,
    }
    const [D, offset] = [(limits.D ?? 0) * mm, (limits.Lo ?? 0) * mm]
    const limit = { offset, slope: ((limits.Lg ?? 0) * mm) / D }
    const share = shareUsed({ vertical: left, horizontal: { offset: 0, slope: 0 } }, limit)
    return { gap: (D * Math.abs(left.slope)) / mm, offset: Math.abs(left.offset) / mm, share }
  }
  it.each(choices)('$flats flats leave what the table says', ({ row, flats }) => {
    const { gap, offset, share } = used(flats)
    const [, , printedGap = '', printedOffset = '', printedShare = ''] = row
    expect(toPrinted(gap, printedGap)).toBe(Number(printedGap))
    expect(toPrinted(offset, printedOffset)).toBe(Number(printedOffset))
    expect(toPrinted(share, printedShare)).toBe(Number(printedShare))
    expect(row.includes('outside')).toBe(share > 1)
    expect(row.includes('beyond the goal')).toBe(share > (bySum['goal'] ?? 0) && share <= 1)
  })
  it('does not choose what each foot by itself comes to', () => {
    const nearest = ['za', 'zf'].map((name) => Math.round((2 * (bySum[name] ?? 0)) / given.flat) / 2)
    expect(choices.find(({ row }) => row.includes('each foot to its nearest'))?.flats).toEqual(nearest)
  })
  it('chooses what uses up least of the limits, as the plan does', () => {
    const chosen = choices.find(({ row }) => row.includes('chosen'))?.flats
    const best = choices.toSorted((a, b) => used(a.flats).share - used(b.flats).share)[0]?.flats
    expect(chosen).toEqual(best)
    const turned = plan.feet.map(({ turns }) => turns.turns * 6 + turns.flats)
    expect(turned).toEqual([chosen?.[0], chosen?.[0], chosen?.[1], chosen?.[1]])
    for (const { turns } of plan.feet)
      expect(turns).toMatchObject({ direction: 'up', seenFromAbove: 'counter-clockwise' })
    expect(plan.verdict).toBe('outside')
    expect(predicted.provable).toBe(used(chosen ?? [0, 0]).share <= (bySum['goal'] ?? 0))
  })

  it('is within after the move that the document writes', () => {
    expect(planOf(log).verdict).toBe('within')
    expect(formatText(log)).toBe(log)
    const { findings } = findingsOf(log, allChecks, { today: '2026-03-06' })
    expect(findings.map(({ severity, check }) => `${severity} ${check}`)).toEqual([
      'information caution/heavy-machine',
      'information alignment/gap-variation-outside',
    ])
  })
})

/** What each published case asks for, out of the figures that are given, in the order they stand; in the unit they are given in. */
const solved: Record<string, (figures: readonly number[]) => number> = {
  'face and rim': ([gap = 0, D = 0, high = 0, x = 0]) => {
    const gaps = face(round([1, 1 + gap / 2, 1 + gap, 1 + gap / 2], inch), (D / 2) * inch)
    return raised(poseFromFace(gaps, rim(round([high, 0, -high, 0], inch))), x)
  },
  'reverse indicator': ([first = 0, second = 0, apart = 0, x = 0]) => {
    const plane = (at: number, high: number) => ({
      x: at * inch,
      offset: { vertical: exactly(high * inch), horizontal: exactly(0) },
    })
    return raised(poseFromTwoPlanes(plane(0, first), plane(apart, second)), x)
  },
  'angular shim': ([gap = 0, D = 0, x = 0]) => {
    const gaps = face(round([1, 1 - gap / 2, 1 - gap, 1 - gap / 2], inch), (D / 2) * inch)
    return raised(poseFromFace(gaps, 'pilot'), x)
  },
  sag: (figures) => {
    const read = round(figures.slice(0, 4), mm)
    const rims = rim(rimFromDial(read, { carriedBy: 'shaft', droop: (figures[4] ?? 0) * mm }))
    return Math.abs(rims.offset.vertical.value) / mm
  },
  'soft foot': ([one = 0, others = 0]) => {
    const lifts = [one, others, others, others].map((lift, i) => ({ name: `${i}`, lift: lift * inch }))
    return (softFeet(lifts, 0.06 * mm, 0.001 * inch).missing?.height ?? Number.NaN) / inch
  },
}

/** Of a foot at x, beside one at the coupling; in. */
function raised(pose: Pose, x: number): number {
  const corrected = ok(footCorrections(pose, feetOf([0, 0], [x * inch, 0])))
  return (corrected.feet[1]?.vertical.value ?? Number.NaN) / inch
}

describe('published cases', () => {
  const rows = tableAfter('## Published cases').map(
    ([name = '', given = '', asked = '', book = '', ours = '', agrees = '', source = '']) => ({
      ...{ name, given, asked, book, ours, agrees, source },
      found: solved[name]?.(numbersIn(given)) ?? Number.NaN,
    }),
  )
  it.each(rows)('$name, $given: $asked $book ($source)', ({ book, ours, agrees, found }) => {
    const [printed = '', [inBook = Number.NaN], [within = Number.NaN]] = [
      ours.split(' ')[0],
      numbersIn(book),
      numbersIn(agrees),
    ]
    expect(toPrinted(found, printed)).toBe(Number(printed))
    expect(Math.abs(found - inBook)).toBeLessThanOrEqual(within)
  })
  it('are all there', () => {
    expect([...new Set(rows.map(({ name }) => name))].sort()).toEqual(Object.keys(solved).sort())
  })
})

it('the simulator prints the row that the document shows for a gauge step of a fifth of the limit', () => {
  const row = tableAfter('## Simulated machines').find(([share]) => share === '0.2') ?? []
  const { withMargin, withoutMargin, impossible, saidWithin, wrong } = tally(10_000, 0.2)
  const percent = (part: number, of: number) => `${((100 * part) / of).toFixed(2)} %`
  expect(row.slice(1)).toEqual([
    `${withMargin.count}`,
    percent(withMargin.byOne, withMargin.count),
    percent(withMargin.byTwo, withMargin.count),
    `${withoutMargin.count}`,
    percent(withoutMargin.byTwo, withoutMargin.count),
    `${impossible}`,
    `${saidWithin}`,
    percent(wrong, saidWithin),
  ])
})
