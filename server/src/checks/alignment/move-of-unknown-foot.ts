import { childrenOf } from '../../job/model.ts'
import { nearest } from '../../quantity/nearest.ts'
import { check, theLanguage } from '../check.ts'
import { replace, useNearest } from '../fix-text.ts'

export default check({
  id: 'alignment/move-of-unknown-foot',
  severity: 'error',
  title: 'Move of a foot the bed has not',
  why: 'A move that is logged for no foot of the bed is lost to whoever reads the log next: the foot that was really moved seems untouched.',
  source: theLanguage,
  on: 'move',
  fires: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { forward: up 2 flats }
#                    ^^^^^^^ no foot called forward
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { fwd: up 2 flats }
}`,
  run: (_facts, { block, near }) => {
    const bed = near('bed')
    const feet = bed ? childrenOf(bed, 'foot') : []
    const names = feet.flatMap(({ name }) => name ?? [])
    // A foot whose name could not be read may be the one.
    if (names.length === 0 || names.length < feet.length) return []
    return [...block.others]
      .filter(([name]) => !names.includes(name))
      .map(([name, move]) => {
        const close = nearest(name, names)
        return {
          at: { section: move.at.section, span: move.node.name.span },
          message: `The bed has no foot called ${name}; it has ${names.join(', ')}.`,
          todo: close === undefined ? 'Name the foot as the bed does.' : `Write ${close} if that is meant.`,
          found: name,
          ...(close !== undefined && { data: { nearest: close } }),
        }
      })
  },
  fixes: ({ at, data }, { block, lookup }) => {
    const bed = lookup?.near('bed')
    const left = (bed ? childrenOf(bed, 'foot') : [])
      .flatMap(({ name }) => name ?? [])
      .filter((name) => name !== data?.nearest && !block?.others.has(name))
    return [
      ...useNearest(at, data?.nearest),
      ...left.map((name) => ({ title: `Write ${name}`, edits: [replace(at, name)] })),
    ]
  },
})
