import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { terminalAmpacity } from '../../plans/cable-terminals.ts'
import { cableCurrent } from '../../plans/design-current.ts'

const job = (terminal: string, mark = '') => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 %  terminal-temperature: ${terminal} }
  cable feed {
    from: house
    to: controller
    conductor: 70 mm2
    length: 2.5 m
    insulation: 105 degC${mark}
    place: machinery-space
  }
}`

export default check({
  id: 'cable/terminal-temperature',
  severity: 'error',
  title: 'Terminal that gets too hot',
  why: 'A cable at its full current is as warm as its insulation allows, and so is the terminal at its end. A terminal rated for less must not get so warm: the cable then carries no more than one with insulation of the rating of the terminal.',
  source: published(
    'NEC 110.14(C) practice, from memory: the current is taken from the column of the terminal; 33 CFR 183.425 Table 5 and ISO 13297 Table A.1 for the columns',
  ),
  on: 'cable',
  needs: { insulation: 'cable.insulation' },
  fires: job('75 degC', '\n#               ^^^^^^^^ At its terminal'),
  quiet: job('105 degC'),
  run: ({ insulation }, lookup) => {
    const load = cableCurrent(lookup.block, lookup)
    const outcome = terminalAmpacity(lookup.block, lookup)
    if (!outcome.ok) return []
    const limit = outcome.value
    if (limit === 'below-tables')
      return [
        at(insulation, {
          severity: 'information',
          message: 'A terminal of this cable is rated below the tables, so it is not checked.',
          todo: 'Ask the maker what current its terminals take from this cable.',
          found: 'not known',
        }),
      ]
    if (!load.ok || !limit || reaches(limit.carries, load.value.current)) return []
    const { current, assumptions } = load.value
    const isOnlyWarm = reaches(limit.carriesOpen, current)
    const [carries, amps] = [formatCarried(limit.carries), formatLoad(current)]
    return [
      at(insulation, {
        ...(isOnlyWarm && { severity: 'warning' as const }),
        message: `At its terminal the cable may carry ${carries} but must carry ${amps}.`,
        detail: `The terminal is rated for ${limit.terminalC} °C, the insulation for ${limit.insulationC} °C. Limit: ${limit.source}.`,
        todo: 'Use a larger conductor, or a part with terminals for a higher temperature.',
        found: amps,
        limit: `at most ${carries}`,
        assumptions: [...assumptions, 'the terminal is as warm as the place of the cable'],
      }),
    ]
  },
})
