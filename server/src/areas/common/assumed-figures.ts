/** Taken where the file is silent; each is reported as an assumption. Common practice, no source. */
export const assumedFigures = {
  motorEfficiency: 0.9,
  controllerEfficiency: 0.95,
  converterEfficiency: 0.9,
  powerFactor: 0.9,
}
