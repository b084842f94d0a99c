import { isLess } from '../../exact';
import type { Rule } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

/** Room below the end of the corridor in which one reads. */
const READING = 4;
/** Where the corridor is not said. */
const USUAL = 18;

export const crossRoom: Rule = {
  code: 'cross-room',
  family: 'order',
  level: ({ corridor }) => (corridor === undefined ? 'warning' : 'error'),
  page: {
    checks:
      'The fitting height of a progressive is less than its corridor and 4 mm for reading. Where no corridor is said, a height below 18 mm is asked about.',
    levels: 'An error where the corridor is ordered, a warning where it is not.',
    why: 'The reading part would be cut off by the rim: 16 mm with a corridor of 14 leaves 2 mm to read through. A shorter corridor or a deeper frame is needed.',
    example: { wrong: 'height 16', right: 'height 18' },
    source:
      '20/20 CE, November 2015, “choosing a corridor length”; the usual 18 mm from a training deck on progressives.',
  },
  message: ({ height, corridor }) =>
    corridor === undefined
      ? `A fitting height of ${height} mm suits only short corridors. Which one is it?`
      : `A corridor of ${corridor} mm needs a height of ${Number(corridor) + READING} mm or more; here it is ${height}.`,
  needs: 'progressive',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      madeLenses(order).flatMap((lens) => {
        const { height, design } = lens;
        if (!height || design?.value.type !== 'progressive' || isLess(height.value, 0)) return [];
        const { corridor } = design.value;
        if (!isLess(height.value, corridor === null ? USUAL : corridor + READING)) return [];
        const data = { height: height.value, ...(corridor === null ? {} : { corridor }) };
        return [{ lens, place: height.place, data, related: [design.place] }];
      }),
    );
  },
};
