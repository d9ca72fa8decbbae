import { type Disposable, type QuickInput, QuickInputButtons, window } from 'vscode'
import { type NewJobParams, vesselFault } from '../../server/src/editor/client-requests.ts'

type Answers = Partial<NewJobParams>

/** What a person does with one question. */
type Step = { readonly type: 'answer'; readonly answers: Answers } | { readonly type: 'back' | 'cancel' }

type Question = (asked: Answers, step: number) => Promise<Step>

interface Choice {
  readonly label: string
  readonly detail?: string
  readonly answers: Answers
}

const prepare = (input: QuickInput, step: number): void => {
  input.title = 'New Job'
  input.step = step
  input.totalSteps = questions.length
  input.ignoreFocusOut = true
}

const back = (step: number) => (step > 1 ? [QuickInputButtons.Back] : [])

/** Settles once; the input is closed then, and with it all that listens to it. */
const settle = (open: (done: (step: Step) => void) => QuickInput & Disposable): Promise<Step> => {
  let input: Disposable | undefined
  return new Promise<Step>((done) => {
    const shown = open(done)
    input = shown
    shown.onDidHide(() => done({ type: 'cancel' }))
    shown.show()
  }).finally(() => input?.dispose())
}

const vessel: Question = ({ vessel: before = '' }, step) =>
  settle((done) => {
    const input = window.createInputBox()
    prepare(input, step)
    input.prompt = 'Name of the vessel'
    input.placeholder = 'Launch 07'
    input.value = before
    input.onDidChangeValue(() => {
      input.validationMessage = undefined
    })
    input.onDidAccept(() => {
      const name = input.value.trim()
      const fault = vesselFault(name)
      if (fault === undefined) done({ type: 'answer', answers: { vessel: name } })
      else input.validationMessage = fault
    })
    return input
  })

const isAnswered = ({ answers }: Choice, asked: Answers): boolean =>
  Object.entries(answers).every(([name, value]) => asked[name as keyof Answers] === value)

const choose =
  (placeholder: string, choices: readonly Choice[]): Question =>
  (asked, step) =>
    settle((done) => {
      const pick = window.createQuickPick<Choice>()
      prepare(pick, step)
      pick.placeholder = placeholder
      pick.items = choices
      const before = choices.find((choice) => isAnswered(choice, asked))
      if (before) pick.activeItems = [before]
      pick.buttons = back(step)
      pick.onDidTriggerButton(() => done({ type: 'back' }))
      pick.onDidAccept(() => {
        const [chosen] = pick.activeItems
        if (chosen) done({ type: 'answer', answers: chosen.answers })
      })
      return pick
    })

const questions: readonly Question[] = [
  vessel,
  choose('How many drives?', [
    { label: 'One drive', answers: { drives: 1 } },
    { label: 'Two drives', detail: 'Port and starboard, with the same parts', answers: { drives: 2 } },
  ]),
  choose('Which units?', [
    { label: 'Metric', detail: 'mm, m, kW', answers: { units: 'metric' } },
    { label: 'Inch', detail: 'in, ft, hp', answers: { units: 'inch' } },
  ]),
  choose('How is the height of the motor feet set?', [
    { label: 'Studs', detail: 'One nut below and one above each foot', answers: { feet: 'studs' } },
    { label: 'Shims', detail: 'Shims under each foot', answers: { feet: 'shims' } },
  ]),
]

const isWhole = (answers: Answers): answers is NewJobParams =>
  answers.vessel !== undefined &&
  answers.drives !== undefined &&
  answers.units !== undefined &&
  answers.feet !== undefined

/** Asks one question after another, with a way back. Undefined when it was cancelled. */
export const askForNewJob = async (): Promise<NewJobParams | undefined> => {
  let answers: Answers = {}
  for (let at = 0; ; ) {
    const ask = questions[at]
    if (!ask) return isWhole(answers) ? answers : undefined
    const step = await ask(answers, at + 1)
    if (step.type === 'cancel') return undefined
    if (step.type === 'answer') answers = { ...answers, ...step.answers }
    at += step.type === 'back' ? -1 : 1
  }
}
