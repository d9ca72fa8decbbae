import type { Analysis } from '../job/analysis.ts'
import type { Bound, Located } from '../job/bind.ts'
import { startOf } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import { lookupFrom } from '../job/lookup.ts'
import { Memo } from '../job/memo.ts'
import type { Block, Section, Value } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { once } from '../syntax/once.ts'
import type { BlockName } from '../vocabulary/index.ts'
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
}

const sorted = once((checks: readonly Check[]): Sorted => {
  const onKind = new Map<string, OnBlock[]>()
  for (const check of checks.filter(isBlockCheck)) {
    const asked = [...askedBy(check.needs, true), ...askedBy(check.wants, false)]
    onKind.set(check.on, [...(onKind.get(check.on) ?? []), { check, asked }])
  }
  return {
    onKind,
    onProblem: new Map(checks.filter(isProblemCheck).map((c) => [c.problem, c])),
    onFile: checks.filter(isFileCheck),
    ids: checks.map(({ id }) => id),
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
    const scope = this.#analysis.scope(file)
    const moment = this.#analysis.moment(file)
    const make = (asking: Scope, section: Section) =>
      this.#section(this.#analysis.bound(file, section), section, asking, run)
    const found: Finding[] = []
    for (const section of file.document.sections) {
      const input = this.#analysis.bound(file, section)
      for (const finding of this.#kept.get(section, { moment, scope, input }, make) ?? []) found.push(finding)
    }
    found.push(...this.#worded(file.problems))
    const view = {
      blocks: this.#analysis.blocks(file),
      findings: found,
      today: run.today,
      checkIds: this.#checks.ids,
    }
    const whole = this.#checks.onFile.flatMap((c) => guarded(c, run, () => c.file(view)))
    return inOrder(applyConcessions({ ...view, findings: [...found, ...whole] }), file)
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
        for (const c of checks) findings.push(...onBlock(c, context, run))
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
      const source = at.section.text.slice(at.span.start, at.span.end)
      return [complete(c, { at, ...c.words(problem as never, source) })]
    })
  }
}

function onBlock({ check, asked }: OnBlock, context: Context, run: Run): readonly Finding[] {
  const facts: Record<string, Value<unknown>> = {}
  for (const { key, kind, fact, needed } of asked) {
    const value = context.near(kind)?.facts.get(fact)
    if (value) facts[key] = value
    else if (needed) return []
  }
  return guarded(check, run, () => check.run(facts as never, context))
}

const complete = (c: Check, reported: Reported): Finding => ({
  check: c.id,
  severity: c.severity,
  source: c.source,
  ...('plan' in c && c.plan && { plan: c.plan }),
  ...reported,
})

/** A fault in one check costs that check's findings, not the others'. */
function guarded(c: Check, run: Run, reported: () => readonly Reported[]): Finding[] {
  try {
    return reported().map((r) => complete(c, r))
  } catch (error) {
    run.onFault?.(c.id, error)
    return []
  }
}

function inOrder(findings: readonly Finding[], file: JobFile): readonly Finding[] {
  const startOfSection = ({ at }: Finding) => startOf(file.document, at.section) ?? 0
  return [...findings].sort(
    (a, b) =>
      startOfSection(a) - startOfSection(b) ||
      a.at.span.start - b.at.span.start ||
      a.check.localeCompare(b.check, 'en'),
  )
}
