import { at, check, commonPractice } from '../../../../checks/check.ts'
import { unlessReplaced } from '../../history.ts'

export default check({
  id: 'test/coupled',
  severity: 'warning',
  title: 'Direction tried with the shaft coupled',
  why: 'A motor that starts the wrong way, or does not stop, then turns shaft and propeller. The seal runs dry if the boat is ashore, and the boat moves if it is afloat.',
  source: commonPractice('rotation proved uncoupled: common practice, no source'),
  on: 'test',
  needs: { kind: 'test.kind', coupled: 'test.coupled' },
  fires: `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 { kind: rotation  on: propulsion  taken: 2026-03-12  turns: clockwise  coupled: yes }
#                                                                                         ^^^ uncoupled
}`,
  quiet: `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 { kind: rotation  on: propulsion  taken: 2026-03-12  turns: clockwise  coupled: no }
}`,
  run: ({ kind, coupled }, lookup) =>
    kind.value === 'rotation' && coupled.value === 'yes'
      ? unlessReplaced(lookup, [
          at(coupled, {
            message: 'The direction of the motor was tried with its shaft coupled.',
            todo: 'Try a motor uncoupled first, and add the record.',
            limit: 'uncoupled',
          }),
        ])
      : [],
})
