/** Facts that no plan asks for: what is wrong in one of them changes none. */
const factsBesidePlan: Readonly<Record<string, readonly string[]>> = {
  coupling: ['kind', 'rated-torque', 'bolts'],
  reading: ['by', 'note', 'afloat', 'hot', 'parted-end'],
  move: ['by'],
}

export const isBesidePlan = (kind: string, fact: string): boolean =>
  factsBesidePlan[kind]?.includes(fact) === true
