import { type Check, isBlockCheck } from '../checks/check.ts'
import { allChecks } from '../checks/index.ts'
import type { FactPath } from '../vocabulary/index.ts'
import { code, paragraphs } from './markdown.ts'

const linked = (words: string, path: string, docs: string | undefined): string | undefined =>
  docs !== undefined && URL.canParse(path, docs) ? `[${words}](${new URL(path, docs).href})` : undefined

/** A check by its id: with its page where `docs`, the place of those pages, is known. */
export const checkLink = ({ id }: Check, docs: string | undefined): string =>
  linked(id, `${id}.md`, docs) ?? code(id)

const checkedBy = (checks: readonly Check[], docs: string | undefined): string | undefined =>
  checks.length === 0 ? undefined : `Checked by ${checks.map((check) => checkLink(check, docs)).join(', ')}`

const blockChecks = allChecks.filter(isBlockCheck)

/** The checks that a fact, by its path, takes part in. */
export const checksMarkdown = (path: string, docs: string | undefined): string | undefined =>
  checkedBy(
    blockChecks.filter(({ needs, wants }) =>
      Object.values({ ...needs, ...wants }).includes(path as FactPath),
    ),
    docs,
  )

/** What the gaps and offsets of the faces come to has a page of its own. */
const aligned: ReadonlySet<string> = new Set(['reading', 'bed', 'coupling', 'move'])

const howOf = (kind: string): string =>
  aligned.has(kind) ? '../engineering/alignment.md' : '../engineering.md'

/** The way from a result to where it comes from: how it is worked out, and the checks of that kind of block. */
export const sourcesMarkdown = (kind: string, docs: string | undefined): string =>
  paragraphs(
    linked('How it is worked out, and how far to trust it', howOf(kind), docs),
    checkedBy(
      blockChecks.filter(({ on }) => on === kind),
      docs,
    ),
  )
