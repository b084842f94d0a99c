import { describe, expect, test } from 'vitest';
import type { EyePrism, Power } from '../../../optics';
import { checkPublished } from '../../optics/support/check-published';
import { centreForTilt, tiltedSpheres } from '../../published/as-worn';
import { blanks, decentrations, drops, nearInset, planoConvex } from '../../published/layout';
import { decentrationAnswer, obliquePrentice, prenticeAnswers, resultantAnswers } from '../../published/prism';
import { jumpAnswers, segmentAnswers, slabAnswer, unequalAdds } from '../../published/segments';
import { vertexPowers } from '../../published/thick-lens';
import { sphericalEquivalents } from '../../published/transposition';
import { vertexAnswers } from '../../published/vertex';
import { find, numberOf, ofLens, ofPair, orderText, partsOf, typed } from './support/figures';

/*
 * Answers that somebody has printed, through the text of an order. `tests/published` names the source of each; the
 * formulas themselves are held to the same answers in `tests/optics`.
 */
const frame = (a: number, dbl: number, b = 40, ed = 55) => `frame A ${a} B ${b} DBL ${dbl} ED ${ed}`;

describe('layout', () => {
  checkPublished(decentrations, ({ a, dbl, pd }) => ({
    in: numberOf(ofLens(orderText('both -1.00', `pd ${pd}`, frame(a, dbl)), 'L'), 'decentration', 'in'),
  }));

  checkPublished(blanks, ({ a, dbl, pd, ed }) => ({
    blank: numberOf(ofLens(orderText('both -1.00', `pd ${pd}`, frame(a, dbl, 40, ed))), 'blank', 'diameter'),
  }));

  checkPublished(drops, ({ b, height }) => ({
    below: numberOf(
      ofLens(orderText('both -1.00', 'add +2.00', 'design bifocal round 24', `height ${height}`, frame(50, 18, b))),
      'segment-drop',
      'below',
    ),
  }));

  // The source names no PD; 64 mm is a usual one, and plano lenses leave the convergence to the distances alone.
  checkPublished([nearInset], ({ workingDistance }) => {
    const text = orderText('both 0.00', 'add +2.50', 'pd 64', 'design bifocal round 24');
    const near = find(ofPair(text), 'near-pd');
    expect(near?.inputs['working distance']).toEqual({ value: workingDistance, unit: 'mm', from: 'assumed' });
    return {
      insetPerLens: numberOf(ofLens(text), 'near-inset', 'in'),
      nearPdLess: 64 - numberOf(ofPair(text), 'near-pd', 'nearPd'),
    };
  });
});

describe('power', () => {
  checkPublished(sphericalEquivalents, (power) => ({
    equivalent: numberOf(ofLens(orderText(`R ${typed(power)}`)), 'spherical-equivalent', 'sphere'),
  }));

  checkPublished(vertexAnswers, ({ sphere, tested, worn }) => {
    const lines = [
      `R ${sphere > 0 ? '+' : ''}${sphere.toFixed(2)}`,
      `tested vertex ${tested}`,
      `as-worn vertex ${worn}`,
    ];
    return {
      power: partsOf<Power>(ofLens(orderText(...lines, 'compensation vertex')), 'power-to-make', 'power').sphere,
    };
  });

  checkPublished(tiltedSpheres, ({ sphere, tilt }) => {
    const text = orderText(
      `R ${typed({ sphere, cylinder: 0, axis: 180 })}`,
      `as-worn panto ${tilt}`,
      'lens M index 1.50',
    );
    const worn = partsOf<Power>(ofLens(text), 'worn-power', 'power');
    // Printed with the cylinder in the sign of the sphere.
    return sphere > 0
      ? { sphere: worn.sphere + worn.cylinder, cylinder: -worn.cylinder, axis: worn.axis + 90 }
      : { ...worn };
  });

  checkPublished([centreForTilt], ({ tilt }) => {
    const lines = ['R -1.00', 'height 20', 'design single-vision', `as-worn panto ${tilt}`];
    return { lowerBy: 20 - numberOf(ofLens(orderText(...lines)), 'optical-centre-height', 'height') };
  });
});

describe('segments', () => {
  checkPublished(jumpAnswers, ({ add, topToCentre }) => {
    // Round ones of 22 and 24 mm, and one of 28 x 19 mm, as the sources say.
    const shape = topToCentre === 5 ? 'flat-top 28x19' : `round ${2 * topToCentre}`;
    const text = orderText('R -1.00', `add +${add.toFixed(2)}`, `design bifocal ${shape}`);
    return { jump: partsOf<EyePrism>(ofLens(text), 'image-jump', 'jump').up };
  });

  // The top of the segment lies 3 mm below the middle, which makes the reading level the 8 mm of the source.
  const durham = (...lines: readonly string[]) =>
    orderText(...lines, 'design bifocal round 22', 'height 17', 'frame A 50 B 40 DBL 18 ED 55');

  checkPublished([unequalAdds], ({ right, left, rightAdd, leftAdd }) => {
    const text = durham(`R ${typed(right)} add +${rightAdd}.00`, `L ${typed(left)} add +${leftAdd}.00`);
    const [R, L] = [ofLens(text, 'R'), ofLens(text, 'L')];
    const up = (figures: typeof R, name: string) => partsOf<EyePrism>(figures, 'displacement', name).up;
    const level = find(R, 'displacement')?.inputs;
    return {
      distanceImbalance: up(R, 'ofDistance') - up(L, 'ofDistance'),
      aboveSegmentCentre:
        Number(level?.['centre of the segment below the distance centre']?.value) -
        Number(level?.['reading level']?.value),
      rightDistance: up(R, 'ofDistance'),
      rightSegment: up(R, 'ofSegment'),
      rightTotal: up(R, 'whole'),
      leftDistance: up(L, 'ofDistance'),
      leftSegment: up(L, 'ofSegment'),
      moreBaseUpRight: numberOf(ofPair(text), 'vertical-imbalance', 'upBeforeRight'),
    };
  });

  // 3-16: three adds, 5 mm into round segments of 22 mm.
  checkPublished(
    segmentAnswers.filter(({ id }) => id === '3-16'),
    (points) =>
      points.map(({ add }) => {
        const text = durham('R -1.00', `add +${add.toFixed(2)}`);
        return partsOf<EyePrism>(ofLens(text), 'displacement', 'ofSegment').up;
      }),
  );

  checkPublished([slabAnswer], ({ right, left }) => {
    const pair = ofPair(orderText(`R ${typed(right)}`, `L ${typed(left)}`, 'add +2.00', 'design progressive'));
    const slab = find(pair, 'slab-off');
    return { imbalance: partsOf<EyePrism>(pair, 'slab-off', 'prism').up, slabOnRight: slab?.eye === 'R' ? 1 : 0 };
  });
});

