import { published } from '../../../checks/check.ts'
import type { Block } from '../../../job/model.ts'
import type { Bound } from '../../../quantity/conformity.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { type Amount, figure } from '../../common/figure.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { type CableAmpacity, cableAmpacity } from '../plans/cable-ampacity.ts'
import { type CableLoading, cableLoading } from '../plans/cable-loading.ts'
import { ampacityWords } from '../plans/cable-words.ts'
import { cableCurrent } from '../plans/design-current.ts'

const currentFormula =
  'as stated; DC: Σ shaft power / (motor efficiency × controller efficiency × lowest battery voltage); three-phase: shaft power / (√3 × voltage × power factor × efficiency).'
const ampacityFormula = 'table value × place or ambient × bundling × conductors in parallel.'
const dropFormula =
  'current × resistance at working temperature, out and back or per phase; share = voltage drop / voltage.'

const current = figure({
  id: 'cable/current',
  on: 'cable',
  title: 'Current',
  kind: 'current',
  doc: 'The continuous current of the pole or phase, all conductors in parallel together.',
  formula: currentFormula,
  source: published('definition of electric power, DC and three-phase'),
  from: cableCurrent,
  of: ({ current: value, currentFrom, assumptions }) => ({ value, from: currentFrom, assumptions }),
})

const boundOf: Readonly<Record<CableAmpacity['ampacity']['tables'], Bound | undefined>> = {
  in: undefined,
  above: 'at-least',
  below: 'less-than',
}

/** What the cable carries, and what it has to where that is known. */
function carriedOf(cable: Block, lookup: Lookup) {
  const carrying = cableAmpacity(cable, lookup)
  if (!carrying.ok) return carrying
  const load = cableCurrent(cable, lookup)
  return ok({ carrying: carrying.value, load: load.ok ? load.value : undefined })
}

const ampacity = figure({
  id: 'cable/ampacity',
  on: 'cable',
  title: 'Can carry',
  kind: 'current',
  doc: 'What the pole or phase can carry after all factors. Beyond the tables it is a bound.',
  formula: ampacityFormula,
  source: published('33 CFR 183.425 Table 5; ISO 13297 Table A.1 from memory, never above it'),
  from: carriedOf,
  of: ({ carrying, load }): Amount => {
    const bound = boundOf[carrying.ampacity.tables]
    return {
      value: carrying.carries,
      ...(bound && { bound }),
      ...(load && { limit: { low: load.current }, limitFrom: 'its current' }),
      from: ampacityWords(carrying),
      sources: carrying.sources,
      assumptions: [...carrying.assumptions, ...(load?.assumptions ?? [])],
    }
  },
})

const lostVoltage = figure({
  id: 'cable/lost-voltage',
  on: 'cable',
  title: 'Voltage lost',
  kind: 'voltage',
  doc: 'The voltage lost in the cable at its current: out and back, or between phases.',
  formula: dropFormula,
  source: published('IEC 60228, ASTM B258'),
  from: cableLoading,
  of: ({ dropVolts, sources, assumptions }) => ({ value: dropVolts, sources, assumptions }),
})

/** The loading of a cable whose voltage is known. */
function dropOf(cable: Block, lookup: Lookup): Outcome<CableLoading & { readonly drop: number }> {
  const loading = cableLoading(cable, lookup)
  if (!loading.ok) return loading
  const { drop } = loading.value
  return drop === undefined
    ? failed({
        type: 'unsaid',
        words: 'The voltage drop has no share: the voltage of the cable is not known.',
      })
    : ok({ ...loading.value, drop })
}

const voltageDrop = figure({
  id: 'cable/voltage-drop',
  on: 'cable',
  title: 'Voltage drop',
  kind: 'ratio',
  unit: '%',
  doc: 'The voltage lost in the cable as a share of the voltage at the battery or between phases.',
  formula: dropFormula,
  source: published('IEC 60228, ASTM B258'),
  from: dropOf,
  of: ({ drop, dropLimit, dropLimitFrom, sources, assumptions }) => ({
    value: drop,
    ...(dropLimit !== undefined && { limit: { high: dropLimit }, limitFrom: dropLimitFrom }),
    sources,
    assumptions,
  }),
})

export const cableFigures = [current, ampacity, lostVoltage, voltageDrop]
