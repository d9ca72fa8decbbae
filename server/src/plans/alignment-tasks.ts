/** One piece of the work: what it is made of, a line each, and the caution that belongs to it. */
export interface Task {
  readonly words: string
  readonly lines?: readonly string[]
  readonly caution?: string
}

// What comes first whatever is to be moved. Common practice, no source.

/** By itself, before anything of the coupling is touched. */
export const isolate: Task = {
  words:
    'Isolate the drive and lock it off. Wait as long as the maker of the controller says, until its stored charge is gone. With the shaft standing still, prove dead at the input of the controller and at the terminals of the motor; try the tester on a live source before and after.',
  caution:
    'Batteries cannot be switched off: cover their terminals. A motor that the water turns makes voltage. The makers of the machine, the controller and the coupling, local rules and licensed people have the last word.',
}

export const secureShaft: Task = {
  words:
    'Secure the shaft with a clamp or straps forward of its seal, against turning in the water and against sliding aft, dry or afloat. If it turned meanwhile, prove dead again.',
  caution: 'Parted and free it can slide out of its seal, and the boat floods.',
}

export const part: Task = {
  words:
    'Part the coupling: mark both flanges first, so that they go back as they were; then take the bolts out.',
}

export const support: Task = {
  words:
    'Put a jack or a hoist in place near the centre of gravity, so that the machine can neither tip nor drop.',
}

/** Numbered, in lines. */
export function taskLines(tasks: readonly Task[]): readonly string[] {
  if (tasks.length === 0) return []
  return [
    'Work, in this order:',
    ...tasks.flatMap(({ words, lines = [], caution }, i) => [
      `${String(i + 1).padStart(4)}. ${words}`,
      ...lines.map((line) => `        ${line}`),
      ...(caution ? [`      Caution: ${caution}`] : []),
    ]),
  ]
}
