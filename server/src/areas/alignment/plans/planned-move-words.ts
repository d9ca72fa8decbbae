import { listed } from '../../common/listed.ts'
import type { Correction } from './correction.ts'
import type { PlannedMove } from './planned-move.ts'

/** As a length is written: nearer than this, two moves are the same. */
const asWritten = 2e-5

/** The feet at which a planned move is not what the plan asks; undefined where that cannot be said. */
export function differsAt({ feet }: PlannedMove, c: Correction): readonly string[] | undefined {
  if (!feet || c.feet.length === 0 || c.withheld) return undefined
  return c.feet.flatMap(({ name, moved, slid }) => {
    const planned = feet.find((foot) => foot.name === name)
    const isSame =
      Math.abs((planned?.up ?? 0) - moved) <= asWritten &&
      Math.abs((planned?.starboard ?? 0) - slid) <= asWritten
    return isSame ? [] : [name]
  })
}

function formatHowItFits(planned: PlannedMove, c: Correction): string {
  if (c.withheld) return 'This reading gives no steps, so do not make it.'
  const differs = differsAt(planned, c)
  if (differs === undefined) return 'Compare it with the plan before it is made.'
  if (differs.length === 0) return 'It is what the plan asks.'
  if (c.verdict === 'within') return 'The machine is within its limits, so do not make it.'
  return `It is not what the plan asks at ${listed(differs)}: correct it or delete it.`
}

/** That a move is planned, and whether it is what the plan asks. */
export const formatPlanned = (c: Correction): readonly string[] =>
  c.planned.map(
    (planned) =>
      `A move after ${c.reading} is planned: it does not say that it was made. ${formatHowItFits(planned, c)} If it was made, write \`done\`, and read again before you move anything.`,
  )
