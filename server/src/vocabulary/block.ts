import type { Shape } from './shape.ts'
import { type Status, statuses } from './status.ts'

/** From which status on a fact is asked for, and where. Parts in a library are asked for nothing. */
interface Requirement {
  /** Absent: it is optional. From `draft`: nothing can be worked out without it. */
  readonly from?: Status
  /** It is asked for only where another fact of the block says this, or is stated at all. */
  readonly when?: { readonly fact: string; readonly is?: string | readonly string[] }
  /** It is not asked for where the block states this fact instead. */
  readonly or?: string
  /** It is found out on the boat, so an as-built job cannot assume it. What is asked for from `as-built` on always is. */
  readonly onBoat?: true
}

export interface Fact<T = unknown> extends Requirement {
  readonly shape: Shape<T>
  /** What it is, for hover and the reference. */
  readonly doc: string
  /** A value as it would be written. */
  readonly example: string
  /** What of a value is missing, in words: `torque`. It is asked for from `issued` on. */
  lacks?(value: T): string | undefined
  /** Each drive has its own: a drive that is `like` another does not take it. */
  readonly perDrive?: true
}

export const fact = <T>(
  shape: Shape<T>,
  doc: string,
  more: Pick<Fact<T>, 'example' | 'perDrive' | 'lacks'> & Requirement,
): Fact<T> => ({
  shape,
  doc,
  ...more,
})

export const isFoundOnBoat = ({ from, onBoat }: Fact): boolean => from === 'as-built' || onBoat === true

const wordsOf = (is: string | readonly string[] = []): string =>
  [is]
    .flat()
    .map((word) => `\`${word}\``)
    .join(' or ')

/** Whether what another fact of the block says makes this one asked for. */
export const isAskedWith = ({ when }: Fact, said: (fact: string) => unknown): boolean =>
  when === undefined ||
  (when.is === undefined
    ? said(when.fact) !== undefined
    : [when.is].flat().some((word) => word === said(when.fact)))

/** From which status on it is asked for, in words: `issued, where adjuster is shims`. Undefined where it is optional. */
export const formatRequirement = ({ from, when, or }: Fact): string | undefined =>
  from &&
  `${from}${when ? `, where \`${when.fact}\` is ${when.is === undefined ? 'stated' : wordsOf(when.is)}` : ''}${or === undefined ? '' : `, unless \`${or}\` is stated`}`

/** A kind of block that is asked for from a status on. */
export interface Need {
  readonly kind: string
  readonly from: Status
  /** It is asked for only where all of these kinds are in the file too. */
  readonly beside?: readonly string[]
}

/** The kinds of block that one needs, with the status they are asked for from. */
export const needsOf = ({ needs = {}, needsBeside = [] }: BlockKind): readonly Need[] => [
  ...statuses.flatMap((from) => (needs[from] ?? []).map((kind) => ({ kind, from }))),
  ...needsBeside,
]

/** Where a block is asked for, in words: ` where the file has `service``. Nothing where it always is. */
export const formatBeside = ({ beside = [] }: Need): string =>
  beside.length === 0 ? '' : ` where the file has ${beside.map((kind) => `\`${kind}\``).join(' and ')}`

/** What stands between a block's kind and its brace. */
export type Heading = 'none' | 'name' | 'title' | 'after' | 'check'

export interface BlockKind<Facts extends Readonly<Record<string, Fact>> = Readonly<Record<string, Fact>>> {
  readonly kind: string
  readonly doc: string
  /** `none` still allows a name, so that a library can hold several. */
  readonly heading: Heading
  /** Kinds it may stand in; `top` is the file itself. */
  readonly within: readonly string[]
  /** Whether several may stand side by side. */
  readonly many: boolean
  /** Each drive has its own: a drive that is `like` another does not take it. */
  readonly perDrive?: true
  /** It records what was done once: it is `like` no other. */
  readonly isRecord?: true
  readonly facts: Facts
  /** Facts that are now written in another way: what a line becomes, by the name it had, from its value. */
  readonly rewritten?: Readonly<Record<string, (value: string) => string>>
  /** Fact that lines without a colon are read as. */
  readonly bare?: keyof Facts & string
  /** What a fact by any other name is: the names are then the user's own. */
  readonly others?: Fact
  /** Blocks that are asked for, from which status on: inside it, or for a job anywhere in the file. */
  readonly needs?: Readonly<Partial<Record<Status, readonly string[]>>>
  /** Blocks that are asked for only where others are there, for what follows from both. */
  readonly needsBeside?: readonly Required<Need>[]
  readonly example: string
}

/** What the kind says of a fact by that name, the user's own names included. */
export const factIn = ({ facts, others }: BlockKind, name: string): Fact | undefined =>
  Object.hasOwn(facts, name) ? facts[name] : others

/** Keeps the names of the facts in the type, so that a path to a fact that is not there does not compile. */
export const block = <const Facts extends Readonly<Record<string, Fact>>>(
  kind: BlockKind<Facts>,
): BlockKind<Facts> => kind
