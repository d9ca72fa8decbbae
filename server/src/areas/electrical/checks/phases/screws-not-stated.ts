import { atHead, check, commonPractice } from '../../../../checks/check.ts'

export default check({
  id: 'phases/screws-not-stated',
  severity: 'information',
  title: 'Twin screws without a direction',
  why: 'Two propellers are ordered by their hand. If the job does not state how the pair is meant to turn, two of one hand, or a pair the wrong way round, cannot be found.',
  source: commonPractice('common practice: twin screws turn opposite ways, mostly outward'),
  on: 'job',
  wants: { screws: 'job.screws' },
  fires: `job "Ferry" {
# <-
  vessel: "Invented"
}
drive port { propeller { diameter: 480 mm  turns: left-hand } }
drive starboard { propeller { diameter: 480 mm  turns: right-hand } }`,
  quiet: `job "Ferry" {
  vessel: "Invented"
  screws: outward
}
drive port { propeller { diameter: 480 mm  turns: left-hand } }
drive starboard { propeller { diameter: 480 mm  turns: right-hand } }`,
  run: ({ screws }, { block, ofKind }) =>
    screws || block.unread.has('screws') || block.blanks.has('screws') || ofKind('drive').length !== 2
      ? []
      : [
          atHead(block, {
            message: 'The job has two drives and does not state how their screws turn.',
            todo: 'Write `screws: outward`, `inward` or `same-hand`, and `across` in each drive.',
          }),
        ],
})
