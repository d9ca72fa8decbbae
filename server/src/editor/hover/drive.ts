import { briefChange, briefVerdict } from '../../areas/alignment/plans/brief-words.ts'
import { correctionOf } from '../../areas/alignment/plans/correction.ts'
import { lastReading } from '../../areas/alignment/plans/moves.ts'
import { changeOf } from '../../areas/alignment/plans/reading-change.ts'
import {
  code,
  headed,
  joined,
  type Markdown,
  md,
  paragraphs,
  prose,
  table,
} from '../../areas/common/markdown.ts'
import { canCarry } from '../../areas/electrical/plans/cable-ampacity.ts'
import { cableLoading } from '../../areas/electrical/plans/cable-loading.ts'
import { briefLoad } from '../../areas/electrical/plans/cable-words.ts'
import { squeezeOf } from '../../areas/seal/plans/squeeze.ts'
import { type Block, childrenOf } from '../../job/model.ts'
import { formatLength, formatLimit } from '../../quantity/format-measures.ts'
import type { Lookup } from '../../store/lookup.ts'
import { findKind } from '../../vocabulary/index.ts'
import { formatValue } from './format-value.ts'
import { protectionInBrief, squeezeInBrief } from './parts.ts'

type Row = readonly [what: Markdown, words: Markdown]

/** A whole drive at a glance. */
export function driveMarkdown(drive: Block, lookup: Lookup): Markdown | undefined {
  const rows: readonly Row[] = [
    ...lastRows(drive, lookup),
    ...partRow(drive, 'shaft', ['diameter', 'length', 'material'], lookup),
    ...partRow(drive, 'motor', ['power', 'speed', 'voltage'], lookup),
    ...childrenOf(drive, 'seal').flatMap((seal): Row[] => {
      const squeeze = squeezeOf(seal, lookup.from(seal))
      return squeeze ? [[md`seal`, squeezeInBrief(squeeze)]] : []
    }),
    ...childrenOf(drive, 'cable').flatMap((cable): Row[] => {
      const outcome = cableLoading(cable, lookup.from(cable))
      if (!outcome.ok) return []
      const outside = {
        yes: md``,
        no: md`: **overloaded**`,
        'not-shown': md`: **not in the tables**`,
      }
      return [
        [
          called(cable),
          md`${prose(briefLoad(outcome.value))}${outside[canCarry(outcome.value, outcome.value.current)]}`,
        ],
      ]
    }),
    ...childrenOf(drive, 'protection').flatMap((device): Row[] => {
      const words = protectionInBrief(device, lookup.from(device))
      return words === undefined ? [] : [[called(device), words]]
    }),
  ]
  return rows.length === 0
    ? undefined
    : paragraphs(md`**${headed('Drive', drive.name)}**`, table(['part', ''], rows))
}

const called = ({ kind, name }: Block): Markdown => headed(kind, name, code)

const inTicks = (name: string): string => `\`${name}\``

function lastRows(drive: Block, lookup: Lookup): readonly Row[] {
  const last = lastReading(drive)
  if (!last) return []
  const at = lookup.from(last)
  const outcome = correctionOf(last, at)
  if (!outcome.ok) return [[called(last), prose(outcome.fault.words)]]
  const change = changeOf(last, at)
  return [
    [called(last), md`**${prose(briefVerdict(outcome.value, at.system))}**`],
    ...(change ? ([[md`changed`, prose(briefChange(change, at.system, inTicks))]] as const) : []),
  ]
}

/** What the job says of a part, in a line. */
function partRow(drive: Block, kind: string, names: readonly string[], lookup: Lookup): readonly Row[] {
  return childrenOf(drive, kind).flatMap((part): Row[] => {
    const said = names.flatMap((name) => {
      const value = part.facts.get(name)
      const fact = findKind(kind)?.facts[name]
      return value && fact ? [formatValue(value, fact.shape, lookup.system)] : []
    })
    return said.length === 0 ? [] : [[called(part), joined(said, '; ')]]
  })
}

/** What a coupling allows, and how the last reading stands to that. */
export function couplingMarkdown(coupling: Block, lookup: Lookup): Markdown | undefined {
  const last = coupling.parent && lastReading(coupling.parent)
  const outcome = last && correctionOf(last, lookup.from(last))
  if (!last || !outcome?.ok) return undefined
  const { gapVariation, offset } = outcome.value
  const judged = { 'gap variation': gapVariation, ...(offset && { offset }) }
  return paragraphs(
    md`**${called(last)}: ${prose(briefVerdict(outcome.value, lookup.system))}**`,
    table(
      ['', 'last reading', 'limit', 'limit from'],
      Object.entries(judged).map(([what, { value, limit, limitFrom }]) =>
        [what, formatLength(value.value, lookup.system), formatLimit(limit, lookup.system), limitFrom].map(
          prose,
        ),
      ),
    ),
  )
}
