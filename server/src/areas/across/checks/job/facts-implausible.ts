import { check, commonPractice } from '../../../../checks/check.ts'
import { brokenIn } from '../../../../checks/relation.ts'
import { plausible } from '../../plausible.ts'

export default check({
  id: 'job/facts-implausible',
  severity: 'error',
  title: 'Facts that do not fit each other',
  why: 'Each figure alone may be real, but not beside the other: a digit or a unit is wrong, or a part belongs to another boat. It is an error where no real install can be so, and a warning where it is unlikely. The page [Facts that must agree](../../plausible.md) lists the rules.',
  source: commonPractice('the reason beside each rule'),
  on: 'every kind',
  fires: `drive main {
  shaft { diameter: 35 mm  length: 2.65 m }
  bearing stern {
    at: 100 m
#       ^^^^^ forward of the end
  }
}`,
  quiet: `drive main {
  shaft { diameter: 35 mm  length: 2.65 m }
  bearing stern { at: 0.21 m }
}`,
  run: (_facts, lookup) => brokenIn(plausible, lookup),
})
