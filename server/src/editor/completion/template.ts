/** A text to write in, with places to fill in. Each has a value that may stand, or a few to choose from, the first of them first. */
export type Template = readonly (string | { readonly value: string; readonly choices?: readonly string[] })[]

export const plainOf = (template: Template): string =>
  template.map((piece) => (typeof piece === 'string' ? piece : piece.value)).join('')

/** In the snippet syntax of LSP 3.17. */
export function snippetOf(template: Template): string {
  let stop = 0
  return template
    .map((piece) => {
      if (typeof piece === 'string') return piece.replace(/[\\$]/g, '\\$&')
      stop += 1
      const choices = piece.choices ?? []
      return choices.length > 1
        ? `\${${stop}|${choices.map((choice) => choice.replace(/[\\$},|]/g, '\\$&')).join(',')}|}`
        : `\${${stop}:${piece.value.replace(/[\\$}]/g, '\\$&')}}`
    })
    .join('')
}
