import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

export default problemCheck({
  id: 'job/unresolved',
  problem: 'unresolved',
  severity: 'error',
  title: 'Unknown name',
  why: 'If nothing has that name, what depends on it cannot be checked.',
  source: theLanguage,
  fires: `drive main {
  cable feed { from: controler  to: main  conductor: 35 mm2  length: 1 m  insulation: 90 degC }
#                    ^^^^^^^^^ controller
  controller { input: 72..120 V }
  motor main { power: 15 kW }
}`,
  quiet: `drive main {
  cable feed { from: controller  to: main  conductor: 35 mm2  length: 1 m  insulation: 90 degC }
  controller { input: 72..120 V }
  motor main { power: 15 kW }
}`,
  words: (p, written) => ({
    message: p.is
      ? `${written} is a ${p.is}, which cannot be used here.`
      : `Nothing here is called ${written}.`,
    detail: `This must be ${p.wanted}.`,
    todo: p.nearest
      ? `Did you mean ${elide(p.nearest)}?`
      : p.is
        ? `Name ${p.wanted}.`
        : 'Check the name, and the files in use.',
    found: p.is ? `${written}, a ${p.is}` : written,
    data: { wanted: p.wanted, ...(p.nearest && { nearest: p.nearest }) },
  }),
  fixes: ({ at, data }, { lookup }) => {
    const near = data?.nearest
    const named = near === undefined ? undefined : lookup?.named(near)?.kind
    // A name may be near and go by a block of another kind, or by several: then it mends nothing.
    const mends =
      named === undefined ? data?.wanted?.startsWith('a fact') : data?.wanted?.split(/\W/).includes(named)
    return mends ? useNearest(at, near) : []
  },
})
