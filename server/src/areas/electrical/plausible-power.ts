import { commonPractice, published } from '../../checks/check.ts'
import { alone, between, isOutside, near, off, practice, type Relation } from '../../checks/relation.ts'
import { bestInsulationC } from '../../engineering/electrical/ampacity-tables.ts'
import { factOf } from '../../job/model.ts'
import { formatBand, formatBandWith, formatSi } from '../../quantity/format.ts'
import { formatShare } from '../../quantity/format-measures.ts'
import type { Lookup } from '../../store/lookup.ts'
import { formatCarried, formatLoad } from '../common/amperes.ts'
import { bankCurrent } from './plans/bank-fault.ts'
import { highestOfBank } from './plans/banks-around.ts'
import { leastShare, motorCurrent } from './plans/motor-current.ts'

const leadsToMotor = (lookup: Lookup): boolean =>
  lookup.referred('from')?.kind === 'motor' || lookup.referred('to')?.kind === 'motor'

/** What real batteries, controllers and motors keep between their facts. */
export const plausiblePower: readonly Relation[] = [
  {
    id: 'controller-gives-motor-current',
    on: 'controller',
    facts: ['controller.current', 'motor.power', 'motor.voltage', 'motor.power-factor', 'motor.efficiency'],
    rule: 'The continuous current of the controller is at least 0.9 times the line current of its motor at rated power.',
    why: 'With less the motor cannot give its rated power. Power factor and efficiency are taken as 0.9 where the job does not state them.',
    source: published('P = √3 U I cos φ η, any text on electrical machines; 0.9: common practice, no source'),
    severity: 'warning',
    broken: (lookup) => {
      const { block } = lookup
      const current = factOf(block, 'controller.current')
      const motor = lookup.near('motor')
      const power = motor && factOf(motor, 'motor.power')
      const needed = motorCurrent(block, lookup)?.current
      if (!current || !power || needed === undefined) return []
      if (!isOutside(current.value, { low: leastShare * needed })) return []
      const found = current.value < 1 ? formatSi(current.value, 'current') : formatCarried(current.value)
      const limit = formatLoad(needed)
      return off(current, {
        found,
        limit: `at least ${limit}`,
        message: `The controller gives ${found}; the motor needs ${limit} for its rated power.`,
        besides: [[power, 'the power of the motor']],
      })
    },
  },
  {
    id: 'motor-voltage',
    on: 'motor',
    facts: ['motor.voltage', 'battery.window', 'battery.nominal'],
    rule: 'The rated voltage of a motor is not above the highest voltage of its battery.',
    why: 'A controller makes at most 0.78 times the voltage of the battery between two phases.',
    source: commonPractice('an inverter does not raise the voltage'),
    severity: 'warning',
    broken: (lookup) => {
      const voltage = factOf(lookup.block, 'motor.voltage')
      const near = lookup.near('battery')
      const high = near && highestOfBank(near, lookup)
      const battery = near && (factOf(near, 'battery.window') ?? factOf(near, 'battery.nominal'))
      if (!voltage || !battery || high === undefined || !isOutside(voltage.value, { high })) return []
      const [found, limit] = [voltage.value, high].map((si) => formatSi(si, 'voltage')) as [string, string]
      return off(voltage, {
        found,
        limit: `at most ${limit}`,
        message: `The motor is rated for ${found} between phases, but its battery reaches only ${limit}.`,
        besides: [[battery, 'the voltage of the battery']],
      })
    },
  },
  between({
    id: 'motor-mass',
    on: 'motor',
    fact: 'motor.mass',
    kind: 'mass',
    other: 'motor.power',
    otherKind: 'power',
    otherWords: 'the power of the motor',
    rule: 'A motor weighs 0.05 to 200 kg for each kilowatt.',
    why: 'The lightest motors weigh 0.1 kg for each kilowatt, old slow machines some tens.',
    source: practice('0.05 to 200 kg'),
    severity: 'warning',
    sides: (power) => ({ low: 0.05e-3 * power, high: 0.2 * power }),
    message: (found, of) => `A motor of ${of} that weighs ${found} is unlikely.`,
  }),
  ...(
    [
      ['motor', 'motor.efficiency', { low: 0.2, high: 0.995 }, 'The best motors lose 1 to 2 % as heat.'],
      ['motor', 'motor.power-factor', { low: 0.2, high: 1 }, 'Motors have 0.7 to 1 at rated load.'],
      ['controller', 'controller.efficiency', { low: 0.5, high: 0.998 }, 'The best lose 1 % as heat.'],
      ['gear', 'gear.efficiency', { low: 0.3, high: 0.999 }, 'Each pair of wheels loses 1 to 3 % as heat.'],
    ] as const
  ).map(([on, fact, bounds, why]) => {
    const range = formatBandWith(bounds, (si) => formatShare(si))
    return alone({
      id: fact,
      on,
      fact,
      kind: 'ratio',
      bounds,
      rule: `It is ${range}.`,
      why,
      source: practice(range),
      severity: 'warning',
      message: (found) =>
        `${found} is unlikely for the ${fact.slice(on.length + 1).replace('-', ' ')} of a ${on}.`,
    })
  }),
  {
    id: 'battery-lasts',
    on: 'motor',
    facts: ['motor.power', 'battery.nominal', 'battery.capacity'],
    rule: 'A battery gives the rated power of its motor for 1 minute to 1000 hours.',
    why: 'Boats run for an hour to a day on a battery. Outside the bounds the power or the capacity is in the wrong unit.',
    source: practice('1 minute and 1000 hours'),
    severity: 'warning',
    broken: (lookup) => {
      const power = factOf(lookup.block, 'motor.power')
      const nominal = near(lookup, 'battery.nominal')
      const capacity = near(lookup, 'battery.capacity')
      if (!power || !nominal || !capacity) return []
      const energy = nominal.value * capacity.value
      const bounds = { low: energy / 3.6e6, high: energy / 60 }
      if (!isOutside(power.value, bounds)) return []
      const found = formatSi(power.value, 'power')
      return off(power, {
        found,
        limit: formatBand(bounds, 'power'),
        message: `A motor of ${found} is unlikely beside a battery of ${formatSi(energy, 'energy')}.`,
        besides: [
          [nominal, 'the nominal voltage of the battery'],
          [capacity, 'its capacity'],
        ],
      })
    },
  },
  {
    id: 'curve-above-rating',
    on: 'protection',
    facts: ['protection.clears', 'protection.rating'],
    rule: 'The curve of a fuse or breaker begins above its rating.',
    why: 'It carries its rating for ever. A curve with less is that of another rating, and shows short circuits as cleared that are not.',
    source: published(
      'IEC 60269-1: a fuse-link carries its rated current continuously without deterioration',
    ),
    severity: 'warning',
    broken: (lookup) => {
      const clears = factOf(lookup.block, 'protection.clears')
      const rating = factOf(lookup.block, 'protection.rating')
      const first = clears?.value[0]?.at
      if (!clears || !rating || first === undefined || !isOutside(first, { low: rating.value })) return []
      const [found, limit] = [formatSi(first, 'current'), formatSi(rating.value, 'current')]
      return off(clears, {
        found,
        limit: `more than ${limit}`,
        message: `The curve has a time for ${found}, which a rating of ${limit} carries for ever.`,
        besides: [[rating, 'the rating']],
      })
    },
  },
  between({
    id: 'battery-peak-current',
    on: 'battery',
    fact: 'battery.peak-current',
    kind: 'current',
    other: 'battery.current',
    otherWords: 'its continuous current',
    rule: 'The peak current of a battery is not below its continuous current.',
    why: 'What it gives for any time it gives for a short one too.',
    source: commonPractice('what `current` and `peak-current` mean'),
    severity: 'warning',
    sides: (current) => ({ low: current }),
    message: (found, of) => `The peak current is ${found}, the continuous current ${of}.`,
  }),
  between({
    id: 'controller-phase-limit',
    on: 'controller',
    fact: 'controller.phase-current-limit',
    kind: 'current',
    other: 'controller.peak-current',
    otherWords: 'its peak current',
    rule: 'The phase current limit of a controller is not above its peak current.',
    why: 'A controller cannot give more than its peak current, so one of the two figures is wrong.',
    source: commonPractice('what `peak-current` means'),
    severity: 'warning',
    sides: (peak) => ({ high: peak }),
    message: (found, of) => `The limit is ${found}; the controller gives at most ${of}.`,
  }),
  between({
    id: 'controller-speed-limit',
    on: 'controller',
    fact: 'controller.speed-limit',
    kind: 'rotational speed',
    other: 'motor.max-speed',
    otherWords: 'the highest speed of the motor',
    rule: 'The speed limit of a controller is not above the highest speed of its motor.',
    why: 'Without load, as when the propeller comes out of the water, the motor runs up to the limit. Above its highest speed it may burst.',
    source: commonPractice('a limit is there to keep what the maker permits'),
    severity: 'warning',
    sides: (most) => ({ high: most }),
    message: (found, of) => `The limit is ${found}; the maker of the motor permits ${of}.`,
  }),
  alone({
    id: 'cable-insulation',
    on: 'cable',
    fact: 'cable.insulation',
    kind: 'temperature',
    bounds: { high: bestInsulationC + 273.15 },
    rule: `The insulation of a cable is rated for at most ${formatSi(bestInsulationC + 273.15, 'temperature')}.`,
    why: 'The ampacity tables go no further, and common cables have 60 to 125 °C. Lugs, terminals and fuses beside a hotter conductor are not made for it.',
    source: published('33 CFR 183.425 table 5: its last column'),
    severity: 'warning',
    message: (found) => `No table of cables has insulation of ${found}.`,
  }),
  {
    id: 'cable-bundle',
    on: 'cable',
    facts: ['cable.bundled', 'cable.parallel'],
    rule: 'A bundle has all conductors of a cable whose conductors are in parallel: two for each of a DC cable, three for each of a three-phase cable, one for each of a cable of one pole.',
    why: 'In a bundle each conductor heats the others. Conductors that run apart need not be counted, but then the cable can carry more than its bundle would.',
    source: commonPractice('what `bundled` and `parallel` mean in this language'),
    severity: 'warning',
    broken: (lookup) => {
      const { block } = lookup
      const [bundled, parallel] = [factOf(block, 'cable.bundled'), factOf(block, 'cable.parallel')]
      if (!bundled || !parallel || parallel.value < 2) return []
      const own =
        parallel.value *
        (factOf(block, 'cable.system')?.value === 'three-phase' || leadsToMotor(lookup)
          ? 3
          : factOf(block, 'cable.pole')
            ? 1
            : 2)
      if (bundled.value >= own) return []
      return off(bundled, {
        found: String(bundled.value),
        limit: `at least ${own}`,
        message: `The cable has ${own} conductors of its own; its bundle counts ${bundled.value}.`,
        besides: [[parallel, 'how many are in parallel']],
      })
    },
  },
  alone({
    id: 'cable-drop',
    on: 'cable',
    fact: 'cable.drop',
    kind: 'ratio',
    bounds: { high: 0.2 },
    rule: 'The allowed voltage drop of a cable is at most 20 %.',
    why: 'For propulsion 3 % is common, and 10 % for what a boat can do without. What is lost heats the cable.',
    source: practice('20 %'),
    severity: 'warning',
    message: (found) => `A voltage drop of ${found} is unlikely to be allowed.`,
  }),
  between({
    id: 'fuse-interrupts-rating',
    on: 'protection',
    fact: 'protection.interrupts',
    kind: 'current',
    other: 'protection.rating',
    otherWords: 'its rating',
    rule: 'A fuse or a breaker interrupts at least the current it is rated for.',
    why: 'It opens on several times its rating. What it must interrupt in this job is checked apart from this, where the short-circuit current is known.',
    source: commonPractice('what opens above its rating must interrupt more than its rating'),
    severity: 'warning',
    sides: (rating) => ({ low: rating }),
    message: (found, of) => `It is rated for ${of} but interrupts only ${found}.`,
  }),
  {
    id: 'battery-fault',
    on: 'battery',
    facts: ['battery.capacity', 'battery.internal-resistance', 'battery.short-circuit-current'],
    rule: 'A short circuit of a battery draws 2 to 500 A for each ampere hour.',
    why: 'Below that the battery could hardly feed its motor. Above it no cell gives so much.',
    source: practice('2 to 500 A'),
    severity: 'warning',
    broken: (lookup) => {
      const { block } = lookup
      const capacity = factOf(block, 'battery.capacity')
      const current = bankCurrent(block, lookup)
      if (!capacity || current === undefined) return []
      const hours = capacity.value / 3600
      const bounds = { low: 2 * hours, high: 500 * hours }
      if (!isOutside(current, bounds)) return []
      const found = formatSi(current, 'current')
      const limit = formatBand(bounds, 'current')
      const from = (['battery.internal-resistance', 'battery.short-circuit-current'] as const).flatMap(
        (path) => {
          const value = factOf(block, path)
          return value ? [[value, 'the short circuit follows from this'] as const] : []
        },
      )
      return off(capacity, {
        found,
        limit,
        message: `A short circuit of ${found} is unlikely for a battery of ${formatSi(capacity.value, 'charge')}.`,
        detail: `Batteries of this size give ${limit}.`,
        besides: from,
      })
    },
  },
]
