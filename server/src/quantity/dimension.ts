/** Exponents of metre, kilogram, second, ampere, kelvin and radian.
 *
 * The radian is kept as a base of its own, which the SI does not do: so a torque (N·m/rad) is not an energy, rpm is not
 * hertz and an angle is not a plain ratio, by dimension alone. */
export type Dimension = readonly [m: number, kg: number, s: number, A: number, K: number, rad: number]

export const dimensionless: Dimension = [0, 0, 0, 0, 0, 0]

export const dimension = (of: {
  m?: number
  kg?: number
  s?: number
  A?: number
  K?: number
  rad?: number
}): Dimension => [of.m ?? 0, of.kg ?? 0, of.s ?? 0, of.A ?? 0, of.K ?? 0, of.rad ?? 0]

const combine = (a: Dimension, b: Dimension, sign: 1 | -1): Dimension => [
  a[0] + sign * b[0],
  a[1] + sign * b[1],
  a[2] + sign * b[2],
  a[3] + sign * b[3],
  a[4] + sign * b[4],
  a[5] + sign * b[5],
]

export const times = (a: Dimension, b: Dimension): Dimension => combine(a, b, 1)
export const over = (a: Dimension, b: Dimension): Dimension => combine(a, b, -1)
export const sameDimension = (a: Dimension, b: Dimension): boolean =>
  a.every((exponent, i) => exponent === b[i])

const bases = ['m', 'kg', 's', 'A', 'K', 'rad'] as const

/** For people: `m·kg·s^-2`, or `a plain number`. */
export function describeDimension(d: Dimension): string {
  const parts = bases.flatMap((base, i) => (d[i] === 0 ? [] : d[i] === 1 ? [base] : [`${base}^${d[i]}`]))
  return parts.length === 0 ? 'a plain number' : parts.join('·')
}
