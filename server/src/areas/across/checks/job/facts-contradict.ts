import { check, commonPractice } from '../../../../checks/check.ts'
import { brokenIn } from '../../../../checks/relation.ts'
import { statedTwice } from '../../stated-twice.ts'

export default check({
  id: 'job/facts-contradict',
  severity: 'warning',
  title: 'Facts that contradict each other',
  why: 'Some facts say the same thing twice, so that they must agree. Where they do not, one of them is wrong. Until it is corrected, each check uses the figure that is worse for what it checks. The page [Facts that must agree](../../plausible.md) lists them.',
  source: commonPractice('the reason beside each rule'),
  on: ['battery', 'shaft-log', 'cable', 'drive'],
  fires: `battery house {
  nominal: 96 V
  window: 84..108 V
  internal-resistance: 14 mohm
  short-circuit-current: 1 A
#                        ^^^ resistance gives
}`,
  quiet: `battery house {
  nominal: 96 V
  window: 84..108 V
  internal-resistance: 14 mohm
  short-circuit-current: 8 kA
}`,
  run: (_facts, lookup) => brokenIn(statedTwice, lookup),
})
