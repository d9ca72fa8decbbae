import { atHead, check, theLanguage } from '../../../../checks/check.ts'
import { isSwitch, type SwitchKind } from '../../plans/dc-parts.ts'
import { isPlaced } from '../../plans/let-through.ts'

const words: Readonly<Record<SwitchKind, string>> = {
  protection: 'fuse or breaker',
  isolator: 'isolator',
  contactor: 'contactor',
}

export default check({
  id: 'protection/nowhere',
  severity: 'error',
  title: 'Fuse or switch that is in no circuit',
  why: 'A fuse protects what lies behind it, and a switch opens what it is in. One that is in no cable, and at which none ends, does neither.',
  source: theLanguage,
  on: ['protection', 'isolator', 'contactor'],
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  protection main-fuse { kind: fuse  rating: 315 A }
# ^^^^^^^^^^^^^^^^^^^^ in no cable
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  controller { efficiency: 96 % }
  protection main-fuse { kind: fuse  rating: 315 A  in: feed  at: 150 mm }
}`,
  run: (_facts, lookup) => {
    const { block } = lookup
    if (isPlaced(block, lookup) || lookup.isTaken || block.likeUnknown) return []
    const { kind } = block
    const what = isSwitch(kind) ? words[kind] : kind
    return [
      atHead(block, {
        message: `This ${what} is in no cable, and none ends at it.`,
        todo: 'Write the cable it is in with `in` and `at`, or end cables at it.',
      }),
    ]
  },
})
