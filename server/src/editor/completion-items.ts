import type { BlockKind, Fact } from '../vocabulary/block.ts'
import { findKind, vocabulary } from '../vocabulary/index.ts'
import { type Here, type Offer, word } from './completion-offer.ts'
import { valueOffers } from './completion-values.ts'
import { noEntries } from './cursor-entries.ts'
import { factMarkdown, kindMarkdown } from './hover-words.ts'
import {
  blocksInScope,
  feetFor,
  likeInScope,
  readingsFor,
  terminalsFor,
  topBlocks,
} from './names-in-scope.ts'
import { blockTemplate, factTemplate, type Site, wholeDrive, wholeJob } from './snippets.ts'

const allKinds = Object.values(vocabulary) as readonly unknown[] as readonly BlockKind[]

/** What may begin where a fact, a block or a line begins. */
export function itemOffers(here: Here): readonly Offer[] {
  const { frame } = here
  const site = siteOf(here)
  if (!frame) return [...blockOffers(here, 'top', site), ...topOffers(here, site)]
  const kind = findKind(frame.kind)
  if (!kind) return []
  const facts = [...missingFacts(here, kind, site), ...footOffers(here, kind, site)]
  const blocks = blockOffers(here, kind.kind, site)
  const needed = blocks.filter(({ label }) => kind.needs?.includes(label))
  const required = facts.filter(({ detail }) => detail === 'required')
  return [
    ...bareOffers(here, kind),
    ...required,
    ...needed,
    ...facts.filter((offer) => !required.includes(offer)),
    ...blocks.filter((offer) => !needed.includes(offer)),
    ...likeOffer(here, kind),
  ]
}

/** What a snippet takes from around the cursor. */
function siteOf(here: Here): Site {
  const { block, scope, today } = here
  const beside = block
    ? block.children.map(({ name, kind }) => name ?? kind)
    : topBlocks(here).map(({ path }) => path)
  const terminals = (of: 'controller' | 'motor') => (block ? terminalsFor(block, scope, of) : [])
  const motor = terminals('motor')
  const controller = terminals('controller')
  return {
    today,
    taken: beside,
    refer: (kinds) => [
      ...(block?.children ?? [])
        .filter((child) => kinds.includes(child.kind))
        .map(({ name, kind }) => name ?? kind),
      ...blocksInScope(here, block, kinds).map(({ path }) => path),
    ],
    feet: block ? feetFor(block, scope) : [],
    lastReading: block && readingsFor(block)[0],
    phases: motor.length === controller.length ? controller.map((name, i) => `${name} to ${motor[i]}`) : [],
  }
}

function missingFacts({ frame, context, scope }: Here, kind: BlockKind, site: Site): readonly Offer[] {
  const written = new Set(frame?.facts)
  const facts = Object.entries(kind.facts).filter(([name]) => !written.has(name) && name !== kind.bare)
  return facts.map(([name, fact]) =>
    factOffer(name, fact, { kind, site, named: context.next === 'colon', system: scope.system() }),
  )
}

function factOffer(
  name: string,
  fact: Fact,
  { kind, site, named, system }: { kind: BlockKind; site: Site; named: boolean; system: 'metric' | 'inch' },
): Offer {
  return {
    label: name,
    kind: 'fact',
    detail: fact.required ? 'required' : fact.shape.words,
    doc: factMarkdown({ kind: kind.kind, name, fact, system }),
    insert: named ? [name] : factTemplate(name, fact, site),
  }
}

/** The feet of the bed that a move has not named yet. */
function footOffers({ frame, block, context, scope }: Here, kind: BlockKind, site: Site): readonly Offer[] {
  const { others } = kind
  if (!others || !block) return []
  const named = context.next === 'colon'
  return feetFor(block, scope)
    .filter((foot) => !frame?.facts.includes(foot))
    .map((foot) => factOffer(foot, others, { kind, site, named, system: scope.system() }))
}

/** Lines without a name, where the block has them. */
function bareOffers(here: Here, { bare }: BlockKind): readonly Offer[] {
  if (bare === undefined) return []
  return valueOffers(here, { ...here.context, ...noEntries, on: 'value', fact: bare }).offers
}

function blockOffers({ frame, file, context, ...view }: Here, parent: string, site: Site): readonly Offer[] {
  const written = frame?.blocks ?? topBlocks({ ...view, file }).map(({ kind }) => kind)
  const single = ({ many, within }: BlockKind) => !many && (parent !== 'top' || within.length === 1)
  const allowed = allKinds.filter(
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

function topOffers({ file, ...view }: Here, site: Site): readonly Offer[] {
  const hasJob = topBlocks({ ...view, file }).some(({ kind }) => kind === 'job')
  return [
    word('use', {
      kind: 'block',
      detail: 'Blocks of another job file, by their names',
      insert: ['use "', { value: '' }, '"'],
    }),
    word('whole drive', {
      kind: 'snippet',
      detail: 'A drive with all its parts, to fill in',
      insert: wholeDrive(site),
    }),
    ...(hasJob
      ? []
      : [
          word('whole job', {
            kind: 'snippet',
            detail: 'A job, its battery and a drive, to fill in',
            insert: wholeJob(site),
          }),
        ]),
  ]
}

function likeOffer(here: Here, { kind, within }: BlockKind): readonly Offer[] {
  const { frame, block } = here
  const mayBePart = within.includes('top') && within.length > 1
  if (!block || !mayBePart || frame?.facts.includes('like')) return []
  const names = likeInScope(here, block).map(({ path }) => path)
  const [first] = names
  return first === undefined
    ? []
    : [
        {
          label: 'like',
          kind: 'fact',
          detail: `the ${kind} this one takes over`,
          insert: here.context.next === 'colon' ? ['like'] : ['like: ', { value: first, choices: names }],
        },
      ]
}
