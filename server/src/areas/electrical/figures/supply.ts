import { published } from '../../../checks/check.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { notAllKnown } from '../plans/load-flow.ts'
import { type Supply, supplyOf } from '../plans/supply.ts'

const source = published(
  'nodal analysis (Kirchhoff), the network solved with constant powers; IEC 60228, ASTM B258',
)
const unknown = 'No battery leads to it, what it takes is not known, or the cables cannot carry it.'
const formula =
  'network with all drives and loads at rated power, batteries at the low end of their window, conductors at the limit of their insulation; the lowest with all batteries on, and with each off where the others may give enough.'

const kinds = ['controller', 'load', 'converter'] as const

const partly = ({ isPartly }: Supply) => (isPartly ? { assumptions: [notAllKnown] } : {})

const voltages = kinds.map((on) =>
  figureWhereKnown({
    id: `${on}/supply-voltage`,
    on,
    title: 'Lowest voltage at rated load',
    kind: 'voltage',
    doc: 'The voltage at its terminals with all drives and loads at rated power and the batteries nearly empty.',
    unknown,
    formula,
    source,
    from: supplyOf,
    of: (supply) => ({ value: supply.volts, ...partly(supply) }),
  }),
)

const drops = kinds.map((on) =>
  figureWhereKnown({
    id: `${on}/supply-drop`,
    on,
    title: 'Lost on the way',
    kind: 'ratio',
    unit: '%',
    doc: 'The voltage lost in all cables from the batteries to it and back, as a share of the voltage of the batteries.',
    unknown,
    formula,
    source,
    from: supplyOf,
    of: (supply) => ({
      value: supply.drop,
      ...(supply.limit !== undefined && { limit: { high: supply.limit }, limitFrom: supply.limitFrom }),
      ...partly(supply),
    }),
  }),
)

export const supplyFigures = [...voltages, ...drops]
