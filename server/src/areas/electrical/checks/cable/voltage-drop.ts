import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { largerConductor } from '../../fixes.ts'
import { cableLoading } from '../../plans/cable-loading.ts'

/** Two shares in per cent, with as many digits as tell them apart. */
function apart(one: number, other: number): readonly [string, string] {
  const at = (digits: number) => [one, other].map((share) => formatShare(share, digits)) as [string, string]
  return [3, 4, 5, 6].map(at).find(([a, b]) => a !== b) ?? at(9)
}

export default check({
  id: 'cable/voltage-drop',
  severity: 'warning',
  title: 'Voltage drop above the limit',
  why: 'Power lost in the cable is missing at the motor and heats the boat. The drop is calculated at the highest temperature of the conductor.',
  source: commonPractice('3 % for propulsion feeders, no source; resistance: IEC 60228 and ASTM B258'),
  on: 'cable',
  needs: { length: 'cable.length' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 40 m
#           ^^^^ drop
    insulation: 105 degC
    place: machinery-space
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    place: machinery-space
  }
}`,
  run: ({ length }, lookup) => {
    const outcome = cableLoading(lookup.block, lookup)
    const load = outcome.ok ? outcome.value : undefined
    if (load?.drop === undefined || load.dropLimit === undefined) return []
    if (reaches(load.dropLimit, load.drop)) return []
    const [found, limit] = apart(load.drop, load.dropLimit)
    const drop = formatSi(load.dropVolts, 'voltage', 'metric', 3)
    if (reaches(load.drop, 1))
      return [
        at(length, {
          severity: 'error',
          message: `The cable would lose all of the ${formatSi(load.volts ?? 0, 'voltage', 'metric', 3)} it gets: the motor cannot run.`,
          detail: `At this current the drop is ${drop}. Limit: ${limit}, ${load.dropLimitFrom}.`,
          todo: 'Check the length, the conductor and the current. Then shorten the run or use a larger conductor.',
          found: drop,
          limit: `at most ${limit}`,
          assumptions: load.assumptions,
        }),
      ]
    return [
      at(length, {
        message: `The voltage drop is ${drop} (${found}); ${limit} is allowed.`,
        detail: `Limit: ${load.dropLimitFrom}.`,
        todo: 'Shorten the run or use a larger conductor.',
        found,
        limit: `at most ${limit}`,
        assumptions: load.assumptions,
      }),
    ]
  },
  fixes: (_finding, ground) => largerConductor(ground),
})
