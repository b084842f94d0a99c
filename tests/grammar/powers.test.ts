import { describe, expect, test } from 'vitest';
import { UNREADABLE } from '../support/lines';
import { checkTold, read } from './support/check-told';

const entry = (eye: string, sphere: number, cylinder?: number, axis?: number) => ({
  eye,
  power: {
    form: 'sphero-cylinder',
    sphere,
    ...(cylinder === undefined ? {} : { cylinder }),
    ...(axis ? { axis } : {}),
  },
});

const checkPower = (line: string, ...entries: readonly unknown[]): void => {
  checkTold(line, []);
  expect(read(line)).toEqual({ entries });
};

describe('eyes', () => {
  test.each([
    ['R OD RE right od Right', 'R'],
    ['L OS LE left', 'L'],
    ['both OU BE Both', 'both'],
  ])('%s', (words, eye) => {
    for (const word of words.split(' ')) checkPower(`${word} -2.00`, entry(eye, -2));
  });

  test('a power without its eye is asked about', () => {
    for (const line of [
      '‹-4.50 -0.75 x 022›',
      '‹+2.00›',
      '  ‹4.50›',
      '‹- 4.50›',
      '‹pl -0.75 x 022›',
      '‹sph -4.50›',
      '‹∞›',
    ])
      checkTold(line, ['eye-unsaid']);
    for (const which of ['rx', 'kept', 'previous']) checkTold(`${which} ‹-4.50 -0.75 x 022›`, ['eye-unsaid']);
  });

  test('what is no power is not known', () => {
    for (const line of ['‹(R) -4.50›', '‹/ 3›', '‹- R -4.50›', '‹?›', '‹sph›']) checkTold(line, ['unknown-line']);
  });

  test('two eyes on one line are read, and told', () => {
    const both = [entry('R', -4.5, -0.75, 22), entry('L', -4.25)];
    checkTold('‹R -4.50 -0.75 x 022 L -4.25›', ['two-eyes']);
    expect(read('R -4.50 -0.75 x 022 L -4.25')).toEqual({ entries: both });
    expect(read('R-4.50-0.75x022/L-4.25')).toEqual({ entries: both });
    checkTold('‹R -4.50 L -4.25 ‹add +2.00››', ['two-eyes', 'add-for-both']);
    checkTold('‹R -4.50 add +2.00 L -4.25 add +2.00›', ['two-eyes']);
    checkTold('‹R -4.50 L -4.25 ‹add +2.00› prism ‹2 BI››', ['two-eyes', 'add-for-both', 'prism-eye-unsaid']);
    checkTold('R -4.50 R -4.25', []);
  });
});

describe('sphere, cylinder and axis', () => {
  test('in either cylinder sign, and a sphere alone', () => {
    checkPower('R -4.50 -0.75 x 022', entry('R', -4.5, -0.75, 22));
    checkPower('R -5.25 +0.75 x 112', entry('R', -5.25, 0.75, 112));
    checkPower('R pl -0.75 x 180', entry('R', 0, -0.75, 180));
    for (const end of ['', ' sph', ' SPH', ' DS', 'DS', ' sphere', ' DC', ' pl'])
      checkPower(`R -4.50${end}`, entry('R', -4.5));
  });

  test('a lone mark stands for nothing', () => {
    checkTold('R -4.50 ‹-›', ['lone-mark']);
    checkTold('R -4.50 ‹/›', ['lone-mark']);
    checkTold('R -4.50 / ‹-›', ['lone-mark']);
    checkTold('R ‹-› / -0.75 x 027', ['lone-mark']);
    checkTold('‹R› /', ['value-missing']);
    expect(read('R - / -0.75 x 027')).toEqual({ entries: [entry('R', 0, -0.75, 27)] });
    expect(read('R -4.50 -')).toEqual({ entries: [entry('R', -4.5)] });
  });

  test('sphere missing, or axis without a cylinder? Nothing is taken', () => {
    for (const power of [
      '-0.75 x 027',
      '- 0.75 x 27',
      '-4.50 x22',
      '-4.50 DS x 022',
      '-4.50 - x 022',
      '4.50 x 022',
      'SPH -4.50 x 022',
    ]) {
      checkTold(`R ‹${power}›`, ['cylinder-missing']);
      expect(read(`R ${power}`)).toMatchObject({ entries: [{ power: { axis: expect.any(Number) } }] });
      expect(read(`R ${power}`)).not.toMatchObject({ entries: [{ power: { sphere: expect.any(Number) } }] });
    }
  });

  test('a cylinder without its axis', () => {
    checkTold('R -4.50 ‹-0.75›', ['axis-missing']);
    checkTold('R -4.50 -0.75 ‹x›', ['axis-missing']);
    checkTold('R -4.50 -0.75 ‹x› add +2.00', ['axis-missing']);
    checkTold('R -4.50 0.00', []);
  });

  test('a figure too many', () => {
    checkTold('R -4.50 -0.75 ‹+2.00›', ['third-figure']);
    checkTold('R -4.50 -0.75 ‹2.00›', ['third-figure']);
    checkTold('R -4.50 -0.75 ‹200›', ['third-figure']);
    checkTold('R -4.50 -0.75 ‹22.5›', ['third-figure']);
    checkTold('R -4.50-0.75‹-1.00›', ['third-figure']);
    checkTold('R -4.50 -0.75 x 022 ‹+2.00›', ['unexpected-text']);
    checkTold('R -4.50 -0.75 x 022 ‹- 2.00›', ['unexpected-text']);
    checkTold('R -4.50 -0.75 x 022 ‹2.00 BI›', ['unexpected-text']);
    checkTold('R -4.50 -0.75 ‹2.00 BI›', ['third-figure']);
    checkTold('R -4.50 -0.75 x 022 ‹+2.00› ‹+1.00›', ['unexpected-text', 'unexpected-text']);
  });
});

