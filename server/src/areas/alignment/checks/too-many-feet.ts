import { atHead, check, commonPractice } from '../../../checks/check.ts'
import { childrenOf } from '../../../job/model.ts'
import { feetTooMany, maxFeet } from '../plans/feet.ts'

const foot = (i: number): string => {
  const side = i % 2 === 0 ? 'port' : 'starboard'
  return ['  foot', `f${i}`, '{ from-coupling:', 180 + 20 * i, 'mm  across: 140 mm', side, '}\n'].join(' ')
}

const bed = (length: number, mark = '') => {
  const feet = Array.from({ length }, (_, i) => foot(i) + (i === maxFeet ? mark : ''))
  return `bed {\n${feet.join('')}}`
}

export default check({
  id: 'alignment/too-many-feet',
  severity: 'error',
  title: 'More feet than moves are worked out for',
  why: 'The plan searches the moves of all feet together. No machine in a boat has so many feet, so the list is most likely wrong. The plan gives no steps, and the places of the feet are not compared.',
  source: commonPractice('machines stand on four to a dozen feet (common practice, no source)'),
  on: 'bed',
  plan: 'waits',
  fires: bed(maxFeet + 1, '# ^^^^^^^^ has 41 feet\n'),
  quiet: bed(maxFeet),
  run: (_facts, { block }) => {
    const count = feetTooMany(block)
    const first = childrenOf(block, 'foot')[maxFeet]
    return count === undefined || !first
      ? []
      : [
          atHead(first, {
            message: `The bed has ${count} feet; moves are worked out for at most ${maxFeet}.`,
            detail: 'So the plan gives no steps, and the places of the feet are not compared.',
            todo: 'Delete the feet that the machine does not have.',
            found: String(count),
            limit: `at most ${maxFeet}`,
          }),
        ]
  },
})
