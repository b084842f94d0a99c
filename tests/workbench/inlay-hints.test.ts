import { expect } from 'vitest';
import { lineText, patience, screenshot, test } from './editor';

const text = `standard z80.1-2015

order QL-1042
  R           -4.50 -0.75 x 022
  L           -4.25 -1.00 x 168
  add         +2.00
`;

test('an order line shows the power in the other form and at near', async ({ openText }) => {
  const page = await openText('hints.lentil', text);
  const right = () => lineText(page, 'R           -4.50');
  // -4.50 + -0.75 = -5.25, sign of the cylinder changed, axis turned by 90 degrees; near is 2.00 more plus.
  await expect.poll(right, { timeout: patience }).toContain('-5.25 +0.75 x 112');
  await expect.poll(right, { timeout: patience }).toContain('-2.50');
  await screenshot(page, 'inlay-hints');
});
