/** “Not read yet” names the place, the lens or the part that is truly missing. Common practice, no source. */
import { expect, test } from 'vitest';
import { messages } from '../../support/findings';
import { judged, pair } from '../../support/judged';

const order = (...lines: readonly string[]): string[] => ['R -1.00', 'L -1.00', 'supply glazed', ...lines];

const SINGLE = order('pd 62', 'design single-vision');
const STRONG = ['R -6.00', 'L -6.00', 'supply glazed', 'pd 62', 'design single-vision'];
const BIFOCAL = order('add +2.00', 'pd 62 near 59', 'height 17', 'design bifocal flat-top 28');
const PROGRESSIVE = order('add +2.00', 'pd R 31 L 31', 'height 20', 'design progressive corridor 14');
const OFFICE = order('add +2.00', 'pd R 31 L 31', 'height 20', 'design office degression 1.25');
const POWERS = ['R -1.00', 'L -1.00'];
const NEAR = ['R +1.00 at near-point', 'L +1.00 at near-point'];

const HORIZONTAL = 'the horizontal place of the centres (PD, optical centres or prism)';
const VERTICAL = 'the vertical place of the centres (prism or heights)';

test.each([
  ['heights alone leave the horizontal place', SINGLE, [...POWERS, 'height 17'], HORIZONTAL],
  ['and of a strong pair its PD', STRONG, ['R -6.00', 'L -6.00', 'height 17'], 'PD'],
  ['a PD alone leaves the vertical place', SINGLE, [...POWERS, 'pd 62'], VERTICAL],
  ['prism of one lens', SINGLE, [...POWERS, 'prism R 0'], 'L prism'],
  ['prism of one lens of a strong pair', STRONG, ['R -6.00', 'L -6.00', 'prism L 0'], 'R prism'],
  ['one height', [...SINGLE, 'height 17'], [...POWERS, 'pd 62', 'height R 17'], 'L height of the centre'],
  ['one centre', SINGLE, [...POWERS, 'optical-centres R 31', 'height 17'], 'L optical centre'],
  [
    'one part of an ordered prism',
    [...SINGLE, 'prism R 2 BI 1 BU L 0'],
    [...POWERS, 'prism R 2 BI L 0'],
    'R vertical part of the prism',
  ],
  [
    'power through the segments',
    BIFOCAL,
    [...NEAR, 'add +2.00', 'pd 62 near 59', 'height 17', 'prism R 0 L 0'],
    'distance power of both lenses',
  ],
  ['one near PD', BIFOCAL, [...POWERS, 'add +2.00', 'pd 62 near R 29', 'height 17', 'prism R 0 L 0'], 'L near PD'],
  [
    'heights of segments place no centre',
    BIFOCAL,
    [...POWERS, 'add +2.00', 'pd 62 near 59', 'height 17'],
    'the vertical prism of both lenses at the distance reference point',
  ],
  [
    'prism of a progressive at another point',
    PROGRESSIVE,
    [...POWERS, 'add +2.00 engraved', 'pd R 31 L 31', 'height 20', 'prism R 0 L 0 at distance-point'],
    'the horizontal prism at the prism reference point, the vertical prism at the prism reference point',
  ],
  [
    'the top of an office lens alone',
    OFFICE,
    ['R -0.25 at top', 'L -0.25 at top', 'pd R 31 L 31', 'height 20', 'prism R 0 L 0'],
    'power at the near point of both lenses',
  ],
  [
    'the near point of an office lens alone',
    OFFICE,
    [...NEAR, 'pd R 31 L 31', 'height 20', 'prism R 0 L 0'],
    'power at the top (degression) of both lenses',
  ],
])('%s', (_, ordered, reading, missing) => {
  const text = pair([...ordered], [...reading]);
  expect(messages(text, 'not-read')).toEqual([`Not read yet: ${missing}.`]);
  expect(judged(text).verdict).toBe('incomplete');
});
