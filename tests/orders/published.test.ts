import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { powerAt } from '../../optics';
import { analyse, computeLens, type Order, type Power } from '../../orders';
import { checkPublished } from '../optics/support/check-published';
import type { PublishedAnswer } from '../published/answer';
import { firstSheet, secondSheet } from '../published/oblique-meridian';
import { bothForms, flatTransposition, opticalCross } from '../published/transposition';

/*
 * Exercises that a school of opticians has printed with their answers, written as orders: from the typed line through the
 * whole library to the figures. `tests/published` names the source of each.
 */
const samples = new URL('../samples/published/', import.meta.url);

/** Every order of the samples, by its name, which is the number of the exercise. */
const orders: ReadonlyMap<string, Order> = new Map(
  readdirSync(samples)
    .filter((name) => name.endsWith('.lentil'))
    .flatMap((name) => analyse(readFileSync(new URL(name, samples), 'utf8')).blocks)
    .flatMap(({ order }) => (order?.name ? [[order.name, order] as const] : [])),
);

type Answers = readonly PublishedAnswer<Power>[];

function orderOf(id: string): Order {
  const order = orders.get(id);
  if (!order) throw new Error(`there is no sample for the exercise ${id}`);
  return order;
}

/** Half of the last printed digit: the samples may write an eighth as printed, cut after two digits. */
const AS_PRINTED = 0.0051;

/** Each answer is worked out from the sample of the same number; an eighth cut after two digits is that eighth. */
function checkSamples(answers: Answers, compute: (order: Order) => object): void {
  const byOrder = answers.map((answer) => ({
    ...answer,
    input: answer.id,
    tolerance: answer.tolerance === 'eighth' ? ('nearest eighth' as const) : answer.tolerance,
  }));
  checkPublished(byOrder, (id) => compute(orderOf(id)));
}

const formsOf = (order: Order) => {
  const forms = computeLens(order, 'R');
  if (!forms) throw new Error(`${order.name} has no power`);
  return forms;
};

describe('the samples are the printed exercises', () => {
  const all: Answers = [...flatTransposition, ...bothForms, ...opticalCross, ...firstSheet, ...secondSheet];

  test.each(all.map((answer) => [answer.id, answer] as const))('%s', (id, { input }) => {
    const { ordered } = formsOf(orderOf(id));
    expect(Math.abs(ordered.sphere - input.sphere)).toBeLessThan(AS_PRINTED);
    expect(Math.abs(ordered.cylinder - input.cylinder)).toBeLessThan(AS_PRINTED);
    expect(ordered.axis).toBe(input.axis);
  });
});

describe('the other cylinder form', () => {
  checkSamples(flatTransposition, (order) => {
    const { ordered, minus, plus } = formsOf(order);
    return ordered.cylinder < 0 ? plus : minus;
  });
});

describe('both cylinder forms', () => {
  checkSamples(bothForms, (order) => {
    const { minus, plus } = formsOf(order);
    return {
      minusSphere: minus.sphere,
      minusCylinder: minus.cylinder,
      minusAxis: minus.axis,
      plusSphere: plus.sphere,
      plusCylinder: plus.cylinder,
      plusAxis: plus.axis,
    };
  });
});

describe('the optical cross', () => {
  checkSamples(opticalCross, (order) => {
    const [first, second] = formsOf(order).meridians;
    return {
      firstMeridian: first?.meridian,
      firstPower: first?.power,
      secondMeridian: second?.meridian,
      secondPower: second?.power,
    };
  });
});

describe('the power in a meridian', () => {
  checkSamples([...firstSheet, ...secondSheet], (order) => {
    const { ordered } = formsOf(order);
    return {
      at90: powerAt(ordered, 90),
      at180: powerAt(ordered, 180),
      at45: powerAt(ordered, 45),
      at122: powerAt(ordered, 122),
    };
  });
});
