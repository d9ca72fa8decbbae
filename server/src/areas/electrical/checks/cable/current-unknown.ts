import { atHead, check, theJobFile } from '../../../../checks/check.ts'
import { capital } from '../../../../common/capital.ts'
import { cableAmpacity } from '../../plans/cable-ampacity.ts'
import { cableCurrent } from '../../plans/design-current.ts'

export default check({
  id: 'cable/current-unknown',
  severity: 'warning',
  title: 'Current of a cable not known',
  why: 'Without the current, neither the cable nor its fuse can be checked. No finding then does not mean that they are right.',
  source: theJobFile('the motors that the cables lead to'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  fires: `battery house { nominal: 48 V  window: 44..56 V }
drive main {
  controller port { efficiency: 95 % }
  controller starboard { efficiency: 95 % }
  motor left { power: 5 kW }
  motor right { power: 5 kW }
  cable feed {
# ^^^^^^^^^^ not known
    from: house
    to: port
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
  }
}`,
  quiet: `battery house { nominal: 48 V  window: 44..56 V }
drive main {
  controller port { efficiency: 95 % }
  controller starboard { efficiency: 95 % }
  motor left { power: 5 kW }
  motor right { power: 5 kW }
  cable feed {
    from: house
    to: port
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    design-current: 150 A
  }
}`,
  run: (_facts, lookup) => {
    const cable = lookup.block
    // What cannot be found or read is said where it is written.
    if (!lookup.referred('from') || !lookup.referred('to')) return []
    const current = cableCurrent(cable, lookup)
    if (!current.ok && current.fault.type !== 'unread')
      return [
        atHead(cable, {
          message: 'The current of this cable is not known.',
          detail: `${capital(current.fault.because)}. So neither the cable nor its fuse is checked against it.`,
          todo: 'State `design-current`, or write the cables that connect each controller to its motors.',
        }),
      ]
    const carrying = cableAmpacity(cable, lookup)
    if (carrying.ok || carrying.fault.type !== 'impossible') return []
    return [
      atHead(cable, {
        message: 'What this cable can carry is not known.',
        detail: `${capital(carrying.fault.because)}. So the cable is not checked against its current.`,
        todo: 'Correct what the job says about the cable.',
      }),
    ]
  },
})
