import { twoUnits } from '../../job/touching-sign.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { replace, textAt } from '../fix-text.ts'

/** The sign, and what it touches. */
const parted = (written: string): readonly [sign: string, amount: string] => [
  written.slice(0, 1),
  written.slice(1).trim(),
]

/** `+3 mm` as `+ 3 mm`; undefined for limits in decimals, which are no number: `+0.003/0.001 in`. */
function sum(written: string): string | undefined {
  const pair = /[\d.]+\/[\d.]+/.exec(written)?.[0]
  return pair?.includes('.') && limits(written) ? undefined : parted(written).join(' ')
}

/** `3/16 in` is one number, not two. */
const isFraction = (over: number, under: number, unit: string): boolean =>
  over < under && [2, 4, 8, 16, 32, 64].includes(under) && /^(in|inch|inches|ft)$/.test(unit)

/** `+3 mm` as `+3/-0 mm`, `+3/2 mm` as `+3/-2 mm`. */
function limits(written: string): string | undefined {
  const [sign, amount] = parted(written)
  const [, number, below, unit = ''] = /^([\d.]+)(?:\/([\d.]+))?(\s*[^\s\d+\-*/]\S*)?$/.exec(amount) ?? []
  if (number === undefined || isFraction(Number(number), Number(below), unit.trim())) return undefined
  return sign === '+' ? `+${number}/-${below ?? 0}${unit}` : `+${below ?? 0}/-${number}${unit}`
}

/** `+3 mm/-2 mm` as `+3/-2 mm`. */
function withOneUnit(written: string): string | undefined {
  const [, up, unit, down] = twoUnits.exec(written) ?? []
  return up && `+${up}/-${down} ${unit}`
}

export default problemCheck({
  id: 'job/sign-touches',
  problem: 'sign-touches',
  severity: 'error',
  title: 'Sign that touches the number after it',
  why: 'After an amount, such a sign could mean a sum or a limit. A sum changes the size; a limit does not.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm +3 mm
#                     ^^^^^ touches
}`,
  quiet: `seal { free-length: 148 mm + 3 mm }`,
  words: (_p, written) => {
    const once = withOneUnit(written)
    if (once)
      return {
        message: `${written} has its unit twice, so it cannot be read as limits.`,
        todo: `Write ${once}.`,
        found: written,
      }
    const [of, added] = [limits(written), sum(written)]
    const [sign] = parted(written)
    const ways = [
      added && `${added} for a ${sign === '+' ? 'sum' : 'difference'}`,
      of && `${of} for limits`,
    ].filter(Boolean)
    return {
      message: `The ${sign} touches its number: not clear whether ${written} is added or is a limit.`,
      todo: `Write ${ways.join(', ')}.`,
      found: written,
    }
  },
  fixes: ({ at }, { block }) => {
    const written = textAt(at)
    const once = withOneUnit(written)
    if (once) return [{ title: `Write ${once}`, edits: [replace(at, once)], preferred: true, uncovers: true }]
    // Not every fact has limits: a plain length takes the sum alone.
    const takesLimits = declaredAt(block, at)?.shape.forms?.some(({ entries }) =>
      entries.flat().some(({ sign }) => sign === '+/-'),
    )
    const of = takesLimits ? limits(written) : undefined
    return [sum(written), of]
      .flatMap((text) => text ?? [])
      .map((text) => ({
        title: `Write ${text}`,
        edits: [replace(at, text)],
        uncovers: true,
      }))
  },
})
