import { published, theJobFile } from '../../../checks/check.ts'
import { averagePower } from '../../../engineering/electrical/precharge.ts'
import type { Block } from '../../../job/model.ts'
import { factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { figure } from '../../common/figure.ts'
import { ok } from '../../common/outcome.ts'
import { makesOf } from '../plans/precharge-circuit.ts'
import { prechargingOf } from '../plans/precharging.ts'

const charging = published('RC charging: Bird, Electrical Circuit Theory and Technology, ch. 17')

const time = figure({
  id: 'precharge/time-to-close',
  on: 'precharge',
  title: 'Time until the switch closes',
  kind: 'time',
  doc: 'From the start of the precharge until the switch closes, at the highest voltage of the batteries.',
  formula:
    '−τ ln(1 − x), τ = resistance × capacitance; with a discharge resistance across, both resistances in parallel.',
  source: charging,
  from: prechargingOf,
  of: ({ closesAfter, assumptions }) =>
    closesAfter === undefined ? undefined : { value: closesAfter, assumptions },
})

const constant = figure({
  id: 'precharge/time-constant',
  on: 'precharge',
  title: 'Time constant',
  kind: 'time',
  doc: 'After this time 63 % of the voltage are reached, after five of them 99 %.',
  formula: 'resistance × capacitance.',
  source: charging,
  from: prechargingOf,
  of: ({ timeConstant, assumptions }) => ({ value: timeConstant, assumptions }),
})

const peak = figure({
  id: 'precharge/peak-current',
  on: 'precharge',
  title: 'Current at the start',
  kind: 'current',
  doc: 'The current into the empty capacitance.',
  formula: 'voltage / resistance.',
  source: published('Ohm’s law'),
  from: prechargingOf,
  of: ({ peakCurrent, assumptions }) => ({ value: peakCurrent, assumptions }),
})

const energy = figure({
  id: 'precharge/energy',
  on: 'precharge',
  title: 'Energy of one precharge',
  kind: 'energy',
  doc: 'The heat of one precharge in the resistor.',
  formula: 'capacitance × voltage² / 2; with a discharge resistance across, until the switch closes.',
  source: published('definition of capacitance'),
  from: (precharge, lookup) => {
    const work = prechargingOf(precharge, lookup)
    return work.ok ? ok({ ...work.value, bears: factOf(precharge, 'precharge.energy')?.value }) : work
  },
  of: ({ energy: value, bears, assumptions }) => ({
    value,
    ...(bears !== undefined && { limit: { high: bears }, limitFrom: 'the maker of the resistor' }),
    assumptions,
  }),
})

const mean = figure({
  id: 'precharge/mean-power',
  on: 'precharge',
  title: 'Mean power',
  kind: 'power',
  doc: 'The mean power of the resistor with one precharge in each interval.',
  formula: 'energy / interval.',
  source: published('a resistor maker’s guide'),
  from: (precharge, lookup) => {
    const work = prechargingOf(precharge, lookup)
    const [interval, power] = [
      factOf(precharge, 'precharge.interval')?.value,
      factOf(precharge, 'precharge.power')?.value,
    ]
    return work.ok ? ok({ ...work.value, interval, power }) : work
  },
  of: ({ energy: heat, interval, power, assumptions }) =>
    interval === undefined
      ? undefined
      : {
          value: averagePower({ energy: heat, interval }),
          ...(power !== undefined && { limit: { high: power }, limitFrom: 'its continuous power' }),
          assumptions,
        },
})

const surge = figure({
  id: 'precharge/closing-surge',
  on: 'precharge',
  title: 'Surge when the switch closes',
  kind: 'current',
  doc: 'The current when the switch closes on what the precharge left: an upper bound, for cables and inductance are not counted.',
  formula: 'voltage left / internal resistance of the batteries.',
  source: theJobFile('Ohm’s law; what the contactor makes, as the job states it'),
  from: (precharge: Block, lookup: Lookup) => {
    const work = prechargingOf(precharge, lookup)
    return work.ok ? ok({ ...work.value, makes: makesOf(precharge, lookup) }) : work
  },
  of: ({ surge: value, makes, assumptions }) =>
    value === undefined
      ? undefined
      : {
          value,
          bound: 'less-than' as const,
          ...(makes !== undefined && { limit: { high: makes }, limitFrom: 'what the contactor makes' }),
          assumptions,
        },
})

export const prechargeFigures = [constant, time, peak, energy, mean, surge]
