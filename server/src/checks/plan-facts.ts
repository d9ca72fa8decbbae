/** Facts that no plan asks for: what is wrong in one of them changes none. */
const beside: Readonly<Record<string, readonly string[]>> = {
  coupling: ['kind', 'rated-torque', 'bolts'],
  reading: ['by', 'note', 'afloat', 'hot', 'parted-end'],
  move: ['by'],
}

export const isBesidePlan = (kind: string, fact: string): boolean => beside[kind]?.includes(fact) === true
