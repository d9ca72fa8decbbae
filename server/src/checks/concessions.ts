import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import { aroundIn, withInner } from '../job/around.ts'
import { type Block, ofKind } from '../job/model.ts'
import { findKind } from '../vocabulary/index.ts'
import type { FileView, Finding } from './check.ts'
import { isSilent, missingChecks } from './missing.ts'

/** Whether a finding of this check may be accepted: a text that cannot be read, or says the wrong thing, has to be corrected. */
export const isConcedable = ({ check, severity }: Pick<Finding, 'check' | 'severity'>): boolean =>
  !(check.startsWith('job/') && severity === 'error') || missingChecks.includes(check)

export interface Concession {
  readonly block: Block
  /** Id of the check. */
  readonly check: string
  readonly on: string
  readonly grantedBy: string
  readonly until: string
  readonly reason: string
}

const textOfFact = (block: Block, fact: string): string | undefined => {
  const value = block.facts.get(fact)?.value
  return typeof value === 'string' && !isSilent(value) ? value : undefined
}

/** The concessions that are complete; each that is not is a finding of its own. */
export function concessionsOf(blocks: readonly Block[]): readonly Concession[] {
  return blocks.flatMap((block) => {
    if (block.kind !== 'concession') return []
    const check = block.about?.text
    const on = textOfFact(block, 'on')
    const grantedBy = textOfFact(block, 'granted-by')
    const until = textOfFact(block, 'until')?.slice(0, 10)
    const reason = textOfFact(block, 'reason')
    return check && on && grantedBy && until && reason ? [{ block, check, on, grantedBy, until, reason }] : []
  })
}

/** The last day counts. Dates of ISO 8601 compare as they are written. */
export const isInForce = (concession: Concession, today: string): boolean => today <= concession.until

/** What concessions ask of a file, sorted once. */
const sorted = memoizeByIdentity((view: FileView) => {
  const all = [...withInner(view.blocks)]
  const paths = new Set(all.map(({ path }) => path))
  const around = aroundIn(all)
  const found = new Map<string, Covered>()
  for (const finding of view.findings) {
    const blocks = around(finding.at)
    const day = dayOf(blocks)
    for (const path of new Set(blocks.map((block) => block.path))) {
      const key = keyOf(finding.check, path)
      const covered = found.get(key) ?? { isThere: true, findings: [], latest: undefined }
      found.set(key, covered)
      if (!isConcedable(finding)) continue
      covered.findings.push(finding)
      if (day !== undefined && day > (covered.latest ?? '')) covered.latest = day
    }
  }
  return { paths, around, found }
})

/** What is found of one check in the blocks of one path. */
interface Covered {
  /** Also where none of it can be accepted. */
  readonly isThere: boolean
  /** Those that may be accepted. */
  readonly findings: Finding[]
  /** The last day that any of them is about. */
  latest: string | undefined
}

const nothing: Covered = { isThere: false, findings: [], latest: undefined }

const keyOf = (check: string, path: string): string => `${check} ${path}`

/** Whether there is a block of this path: `starboard.dry-2`. */
export const isBlock = (path: string, view: FileView): boolean => sorted(view).paths.has(path)

/** What the concession is about, whether or not it is in force. */
export const coveredBy = (
  { check, on }: Pick<Concession, 'check' | 'on'>,
  view: FileView,
): Readonly<Covered> => sorted(view).found.get(keyOf(check, on)) ?? nothing

const isAsBuilt = ({ blocks }: FileView): boolean =>
  ofKind(blocks, 'job')[0]?.facts.get('status')?.value === 'as-built'

/** Whether it says what a job is missing that its status claims: a concession may accept that, and the record still lacks it. */
const isUnclaimed = ({ check }: Finding, { claims }: FileView): boolean =>
  missingChecks.includes(check) || claims.has(check)

