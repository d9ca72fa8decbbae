import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { supportLimit } from '../../../../engineering/electrical/cable-laying.ts'
import { factOf } from '../../../../job/model.ts'

export default check({
  id: 'cable/supports-far',
  severity: 'warning',
  title: 'Supports of a cable too far apart',
  why: 'A cable that can move chafes at its supports, and its weight pulls at the terminals.',
  source: published(
    'ISO 10133:2012, 7.3 and 7.4: 450 mm, battery and sheathed conductors 300 mm; ABYC E-11, as summarised: 18 in',
  ),
  on: 'cable',
  needs: { spacing: 'cable.support-spacing' },
  fires: `job "x" { vessel: "Invented"  rules: iso }
drive main {
  cable feed { conductor: 95 mm2  length: 2 m  support-spacing: 600 mm }
#                                                               ^^^^^^ 450 mm
}`,
  quiet: `job "x" { vessel: "Invented"  rules: iso }
drive main {
  cable feed { conductor: 95 mm2  length: 2 m  support-spacing: 400 mm }
}`,
  run: ({ spacing }, lookup) => {
    const { block } = lookup
    const job = lookup.near('job')
    const rules = job && factOf(job, 'job.rules')?.value
    const isFromBattery = (['from', 'to'] as const).some((end) => lookup.referred(end)?.kind === 'battery')
    const isClose = isFromBattery || factOf(block, 'cable.sheathed')?.value === 'yes'
    const { metres, source } = supportLimit({ rules, isClose })
    if (reaches(metres, spacing.value)) return []
    const [found, limit] = [spacing.value, metres].map((length) => lookup.show(length, 'length')) as [
      string,
      string,
    ]
    return [
      at(spacing, {
        message: `The supports are ${found} apart; at most ${limit} is allowed.`,
        ...(isClose &&
          rules !== 'abyc' && { detail: 'A battery conductor, or one in a sheath, needs closer supports.' }),
        todo: 'Add supports.',
        found,
        limit: `at most ${limit}`,
        source: published(source),
        ...(!rules && { assumptions: ['the job chooses no `rules`: the closer supports of ISO'] }),
      }),
    ]
  },
})