describe('the axis', () => {
  test('three digits are told of nothing', () => {
    for (const axis of ['001', '022', '090', '180'])
      checkPower(`R -4.50 -0.75 x ${axis}`, entry('R', -4.5, -0.75, Number(axis)));
    checkPower('R -4.50 -0.75 X022', entry('R', -4.5, -0.75, 22));
  });

  test('fewer are taken, and told with how many there are', () => {
    checkTold('R -4.50 -0.75 x ‹5›', ['axis-short']);
    checkTold('R -4.50 -0.75 x‹22›', ['axis-short']);
    expect(read('R -4.50 -0.75 x 5')).toEqual({ entries: [entry('R', -4.5, -0.75, 5)] });
  });

  test('0 is 180', () => {
    for (const zero of ['0', '00', '000']) {
      checkTold(`R -4.50 -0.75 x ‹${zero}›`, ['axis-zero']);
      expect(read(`R -4.50 -0.75 x ${zero}`)).toEqual({ entries: [entry('R', -4.5, -0.75, 180)] });
    }
  });

  test.each(['181', '270', '22.5', '022.', '-22', '+022', '22.5.1'])('%s is no axis', (axis) => {
    checkTold(`R -4.50 -0.75 x ‹${axis}›`, ['axis-range']);
    expect(read(`R -4.50 -0.75 x ${axis}`)).toMatchObject({ entries: [{ power: { axis: UNREADABLE } }] });
  });

  test.each(['abc', '17o', '1o5', 'o22', '17?'])('%s cannot be read', (axis) => {
    checkTold(`R -4.50 -0.75 x ‹${axis}›`, ['axis-unreadable']);
    checkTold(`R -4.50 -0.75 x ‹${axis}› add +2.00`, ['axis-unreadable']);
  });

  test('without its x only where it can be nothing else', () => {
    checkTold('R -4.50 -0.75 ‹022›', ['axis-unmarked']);
    checkTold('R -4.50 -0.75 ‹5›', ['axis-unmarked']);
    checkTold('R pl/-0.75/‹027›', ['axis-unmarked']);
    expect(read('R -4.50 -0.75 22')).toEqual({ entries: [entry('R', -4.5, -0.75, 22)] });
    expect(read('R -4.50 -0.75 0')).toEqual({ entries: [entry('R', -4.5, -0.75, 180)] });
  });

  test('behind @ it may be a meridian, so nothing is taken', () => {
    checkTold('R -4.50 -0.75 ‹@ 022›', ['axis-or-meridian']);
    checkTold('R -4.50 -0.75 ‹@ 5›', ['axis-or-meridian']);
    checkTold('R -4.50 -0.75 ‹@›', ['axis-or-meridian']);
    checkTold('R -4.50 @ 022 / -5.25 ‹x 112›', ['axis-or-meridian']);
    expect(read('R -4.50 -0.75 @ 022')).toEqual({ entries: [entry('R', -4.5, -0.75)] });
  });
});

