import { at, check, published } from '../../../../checks/check.ts'
import { lugOnStud } from '../../../../engineering/electrical/terminal.ts'
import { placeOfPart } from '../../../../job/model.ts'
import { elide } from '../../../../quantity/elide.ts'
import { terminalFact } from '../../plans/cable-terminals.ts'

const job = (lugs: string) => `battery house { nominal: 96 V  stud: M10 }
drive main {
  controller { input: 72..120 V  stud: M8 }
  cable feed {
    from: house
    to: controller
    lugs: ${lugs}
  }
}`

export default check({
  id: 'cable/lug-mismatch',
  severity: 'error',
  title: 'Lug that does not suit the stud',
  why: 'A lug that is too small does not go on, and gets drilled out. One that is too large touches with less of its ring: it gets hot and works loose.',
  source: published('ABYC E-11, as summarised: the ring has the size of the stud'),
  on: 'cable',
  needs: { lugs: 'cable.lugs' },
  fires: job('M8\n#         ^^ M10'),
  quiet: job('M10, M8'),
  run: ({ lugs }, lookup) =>
    (['from', 'to'] as const).flatMap((end, index) => {
      const block = lookup.referred(end)
      const stud = block && terminalFact(block, 'stud')
      const lug = lugs.value[index] ?? lugs.value[0]
      const [on, ring] = [stud?.value.diameter, lug?.diameter]
      if (!stud || !lug || on === undefined || ring === undefined) return []
      const fit = lugOnStud({ lug: ring, stud: on })
      if (fit === 'fits') return []
      const [found, wanted] = [elide(lug.mark), elide(stud.value.mark)]
      const part = elide(block.name ?? `the ${block.kind}`)
      return [
        {
          ...at(lugs, {
            ...(fit === 'too-large' && { severity: 'warning' as const }),
            message: `The lug at \`${end}\` is for ${found}, but the stud of ${part} is ${wanted}.`,
            detail: fit === 'too-small' ? 'It does not go on.' : 'Its ring is too wide for the stud.',
            todo: `Use a lug for ${wanted}. Correct \`lugs\` or \`stud\` if one of them is wrong.`,
            found,
            limit: wanted,
            related: [{ at: stud.at, message: 'the stud' }],
          }),
          at: lugs.origin ? lugs.at : placeOfPart(lugs, lugs.value.length > 1 ? index : 0),
        },
      ]
    }),
})
