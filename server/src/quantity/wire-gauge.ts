/** American wire gauge: 36 AWG is 0.005 in and 4/0 is 0.460 in by definition, 39 equal ratios between (ASTM B258). Numbers are signed:
 * 0 is 1/0, -1 is 2/0, -3 is 4/0. m. */
export const smallestGauge = 0.127e-3
export const gaugeRatio = 92 ** (1 / 39)
export const gaugeDiameter = (n: number): number => smallestGauge * gaugeRatio ** (36 - n)

/** Area of a circle of this diameter. */
export const circle = (diameter: number): number => (Math.PI / 4) * diameter ** 2

/** A circle one thousandth of an inch across, m². */
export const circularMil = circle(0.0254 / 1000)
