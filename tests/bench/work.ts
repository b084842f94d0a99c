/** Generated work: the same orders as Lentil text, as YAML, as JSON. The same seed gives the same work. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { stringify } from 'yaml';

/**
 * Sphere and cylinder (minus form) of right lenses as read on lensmeters, and by what the left one of the pair differs,
 * at every twentieth of 10,205 pairs; and how far the left axis stands from the mirror image of the right one, of the
 * 7,382 pairs with two cylinders: vision examination of the United States National Health and Nutrition Examination
 * Survey, 1999-2000 to 2007-2008, public domain.
 */
const SPHERES = [
  -13.5, -5, -3.75, -3, -2.5, -2, -1.5, -1.25, -1, -0.5, -0.25, 0, 0.5, 0.75, 1.25, 1.5, 1.75, 2.25, 2.75, 3.5, 14,
];
const CYLINDERS = [
  0, 0, 0, 0, -0.25, -0.25, -0.25, -0.5, -0.5, -0.5, -0.75, -0.75, -0.75, -1, -1, -1.25, -1.25, -1.5, -2, -2.5, -8.5,
];
const OTHER_SPHERE = [
  -8, -1.25, -1, -0.75, -0.5, -0.25, -0.25, -0.25, 0, 0, 0, 0, 0, 0.25, 0.25, 0.25, 0.5, 0.5, 0.75, 1.25, 8.75,
];
const OTHER_CYLINDER = [
  -10.5, -1, -0.75, -0.5, -0.25, -0.25, -0.25, 0, 0, 0, 0, 0, 0, 0, 0.25, 0.25, 0.25, 0.5, 0.75, 1, 6.75,
];
const OTHER_AXIS = [-89, -56, -34, -23, -17, -13, -10, -7, -5, -3, -1, 1, 3, 6, 9, 12, 17, 23, 32, 58, 90];

export interface Lens {
  readonly sphere: number;
  readonly cylinder: number;
  readonly axis: number;
}

export interface Job {
  readonly name: string;
  readonly ordered: {
    readonly R: Lens;
    readonly L: Lens;
    readonly add: number;
    readonly pd: number;
    readonly near: number;
    readonly height: number;
  };
  readonly read: {
    readonly R: Lens;
    readonly L: Lens;
    readonly addR: number;
    readonly addL: number;
    readonly pd: number;
    readonly heightR: number;
    readonly heightL: number;
  };
}

export const SEED = 20_151;

/** So many bifocal jobs with one reading each; about one in eight has something outside its limit. */
export function jobs(count: number, seed = SEED): Job[] {
  const random = xoroshiro128plus(seed);
  const whole = (least: number, most: number): number => uniformInt(random, least, most);
  const quarter = (value: number): number => Math.round(value * 4) / 4;
  const drawn = (table: readonly number[]): number => {
    const at = whole(0, table.length - 2);
    const [from, to] = [table[at] as number, table[at + 1] as number];
    return quarter(from + ((to - from) * whole(0, 100)) / 100);
  };
  const off = (value: number): number =>
    Math.round((value + (whole(0, 15) === 0 ? 0.25 : whole(-6, 6) / 100)) * 100) / 100;
  const right = (): Lens => ({ sphere: drawn(SPHERES), cylinder: drawn(CYLINDERS), axis: whole(1, 180) });
  const leftOf = (lens: Lens): Lens => ({
    sphere: lens.sphere + drawn(OTHER_SPHERE),
    cylinder: Math.min(0, lens.cylinder + drawn(OTHER_CYLINDER)),
    axis: ((540 - lens.axis + Math.round(drawn(OTHER_AXIS)) - 1) % 180) + 1,
  });
  const readOf = (one: Lens): Lens => ({
    sphere: off(one.sphere),
    cylinder: one.cylinder,
    axis: Math.min(180, one.axis + whole(0, 1)),
  });
  return Array.from({ length: count }, (_, index) => {
    const R = right();
    const ordered = { R, L: leftOf(R), add: whole(4, 11) / 4, pd: whole(58, 70), near: 0, height: whole(15, 20) };
    ordered.near = ordered.pd - 3;
    const read = {
      R: readOf(ordered.R),
      L: readOf(ordered.L),
      addR: ordered.add,
      addL: ordered.add,
      pd: ordered.pd + whole(0, 3) / 2,
      heightR: ordered.height,
      heightL: ordered.height + whole(0, 1) / 2,
    };
    return { name: `JOB-${String(index + 1).padStart(6, '0')}`, ordered, read };
  });
}

