import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { Analysis } from '../job/analysis.ts'
import type { Bound, Located } from '../job/bind.ts'
import { startOf } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import type { Block, Place, Section, Taken, Value } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import { placeNow } from '../store/anchor.ts'
import type { Lookup } from '../store/lookup.ts'
import { storeOf } from '../store/store.ts'
import type { StoredBlock } from '../store/stored-block.ts'
import { resultOf, type Work } from '../store/work.ts'
import { type BlockName, vocabulary } from '../vocabulary/index.ts'
import type { Status } from '../vocabulary/status.ts'
import {
  type BlockCheck,
  type Check,
  type FileCheck,
  type FileView,
  type Finding,
  isBlockCheck,
  isFileCheck,
  isProblemCheck,
  type Problem,
  type ProblemCheck,
  type Reported,
} from './check.ts'
import { applyConcessions } from './concessions.ts'
import { longestLine } from './one-line.ts'
import { worstOf } from './worst-only.ts'

type Related = NonNullable<Finding['related']>[number]

/** A check that failed itself. */
interface CheckFailure {
  readonly check: string
  readonly error: unknown
}

interface Checked {
  readonly findings: readonly Finding[]
  readonly faults: readonly CheckFailure[]
}

export interface CheckRun {
  readonly today: string
  /** Told when a check itself fails: its findings are missing, the others stand. */
  readonly onFault?: (check: string, error: unknown) => void
}

/** A fact that a check gets. */
interface InputFact {
  readonly key: string
  readonly kind: BlockName
  readonly fact: string
  /** Without it the check does not run. */
  readonly needed: boolean
}

interface PreparedCheck {
  readonly check: BlockCheck
  readonly inputs: readonly InputFact[]
}

/** Checks by what they look at. */
interface ChecksByTarget {
  readonly onKind: ReadonlyMap<string, readonly PreparedCheck[]>
  readonly onProblem: ReadonlyMap<string, ProblemCheck>
  readonly onFile: readonly FileCheck[]
  readonly ids: readonly string[]
  readonly claims: ReadonlyMap<string, Status>
  readonly worstOnly: ReadonlySet<string>
}

