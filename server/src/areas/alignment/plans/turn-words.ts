const fractions = ['', '¼', '½', '¾'] as const

/** `1 turn 2 flats`, `half a flat`, `1½ flats`, `2¼ flats`. */
export function formatTurns({ turns, flats }: { readonly turns: number; readonly flats: number }): string {
  const quarters = Math.round(flats * 4)
  const [whole, fraction] = [Math.floor(quarters / 4), fractions[quarters % 4] ?? '']
  const flatsText =
    whole === 0 && fraction !== ''
      ? `${{ '¼': 'a quarter of', '½': 'half', '¾': 'three quarters of' }[fraction]} a flat`
      : `${whole}${fraction} ${whole === 1 && fraction === '' ? 'flat' : 'flats'}`
  if (turns === 0) return flatsText
  const full = turns === 1 ? '1 turn' : `${turns} turns`
  return flats === 0 ? full : `${full} ${flatsText}`
}
