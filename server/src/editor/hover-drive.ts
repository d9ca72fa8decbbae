import { reaches } from '../engineering/compare.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf } from '../job/model.ts'
import { correctionOf } from '../plans/alignment.ts'
import { lastReading } from '../plans/alignment-moves.ts'
import { briefChange, briefLoad, briefVerdict } from '../plans/brief-words.ts'
import { cableLoading } from '../plans/cable-loading.ts'
import { markdownTable } from '../plans/markdown-table.ts'
import { changeOf } from '../plans/reading-change.ts'
import { squeezeOf } from '../plans/seal-squeeze.ts'
import { saidLength, saidLimit } from '../quantity/said.ts'
import { findKind } from '../vocabulary/index.ts'
import { protectionInBrief, sayFit } from './hover-parts.ts'
import { code, headed } from './markdown.ts'
import { sayValue } from './say-value.ts'

type Row = readonly [what: string, words: string]

/** A whole drive at a glance. */
export function driveMarkdown(drive: Block, lookup: Lookup): string | undefined {
  const rows: readonly Row[] = [
    ...lastRows(drive, lookup),
    ...partRow(drive, 'shaft', ['diameter', 'length', 'material'], lookup),
    ...partRow(drive, 'motor', ['power', 'speed', 'voltage'], lookup),
    ...childrenOf(drive, 'seal').flatMap((seal): Row[] => {
      const squeeze = squeezeOf(seal, lookup.from(seal))
      return squeeze ? [['seal', `${squeeze.found}${sayFit(squeeze, '**outside**')}`]] : []
    }),
    ...childrenOf(drive, 'cable').flatMap((cable): Row[] => {
      const outcome = cableLoading(cable, lookup.from(cable))
      if (!outcome.ok) return []
      const { current, carries = Number.POSITIVE_INFINITY } = outcome.value
      return [
        [called(cable), `${briefLoad(outcome.value)}${reaches(carries, current) ? '' : ': **overloaded**'}`],
      ]
    }),
    ...childrenOf(drive, 'protection').flatMap((device): Row[] => {
      const words = protectionInBrief(device, lookup.from(device))
      return words === undefined ? [] : [[called(device), words]]
    }),
  ]
  return rows.length === 0
    ? undefined
    : [`**${headed('Drive', drive.name)}**`, '', markdownTable(['part', ''], rows)].join('\n')
}

const called = ({ kind, name }: Block): string => headed(kind, name && code(name))

function lastRows(drive: Block, lookup: Lookup): readonly Row[] {
  const last = lastReading(drive)
  if (!last) return []
  const at = lookup.from(last)
  const outcome = correctionOf(last, at)
  if (!outcome.ok) return [[called(last), outcome.fault.words]]
  const change = changeOf(last, at)
  return [
    [called(last), `**${briefVerdict(outcome.value, at.system)}**`],
    ...(change ? ([['changed', briefChange(change, at.system, code)]] as const) : []),
  ]
}

/** What the job says of a part, in a line. */
function partRow(drive: Block, kind: string, names: readonly string[], lookup: Lookup): readonly Row[] {
  return childrenOf(drive, kind).flatMap((part): Row[] => {
    const said = names.flatMap((name) => {
      const value = part.facts.get(name)
      const fact = findKind(kind)?.facts[name]
      return value && fact ? [sayValue(value, fact.shape, lookup.system)] : []
    })
    return said.length === 0 ? [] : [[called(part), said.join('; ')]]
  })
}

/** What a coupling allows, and how the last reading stands to that. */
export function couplingMarkdown(coupling: Block, lookup: Lookup): string | undefined {
  const last = coupling.parent && lastReading(coupling.parent)
  const outcome = last && correctionOf(last, lookup.from(last))
  if (!last || !outcome?.ok) return undefined
  const { gapVariation, offset } = outcome.value
  const judged = { 'gap variation': gapVariation, ...(offset && { offset }) }
  return [
    `**${called(last)}: ${briefVerdict(outcome.value, lookup.system)}**`,
    '',
    markdownTable(
      ['', 'last reading', 'allowed', 'from'],
      Object.entries(judged).map(([what, { value, limit, limitFrom }]) => [
        what,
        saidLength(value.value, lookup.system),
        saidLimit(limit, lookup.system),
        limitFrom,
      ]),
    ),
  ].join('\n')
}
