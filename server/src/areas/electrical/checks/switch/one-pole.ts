import { at, check, type Source } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { isPairedInOtherPole } from '../../plans/poles-opened.ts'

const job = (earthing: string, poles: string) => `job "Launch" {
  vessel: "Launch 07"
  dc-negative: ${earthing}
}
battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse {
    kind: fuse
    rating: 315 A
    in: feed
    at: 100 mm
    poles: ${poles}
  }
}`

const insulated: Source = {
  basis: 'from memory',
  text: 'ISO 13297 and ABYC E-11: protection and switches in each conductor that is not earthed',
}

export default check({
  id: 'switch/one-pole',
  severity: 'warning',
  title: 'Fuse or isolator in one pole alone',
  why: 'Where the negative is insulated, a first fault to the hull is not noticed. With a second one in the other pole the current goes around a fuse or switch that opens one pole. Where the negative is bonded, one in the negative alone opens nothing in a fault from the positive to the hull.',
  source: insulated,
  on: ['protection', 'isolator'],
  fires: job('insulated', 'positive').replace(
    'poles: positive',
    'poles: positive\n#          ^^^^^^^^ insulated',
  ),
  quiet: job('bonded', 'positive'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const job = lookup.near('job')
    const earthing = job && factOf(job, 'job.dc-negative')
    const poles = factOf(block, 'protection.poles') ?? factOf(block, 'isolator.poles')
    if (!earthing || !poles || poles.value === 'both') return []
    const related = [{ at: earthing.at, message: 'the negative' }]
    if (earthing.value === 'insulated')
      return isPairedInOtherPole(block, lookup)
        ? []
        : [
            at(poles, {
              message: `It opens the ${poles.value} pole alone; the negative is insulated.`,
              todo: 'Choose one that opens both poles, or write one of its kind in the cable of the other pole.',
              found: poles.value,
              limit: 'both',
              related,
            }),
          ]
    return poles.value === 'negative'
      ? [
          at(poles, {
            severity: 'error',
            message: 'It opens the negative pole alone, which is bonded.',
            todo: 'Put it in the positive, or choose one that opens both poles.',
            found: poles.value,
            limit: 'positive, both',
            related,
          }),
        ]
      : []
  },
})