const signed = (value: number): string => (value > 0 ? '+' : value < 0 ? '-' : '') + Math.abs(value).toFixed(2);
const power = ({ sphere, cylinder, axis }: Lens): string =>
  cylinder === 0 ? signed(sphere) : `${signed(sphere)} ${signed(cylinder)} x ${String(axis).padStart(3, '0')}`;

/** One order with its reading: twenty lines. */
const asText = ({ name, ordered, read }: Job): string => `order ${name}
  R           ${power(ordered.R)}
  L           ${power(ordered.L)}
  add         ${signed(ordered.add)}
  pd          ${ordered.pd} near ${ordered.near}
  height      ${ordered.height}
  design      bifocal flat-top 28
  lens        resin-1.50
  frame       A 52  B 36  DBL 18  ED 55
  supply      glazed

  reading 2026-11-24 14:30 by KO with FOC-B
    R        ${power(read.R)}
    L        ${power(read.L)}
    add      R ${signed(read.addR)}  L ${signed(read.addL)}
    pd       ${read.pd} near ${ordered.near}
    prism    R 0  L 0
    height   R ${read.heightR}  L ${read.heightL}
    cosmetic passed

`;

export const HEAD = `standard z80.1-2015

instrument FOC-B
  kind        digital focimeter
  reads-to    0.01

`;

export const lentilText = (work: readonly Job[]): string => HEAD + work.map(asText).join('');

export type DataOfJob = ReturnType<typeof asData>;

/** Everything an order text says, as plain data. */
const asData = ({ name, ordered, read }: Job) => ({
  name,
  ordered: {
    R: ordered.R,
    L: ordered.L,
    add: ordered.add,
    pd: { distance: ordered.pd, near: ordered.near },
    height: ordered.height,
    design: { type: 'bifocal', shape: 'flat-top', width: 28 },
    lens: 'resin-1.50',
    frame: { a: 52, b: 36, dbl: 18, ed: 55 },
    supply: 'glazed',
  },
  read: {
    date: '2026-11-24',
    time: '14:30',
    by: 'KO',
    with: 'FOC-B',
    R: read.R,
    L: read.L,
    add: { R: read.addR, L: read.addL },
    pd: { distance: read.pd, near: ordered.near },
    prism: { R: 0, L: 0 },
    height: { R: read.heightR, L: read.heightL },
    cosmetic: 'passed' as const,
  },
});

export const yamlText = (work: readonly Job[]): string =>
  stringify({ standard: 'z80.1-2015', orders: work.map(asData) });

export const jsonText = (work: readonly Job[]): string =>
  JSON.stringify({ standard: 'z80.1-2015', orders: work.map(asData) }, null, 2);

/** The schema a YAML or JSON file of such orders would be edited with. */
export const YAML_SCHEMA = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  type: 'object',
  required: ['standard', 'orders'],
  properties: {
    standard: { type: 'string' },
    orders: {
      type: 'array',
      items: {
        type: 'object',
        required: ['name', 'ordered', 'read'],
        properties: {
          name: { type: 'string', pattern: '^JOB-' },
          ordered: {
            type: 'object',
            required: ['R', 'L', 'pd'],
            properties: {
              R: { $ref: '#/definitions/lens' },
              L: { $ref: '#/definitions/lens' },
              add: { type: 'number', minimum: 0 },
              pd: {
                type: 'object',
                properties: { distance: { type: 'number', minimum: 40, maximum: 85 }, near: { type: 'number' } },
              },
            },
          },
          read: {
            type: 'object',
            properties: { R: { $ref: '#/definitions/lens' }, L: { $ref: '#/definitions/lens' } },
          },
        },
      },
    },
  },
  definitions: {
    lens: {
      type: 'object',
      required: ['sphere', 'cylinder', 'axis'],
      properties: {
        sphere: { type: 'number', minimum: -40, maximum: 40 },
        cylinder: { type: 'number' },
        axis: { type: 'integer', minimum: 1, maximum: 180 },
      },
      additionalProperties: false,
    },
  },
};