describe('prism', () => {
  checkPublished([...prenticeAnswers, ...obliquePrentice], ({ power, eye, centre }) => {
    const decentre = `decentre ${eye} ${toward(centre.in, 'in', 'out')} ${toward(centre.up, 'up', 'down')}`;
    const text = orderText(`${eye} ${typed(power)}`, decentre);
    return partsOf<EyePrism>(ofLens(text, eye), 'prism-by-decentration', 'prism');
  });

  checkPublished([decentrationAnswer], ({ power, prism }) => {
    const text = orderText(`R ${typed(power)}`, `prism R ${toward(prism.in, 'BI', 'BO')}`);
    return partsOf<EyePrism>(ofLens(text), 'decentration-for-prism', 'moved');
  });

  checkPublished(resultantAnswers, ({ prism, eye }) => {
    const text = orderText(
      `${eye} -1.00`,
      `prism ${eye} ${toward(prism.in, 'BI', 'BO')} ${toward(prism.up, 'BU', 'BD')}`,
    );
    const figures = ofLens(text, eye);
    return {
      amount: numberOf(figures, 'prism-resultant', 'amount'),
      base: numberOf(figures, 'prism-resultant', 'base'),
    };
  });
});

describe('the lens as a body', () => {
  /** The base curve as it is marked, for 1.530, of a surface of this power. */
  const marked = (front: number, index: number) => ((front * 0.53) / (index - 1)).toFixed(2);

  checkPublished([planoConvex], ({ index, radius, diameter, edge }) => {
    const front = (1000 * (index - 1)) / radius;
    // A flat back makes the back vertex power front / (1 - thickness / index × front); 4.975 mm is what the source rounds.
    const power = front / (1 - (0.004975 / index) * front);
    const text = orderText(
      `both +${power.toFixed(2)}`,
      'pd 60',
      `frame A ${diameter} B ${diameter} DBL ${60 - diameter} ED ${diameter}`,
      'lens crown',
      `base-curve ${marked(front, index)}`,
      `thickness edge ${edge.toFixed(1)}`,
    );
    return { centre: numberOf(ofLens(text), 'thickness', 'centre') };
  });

  // The drum in the distance portion, front on the stop, is the front vertex power. Typed figures have two decimals.
  const printed = vertexPowers
    .filter(({ printed }) => printed.frontVertex !== undefined)
    .map((answer) => ({
      ...answer,
      printed: { frontVertex: answer.printed.frontVertex as number },
      tolerance: 0.012,
      note: 'A hundredth for the figures of the order, which are rounded to two decimals.',
    }));
  const materials = new Map([
    [1.498, 'resin-1.50'],
    [1.66, 'resin-1.67'],
  ]);
  checkPublished(printed, ({ front, back, thickness, index }) => {
    const power = front / (1 - (thickness / 1000 / index) * front) + back;
    const text = orderText(
      `both ${power > 0 ? '+' : ''}${power.toFixed(2)}`,
      'add +2.00',
      'design bifocal flat-top 28',
      `lens ${materials.get(index)}`,
      `base-curve ${marked(front, index)}`,
      `thickness centre ${thickness}`,
    );
    const figures = ofLens(text);
    const distance = numberOf(figures, 'drum-in-segment', 'distanceThin');
    // The segment side on the stop shows the add itself: National Federation of Opticianry Schools, OPT11, question 11a.
    expect(numberOf(figures, 'drum-in-segment', 'segmentThin')).toBeCloseTo(distance + 2, 3);
    return { frontVertex: distance };
  });
});

test('a slab is told only beyond 1.5 prism dioptres, the slab on one lens and the reverse slab on the other', () => {
  // Durham Technical Community College, OPH 142, module 09: slab-off from 1.5 prism dioptres on; 10 mm below the centres.
  const pair = (left: string) => ofPair(orderText('R +1.00', `L ${left}`, 'add +2.00', 'design progressive'));
  expect(find(pair('+2.50'), 'slab-off')).toBeUndefined();
  expect(find(pair('+2.75'), 'slab-off')).toMatchObject({
    eye: 'R',
    values: { prism: { value: { in: 0, up: 1.75 } } },
  });
  expect(find(pair('+2.75'), 'reverse-slab')).toMatchObject({
    eye: 'L',
    values: { prism: { value: { in: 0, up: -1.75 } } },
  });
});

/** An amount with the word of its side, which the sources state as a sign. */
function toward(amount: number, positive: string, negative: string): string {
  return amount === 0 ? '' : `${Math.abs(amount)} ${amount > 0 ? positive : negative}`;
}
