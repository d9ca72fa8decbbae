import type { JobFile } from '../job/files.ts'
import type { BindingProblem, Block, Place, Section, Value } from '../job/model.ts'
import { elide } from '../quantity/elide.ts'
import type { Kind } from '../quantity/kinds.ts'
import type { Lookup } from '../store/lookup.ts'
import type { SyntaxProblem } from '../syntax/tree.ts'
import type { BlockName, FactPath, FactValue } from '../vocabulary/index.ts'
import type { Status } from '../vocabulary/status.ts'
import type { Fix } from './fix.ts'

export type Severity = 'error' | 'warning' | 'information'

/** Where a limit or a rule comes from, and how sure that is. */
export interface Source {
  readonly basis: 'published' | 'common practice' | 'from memory' | 'the language' | 'the job file'
  readonly text: string
}

export const published = (text: string): Source => ({ basis: 'published', text })
export const commonPractice = (text: string): Source => ({ basis: 'common practice', text })
export const theLanguage: Source = { basis: 'the language', text: 'the job language' }
export const theJobFile = (text: string): Source => ({ basis: 'the job file', text })

/** What a finding means for an alignment plan made from the block it stands in. `waits`: something written there cannot be right, or the reading
 * cannot be used yet, so no steps are given until the finding is fixed or accepted. `goes-on`: it does not stop the steps. It is a verdict on the
 * machine as read, a figure is missing that the plan does without, or the plan looks at the same thing itself. */
export type ForPlan = 'waits' | 'goes-on'

/** What a finding about a reading becomes once a later reading counts instead. `stays`: it is about what is written. With a function that gives
 * the later reading, it becomes information: it judges the machine as it stood then, or asks to read again, which was done. */
export type OnceReplaced = 'stays' | ((reading: Block, lookup: Lookup) => Block | undefined)

/** What a job claims from a status on, besides that its facts and blocks are there. */
export interface Claim {
  readonly from: Status
  /** As a sentence, for the page. */
  readonly words: string
}

/** Who accepts a finding, and until when. */
export interface Accepting {
  readonly by: string
  readonly until: string
  /** Its last day has passed. */
  readonly isPast?: true
}

/** A finding as data; `check` and `plan` are the check's own, `severity` and `source` too unless it says otherwise. */
export interface Finding {
  readonly check: string
  readonly severity: Severity
  /** Absent: the plan waits for an error. */
  readonly plan?: ForPlan
  /** An as-built job may not leave it open, whatever its severity. */
  readonly beforeAsBuilt?: true
  /** A concession in force accepts it. */
  readonly accepted?: true
  /** The concession that accepts it, also one past its last day that an as-built job keeps. */
  readonly concession?: Accepting
  /** It is about a reading that this later one replaced: what it says is history. */
  readonly replacedBy?: string
  readonly at: Place
  /** What is wrong, in one line: the Problems list shows no more. `tests/checks/words.test.ts` keeps its shape. */
  readonly message: string
  /** What the line leaves out: the limit where it is not in the line, and what follows. */
  readonly detail?: string
  /** What to do about it. */
  readonly todo: string
  readonly found?: string
  readonly limit?: string
  readonly source: Source
  /** What the result depends on that the file does not say. */
  readonly assumptions?: readonly string[]
  readonly related?: readonly { readonly at: Place; readonly message: string }[]
  /** How dangerous it is, SI, for a check that shows only the worst of a file. */
  readonly size?: number
  /** For the fix. */
  readonly data?: FindingData
}

/** What a fix is made from. */
export interface FindingData {
  /** The word most likely meant. */
  readonly nearest?: string
  /** What should stand at the finding instead. */
  readonly replace?: string
  /** Name of what is missing. */
  readonly add?: string
  /** What was expected, in words. */
  readonly wanted?: string
  /** The kind of quantity that was expected, or the kinds. */
  readonly kind?: Kind
  readonly kinds?: readonly Kind[]
  readonly [more: string]: unknown
}

/** What was found, whole. */
export const fullMessage = ({ message, detail }: Pick<Finding, 'message' | 'detail'>): string =>
  detail === undefined ? message : `${message} ${detail}`

export type Reported = Omit<
  Finding,
  'check' | 'severity' | 'source' | 'accepted' | 'concession' | 'replacedBy'
> & {
  readonly source?: Source
  readonly severity?: Severity
  readonly plan?: ForPlan
}

/** What a fix may ask besides its finding. */
export interface FixGround {
  readonly file: JobFile
  /** The innermost block around the finding. */
  readonly block: Block | undefined
  /** Asked from that block. */
  readonly lookup: Lookup | undefined
  /** Today, `YYYY-MM-DD`. */
  readonly today: string
  /** What else was found in the file. */
  readonly findings: readonly Finding[]
}

