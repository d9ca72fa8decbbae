// Made by npm run generate from the vocabulary.

/** Every kind of block. */
export const kindsOfBlock: ReadonlySet<string> = new Set([
  'job',
  'hull',
  'service',
  'point',
  'battery',
  'busbar',
  'charger',
  'converter',
  'load',
  'drive',
  'propeller',
  'shaft',
  'bearing',
  'shaft-log',
  'seal',
  'coupling',
  'gear',
  'motor',
  'sensor',
  'bed',
  'foot',
  'target',
  'reading',
  'move',
  'controller',
  'cable',
  'protection',
  'isolator',
  'contactor',
  'precharge',
  'phase-map',
  'test',
  'concession',
])

/** Kinds of block that stand inside another, and never at the top. */
export const alwaysInside: ReadonlySet<string> = new Set([
  'point',
  'sensor',
  'foot',
  'target',
  'reading',
  'move',
  'phase-map',
])

/** Kinds whose place is inside another: at the top they are parts to be shared, and have a name. */
export const insideWithoutName: ReadonlySet<string> = new Set([
  'propeller',
  'shaft',
  'bearing',
  'shaft-log',
  'seal',
  'coupling',
  'gear',
  'motor',
  'bed',
  'controller',
  'cable',
  'protection',
  'precharge',
  'test',
])
