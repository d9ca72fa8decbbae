import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { addFact } from '../../../../checks/fix-text.ts'
import { isLikeUnknown, severityOfMissing, whyRequired } from '../../../../checks/missing.ts'
import type { Block } from '../../../../job/model.ts'
import type { Lookup } from '../../../../store/lookup.ts'
import { Unreadable } from '../../../common/stated-fact.ts'
import { systemOf } from '../../plans/cable-circuit.ts'

const job = (lengths: string) => `job "Launch" {
  vessel: "Launch 07"
  status: as-built
}
drive main {
  motor propulsion { power: 15 kW }
  controller { input: 72..120 V }
  cable phases {
    from: controller
    to: propulsion
    length: 1.82 m
${lengths}  }
}`

function isThreePhase(cable: Block, lookup: Lookup): boolean {
  try {
    return systemOf(cable, lookup) === 'three-phase'
  } catch (error) {
    if (error instanceof Unreadable) return false
    throw error
  }
}

const isSaid = ({ facts, blanks, unread }: Block, name: string): boolean =>
  facts.has(name) || blanks.has(name) || unread.has(name)

export default check({
  id: 'cable/phase-lengths-missing',
  severity: 'error',
  followsStatus: true,
  claim: { from: 'as-built', words: 'Each cable to a motor states the length of each phase.' },
  title: 'As-built without the lengths of the phases',
  why: 'Whether the three cables of a motor are equally long is only known once they are laid. From `as-built` on their lengths are asked for.',
  source: commonPractice('equal lengths: common practice, no source'),
  on: 'cable',
  fires: job('').replace('phases {\n', 'phases {\n# ^^^^^^^^^^^^ not stated\n'),
  quiet: job('    phase-lengths: U 1.80 m, V 1.82 m, W 1.79 m\n'),
  run: (_facts, lookup) => {
    const { block, status } = lookup
    if (status !== 'as-built' || isLikeUnknown(block) || (!block.parent && lookup.isTaken)) return []
    if (isSaid(block, 'phase-lengths') || !isThreePhase(block, lookup)) return []
    return [
      atHead(block, {
        severity: severityOfMissing(status),
        message: 'The length of each phase is not stated.',
        detail: whyRequired(status),
        todo: 'Measure the cables of the three phases, and state `phase-lengths`.',
      }),
    ]
  },
  fixes: (_, { block }) =>
    block
      ? [
          {
            title: 'Add phase-lengths',
            edits: [addFact(block, 'phase-lengths')],
            preferred: true,
            leaves: ['job/fact-missing'],
          },
        ]
      : [],
})
