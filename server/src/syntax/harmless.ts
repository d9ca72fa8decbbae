/** Control characters, line separators and text direction marks (Unicode Standard Annex 9: Bidi_Control). */
export const controls = /[\p{Cc}\p{Bidi_Control}\u2028\u2029]/gu

/** Replaces each of them with a visible symbol: none may control a terminal, or turn a figure round where a text of a job is shown. */
export const harmless = (text: string): string =>
  text.replace(controls, (sign) => {
    const code = sign.charCodeAt(0)
    return code < 0x20 ? String.fromCharCode(0x2400 + code) : '\uFFFD'
  })

/** The same in each line of a text. */
export const harmlessLines = (text: string): string => text.split('\n').map(harmless).join('\n')
