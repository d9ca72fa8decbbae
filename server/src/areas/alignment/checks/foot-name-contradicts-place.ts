import { at, check, commonPractice } from '../../../checks/check.ts'
import { replace } from '../../../checks/fix-text.ts'
import { oneLine } from '../../../checks/one-line.ts'
import { atOneStation } from '../../../engineering/alignment/feet.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { blockNear, idOf } from '../../../store/block-by-id.ts'
import { onOneSpot, type PlacedFoot, placedFeet } from '../feet-placed.ts'

const sides: Readonly<Record<string, 'port' | 'starboard'>> = {
  port: 'port',
  stbd: 'starboard',
  starboard: 'starboard',
}
const ends: Readonly<Record<string, 'aft' | 'forward'>> = { aft: 'aft', fwd: 'forward', forward: 'forward' }

/** What the parts of a name say, where they say one thing: `aft-port` is port, and aft. */
function namedSide<T>(name: string | undefined, words: Readonly<Record<string, T>>): T | undefined {
  const meanings = new Set(
    (name ?? '').split(/[^a-z]+/i).flatMap((part) => (Object.hasOwn(words, part) ? [words[part]] : [])),
  )
  return meanings.size === 1 ? [...meanings][0] : undefined
}

const sideOf = (y: number): 'port' | 'starboard' => (y < 0 ? 'port' : 'starboard')

const feetBeside = ({ parent }: Block): readonly PlacedFoot[] => (parent ? placedFeet(parent) : [])

export default check({
  id: 'alignment/foot-name-contradicts-place',
  severity: 'warning',
  title: 'Foot whose name contradicts its place',
  why: 'The plan names the foot whose nut to turn. If a foot called port is to starboard, somebody turns the wrong nut, or notes its lift at another foot.',
  source: commonPractice('common practice, no source'),
  on: 'foot',
  plan: 'waits',
  needs: { across: 'foot.across', x: 'foot.from-coupling' },
  fires: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 150 mm starboard }
#                                                  ^^^^^^^^^^^^^^^^ port
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 150 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
}`,
  run: ({ across, x }, { block }) => {
    const side = namedSide(block.name, sides)
    const end = namedSide(block.name, ends)
    const todo = 'Look at the machine, and correct the name or the place.'
    // Further from the coupling is further forward, whichever side of it the machine stands on: aft of the coupling is negative.
    const behind =
      end === 'aft'
        ? feetBeside(block).find(
            (other) =>
              namedSide(other.name, ends) === 'forward' &&
              other.x < x.value &&
              !atOneStation([other.x, x.value]),
          )
        : undefined
    return [
      ...(side && across.value !== 0 && side !== sideOf(across.value)
        ? [
            at(across, {
              ...oneLine(
                `Foot ${block.name} is named for ${side}, but it is to ${sideOf(across.value)}.`,
                `A foot named for ${side} is to ${sideOf(across.value)}.`,
              ),
              todo,
              data: { side },
            }),
          ]
        : []),
      ...(behind
        ? [
            at(x, {
              ...oneLine(
                `Foot ${block.name} is named for aft, but it is further forward than ${behind.name}.`,
                'A foot named for aft is further forward than another.',
              ),
              todo,
              related: [
                {
                  at: blockNear(block, behind.block).facts.get('from-coupling')?.at ?? x.at,
                  message: behind.name,
                },
              ],
            }),
          ]
        : []),
    ]
  },
  // Where that would put two feet on one spot, or all on one side, more than this side is wrong.
  fixes: ({ at: place, data }, { block }) => {
    const feet = block ? feetBeside(block) : []
    const id = block && idOf(block)
    const foot = feet.find((one) => one.block === id)
    const across = block && factOf(block, 'foot.across')
    const side = data?.['side']
    if (!foot || !across || typeof side !== 'string' || across.origin) return []
    const mirrored = { x: foot.x, y: -foot.y }
    const others = feet.filter((other) => other !== foot)
    const taken = others.some((other) => onOneSpot(other, mirrored))
    const faced = others.some(({ y }) => y * mirrored.y < 0)
    const word = across.node.entries[0]?.parts[1]
    return taken || !faced || word?.type !== 'word'
      ? []
      : [{ title: `Write ${side}`, edits: [replace({ section: place.section, span: word.span }, side)] }]
  },
})
