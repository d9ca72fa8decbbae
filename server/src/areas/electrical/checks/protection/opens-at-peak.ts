import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { clearing } from '../../../../engineering/electrical/clearing-curve.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatLoading } from '../../../common/amperes.ts'
import { heatAround } from '../../plans/fuse-ambient.ts'
import { caseFlows } from '../../plans/load-cases.ts'
import { curveOf } from '../../plans/short-circuit-heat.ts'

const job = (curve: string) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor m { power: 15 kW  speed: 1500 rpm  peak-torque: 150 N·m  peak-time: 60 s  efficiency: 92 % }
  controller c { input: 72..120 V  efficiency: 96 % }
  cable feed { from: house  to: c  conductor: 95 mm2  length: 2 m  insulation: 105 degC }
  protection main-fuse {
    kind: fuse
    in: feed
    at: 0 mm
    rating: 250 A${curve}
  }
}`

/** So many times its rating a fuse carries for an hour. IEC 60269-1, conventional non-fusing current of gG, from memory; UL 248 gives an hour up to 1.35
 * times. */
const withoutCurve = 1.25

export default check({
  id: 'protection/opens-at-peak',
  severity: 'warning',
  title: 'Fuse that may open at peak torque',
  why: 'A fuse above the rated current may still open while the motors give peak torque. The drive is then lost when it is needed most, and a spare has to be found.',
  source: {
    basis: 'from memory',
    text: 'IEC 60269-1: a gG fuse carries 1.25 times its rating for an hour; else the curve of the fuse, as the job states it',
  },
  on: 'protection',
  needs: { rating: 'protection.rating' },
  fires: job('\n    clears: 280 A 20 s, 2 kA 0.1 s').replace('250 A', '250 A\n#           ^^^^^ within'),
  quiet: job('\n    clears: 400 A 100 s, 2 kA 0.1 s'),
  run: ({ rating }, lookup) => {
    const { block } = lookup
    const [flow] = caseFlows('peak', block, lookup)
    const carries = rating.value * heatAround(block).share
    if (flow?.amps === undefined || reaches(carries, flow.amps)) return []
    const curve = curveOf(block)
    if (!curve && reaches(carries * withoutCurve, flow.amps)) return []
    const earliest = curve && clearing(curve, flow.amps).earliest
    if (earliest !== undefined && flow.lasts !== undefined && earliest > flow.lasts) return []
    const shown = formatLoading(flow.amps, carries)
    const isSure = earliest !== undefined && flow.lasts !== undefined
    const lasts = flow.lasts === undefined ? '' : ` for ${formatSi(flow.lasts, 'time')}`
    return [
      at(rating, {
        ...(!isSure && { severity: 'information' as const }),
        message: isSure
          ? `At peak torque ${shown.current} flow${lasts}: it may open within ${formatSi(earliest, 'time', 'metric', 2)}.`
          : `At peak torque ${shown.current} flow${lasts}, and it is for ${shown.carries}: check its curve.`,
        detail: isSure
          ? 'The curve counts with 10 % of tolerance in the current. The motors give peak torque at rated speed, all else is at rated power.'
          : `The motors give peak torque at rated speed, all else is at rated power. ${curve ? 'How long, is' : 'The curve of the device is'} not stated.`,
        todo: curve
          ? 'Choose a slower or larger fuse that still protects the cables, or limit the peak current in the controllers.'
          : 'State its curve as `clears`, or limit the peak current in the controllers.',
        found: shown.current,
        limit: `at most ${shown.carries}`,
      }),
    ]
  },
})
