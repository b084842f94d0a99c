import type { Rule } from '../rule';

export const vertexUnsaid: Rule = {
  code: 'vertex-unsaid',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'The powers are still to be converted for the vertex distance, and the distance of the refraction, that of wear or both are missing.',
    why: 'Without both distances nothing can be converted, and the lens would be held against the power as written, which is said to be the wrong one.',
    example: { wrong: 'compensation vertex', right: 'compensation done' },
    source:
      'The effective power of a lens moved along its axis needs the distance it is moved: any textbook of optics; common practice, no source.',
  },
  message: ({ missing }) =>
    `The power is to be converted for the vertex distance, and ${(missing as readonly string[]).join(' and ')} is not said.`,
  check: ({ order: { compensation, tested, asWorn } }, report) => {
    if (compensation?.value !== 'vertex') return;
    const missing = [
      ...(tested ? [] : ['that of the refraction (tested vertex)']),
      ...(asWorn.vertex ? [] : ['that of wear (as-worn vertex)']),
    ];
    if (missing.length > 0) report(compensation.place, { missing });
  },
};
