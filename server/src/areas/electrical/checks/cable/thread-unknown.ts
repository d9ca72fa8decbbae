import { at, check, published } from '../../../../checks/check.ts'
import { factOf, placeOfPart } from '../../../../job/model.ts'
import { elide } from '../../../../quantity/elide.ts'
import { terminalFact } from '../../plans/cable-terminals.ts'

const words = (mark: string) => ({
  message: `No thread is called ${elide(mark)}, so the lug cannot be compared with its stud.`,
  todo: 'Write the thread, such as `M10`, `3/8 in` or `"3/8-16 UNC"`.',
  found: mark,
})

export default check({
  id: 'cable/thread-unknown',
  severity: 'warning',
  title: 'Stud or lug of no known thread',
  why: 'Without its size nobody can tell whether the lug goes on the stud.',
  source: published('ISO 261; ASME B1.1'),
  on: ['battery', 'busbar', 'controller', 'motor', 'protection', 'isolator', 'contactor', 'cable'],
  fires: `battery house { nominal: 96 V  stud: N10 }
#                                    ^^^ N10
`,
  quiet: `battery house { nominal: 96 V  stud: M10 }
`,
  run: (_facts, { block }) => {
    const stud = terminalFact(block, 'stud')
    const lugs = factOf(block, 'cable.lugs')
    return [
      ...(stud && stud.value.diameter === undefined ? [at(stud, words(stud.value.mark))] : []),
      ...(lugs?.value ?? []).flatMap((lug, index) =>
        lugs && lug.diameter === undefined
          ? [{ ...at(lugs, words(lug.mark)), at: lugs.origin ? lugs.at : placeOfPart(lugs, index) }]
          : [],
      ),
    ]
  },
})
