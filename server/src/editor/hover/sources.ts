import { code, joined, link, type Markdown, md, paragraphs } from '../../areas/common/markdown.ts'
import { allChecks, areasOf } from '../../areas/index.ts'
import { type Check, isBlockCheck } from '../../checks/check.ts'
import type { FactPath } from '../../vocabulary/index.ts'

const linked = (words: string, path: string, docs: string | undefined): Markdown | undefined =>
  docs !== undefined && URL.canParse(path, docs) ? link(words, path, docs) : undefined

/** A check by its id: with its page where `docs`, the place of those pages, is known. */
export const checkLink = ({ id }: Check, docs: string | undefined): Markdown =>
  linked(id, `${id}.md`, docs) ?? code(id)

const checkedBy = (checks: readonly Check[], docs: string | undefined): Markdown | undefined =>
  checks.length === 0
    ? undefined
    : md`Checked by ${joined(
        checks.map((check) => checkLink(check, docs)),
        ', ',
      )}`

const blockChecks = allChecks.filter(isBlockCheck)

/** The checks that a fact, by its path, takes part in. */
export const checksMarkdown = (path: string, docs: string | undefined): Markdown | undefined =>
  checkedBy(
    blockChecks.filter(({ needs, wants }) =>
      Object.values({ ...needs, ...wants }).includes(path as FactPath),
    ),
    docs,
  )

/** The page that explains the results of a kind of block. */
const pageOf = (kind: string): string => areasOf(kind)[0]?.page ?? 'engineering.md'

/** The way from a result to where it comes from: how it is worked out, and the checks of that kind of block. */
export const sourcesMarkdown = (kind: string, docs: string | undefined): Markdown =>
  paragraphs(
    linked('How it is calculated, and how reliable it is', `../${pageOf(kind)}`, docs),
    checkedBy(
      blockChecks.filter(({ on }) => on === kind),
      docs,
    ),
  )
