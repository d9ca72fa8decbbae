import { at, check } from '../../../../checks/check.ts'
import { type Block, factOf } from '../../../../job/model.ts'
import { cableOf, fusesIn } from '../../plans/let-through.ts'

const partial = ['aR', 'aM'] as const
const isPartial = (device: Block): boolean =>
  partial.some((one) => one === factOf(device, 'protection.fuse-class')?.value)

/** Whether it opens at any current that is too high for what it protects, as far as the job says. */
const isFullRange = (device: Block): boolean =>
  factOf(device, 'protection.kind')?.value === 'circuit-breaker' ||
  (factOf(device, 'protection.fuse-class') !== undefined && !isPartial(device))

const job = (fuse: string) => `battery house { nominal: 96 V }
drive main {
  controller { input: 72..120 V }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse {
    kind: fuse
    rating: 315 A
    in: feed
    at: 100 mm
    fuse-class: ${fuse}
  }
}`

export default check({
  id: 'protection/partial-range',
  severity: 'warning',
  title: 'Fuse that opens only in a short circuit',
  why: 'Fuses of the classes aR and aM interrupt only currents of several times their rating. In an overload they do not open, or burst, and the cable burns.',
  source: {
    basis: 'from memory',
    text: 'IEC 60269-1: the letter a stands for partial-range breaking capacity, g for full range',
  },
  on: 'protection',
  needs: { class: 'protection.fuse-class' },
  fires: job('aR\n#               ^^ overload'),
  quiet: job('gG'),
  run: ({ class: stated }, lookup) => {
    if (!isPartial(lookup.block)) return []
    const cable = cableOf(lookup.block, lookup)
    const others = cable ? fusesIn(cable, lookup.from(cable)).map(lookup.blockOf) : []
    if (others.some(isFullRange)) return []
    return [
      at(stated, {
        message: `A fuse of class ${stated.value} opens only in a short circuit, not in an overload.`,
        todo: 'Use a full-range fuse such as gG, gR or T, or add one or a breaker in the same cable.',
        found: stated.value,
        limit: 'a full-range class',
      }),
    ]
  },
})
