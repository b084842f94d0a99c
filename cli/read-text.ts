import { isUtf8 } from 'node:buffer';
import { readFileSync } from 'node:fs';

export type TextOrError = { readonly text: string } | { readonly error: string };

/** The text of a file with its line ends and byte order mark, or in a few words why there is none. */
export function readText(path: string): TextOrError {
  try {
    return decoded(readFileSync(path));
  } catch (error) {
    return { error: reasonOf(error) };
  }
}

export async function readStandardInput(): Promise<TextOrError> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  try {
    return decoded(Buffer.concat(chunks));
  } catch (error) {
    return { error: reasonOf(error) };
  }
}

/** Bytes that are not UTF-8 are refused: a figure with a wrong character in it must not be guessed at. */
function decoded(bytes: Buffer): TextOrError {
  // A disk that was switched off while writing leaves zeros, which are UTF-8 all the same.
  if (bytes.includes(0) && !isUtf16(bytes)) return { error: 'it holds bytes of zero, so it is damaged or no text' };
  if (isUtf8(bytes)) return { text: bytes.toString('utf8') };
  return { error: isUtf16(bytes) ? 'it is UTF-16; save it as UTF-8' : 'it is not UTF-8 text' };
}

const isUtf16 = (bytes: Buffer): boolean => ['fffe', 'feff'].includes(bytes.subarray(0, 2).toString('hex'));

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  ENOTDIR: 'no such file or folder',
  EACCES: 'no permission to read it',
  EPERM: 'no permission to read it',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'the name is too long',
  ERR_STRING_TOO_LONG: 'it is too large for one text',
  ERR_FS_FILE_TOO_LARGE: 'it is too large for one text',
};

/** Why the system refused, in words; its own message where there are none. */
export function reasonOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return REASONS[code ?? ''] ?? message;
}
