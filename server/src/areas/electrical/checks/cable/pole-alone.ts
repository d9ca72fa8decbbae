import { at, check, theLanguage } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { elide } from '../../../../quantity/elide.ts'
import { endsWithoutOther, otherPole } from '../../plans/cable-pole.ts'

const job = (more: string) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable plus {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    pole: positive
  }
${more}}`

export default check({
  id: 'cable/pole-alone',
  severity: 'warning',
  title: 'Cable of one pole without the other',
  why: 'The current that a cable of one pole brings flows back through the other. A way back that is not in the job is not checked: neither its conductor, nor its voltage drop, nor its fuse. For the drop it is taken as this cable once more.',
  source: theLanguage,
  on: 'cable',
  needs: { pole: 'cable.pole' },
  fires: job('').replace('pole: positive', 'pole: positive\n#         ^^^^^^^^ No cable of the negative'),
  quiet: job(
    '  cable minus { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC  pole: negative }\n',
  ),
  run: ({ pole }, lookup) => {
    const { block } = lookup
    if (pole.value === 'series' || block.likeUnknown) return []
    const missing = otherPole[pole.value]
    const ends = endsWithoutOther(block, lookup).flatMap((end) => factOf(block, `cable.${end}`) ?? [])
    if (ends.length === 0) return []
    const found = ends.map(({ value }) => elide(value)).join(', ')
    return [
      at(pole, {
        message: `No cable of the ${missing} pole ends at ${found}.`,
        todo: `Write it, with \`pole: ${missing}\`. Or remove \`pole\` here, if this cable has both conductors.`,
        found,
        related: ends.map((end) => ({ at: end.at, message: `nothing of the ${missing} pole ends here` })),
      }),
    ]
  },
})
