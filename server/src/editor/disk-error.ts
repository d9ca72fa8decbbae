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

/** Why the disk refused, in words. */
export function diskErrorWords(error: unknown): string {
  const { code, path } = error as NodeJS.ErrnoException
  if (code === 'ENOENT' && path?.includes('\uFFFD')) return 'its name is not UTF-8 text'
  return words[code ?? ''] ?? code ?? String(error)
}
