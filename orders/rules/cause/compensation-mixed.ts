import type { Eye } from '../../../grammar';
import { compensatedOrder, minusForm, type Power } from '../../../optics';
import { attempt } from '../../attempt';
import { type Explanation, setRight } from '../../causes/explanation';
import { readAndWanted } from '../../causes/lenses';
import { REFRACTION, readPower, type Scene, wantedPower } from '../../causes/scene';
import { EYES, type Order, type OrderedLens, type PerEye } from '../../model';
import { powerToMake } from '../../power-to-make';
import { powerInWords } from '../../words';
import { cause } from './cause';
import { eyesInWords } from './in-words';

export const compensationMixed = cause(
  'compensation-mixed',
  {
    checks:
      'The lens is held against the compensated power and reads the written one, or the other way round: it reads what the position of wear makes of the written power. Level: info.',
    why: 'A compensated lens is right when it reads the compensated power, whatever the prescription says. Good lenses are refused because they are held against the slip, and lenses made to the slip pass when nobody looks for the other figure. Common practice is to ask the maker for the power to verify, and to write it into the order.',
    example: { wrong: 'R -12.00 DS', right: 'R -12.30 DS' },
    source:
      '20/20, “when lenses don’t measure as prescribed”: tolerance goes on the compensated power. Conversion: Contact Lens Society of America, EyeWitness, Spring 2011, p. 27.',
  },
  (data) => {
    const each = (data.lenses as readonly { eye: Eye; read: Power; fits: Power }[]).map(
      ({ eye, read, fits }) =>
        `${eye} reads ${powerInWords(read)}, and ${FITS[data.fits as Fits]} is ${powerInWords(fits)}`,
    );
    return `Compensated and written power of ${eyesInWords(data)} look mixed up: ${each.join('; ')}.`;
  },
  (scene) => [...held(scene, 'written', asWritten), ...held(scene, 'compensated', asCompensated)],
);

type Fits = 'written' | 'compensated';

const FITS: Readonly<Record<Fits, string>> = {
  written: 'the written power',
  compensated: 'the power for the position of wear',
};

/** @param changed the lens as it would be held against the other power, or null where there is no other */
function held(scene: Scene, fits: Fits, changed: (order: Order, eye: Eye) => Power | null): Explanation[] {
  const { order } = scene;
  const lenses = { ...order.lenses } as Record<Eye, OrderedLens>;
  const eyes: Eye[] = [];
  const powers: Partial<Record<Eye, Power>> = {};
  for (const eye of EYES) {
    const power = readPower(scene, eye) && wantedPower(scene, eye) && changed(order, eye);
    const { written } = lenses[eye];
    if (!power || !written || !scene.failed.some((one) => one.eye === eye)) continue;
    lenses[eye] = heldAgainst(lenses[eye], power);
    powers[eye] = power;
    eyes.push(eye);
  }
  if (eyes.length === 0) return [];
  const right = setRight(
    scene,
    { order: { ...order, lenses: lenses as PerEye<OrderedLens> } },
    { of: REFRACTION, eyes },
  );
  if (!right) return [];
  const said = eyes.map((eye) => ({ ...readAndWanted(scene, eye), fits: powers[eye] }));
  return [{ ...right, eye: eyes.length === 1 ? (eyes[0] as Eye) : null, data: { eyes, fits, lenses: said } }];
}

/** A verification power wins over everything else an order says of the power to be made. */
const heldAgainst = (lens: OrderedLens, value: Power): OrderedLens => ({
  ...lens,
  verification: {
    add: lens.verification?.add ?? null,
    prism: lens.verification?.prism ?? null,
    power: { value, form: 'minus', place: (lens.written as NonNullable<OrderedLens['written']>).place },
  },
});

/** The written power, where the order asks for another one. */
function asWritten(order: Order, eye: Eye): Power | null {
  const lens = order.lenses[eye];
  const target = powerToMake(order, lens);
  const isOther = target?.kind === 'known' && (target.from === 'verification' || target.from === 'vertex');
  return isOther && lens.written ? attempt(() => minusForm((lens.written as { value: Power }).value)) : null;
}

/** What the position of wear makes of the written power, where it was not asked for. Resin is assumed where no index is given. */
function asCompensated(order: Order, eye: Eye): Power | null {
  const lens = order.lenses[eye];
  const target = powerToMake(order, lens);
  const { vertex, panto, wrap } = order.asWorn;
  if (target?.kind !== 'known' || target.from !== 'written' || (!vertex && !panto && !wrap)) return null;
  const distances = order.tested && vertex ? { tested: order.tested.value, worn: vertex.value } : NONE;
  const position = { eye, pantoscopic: panto?.value ?? 0, wrap: wrap?.value ?? 0 };
  return attempt(() => compensatedOrder(target.power, distances, position, lens.material?.value.index ?? 1.5));
}

/** The same vertex distance at the test and in wear changes nothing. */
const NONE = { tested: 12, worn: 12 };
