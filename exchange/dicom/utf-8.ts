/** The bytes of a text in UTF-8, made by hand since the language itself has no encoder. Half a pair becomes U+FFFD. */
export function utf8(text: string): readonly number[] {
  const bytes: number[] = [];
  for (const character of text) {
    const found = character.codePointAt(0) as number;
    const code = found >= 0xd800 && found <= 0xdfff ? 0xfffd : found;
    if (code < 0x80) bytes.push(code);
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 0x3f));
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 0x3f), 0x80 | (code & 0x3f));
    else {
      const middle = [12, 6, 0].map((shift) => 0x80 | ((code >> shift) & 0x3f));
      bytes.push(0xf0 | (code >> 18), ...middle);
    }
  }
  return bytes;
}
