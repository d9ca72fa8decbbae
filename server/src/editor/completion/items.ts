import { example, md } from '../../areas/common/markdown.ts'
import type { BlockKind, Fact } from '../../vocabulary/block.ts'
import { blockKinds, findKind } from '../../vocabulary/index.ts'
import { factMarkdown, kindMarkdown } from '../hover/words.ts'
import {
  blocksInScope,
  feetFor,
  likeInScope,
  readingsFor,
  terminalsFor,
  topBlocks,
} from './names-in-scope.ts'
import { type CompletionContext, type Offer, word } from './offer.ts'
import { blockTemplate, factTemplate, type Site, wholeDrive, wholeJob } from './snippets.ts'
import { plainOf, type Template } from './template.ts'
import { valueOffers } from './values.ts'

/** What may begin where a fact, a block or a line begins. */
export function itemOffers(here: CompletionContext): readonly Offer[] {
  const { frame } = here
  const site = siteOf(here)
  if (!frame) return [...blockOffers(here, 'top', site), ...topOffers(here, site)]
  const kind = findKind(frame.kind)
  if (!kind) return []
  const facts = missingFacts(here, kind, site)
  const blocks = blockOffers(here, kind.kind, site)
  const isNeeded = ({ label }: Offer) => kind.needs?.draft?.includes(label)
  return [
    ...bareOffers(here, kind),
    ...facts.required,
    ...blocks.filter(isNeeded),
    ...facts.other,
    ...footOffers(here, kind, site),
    ...blocks.filter((offer) => !isNeeded(offer)),
    ...facts.inherited,
    ...likeOffer(here, kind),
  ]
}

/** What a snippet takes from around the cursor. */
function siteOf(here: CompletionContext): Site {
  const { block, scope, today } = here
  const beside = block
    ? block.children.map(({ name, kind }) => name ?? kind)
    : topBlocks(here).map(({ path }) => path)
  const terminals = (of: 'controller' | 'motor') => (block ? terminalsFor(block, scope, of) : [])
  return {
    today,
    system: scope.system(),
    taken: beside,
    refer: (kinds) => [
      ...(block?.children ?? [])
        .filter((child) => kinds.includes(child.kind))
        .map(({ name, kind }) => name ?? kind),
      ...blocksInScope(here, block, kinds).map(({ path }) => path),
    ],
    feet: block ? feetFor(block, scope) : [],
    lastReading: block && readingsFor(block)[0],
    terminals: { controller: terminals('controller'), motor: terminals('motor') },
  }
}

type Rank = 'required' | 'other' | 'inherited'

/** Facts that are not written: first those the block needs, last those it takes over from the one it is like. */
function missingFacts(
  here: CompletionContext,
  kind: BlockKind,
  site: Site,
): Readonly<Record<Rank, readonly Offer[]>> {
  const { frame, block } = here
  const rank = (name: string, { from }: Fact): Rank =>
    block?.facts.get(name)?.origin ? 'inherited' : from === 'draft' ? 'required' : 'other'
  const facts = Object.entries(kind.facts)
    .filter(([name]) => !frame?.facts.includes(name) && name !== kind.bare)
    .map(([name, fact]) => ({ rank: rank(name, fact), offer: factOffer(here, { name, fact, kind, site }) }))
  const ranked = (wanted: Rank) =>
    facts.flatMap(({ rank: of, offer }) =>
      of === wanted ? [{ ...offer, ...(wanted !== 'other' && { detail: wanted }) }] : [],
    )
  return { required: ranked('required'), other: ranked('other'), inherited: ranked('inherited') }
}

interface FactOfferOptions {
  readonly name: string
  readonly fact: Fact
  readonly kind: BlockKind
  readonly site: Site
}

const factOffer = (
  { context, scope }: CompletionContext,
  { name, fact, kind, site }: FactOfferOptions,
): Offer => ({
  label: name,
  kind: 'fact',
  detail: fact.shape.words,
  doc: factMarkdown({ kind: kind.kind, name, fact, system: scope.system() }),
  insert: context.next === 'colon' ? [name] : factTemplate(name, fact, site),
})

/** The feet of the bed that a move has not named yet. */
function footOffers(here: CompletionContext, kind: BlockKind, site: Site): readonly Offer[] {
  const { frame, block, scope } = here
  const { others } = kind
  if (!others || !block) return []
  return feetFor(block, scope)
    .filter((name) => !frame?.facts.includes(name))
    .map((name) => factOffer(here, { name, fact: others, kind, site }))
}

/** Lines without a name, where the block has them. */
function bareOffers(here: CompletionContext, { bare }: BlockKind): readonly Offer[] {
  if (bare === undefined || here.context.on !== 'item') return []
  return valueOffers(here, { ...here.context, ...here.context.line, on: 'value', fact: bare }).offers
}

function blockOffers(here: CompletionContext, parent: string, site: Site): readonly Offer[] {
  const { frame, context } = here
  const written = frame?.blocks ?? topBlocks(here).map(({ kind }) => kind)
  const single = ({ many, within }: BlockKind) => !many && (parent !== 'top' || within.length === 1)
  const allowed = blockKinds.filter(
    (kind) => kind.within.includes(parent) && !(single(kind) && written.includes(kind.kind)),
  )
  // At the top of a file its own kinds come before the parts of a library.
  const own = allowed.filter(({ within }) => within[0] === parent)
  const sorted = [...own, ...allowed.filter((kind) => !own.includes(kind))]
  return sorted.map((kind) => ({
    label: kind.kind,
    kind: 'block',
    detail: kind.doc,
    doc: kindMarkdown(kind),
    insert: context.next === 'brace' ? [kind.kind] : blockTemplate(kind, site),
  }))
}

/** What else may begin at the top of a file. */
function topOffers(here: CompletionContext, site: Site): readonly Offer[] {
  const hasJob = topBlocks(here).some(({ kind }) => kind === 'job')
  const whole = (label: string, detail: string, insert: Template): Offer => ({
    label,
    kind: 'snippet',
    detail,
    doc: example(plainOf(insert)),
    insert,
  })
  return [
    word('use', {
      kind: 'block',
      detail: 'Use blocks of another job file by their names',
      insert: ['use "', { value: '' }, '"'],
    }),
    whole('whole drive', 'A drive with all its parts, with values to fill in', wholeDrive(site)),
    ...(hasJob
      ? []
      : [whole('whole job', 'A job with its battery and a drive, with values to fill in', wholeJob(site))]),
  ]
}

function likeOffer(here: CompletionContext, { kind, within }: BlockKind): readonly Offer[] {
  const { frame, block } = here
  const mayBeLike = kind === 'drive' || (within.includes('top') && within.length > 1)
  if (!block || !mayBeLike || frame?.facts.includes('like')) return []
  const names = likeInScope(here, block).map(({ path }) => path)
  const [first] = names
  return first === undefined
    ? []
    : [
        {
          label: 'like',
          kind: 'fact',
          detail: `the ${kind} that this one inherits from`,
          doc: md`Facts not stated here are taken from there.`,
          insert: here.context.next === 'colon' ? ['like'] : ['like: ', { value: first, choices: names }],
        },
      ]
}
