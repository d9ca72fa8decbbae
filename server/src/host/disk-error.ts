/** What a disk commonly refuses, in words that follow "cannot be read:". */
const words: Readonly<Record<string, string>> = {
  ENOENT: 'the file does not exist',
  EISDIR: 'it is a folder, not a file',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EFBIG: 'the size limit for files is reached',
  EBUSY: 'it is in use',
  EIO: 'the disk reports an error',
  ELOOP: 'its links lead in a circle',
}

/** Whether a path has a name that is no UTF-8: the disk has it, but not by the name it is asked for. */
const isMisnamed = ({ code, path }: NodeJS.ErrnoException): boolean =>
  code === 'ENOENT' && path?.includes('\uFFFD') === true

/** Whether there is no such file or folder any more. */
export const isGone = (error: NodeJS.ErrnoException): boolean =>
  (error.code === 'ENOENT' || error.code === 'ENOTDIR') && !isMisnamed(error)

/** Why the disk refused, in words. */
export function diskErrorWords(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException
  if (isMisnamed(error as NodeJS.ErrnoException)) return 'its name is not UTF-8 text'
  return words[code ?? ''] ?? code ?? String(error)
}