/** The day of the reading or the move among the blocks around a finding, where one has its date. */
function dayOf(around: readonly Block[]): string | undefined {
  const facts = around.find((block) => findKind(block.kind)?.isRecord)?.facts
  const date = facts?.get('taken')?.value ?? facts?.get('done')?.value
  return typeof date === 'string' ? date.slice(0, 10) : undefined
}

/** Whether a concession past its last day still accepts something about this day: in a job that was handed over with it, unless it had ended
 * before. */
export const outlives = (concession: Concession, day: string | undefined, view: FileView): boolean =>
  !isInForce(concession, view.today) && isAsBuilt(view) && isInForce(concession, day ?? concession.until)

/** Concessions for one check on one path. */
interface ConcessionsOnPath {
  /** The first that is in force. */
  inForce: Ranked | undefined
  /** Those that have ended, each of which ended later than all before it: any other accepts nothing that one of these does not. */
  readonly past: Ranked[]
}

interface Ranked {
  readonly concession: Concession
  /** Where several accept a finding, the one that is written first does. */
  readonly rank: number
}

function givenIn(view: FileView): ReadonlyMap<string, ConcessionsOnPath> {
  const given = new Map<string, ConcessionsOnPath>()
  for (const [rank, concession] of concessionsOf(view.blocks).entries()) {
    const key = keyOf(concession.check, concession.on)
    const same = given.get(key) ?? { inForce: undefined, past: [] }
    given.set(key, same)
    if (isInForce(concession, view.today)) same.inForce ??= { concession, rank }
    else if (concession.until > (same.past.at(-1)?.concession.until ?? ''))
      same.past.push({ concession, rank })
  }
  return given
}

/** The first of concessions, each ending later than the one before, that had not ended on a day. */
function firstOn(past: readonly Ranked[], day: string | undefined): Ranked | undefined {
  let low = 0
  let high = past.length
  while (day !== undefined && low < high) {
    const middle = (low + high) >> 1
    if ((past[middle]?.concession.until ?? '') < day) low = middle + 1
    else high = middle
  }
  return past[low]
}

const firstOf = (ranked: readonly (Ranked | undefined)[]): Concession | undefined =>
  ranked
    .filter((one) => one !== undefined)
    .reduce<Ranked | undefined>((first, one) => (first && first.rank < one.rank ? first : one), undefined)
    ?.concession

/** The findings with those accepted marked as such. None is left out. A concession that ended in a job that is as-built still says who accepted the
 * finding, but a plan made today waits for it again. */
export function applyConcessions(view: FileView): readonly Finding[] {
  const given = givenIn(view)
  if (given.size === 0) return view.findings
  const wasHandedOver = isAsBuilt(view)
  const { around } = sorted(view)
  const acceptedBy = (finding: Finding): Concession | undefined => {
    if (!isConcedable(finding)) return undefined
    const blocks = around(finding.at)
    const on = blocks.flatMap(({ path }) => given.get(keyOf(finding.check, path)) ?? [])
    const inForce = firstOf(on.map((one) => one.inForce))
    if (inForce || !wasHandedOver) return inForce
    const day = dayOf(blocks)
    return firstOf(on.map(({ past }) => firstOn(past, day)))
  }
  return view.findings.map((finding) => {
    const by = acceptedBy(finding)
    if (!by) return finding
    const { grantedBy, until, reason } = by
    const isPast = !isInForce(by, view.today)
    const { beforeAsBuilt: _, ...kept } = finding
    return {
      ...kept,
      severity: wasHandedOver && isUnclaimed(finding, view) ? 'warning' : 'information',
      ...(!isPast && { accepted: true }),
      concession: { by: grantedBy, until, ...(isPast && { isPast }) },
      detail: [
        finding.detail ?? '',
        `Accepted by ${grantedBy} until ${until}${isPast ? ', which has passed' : ''}: ${reason}`,
      ]
        .join(' ')
        .trim(),
    }
  })
}
