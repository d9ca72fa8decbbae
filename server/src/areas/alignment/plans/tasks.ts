import { canFlood, dangers, isolateFirst, lastWord } from '../../common/dangers.ts'

/** One piece of the work: what it is made of, a line each, and the caution that belongs to it. */
export interface Task {
  readonly words: string
  readonly lines?: readonly string[]
  readonly caution?: string
}

// What comes first whatever is to be moved. Common practice, no source.

/** By itself, before anything of the coupling is touched. */
export const isolate: Task = {
  words: `${isolateFirst} With the shaft stopped, prove dead at the controller input and at the motor terminals. Try the tester on a live source before and after.`,
  caution: `A battery cannot be switched off: cover its terminals. A motor turned by the water generates voltage. ${lastWord}`,
}

export const secureShaft: Task = {
  words: `${dangers['turning-shaft'].guard} Do this whether the boat is dry or afloat. If the shaft turns meanwhile, prove dead again.`,
  caution: canFlood,
}

export const part: Task = {
  words:
    'Part the coupling. Mark both flanges first, so that they go back as they were. Then take out the bolts.',
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