interface Described {
  /** `area/slug`: the slug names the fault. */
  readonly id: string
  readonly severity: Severity
  /** It is about what the status of the job asks for or claims. Without this the severity of a finding never depends on the status. */
  readonly followsStatus?: true
  /** What the status claims, and this check finds untrue. */
  readonly claim?: Claim
  /** The fault in a few words, for the list of checks. */
  readonly title: string
  /** Why it matters, for the check's page. */
  readonly why: string
  readonly source: Source
  /** A job with the fault. A comment line with carets below it marks where the finding stands, and may give words of the message. */
  readonly fires: string
  /** The same without the fault. */
  readonly quiet: string
  /** Shows only the worst of a file, by `size`; the others are named beside it. */
  readonly worstOnly?: true
  /** What can be offered to put it right, most likely first. */
  readonly fixes?: (finding: Finding, ground: FixGround) => readonly Fix[]
}

type Paths = Readonly<Record<string, FactPath>>
export type FactValues<N extends Paths> = { readonly [K in keyof N]: Value<FactValue<N[K]>> }

/** Kinds of block that the steps of an alignment plan are made from. */
export const planKinds = ['reading', 'coupling', 'bed', 'foot', 'move', 'target'] as const
type PlanKind = (typeof planKinds)[number]

/** A check on a block that a plan is made from must say what its findings mean for that plan; one on a reading also what they become with the next. */
type CheckTarget =
  | { readonly on: 'reading'; readonly plan: ForPlan; readonly onceReplaced: OnceReplaced }
  | { readonly on: Exclude<PlanKind, 'reading'>; readonly plan: ForPlan; readonly onceReplaced?: never }
  | {
      readonly on: Exclude<BlockName, PlanKind> | readonly Exclude<BlockName, PlanKind>[]
      readonly plan?: ForPlan
      readonly onceReplaced?: never
    }
  /** Looks at every block, and says with each finding whether the plan waits for it. */
  | { readonly on: 'every kind'; readonly plan?: never; readonly onceReplaced?: never }

/** Looks at one block of a kind, or of each of some kinds. Runs only when every fact it needs is there. */
export type BlockCheck<N extends Paths = Paths, W extends Paths = Paths> = BlockCheckBody<N, W> & CheckTarget

interface BlockCheckBody<N extends Paths, W extends Paths> extends Described {
  readonly needs?: N
  readonly wants?: W
  readonly run: (facts: FactValues<N> & Partial<FactValues<W>>, lookup: Lookup) => readonly Reported[]
}

export type Problem = SyntaxProblem | BindingProblem

/** Gives words to one type of problem that reading the text has found. */
export interface ProblemCheck<T extends Problem['type'] = Problem['type']> extends Described {
  readonly problem: T
  readonly words: (
    problem: Extract<Problem, { type: T }>,
    /** The marked text, elided where it is long: what a message repeats is taken from here. */
    written: string,
  ) => Omit<Reported, 'at' | 'related'> & { readonly related?: readonly { at: Place; message: string }[] }
}

/** Everything a whole-file check can see. */
export interface FileView {
  readonly blocks: readonly Block[]
  readonly sections: readonly Section[]
  /** Findings of all other checks, before concessions are taken into account. */
  readonly findings: readonly Finding[]
  /** Today, `YYYY-MM-DD`, from whoever runs the checks. */
  readonly today: string
  readonly checkIds: readonly string[]
  /** The status that first claims what a check finds untrue, by the id of the check. */
  readonly claims: ReadonlyMap<string, Status>
}

/** Looks at the file as a whole, after the others. */
export interface FileCheck extends Described {
  readonly file: (view: FileView) => readonly Reported[]
}

export type Check = BlockCheck | ProblemCheck | FileCheck

export const check = <
  const N extends Paths = Record<never, never>,
  const W extends Paths = Record<never, never>,
>(
  of: BlockCheck<N, W>,
): Check => of as unknown as Check

/** The words get what the file says cut to a length that can be read in a sentence. */
export const problemCheck = <T extends Problem['type']>(of: ProblemCheck<T>): Check => {
  const words: typeof of.words = (problem, written) => of.words(problem, elide(written))
  return { ...of, words } as unknown as Check
}

export const fileCheck = (of: FileCheck): Check => of

export const isBlockCheck = (c: Check): c is BlockCheck => 'on' in c
export const isProblemCheck = (c: Check): c is ProblemCheck => 'problem' in c
export const isFileCheck = (c: Check): c is FileCheck => 'file' in c

/** A finding at a fact's value. */
export const at = (value: Value<unknown>, of: Omit<Reported, 'at'>): Reported => ({
  at: value.at,
  ...of,
  ...(value.origin && { related: [...(of.related ?? []), { at: value.origin, message: 'said here' }] }),
})

/** A finding at a block's heading. */
export const atHead = (block: Block, of: Omit<Reported, 'at'>): Reported => ({
  at: block.head,
  ...of,
})
