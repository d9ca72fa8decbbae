/** The greatest of some numbers, undefined where there are none. A job can have more of them than a call takes arguments. */
export const greatest = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((extreme, value) => Math.max(extreme, value))

/** The least of some numbers, undefined where there are none. */
export const least = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((most, value) => Math.min(most, value))
