/** A boat with everything that its power table needs; parts of it may be said in another way, or left out. */
export interface BoatText {
  readonly hull?: string
  readonly service?: string
  readonly battery?: string
  readonly propeller?: string
  readonly gear?: string
  readonly motor?: string
  readonly controller?: string
  /** Beside all that: other drives, batteries. */
  readonly more?: string
}

const usual = {
  hull: 'calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN, 7 kn 2.2 kN, 8 kn 5 kN  wake-fraction: 15 %  thrust-deduction: 12 %',
  service:
    'water: sea  water-temperature: 15 degC  reserve: 20 %  sea-margin: 10 %  point cruise { boat-speed: 5.5 kn  time: 1 h }',
  battery: 'nominal: 96 V  window: 84..108 V  capacity: 210 Ah  chemistry: lfp  usable: 80 %',
  propeller: 'diameter: 460 mm  pitch: 340 mm  blades: 3  blade-area-ratio: 55 %  depth: 0.5 m',
  gear: 'ratio: 2.5  efficiency: 96 %',
  motor: 'power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  efficiency: 92 %',
  controller: 'input: 72..120 V  efficiency: 96 %',
} as const

export function boat(parts: BoatText = {}): string {
  const { hull, service, battery, propeller, gear, motor, controller } = { ...usual, ...parts }
  const block = (heading: string, facts: string) => (facts === '' ? '' : `${heading} { ${facts} }\n`)
  return `${block('hull', hull)}${block('service', service)}${block('battery house', battery)}drive main {
  ${block('propeller', propeller)}${block('gear', gear)}${block('motor turning', motor)}${block('controller', controller)}
}
${parts.more ?? ''}`
}