const checksByTarget = memoizeByIdentity((checks: readonly Check[]): ChecksByTarget => {
  const onKind = new Map<string, PreparedCheck[]>()
  for (const check of checks.filter(isBlockCheck)) {
    const inputs = [...inputFacts(check.needs, true), ...inputFacts(check.wants, false)]
    const kinds = check.on === 'every kind' ? Object.keys(vocabulary) : [check.on].flat()
    for (const kind of kinds) onKind.set(kind, [...(onKind.get(kind) ?? []), { check, inputs }])
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

const inputFacts = (paths: BlockCheck['needs'], needed: boolean): readonly InputFact[] =>
  Object.entries(paths ?? {}).map(([key, path]) => {
    const dot = path.indexOf('.')
    return { key, kind: path.slice(0, dot) as BlockName, fact: path.slice(dot + 1), needed }
  })

/** Runs a set of checks over job files; what was found in an unchanged section is kept. */
export class Checker {
  readonly #analysis: Analysis
  readonly #checks: ChecksByTarget

  constructor(analysis: Analysis, checks: readonly Check[]) {
    this.#analysis = analysis
    this.#checks = checksByTarget(checks)
  }

  /** Every finding of the file, in order of where it stands. */
  check(file: JobFile, run: CheckRun): readonly Finding[] {
    if (file.document.refusal) return this.#worded(file.problems)
    const store = storeOf(this.#analysis, file)
    const seen = { analysis: this.#analysis, file }
    const found: Finding[] = []
    for (const section of file.document.sections) {
      const { findings, faults } = store.ofSection(section, this.#findingsInSection, seen)
      for (const finding of findings) found.push(finding)
      for (const { check, error } of faults) run.onFault?.(check, error)
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
      const more = inFile(c, { ...view, findings }, run)
      if (more.length > 0) findings = [...findings, ...more]
    }
    return inOrder(applyConcessions({ ...view, findings }), file)
  }

  /** All that is found in a section, with the places as they are now. */
  readonly #findingsInSection = (
    { blocks, problems }: Bound,
    { analysis, file }: View,
    section: Section,
  ): Checked => {
    const store = storeOf(analysis, file)
    const unread = section.parsed.problems.map((problem) => ({
      at: { section, span: problem.span },
      problem,
    }))
    const findings = [...this.#worded(unread), ...this.#worded(problems)]
    const failed: CheckFailure[] = []
    for (const block of blocks) {
      const under = resultOf(store.standsFor(block), this.#underRoot)
      failed.push(...under.faults)
      for (const finding of under.findings)
        try {
          findings.push(placed(finding))
        } catch (error) {
          failed.push({ check: finding.check, error })
        }
    }
    return { findings, faults: failed }
  }

  /** All that the checks find in a top-level block and those inside it. */
  readonly #underRoot: Work<Checked> = {
    name: 'checks',
    of: (root) => {
      const all: Checked[] = []
      const visit = (block: StoredBlock): void => {
        all.push(resultOf(block, this.#onBlock))
        for (const child of block.children) visit(child)
      }
      visit(root)
      return {
        findings: all.flatMap(({ findings }) => findings),
        faults: all.flatMap(({ faults }) => faults),
      }
    },
  }

  /** What the checks find in a block. A fault in one costs its findings, not the others'. */
  readonly #onBlock: Work<Checked> = {
    name: 'checks',
    of: (block, lookup) => {
      const findings: Finding[] = []
      const faults: CheckFailure[] = []
      for (const { check, inputs } of this.#checks.onKind.get(block.kind) ?? [])
        try {
          for (const finding of runOnBlock(check, inputs, lookup)) findings.push(finding)
        } catch (error) {
          faults.push({ check: check.id, error })
        }
      return { findings, faults }
    },
  }

  #worded(problems: readonly Located<Problem>[]): Finding[] {
    return problems.flatMap(({ at, problem }) => {
      const c = this.#checks.onProblem.get(problem.type)
      if (!c) return []
      const { section, span } = at.taken?.from ?? at
      const source = section.text.slice(span.start, span.end)
      return [placed(complete(c, { at, ...c.words(problem as never, source) }))]
    })
  }
}

function runOnBlock(check: BlockCheck, inputs: readonly InputFact[], lookup: Lookup): readonly Finding[] {
  const facts: Record<string, Value<unknown>> = {}
  for (const { key, kind, fact, needed } of inputs) {
    const value = lookup.near(kind)?.facts.get(fact)
    if (value) facts[key] = value
    else if (needed) return []
  }
  const found = check.run(facts as never, lookup).map((reported) => complete(check, reported))
  const { onceReplaced } = check
  if (typeof onceReplaced !== 'function' || found.length === 0) return found
  const later = onceReplaced(lookup.block, lookup)
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
})

/** A finding with the places as they are now. While they are where they were it stays the same object, so that what an editor makes of it can be
 * kept with it. */
function placed(finding: Finding): Finding {
  const places = [finding, ...(finding.related ?? [])].map(({ at }) => placeNow(at))
  const before = lastPlaced.get(finding)
  if (before?.places.every((place, i) => isSamePlace(place, places[i]))) return before.placed
  const now = placedAt(finding, places)
  lastPlaced.set(finding, { places, placed: now })
  return now
}

const lastPlaced = new WeakMap<Finding, { readonly places: readonly Place[]; readonly placed: Finding }>()

const isSamePlace = (a: Place, b: Place | undefined): boolean =>
  a === b || (a.section === b?.section && a.span === b.span && a.taken === b.taken)

function placedAt(finding: Finding, [at = finding.at, ...others]: readonly Place[]): Finding {
  const related = finding.related?.map((one, i) => ({ ...one, at: others[i] ?? one.at }))
  return {
    ...finding,
    at,
    ...(related && { related: related.map(whereWritten) }),
    ...(at.taken && ofTaken({ ...finding, ...(related && { related }) }, at.taken)),
  }
}

const whereWritten = ({ at, message }: Related): Related => ({ at: at.taken?.from ?? at, message })

/** A finding about what a drive takes from another names the block and where that is written: the word `like` alone does not tell. */
function ofTaken({ message, detail, related = [] }: Finding, { path, from }: Taken): Partial<Finding> {
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

function inFile(c: FileCheck, view: FileView, run: CheckRun): readonly Finding[] {
  try {
    return c.file(view).map((reported) => placed(complete(c, reported)))
  } catch (error) {
    run.onFault?.(c.id, error)
    return []
  }
}

const inEnglish = new Intl.Collator('en')

function inOrder(findings: readonly Finding[], file: JobFile): readonly Finding[] {
  return findings
    .map((finding) => ({ finding, section: startOf(file.document, finding.at.section) ?? 0 }))
    .sort(
      (a, b) =>
        a.section - b.section ||
        a.finding.at.span.start - b.finding.at.span.start ||
        inEnglish.compare(a.finding.check, b.finding.check),
    )
    .map(({ finding }) => finding)
}
