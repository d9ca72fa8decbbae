import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/merge-conflict',
  problem: 'merge-conflict',
  severity: 'error',
  title: 'Merge conflict',
  why: 'Two versions of the same lines stand here, and nobody has decided which one the job goes by.',
  source: theLanguage,
  fires: `seal {
<<<<<<< ours
#<- two versions
  free-length: 148 mm
=======
  free-length: 184 mm
>>>>>>> theirs
}`,
  quiet: `seal {
  free-length: 148 mm
}`,
  words: () => ({
    message: 'A merge has left two versions of these lines. Until one is chosen, only the first is read.',
    todo: 'Keep the lines that are right, and take out the others with the lines of <, = and >.',
  }),
})