describe('two principal meridians', () => {
  const power = {
    form: 'meridians',
    first: { power: -4.5, meridian: 22 },
    second: { power: -5.25, meridian: 112 },
  };

  test.each(['-4.50 @ 022 / -5.25 @ 112', '-4.50@022/-5.25@112', '-4.50 @ 022 -5.25 @ 112'])('%s', (typed) => {
    checkPower(`R ${typed}`, { eye: 'R', power });
  });

  test('both are wanted, square to one another', () => {
    checkTold('R ‹-4.50 @ 022›', ['meridian-missing']);
    checkTold('R ‹-4.50 @ 022› /', ['meridian-missing']);
    checkTold('R ‹-4.50 @ 022 / -5.25›', ['meridian-missing']);
    checkTold('R ‹-4.50 @ 022 / -5.25› @', ['meridian-missing']);
    checkTold('R -4.50 ‹@›', ['value-missing']);
    checkTold('R -4.50 @ ‹022 / -5.25 @ 110›', ['meridians-not-square']);
    checkTold('R -4.50 @ ‹22› / -5.25 @ 112', ['axis-short']);
  });
});

describe('two drum positions', () => {
  const lines = (thin: number, wide: number, wheel: number) => ({
    eye: 'R',
    power: { form: 'lines', thin, wide, wheel },
  });

  test('thin lines first, or each by its name', () => {
    checkPower('R lines -4.50 / -5.12 x 024', lines(-4.5, -5.12, 24));
    checkPower('R lines -4.50/-5.12x024', lines(-4.5, -5.12, 24));
    checkPower('R lines wide -5.12 thin -4.50 x 024', lines(-4.5, -5.12, 24));
    checkPower('R thin -4.50 wide -5.12 axis 024', lines(-4.5, -5.12, 24));
    checkPower('R lines -4.50 / -4.50', { eye: 'R', power: { form: 'lines', thin: -4.5, wide: -4.5 } });
  });

  test('a missing part is told once', () => {
    checkTold('R ‹lines›', ['value-missing']);
    checkTold('R ‹lines -4.50›', ['value-missing']);
    checkTold('R lines ‹wide›', ['value-missing']);
    checkTold('R lines -4.50 / ‹-5.12›', ['axis-missing']);
    checkTold('R lines -4.50 / -5.12 ‹x›', ['axis-missing']);
    checkTold('R lines ‹4.50› / -5.12 x 024', ['sign-missing']);
  });
});

describe('what may follow a power', () => {
  test('add and prism', () => {
    checkPower('R -4.50 -0.75 x 022 add +2.00 prism 2.00 BI 0.50 BU', {
      ...entry('R', -4.5, -0.75, 22),
      add: { value: 2 },
      prism: [
        { amount: 2, base: 'in' },
        { amount: 0.5, base: 'up' },
      ],
    });
  });

  test('the lens that stays', () => {
    const line = 'kept L -2.00 -0.25 x 015 add +2.00 prism 1.50 BD base-curve 6.00 thickness centre 2.2';
    checkTold(line, []);
    expect(read(line)).toEqual({
      which: 'kept',
      entries: [
        {
          ...entry('L', -2, -0.25, 15),
          add: { value: 2 },
          prism: [{ amount: 1.5, base: 'down' }],
          baseCurve: 6,
          thickness: 2.2,
        },
      ],
    });
  });

  test('each only once, and each with its value', () => {
    checkTold('R -4.50 add +2.00 ‹add +2.25›', ['unexpected-text']);
    checkTold('R -4.50 prism 2 BI prism ‹1 BU›', ['unexpected-text']);
    for (const word of ['add', 'prism', 'base-curve', 'thickness']) checkTold(`R -4.50 ‹${word}›`, ['value-missing']);
    checkTold('kept L -2.00 thickness ‹middle› 2.2', ['unknown-choice']);
  });

  test('a prescription may name the eyes of its adds and prisms at the end', () => {
    const line = 'rx R -1.00 L -1.25 add R +2.00 L +2.25 prism R 2 BI L 2 BI';
    checkTold(line, []);
    expect(read(line)).toEqual({
      which: 'rx',
      entries: [
        { ...entry('R', -1), add: { value: 2 }, prism: [{ amount: 2, base: 'in' }] },
        { ...entry('L', -1.25), add: { value: 2.25 }, prism: [{ amount: 2, base: 'in' }] },
      ],
    });
    checkTold('rx R -1.00 L -1.25 add +2.00', []);
    checkTold('rx R -1.00 L -1.25 add +2.00 prism 2 BI', []);
  });
});
