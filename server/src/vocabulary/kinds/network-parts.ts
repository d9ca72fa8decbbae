/** Kinds of block that cables can end at, and that a device can be bolted to. */
export const networkParts = [
  'battery',
  'busbar',
  'protection',
  'isolator',
  'contactor',
  'controller',
  'motor',
  'charger',
  'converter',
  'load',
] as const
