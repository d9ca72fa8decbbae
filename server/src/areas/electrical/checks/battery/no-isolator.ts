import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { severityOfMissing } from '../../../../checks/missing.ts'
import { elide } from '../../../../quantity/elide.ts'
import { asks } from '../../../../vocabulary/status.ts'
import { listed } from '../../../common/listed.ts'
import { unisolatedFrom } from '../../plans/isolation.ts'

const job = (more: string) => `job "Launch" { vessel: "Launch 07" }
drive main {
  battery house { nominal: 96 V  window: 84..108 V }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { kind: fuse  rating: 315 A  in: feed  at: 100 mm }
${more}}`

export default check({
  id: 'battery/no-isolator',
  severity: 'warning',
  followsStatus: true,
  claim: { from: 'issued', words: 'An isolator is between each battery and the controllers that it feeds.' },
  title: 'Battery without an isolator',
  why: 'A fuse opens on too much current, and a contactor may weld. Without a switch that a person opens and sees open, nobody can work on the drive, and nobody can cut the battery off in a fire.',
  source: commonPractice(
    'an isolator, or a breaker rated as one, between each battery and what it drives: common practice, no source',
  ),
  on: 'battery',
  fires: job('').replace('  controller', '# ^^^^^^^^^^^^^ No isolator\n  controller'),
  quiet: job('  isolator main-switch { current: 250 A  voltage: 150 V  in: feed  at: 300 mm }\n'),
  run: (_facts, lookup) => {
    const { block, status, blockOf } = lookup
    // A draft may leave out what the review asks for.
    const found = status && asks(status, 'for-review') ? unisolatedFrom(block, lookup) : undefined
    if (!found) return []
    const others = found.batteries.slice(1).map((id) => elide(blockOf(id).name ?? 'a battery'))
    return [
      atHead(block, {
        severity: severityOfMissing(status),
        message: 'No isolator is between this battery and the controller.',
        ...(others.length > 0 && { detail: `The same holds for ${listed(others)}.` }),
        todo: 'Add an `isolator`, in the cable or between cables. Or state `isolates: yes` at a breaker, if its maker says so.',
        related: found.controllers.map((id) => ({
          at: blockOf(id).head,
          message: 'a controller that it feeds',
        })),
      }),
    ]
  },
})
