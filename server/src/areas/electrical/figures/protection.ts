import { published } from '../../../checks/check.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { formatLoad } from '../../common/amperes.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { listed } from '../../common/listed.ts'
import { chargedAsUsual, onCharge } from '../../common/string-facts.ts'
import { highestOf, ratingToCable, ratingToLoad } from '../plans/cable-protection.ts'
import { capacityWords } from '../plans/cable-words.ts'
import { heatAround, heatWords } from '../plans/fuse-ambient.ts'
import { circuitCableOf } from '../plans/let-through.ts'
import { leastFaultSource, shortCircuit, shortCircuitSource, whereLeast } from '../short-circuit.ts'

/** A rating with the load and the cable that it suits, as far as each is known. */
function ratedFor(device: Block, lookup: Lookup) {
  const rating = factOf(device, 'protection.rating')?.value
  const cable = lookup.referred('in')
  if (rating === undefined || !cable) return undefined
  const heat = heatAround(device)
  return {
    rating,
    heat,
    load: ratingToLoad(rating, cable, lookup, heat),
    cable: ratingToCable(rating, cable, lookup),
  }
}

const rating = figureWhereKnown({
  id: 'protection/rating',
  on: 'protection',
  title: 'Rating',
  unknown: 'Its rating, or the cable it protects, is not stated or cannot be used as written.',
  kind: 'current',
  doc: 'The rated current of the fuse or breaker, between the load and what the cable allows.',
  formula:
    'at least 1.25 × current (NEC practice for continuous loads), over what its ambient leaves of its rating: 0.5 % less for each kelvin above 40 °C; at most what the cable can carry, or the next standard rating above it up to 1.5 times as much, below 50 V any rating up to that.',
  source: published('33 CFR 183.455(c), with the ampacity after all factors'),
  from: ratedFor,
  of: (rated) => {
    const { load, cable, heat } = rated
    const isBelow = cable?.carrying.ampacity.tables === 'below'
    return {
      value: rated.rating,
      ...((load || cable) && {
        limit: { ...(load && { low: load.low }), ...(cable && { high: cable.largest }) },
        limitFrom: [load ? '1.25 times the load' : '', cable ? `what the cable allows` : '']
          .filter(Boolean)
          .join('; '),
      }),
      ...(isBelow && { doubt: 'no table shows what so thin a cable allows' }),
      ...(!cable && { doubt: 'what the cable can carry is not known' }),
      ...(cable && !load && { doubt: 'the load is not known' }),
      ...(cable && load && heat.isOpen && { doubt: 'its ambient or its place is not known' }),
      from: [
        load ? `1.25 × ${formatLoad(load.load.current, 1)} (${load.load.currentFrom})${heatWords(heat)}` : '',
        cable ? `the cable can carry ${capacityWords(cable.carrying)}` : '',
      ]
        .filter(Boolean)
        .join('; '),
      sources: cable ? [cable.limit.source, cable.ratings] : [],
      assumptions: [...(load?.assumptions ?? []), ...(cable?.carrying.assumptions ?? [])],
    }
  },
})

const highestVoltage = figureWhereKnown({
  id: 'protection/highest-voltage',
  on: 'protection',
  title: 'Highest voltage of its circuit',
  unknown: 'The highest voltage of its circuit is not known.',
  kind: 'voltage',
  doc: 'The highest voltage of the circuit it protects, which it has to interrupt.',
  formula: 'high end of the window of the battery; where none is stated, 1.25 × nominal voltage.',
  source: published('33 CFR 183.455(d)'),
  from: (device, lookup) => {
    const cable = circuitCableOf(device, lookup)
    if (!cable) return undefined
    const at = lookup.from(cable)
    const volts = highestOf(cable, at, onCharge)
    const rated = factOf(device, 'protection.voltage')?.value
    const isUnread = device.unread.has('voltage')
    return volts === undefined
      ? undefined
      : { volts, isStated: volts === highestOf(cable, at), rated, isUnread }
  },
  of: (found) => ({
    value: found.volts,
    ...(found.rated !== undefined && { limit: { high: found.rated }, limitFrom: 'its rated voltage' }),
    ...(found.isUnread && { doubt: 'its rated voltage cannot be used as written' }),
    ...(!found.isStated && {
      assumptions: [chargedAsUsual],
    }),
  }),
})

const shortCircuitCurrent = figureWhereKnown({
  id: 'protection/short-circuit-current',
  on: 'protection',
  title: 'Highest short-circuit current',
  unknown: 'The short-circuit current of its batteries is not known.',
  kind: 'current',
  doc: 'The highest short-circuit current at its place, from all batteries that cables join to it, which it has to interrupt. Cables count as cold, and as none where their length is not known.',
  formula:
    'voltage before the fault over the resistance seen from there, all batteries on; of each the stated current, or highest voltage / internal resistance, whichever is higher; conductors at 20 °C; chargers and converters with their current.',
  source: shortCircuitSource,
  from: (device, lookup) => {
    const fault = shortCircuit(lookup)
    return (
      fault && {
        ...fault,
        interrupts: factOf(device, 'protection.interrupts')?.value,
        isUnread: device.unread.has('interrupts'),
      }
    )
  },
  of: (fault) => ({
    value: fault.highest,
    ...(fault.interrupts !== undefined && {
      limit: { high: fault.interrupts },
      limitFrom: 'what it can interrupt',
    }),
    from: fault.from.join('; '),
    ...(fault.notCounted.length > 0 && {
      doubt: `${listed(fault.notCounted)} not counted: its short-circuit current is not known`,
    }),
  }),
})

const openingCurrent = figureWhereKnown({
  id: 'protection/opening-current',
  on: 'protection',
  title: 'Lowest short-circuit current',
  unknown: 'Its rating, or the short-circuit current of its batteries, is not known.',
  kind: 'current',
  doc: 'The lowest short-circuit current through it as far as it protects, which has to be enough to open it: from one battery alone, or shared with other fuses.',
  formula:
    'lowest voltage / (resistance of the battery + way to the fault and back), conductors at the limit of their insulation.',
  source: leastFaultSource,
  from: (_device, lookup) => {
    const fault = shortCircuit(lookup)
    return fault?.least && { ...fault, least: fault.least, where: whereLeast(fault.least, lookup) }
  },
  of: ({ least, where, from, notCounted }) => ({
    value: least.amps,
    limit: { low: least.opens },
    limitFrom: '1.6 times its rating, or that of a smaller one before it',
    from: `${where}; ${from.join('; ')}`,
    ...(notCounted.length > 0 && {
      doubt: `${listed(notCounted)} not counted: its short-circuit current is not known`,
    }),
  }),
})

export const protectionFigures = [rating, highestVoltage, shortCircuitCurrent, openingCurrent]
