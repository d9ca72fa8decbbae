import { commonPractice, published, theJobFile } from '../../../checks/check.ts'
import { formatSi } from '../../../quantity/format.ts'
import { formatCelsius, kelvin } from '../../common/celsius.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { balanceOf } from '../plans/balance.ts'
import { dischargeOf } from '../plans/discharge.ts'
import { insulationOf } from '../plans/insulation.ts'
import { measuredOf } from '../plans/measured.ts'
import { indexOf } from '../plans/polarisation.ts'
import { prechargeTimeOf } from '../plans/precharge-time.ts'
import { sensorTestOf } from '../plans/sensor-test.ts'
import { windingWarmth } from '../plans/winding-warmth.ts'

export const insulation = figureWhereKnown({
  id: 'test/insulation-resistance',
  on: 'test',
  title: 'Insulation resistance',
  kind: 'resistance',
  unit: 'Mohm',
  doc: 'The insulation resistance of a winding as it would be at 40 °C, after one minute. That of a cable or a battery is as measured.',
  formula: 'R40 = K × R. Halving: K = 0.5^((40 - t)/10).',
  source: published('IEEE 43-2013; cables: IEC 60364-6, batteries: UN ECE R100, both from memory'),
  // Without the temperature of a winding there is no value: a check says so.
  from: insulationOf,
  of: ({ counted, least, limitFrom, how, assumptions }) =>
    counted === undefined
      ? undefined
      : { value: counted, limit: { low: least }, limitFrom, ...(how && { from: how }), assumptions },
})

const index = figureWhereKnown({
  id: 'test/polarisation-index',
  on: 'test',
  title: 'Polarisation index',
  kind: 'ratio',
  unit: '',
  doc: 'How much the insulation resistance rises from one minute to ten.',
  formula: 'resistance after 10 minutes / resistance after 1 minute.',
  source: published('IEEE 43: 2.0, for class A 1.5; no meaning above 5 GΩ'),
  from: indexOf,
  of: ({ index: value, least, isMeaningless }) => ({
    value,
    limit: { low: least },
    ...(isMeaningless && { doubt: 'above 5 Gohm it has no meaning' }),
  }),
})

export const imbalance = figureWhereKnown({
  id: 'test/imbalance',
  on: 'test',
  title: 'Imbalance of phases',
  kind: 'ratio',
  unit: '%',
  doc: 'The largest difference of a phase from the mean of all, as a share of it.',
  formula: 'largest |value - mean| / mean.',
  source: commonPractice(
    'NEMA MG 1 (from memory); 5 % of resistance, 10 % of current where the job states no limit: common practice, no source',
  ),
  from: balanceOf,
  of: ({ share, most, isStated }) => ({
    value: share,
    limit: { high: most },
    limitFrom: isStated ? 'the job' : 'usual',
    ...(!isStated && { assumptions: ['the job states no limit of imbalance'] }),
  }),
})

export const reading = figureWhereKnown({
  id: 'test/sensor-temperature',
  on: 'test',
  title: 'Temperature that the sensor reads',
  kind: 'temperature',
  doc: 'The resistance of the sensor as a temperature. The limits are those of the thermometer beside it.',
  formula: 'by the curve of its kind, or by its points.',
  source: published('IEC 60751; data sheet of KTY84-130; notes of two makers of thermistors'),
  from: sensorTestOf,
  of: ({ read, stated, within }) =>
    read?.is !== 'temperature'
      ? undefined
      : {
          value: kelvin(read.celsius),
          ...(stated !== undefined && {
            limit: { low: kelvin(stated - within), high: kelvin(stated + within) },
            limitFrom: 'measured beside it',
          }),
        },
})

const warmth = figureWhereKnown({
  id: 'test/winding-temperature',
  on: 'test',
  title: 'Temperature of the winding',
  kind: 'temperature',
  doc: 'Mean temperature of the winding by its resistance, from the first test of its phases. The hottest spot is about 10 K hotter.',
  formula: 't2 = R2/R1 × (235 + t1) - 235.',
  source: published('IEC 60034-1, copper (constant from memory)'),
  from: windingWarmth,
  of: ({ celsius, from, at }) => ({ value: kelvin(celsius), from: `from ${from} at ${formatCelsius(at)}` }),
})

const runOut = figureWhereKnown({
  id: 'test/run-out',
  on: 'test',
  title: 'Run-out',
  kind: 'length',
  doc: 'Total reading of the dial in one turn.',
  source: theJobFile('what the test states as permitted, else IEC 60072-1 in EASA AR100-2015'),
  from: (test, lookup) => {
    const measured = measuredOf(test, lookup)
    return measured?.quantity === 'length' ? measured : undefined
  },
  of: ({ value, most, limitFrom }) => ({
    value,
    ...(most !== undefined && { limit: { high: most } }),
    ...(limitFrom !== undefined && { limitFrom }),
  }),
})

const discharge = figureWhereKnown({
  id: 'test/discharge-time',
  on: 'test',
  title: 'Discharge by its resistance',
  kind: 'time',
  doc: 'How long the controller takes from the first voltage of the test to the last, by its capacitance and its discharge resistance.',
  formula: 't = R C ln(V0 / V).',
  source: published('any text on circuits'),
  from: dischargeOf,
  of: ({ computed, time }) => ({ value: computed, from: `measured: ${formatSi(time, 'time')}` }),
})

const precharge = figureWhereKnown({
  id: 'test/precharge-time',
  on: 'test',
  title: 'Time of the precharge',
  kind: 'time',
  doc: 'How long the precharge took. The limits are those of its resistance and the capacitance, from nothing to the voltage that the test ended at.',
  formula: 'limits: −τ ln(1 − x), τ = resistance × capacitance, 1.5 times either way, x within 1 %.',
  source: published(
    'RC charging: Bird, Electrical Circuit Theory and Technology, ch. 17; 1.5 times and 1 %: common practice, no source',
  ),
  from: prechargeTimeOf,
  of: ({ time, least, most, isBeyond }) => ({
    value: time,
    ...(isBeyond && { doubt: 'with the discharge resistance it cannot end at this voltage' }),
    limit: { low: least, high: most },
    limitFrom: 'resistance and capacitance',
  }),
})

export const testFigures = [insulation, index, imbalance, reading, warmth, runOut, discharge, precharge]
