import { published } from '../../../checks/check.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Band } from '../../../quantity/band.ts'
import { formatSi } from '../../../quantity/format.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { headOf } from '../../common/battery-string.ts'
import { type Amount, figureWhereKnown } from '../../common/figure.ts'
import { allCaseFlows, type CaseFlow, flowAssumptions } from '../plans/load-cases.ts'

const source = published('nodal analysis (Kirchhoff), the network solved with constant powers')
const cases =
  'Cases: everything at rated power; each of two to four drives alone with the loads outside of drives; each of two to four batteries off, where the others may give enough; everything with the motors at peak torque, up to their rated speed; charging alone.'
const formula =
  'network with constant powers, the weakest battery at the low end of its window, batteries side by side sharing by their resistances, conductors at the limit of their insulation.'

/** A case with its number, and what bounds that. */
interface Row {
  readonly flow: CaseFlow
  readonly value: number
  readonly limit?: Band
  readonly limitFrom?: string
}

const lasting = ({ lasts }: CaseFlow): readonly string[] =>
  lasts === undefined ? [] : [`for up to ${formatSi(lasts, 'time')}`]

/** One amount for each case; the one that counts most says so, where there are several. */
const amountsOf = (rows: readonly Row[], governs: (value: number) => number): readonly Amount[] => {
  const most = rows.reduce(
    (extreme, { value }) => Math.max(extreme, governs(value)),
    Number.NEGATIVE_INFINITY,
  )
  const governing = rows.length > 1 ? rows.find(({ value }) => governs(value) === most) : undefined
  return rows.map((row) => {
    const { flow, value, limit, limitFrom } = row
    const from = [...lasting(flow), ...(row === governing ? ['this case governs'] : [])]
    const assumptions = flowAssumptions(flow)
    return {
      value,
      key: { case: flow.name },
      ...(from.length > 0 && { from: from.join('; ') }),
      ...(limit && limitFrom && { limit, limitFrom }),
      ...(assumptions.length > 0 && { assumptions }),
    }
  })
}

const rowsOf = (flows: readonly CaseFlow[], of: 'amps' | 'volts'): readonly Row[] =>
  flows.flatMap((flow) => (flow[of] === undefined ? [] : [{ flow, value: flow[of] }]))

const currents = (['cable', 'protection', 'isolator', 'contactor'] as const).map((on) =>
  figureWhereKnown({
    id: `${on}/case-current`,
    on,
    title: 'Current in the network',
    kind: 'current',
    keys: ['case'],
    doc: `The current through it in each case of load. ${cases}`,
    formula,
    source,
    from: allCaseFlows,
    of: (flows) => amountsOf(rowsOf(flows, 'amps'), Math.abs),
  }),
)

/** What a battery permits in a case. */
function permitted(battery: Block, { kind }: CaseFlow): Pick<Row, 'limit' | 'limitFrom'> {
  if (kind === 'charging') {
    const most = factOf(battery, 'battery.charge-current')?.value
    return most === undefined ? {} : { limit: { low: -most }, limitFrom: 'its charge current' }
  }
  const peak = kind === 'peak' ? factOf(battery, 'battery.peak-current')?.value : undefined
  const most = peak ?? factOf(battery, 'battery.current')?.value
  const limitFrom = peak === undefined ? 'its continuous current' : 'its peak current'
  return most === undefined ? {} : { limit: { high: most }, limitFrom }
}

/** Of a string, what its first battery gives: the same goes through all. */
const batteryRows = (battery: Block, lookup: Lookup): readonly Row[] => {
  const head = headOf(battery, lookup)
  return rowsOf(allCaseFlows(head, lookup.from(head)), 'amps').map((row) => ({
    ...row,
    ...permitted(battery, row.flow),
  }))
}

const batteryCurrent = figureWhereKnown({
  id: 'battery/case-current',
  on: 'battery',
  title: 'Current in the network',
  kind: 'current',
  keys: ['case'],
  doc: `What the battery gives in each case of load; negative while it is charged. ${cases}`,
  formula,
  source,
  from: batteryRows,
  of: (rows) => amountsOf(rows, Math.abs),
})

const voltages = (['controller', 'load', 'converter'] as const).map((on) =>
  figureWhereKnown({
    id: `${on}/case-voltage`,
    on,
    title: 'Voltage in the network',
    kind: 'voltage',
    keys: ['case'],
    doc: `The voltage at its terminals in each case of load, all batteries on. ${cases}`,
    formula,
    source,
    from: allCaseFlows,
    of: (flows) => amountsOf(rowsOf(flows, 'volts'), (volts) => -volts),
  }),
)

export const caseFigures = [...currents, batteryCurrent, ...voltages]
