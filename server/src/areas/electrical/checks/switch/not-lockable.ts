import { at, check, commonPractice } from '../../../../checks/check.ts'

const job = (lockable: string) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  isolator main-switch {
    in: feed
    at: 300 mm
    lockable: ${lockable}
  }
}`

export default check({
  id: 'switch/not-lockable',
  severity: 'warning',
  title: 'Isolator that cannot be locked open',
  why: 'Somebody closes a switch that is not locked while another works behind it. A sign does not stop them.',
  source: commonPractice('an isolator that a padlock holds open: common practice, no source'),
  on: 'isolator',
  needs: { lockable: 'isolator.lockable' },
  fires: job('no').replace('lockable: no', 'lockable: no\n#             ^^ locked open'),
  quiet: job('yes'),
  run: ({ lockable }) =>
    lockable.value === 'no'
      ? [
          at(lockable, {
            message: 'The isolator cannot be locked open.',
            todo: 'Choose one that takes a padlock, or fit a cover that does.',
            found: lockable.value,
          }),
        ]
      : [],
})
