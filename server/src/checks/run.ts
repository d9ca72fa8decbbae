import type { Analysis } from '../job/analysis.ts'
import type { Bound, Located } from '../job/bind.ts'
import type { JobFile } from '../job/files.ts'
import { lookupFrom } from '../job/lookup.ts'
import { Memo } from '../job/memo.ts'
import type { Block, Section, Value } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import type { BlockName } from '../vocabulary/index.ts'
import {
  type BlockCheck,
  type Check,
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

/** Runs a set of checks over job files; what was found in an unchanged section is kept. */
export class Checker {
  readonly #kept = new Memo<readonly Finding[]>()
  readonly #analysis: Analysis
  readonly #blockChecks: ReadonlyMap<string, readonly BlockCheck[]>
  readonly #problemChecks: ReadonlyMap<string, ProblemCheck>
  readonly #checks: readonly Check[]

  constructor(analysis: Analysis, checks: readonly Check[]) {
    this.#analysis = analysis
    this.#checks = checks
    const onKind = new Map<string, BlockCheck[]>()
    for (const c of checks.filter(isBlockCheck)) onKind.set(c.on, [...(onKind.get(c.on) ?? []), c])
    this.#blockChecks = onKind
    this.#problemChecks = new Map(checks.filter(isProblemCheck).map((c) => [c.problem, c]))
  }

  /** Every finding of the file, in order of where it stands. */
  check(file: JobFile, run: Run): readonly Finding[] {
    const scope = this.#analysis.scope(file)
    const { revision } = this.#analysis
    const found = file.document.sections.flatMap((section) => {
      const input = this.#analysis.bound(file, section)
      return [
        ...(this.#kept.get(section, { revision, scope, input }, (asking) =>
          this.#section(input, section, asking, run),
        ) ?? []),
      ]
    })
    found.push(...this.#worded(file.problems))
    const view = {
      blocks: this.#analysis.blocks(file),
      findings: found,
      today: run.today,
      checkIds: this.#checks.map((c) => c.id),
    }
    const whole = this.#checks.filter(isFileCheck).flatMap((c) => guarded(c, run, () => c.file(view)))
    return inOrder(applyConcessions({ ...view, findings: [...found, ...whole] }), file)
  }

  #section(bound: Bound, section: Section, asking: Scope, run: Run): readonly Finding[] {
    const syntax = section.parsed.problems.map((problem) => ({
      at: { section, span: problem.span },
      problem,
    }))
    const findings: Finding[] = [...this.#worded(syntax), ...this.#worded(bound.problems)]
    const visit = (block: Block): void => {
      for (const c of this.#blockChecks.get(block.kind) ?? [])
        findings.push(...this.#onBlock(c, block, asking, run))
      for (const child of block.children) visit(child)
    }
    for (const block of bound.blocks) visit(block)
    return findings
  }

  #onBlock(c: BlockCheck, block: Block, scope: Scope, run: Run): readonly Finding[] {
    const context = lookupFrom(block, scope)
    const facts: Record<string, Value<unknown>> = {}
    for (const [key, path] of [...Object.entries(c.needs ?? {}), ...Object.entries(c.wants ?? {})]) {
      const dot = path.indexOf('.')
      const value = context.near(path.slice(0, dot) as BlockName)?.facts.get(path.slice(dot + 1))
      if (value) facts[key] = value
      else if (c.needs && key in c.needs) return []
    }
    return guarded(c, run, () => c.run(facts as never, context))
  }

  #worded(problems: readonly Located<Problem>[]): Finding[] {
    return problems.flatMap(({ at, problem }) => {
      const c = this.#problemChecks.get(problem.type)
      if (!c) return []
      const source = at.section.text.slice(at.span.start, at.span.end)
      return [complete(c, { at, ...c.words(problem as never, source) })]
    })
  }
}

const complete = (c: Check, reported: Reported): Finding => ({
  check: c.id,
  severity: c.severity,
  source: c.source,
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
  const order = new Map(file.document.sections.map((section, i) => [section, i]))
  return [...findings].sort(
    (a, b) =>
      (order.get(a.at.section) ?? 0) - (order.get(b.at.section) ?? 0) ||
      a.at.span.start - b.at.span.start ||
      a.check.localeCompare(b.check, 'en'),
  )
}
