import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatLoading } from '../../../common/amperes.ts'
import { nameOfString } from '../../../common/battery-string.ts'
import { chargingOf, permittedCharge, standsFor } from '../../plans/charging.ts'

export default check({
  id: 'battery/charge-current-beyond',
  severity: 'error',
  title: 'Chargers give more than the battery takes',
  why: 'Above its charge current a battery gets too hot, a lithium cell plates and may short inside, or the management system switches the battery off. Loads may be off, so all of the current may reach the battery.',
  source: theJobFile('the charge-current stated at the battery'),
  on: 'battery',
  needs: { most: 'battery.charge-current' },
  fires: `battery house {
  nominal: 96 V
  charge-current: 100 A
#                 ^^^^^ 120 A
}
charger shore { output: 84..108 V  current: 80 A }
charger solar { output: 84..108 V  current: 40 A }
cable from-shore { from: shore  to: house }
cable from-solar { from: solar  to: house }`,
  quiet: `battery house { nominal: 96 V  charge-current: 100 A }
charger shore { output: 84..108 V  current: 80 A }
cable from-shore { from: shore  to: house }`,
  run: ({ most }, lookup) => {
    const { block, blockOf } = lookup
    const charging = chargingOf(block, lookup)
    const permitted = charging && permittedCharge(charging, lookup)
    if (permitted === undefined || reaches(permitted, charging?.current ?? 0)) return []
    if (!charging || !standsFor(block, charging, lookup)) return []
    const { current, carries } = formatLoading(charging.current, permitted)
    const feeders = charging.feeders.map(blockOf)
    const those = charging.strings.length > 1 ? 'the batteries take' : 'the battery takes'
    return [
      at(most, {
        message: `What charges here gives ${current}, but ${those} ${carries}.`,
        detail: `Together: ${nameOfString(feeders)}. What loads draw meanwhile is not counted.`,
        todo: 'Choose smaller chargers, or limit what they give. Or add batteries side by side.',
        found: current,
        limit: `at most ${carries}`,
      }),
    ]
  },
})
