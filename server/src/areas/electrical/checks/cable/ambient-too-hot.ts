import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'

export default check({
  id: 'cable/ambient-too-hot',
  severity: 'error',
  title: 'Air too hot for the insulation',
  why: 'A cable gives its heat to the air around it. In air as warm as its insulation allows it can carry no current at all, however thick it is.',
  source: published('the law behind NEC Table 310.15(B)(2)(b): √((Tc − Ta) / (Tc − 30)) is zero at Ta = Tc'),
  on: 'cable',
  needs: { insulation: 'cable.insulation', ambient: 'cable.ambient' },
  fires: `drive main {
  cable feed {
    insulation: 105 degC
    ambient: 110 degC
#            ^^^^^^^^ can carry nothing
  }
}`,
  quiet: `drive main {
  cable feed {
    insulation: 105 degC
    ambient: 60 degC
  }
}`,
  run: ({ insulation, ambient }) => {
    if (!reaches(ambient.value, insulation.value)) return []
    const [found, limit] = [ambient, insulation].map(({ value }) => formatSi(value, 'temperature')) as [
      string,
      string,
    ]
    return [
      at(ambient, {
        message: `The air around it is at ${found}; with insulation for ${limit} it can carry nothing.`,
        todo: 'Lay it where it is cooler, or use a cable with a better insulation.',
        found,
        limit: `below ${limit}`,
        related: [{ at: insulation.at, message: 'the insulation' }],
      }),
    ]
  },
})
