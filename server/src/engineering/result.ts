/** A value, or what stands in its way as data to be shown to a person. */
export type Result<T, P> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: P }
