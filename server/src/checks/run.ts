import type { Analysis } from '../job/analysis.ts'
import type { Bound, Located } from '../job/bind.ts'
import { startOf } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import { lookupFrom } from '../job/lookup.ts'
import { Memo } from '../job/memo.ts'
import type { Block, Section, Taken, Value } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { once } from '../syntax/once.ts'
import { type BlockName, vocabulary } from '../vocabulary/index.ts'
import type { Status } from '../vocabulary/status.ts'
import {
  type BlockCheck,
  type Check,
  type Context,
  type FileCheck,
  type Finding,
  isBlockCheck,
  isFileCheck,
  isProblemCheck,
  type Problem,
  type ProblemCheck,
  type Reported,
} from './check.ts'
import { applyConcessions } from './concessions.ts'

type Related = NonNullable<Finding['related']>[number]

import { longestLine } from './one-line.ts'

export interface Run {
  readonly today: string
  /** Told when a check itself fails: its findings are missing, the others stand. */
  readonly onFault?: (check: string, error: unknown) => void
}

/** A fact that a check gets. */
interface Asked {
  readonly key: string
  readonly kind: BlockName
  readonly fact: string
  /** Without it the check does not run. */
  readonly needed: boolean
}

interface OnBlock {
  readonly check: BlockCheck
  readonly asked: readonly Asked[]
}

/** Checks by what they look at. */
interface Sorted {
  readonly onKind: ReadonlyMap<string, readonly OnBlock[]>
  readonly onProblem: ReadonlyMap<string, ProblemCheck>
  readonly onFile: readonly FileCheck[]
  readonly ids: readonly string[]
  readonly claims: ReadonlyMap<string, Status>
  readonly worstOnly: ReadonlySet<string>
}

const sorted = once((checks: readonly Check[]): Sorted => {
  const onKind = new Map<string, OnBlock[]>()
  for (const check of checks.filter(isBlockCheck)) {
    const asked = [...askedBy(check.needs, true), ...askedBy(check.wants, false)]
    const kinds = check.on === 'every kind' ? Object.keys(vocabulary) : [check.on].flat()
    for (const kind of kinds) onKind.set(kind, [...(onKind.get(kind) ?? []), { check, asked }])
  }
  return {
    onKind,
    onProblem: new Map(checks.filter(isProblemCheck).map((c) => [c.problem, c])),
    onFile: checks.filter(isFileCheck),
    ids: checks.map(({ id }) => id),
    claims: new Map(checks.flatMap(({ id, claim }) => (claim ? [[id, claim.from]] : []))),
    worstOnly: new Set(checks.filter((c) => c.worstOnly).map(({ id }) => id)),
  }
})

const askedBy = (paths: BlockCheck['needs'], needed: boolean): readonly Asked[] =>
  Object.entries(paths ?? {}).map(([key, path]) => {
    const dot = path.indexOf('.')
    return { key, kind: path.slice(0, dot) as BlockName, fact: path.slice(dot + 1), needed }
  })

/** Runs a set of checks over job files; what was found in an unchanged section is kept. */
export class Checker {
  readonly #kept = new Memo<readonly Finding[]>()
  readonly #analysis: Analysis
  readonly #checks: Sorted

  constructor(analysis: Analysis, checks: readonly Check[]) {
    this.#analysis = analysis
    this.#checks = sorted(checks)
  }

