import { code, headed, md, prose } from '../../common/markdown.ts'
import type { View } from '../../common/view.ts'
import { briefChange, briefState, briefVerdict } from '../plans/brief-words.ts'
import { correctionOf } from '../plans/correction.ts'
import { lastReading } from '../plans/moves.ts'
import { changeOf } from '../plans/reading-change.ts'
import { worked } from './reading.ts'

const inTicks = (name: string): string => `\`${name}\``

/** How a drive stands by its last reading. */
export const drive: View = {
  on: 'drive',
  inDrive: ({ block, from }) => {
    const last = lastReading(block)
    if (!last) return []
    const at = from(last)
    const called = headed('reading', last.name, code)
    const outcome = correctionOf(last, at)
    if (!outcome.ok) return [[called, prose(outcome.fault.words)]]
    const change = changeOf(last, at)
    return [
      [called, md`**${prose(briefVerdict(outcome.value, at.system))}**`],
      ...(change ? ([[md`changed`, prose(briefChange(change, at.system, inTicks))]] as const) : []),
    ]
  },
  lenses: ({ block, from }) => {
    const last = lastReading(block)
    const state = last && worked(from(last))
    return state ? [`${last.name ?? 'Last reading'}: ${briefState(state)}`, 'Plan'] : []
  },
}
