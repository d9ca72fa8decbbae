import { atHead, type Check, check } from '../../checks/check.ts'
import { type Danger, dangers } from '../common/dangers.ts'
import { dangerBlockKinds, dangersAt } from './plans/danger-figures.ts'

/** The check of a danger, as the table of dangers has it: one caution a file, where the danger is worst. */
export function caution(danger: Danger, examples: Pick<Check, 'fires' | 'quiet'>): Check {
  const { title, why, source, guard } = dangers[danger]
  return check({
    id: `caution/${danger}`,
    severity: 'information',
    title,
    why,
    source,
    on: dangerBlockKinds(danger),
    plan: 'goes-on',
    worstOnly: true,
    ...examples,
    run: (_facts, lookup) =>
      dangersAt(danger, lookup).map(({ block, size, words, detail, found }) =>
        atHead(block, {
          message: words,
          ...(detail !== undefined && { detail }),
          todo: guard,
          ...(found !== undefined && { found }),
          size,
        }),
      ),
  })
}