  /** Every finding of the file, in order of where it stands. */
  check(file: JobFile, run: Run): readonly Finding[] {
    if (file.document.refusal) return this.#worded(file.problems)
    const scope = this.#analysis.scope(file)
    const moment = this.#analysis.moment(file)
    const make = (asking: Scope, section: Section) =>
      this.#section(this.#analysis.bound(file, section), section, asking, run)
    const found: Finding[] = []
    for (const section of file.document.sections) {
      const input = this.#analysis.bound(file, section)
      for (const finding of this.#kept.get(section, { moment, scope, input }, make) ?? []) found.push(finding)
    }
    for (const finding of this.#worded(file.problems)) found.push(finding)
    const shown = worstOf(found, this.#checks.worstOnly)
    const view = {
      blocks: this.#analysis.blocks(file),
      sections: file.document.sections,
      findings: shown,
      today: run.today,
      checkIds: this.#checks.ids,
      claims: this.#checks.claims,
    }
    // Each sees what those before it found: a date in the future is open in an as-built job too.
    let findings: readonly Finding[] = shown
    for (const c of this.#checks.onFile) {
      const more = guarded(c, run, () => c.file({ ...view, findings }))
      if (more.length > 0) findings = [...findings, ...more]
    }
    return inOrder(applyConcessions({ ...view, findings }), file)
  }

  #section(bound: Bound, section: Section, asking: Scope, run: Run): readonly Finding[] {
    const syntax = section.parsed.problems.map((problem) => ({
      at: { section, span: problem.span },
      problem,
    }))
    const findings: Finding[] = [...this.#worded(syntax), ...this.#worded(bound.problems)]
    const visit = (block: Block): void => {
      const checks = this.#checks.onKind.get(block.kind)
      if (checks) {
        const context = lookupFrom(block, asking)
        for (const c of checks) for (const finding of onBlock(c, context, run)) findings.push(finding)
      }
      for (const child of block.children) visit(child)
    }
    for (const block of bound.blocks) visit(block)
    return findings
  }

  #worded(problems: readonly Located<Problem>[]): Finding[] {
    return problems.flatMap(({ at, problem }) => {
      const c = this.#checks.onProblem.get(problem.type)
      if (!c) return []
      const { section, span } = at.taken?.from ?? at
      const source = section.text.slice(span.start, span.end)
      return [complete(c, { at, ...c.words(problem as never, source) })]
    })
  }
}

/** Of a check that shows only the worst of a file, that one, with where else it was found. */
function worstOf(found: readonly Finding[], worstOnly: ReadonlySet<string>): readonly Finding[] {
  const worst = new Map<string, Finding>()
  for (const finding of found) {
    const { check, size = 0 } = finding
    if (worstOnly.has(check) && size > (worst.get(check)?.size ?? -1)) worst.set(check, finding)
  }
  if (worst.size === 0) return found
  return found.flatMap((finding) => {
    const kept = worst.get(finding.check)
    if (!kept) return finding
    if (kept !== finding) return [] // so this comes once a check
    const others = found.filter((other) => other.check === kept.check && other !== kept)
    const related = [...(kept.related ?? []), ...others.map(({ at, message }) => ({ at, message }))]
    return related.length > 0 ? { ...kept, related } : kept
  })
}

function onBlock({ check, asked }: OnBlock, context: Context, run: Run): readonly Finding[] {
  const facts: Record<string, Value<unknown>> = {}
  for (const { key, kind, fact, needed } of asked) {
    const value = context.near(kind)?.facts.get(fact)
    if (value) facts[key] = value
    else if (needed) return []
  }
  const found = guarded(check, run, () => check.run(facts as never, context))
  const { onceReplaced } = check
  if (typeof onceReplaced !== 'function' || found.length === 0) return found
  const later = onceReplaced(context.block, context)
  return later ? asHistory(found, later) : found
}

/** What was found in a reading that a later one has replaced stays in sight, and is no longer to be acted on. */
function asHistory(found: readonly Finding[], later: Block): readonly Finding[] {
  const name = later.name ?? ''
  return found.map((finding) => ({
    ...finding,
    severity: 'information',
    replacedBy: name,
    detail: [finding.detail ?? '', `The later reading ${name} counts now.`].join(' ').trim(),
    todo: `Use ${name} instead.`,
  }))
}

const complete = (c: Check, reported: Reported): Finding => ({
  check: c.id,
  severity: c.severity,
  source: c.source,
  ...('plan' in c && c.plan && { plan: c.plan }),
  ...reported,
  ...(reported.related && { related: reported.related.map(whereWritten) }),
  ...(reported.at.taken && ofTaken(reported, reported.at.taken)),
})

const whereWritten = ({ at, message }: Related): Related => ({ at: at.taken?.from ?? at, message })

/** A finding about what a drive takes from another names the block and where that is written: the word `like` alone does not tell. */
function ofTaken({ message, detail, related = [] }: Reported, { path, from }: Taken): Partial<Finding> {
  const named = `${path}: ${message}`
  const shown = related.map(whereWritten)
  const isShown = shown.some(({ at }) => at.section === from.section && at.span.start === from.span.start)
  return {
    ...(named.length <= longestLine
      ? { message: named }
      : { message, detail: [`At ${path}.`, detail ?? ''].join(' ').trim() }),
    related: isShown ? shown : [...shown, { at: from, message: 'written here' }],
  }
}

/** A fault in one check costs that check's findings, not the others'. */
function guarded(c: Check, run: Run, reported: () => readonly Reported[]): Finding[] {
  try {
    return reported().map((r) => complete(c, r))
  } catch (error) {
    run.onFault?.(c.id, error)
    return []
  }
}

const inEnglish = new Intl.Collator('en')

function inOrder(findings: readonly Finding[], file: JobFile): readonly Finding[] {
  const startOfSection = ({ at }: Finding) => startOf(file.document, at.section) ?? 0
  return [...findings].sort(
    (a, b) =>
      startOfSection(a) - startOfSection(b) ||
      a.at.span.start - b.at.span.start ||
      inEnglish.compare(a.check, b.check),
  )
}
