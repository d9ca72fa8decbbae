import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { replace, textAt } from '../fix-text.ts'

/** The sign, and what it touches. */
const parted = (written: string): readonly [sign: string, amount: string] => [
  written.slice(0, 1),
  written.slice(1).trim(),
]

const apart = (written: string): string => parted(written).join(' ')

/** `+3 mm` as `+3/-0 mm`, `+3/2 mm` as `+3/-2 mm`. */
function limits(written: string): string | undefined {
  const [sign, amount] = parted(written)
  const [, number, below, unit = ''] = /^([\d.]+)(?:\/([\d.]+))?(\s*[^\s\d+\-*/]\S*)?$/.exec(amount) ?? []
  if (number === undefined) return undefined
  return sign === '+' ? `+${number}/-${below ?? 0}${unit}` : `+${below ?? 0}/-${number}${unit}`
}

export default problemCheck({
  id: 'job/sign-touches',
  problem: 'sign-touches',
  severity: 'error',
  title: 'Sign that touches the number behind it',
  why: 'Behind an amount, such a sign may be meant for a sum or for limits: one would move the size, the other would not.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm +3 mm
#                     ^^^^^ touches
}`,
  quiet: `seal { free-length: 148 mm + 3 mm }`,
  words: (_p, written) => {
    const of = limits(written)
    const [sign] = parted(written)
    return {
      message: `The ${sign} touches its number: it does not say whether ${written} is added or is a limit.`,
      todo: `Write ${apart(written)} for a ${sign === '+' ? 'sum' : 'difference'}${of ? `, ${of} for limits` : ''}.`,
      found: written,
    }
  },
  fixes: ({ at }, { block }) => {
    const written = textAt(at)
    // Not every fact has limits: a plain length takes the sum alone.
    const takesLimits = /\b(limits|tolerance)\b/.test(declaredAt(block, at)?.shape.words ?? '')
    const of = takesLimits ? limits(written) : undefined
    return [apart(written), ...(of ? [of] : [])].map((text) => ({
      title: `Write ${text}`,
      edits: [replace(at, text)],
      uncovers: true,
    }))
  },
})
