/**
 * A year of an invented laboratory with known answers: every figure of the report can be worked out from `jobs` without
 * reading the texts. The same seed gives the same work.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** What was wrong when the pair was first read; `none` is a good pair, `unread` was never read, `missing` lacks its PD. */
export type Fault = 'none' | 'axis' | 'power' | 'pd' | 'missing' | 'unread';

export interface YearJob {
  readonly name: string;
  readonly day: string;
  readonly by: string;
  readonly with: string;
  readonly fault: Fault;
  /** True deviation of the sphere of each lens as first read, dioptres, and of the right axis, degrees. */
  readonly sphere: { readonly R: number; readonly L: number };
  readonly axis: number;
  readonly pd: number;
  /** Sphere deviations of the right lens where it was read twice. */
  readonly repeats: readonly [number, number] | null;
  /** What the drum showed with nothing on the stop, in hundredths of a dioptre. */
  readonly zero: number;
  /** How a fault ended: with a new lens, with a person’s acceptance, or not yet. */
  readonly end: 'replaced' | 'accepted' | 'open';
}

export interface Year {
  readonly jobs: readonly YearJob[];
  /** Texts by path, `bench.lentil` among them. */
  readonly files: Readonly<Record<string, string>>;
}

export const YEAR_SEED = 20_261;

const FIRST = Date.parse('2026-01-05T00:00:00Z');
const DAY = 86_400_000;
const dayAfter = (days: number): string => new Date(FIRST + days * DAY).toISOString().slice(0, 10);

export const BENCH = `instrument FOC-A
  kind        digital focimeter
  reads-to    0.01
  calibrated  2026-01-02 due 2027-01-02
  test-lens   +5.00 read +5.02
  test-lens   -10.00 read -9.94

instrument FOC-B
  kind        digital focimeter
  reads-to    0.01
  calibrated  2026-01-02 due 2027-01-02
  test-lens   +5.00 read +5.03

instrument FOC-C
  kind        manual focimeter
  reads-to    0.01
  calibrated  2025-07-01 due 2026-07-01
  test-lens   -10.00 read -9.70
`;

/** Sphere deviations of FOC-B are larger by so many hundredths of a dioptre. */
export const LEAN = 3;

/** @param perWeek orders of each of fifty-two weeks */
export function yearOfWork(perWeek: number, seed = YEAR_SEED): Year {
  const random = xoroshiro128plus(seed);
  const whole = (least: number, most: number): number => uniformInt(random, least, most);
  const jobs: YearJob[] = [];
  const files: Record<string, string> = { 'bench.lentil': BENCH };
  for (let week = 0; week < 52; week++) {
    const texts: string[] = [];
    for (let at = 0; at < perWeek; at++) {
      const number = jobs.length + 1;
      const job = draw(`TW-${String(number).padStart(5, '0')}`, week * 7 + whole(0, 4), whole);
      jobs.push(job);
      texts.push(textOf(job, whole));
    }
    files[`2026/week-${String(week + 2).padStart(2, '0')}.lentil`] = `standard z80.1-2015\n\n${texts.join('\n')}`;
  }
  return { jobs, files };
}

type Whole = (least: number, most: number) => number;

function draw(name: string, days: number, whole: Whole): YearJob {
  const by = (['KO', 'KO', 'MT', 'MT', 'JL'] as const)[whole(0, 4)] as string;
  const instrument = (['FOC-A', 'FOC-A', 'FOC-B', 'FOC-B', 'FOC-C'] as const)[whole(0, 4)] as string;
  const fault = faultOf(whole(0, 199), by);
  const lean = instrument === 'FOC-B' ? LEAN : 0;
  const deviation = (): number => (whole(-5, 5) + lean) / 100;
  const sphere = { R: fault === 'power' ? 0.25 : deviation(), L: deviation() };
  const isRepeated = fault === 'none' && whole(0, 9) === 0;
  const repeats = isRepeated ? ([deviation(), deviation()] as const) : null;
  return {
    name,
    day: dayAfter(days),
    by,
    with: instrument,
    fault,
    // The two are typed to a hundredth, so their mean is what is judged.
    sphere: repeats ? { ...sphere, R: (repeats[0] + repeats[1]) / 2 } : sphere,
    axis: fault === 'axis' ? whole(6, 12) : whole(-2, 2),
    pd: fault === 'pd' ? 5 : whole(-2, 2) / 2,
    repeats,
    // FOC-A wanders by six hundredths in the course of the year.
    zero: instrument === 'FOC-A' ? Math.floor((days * 7) / 364) : 0,
    end: (['replaced', 'replaced', 'accepted', 'open'] as const)[whole(0, 3)] as YearJob['end'],
  };
}

/** Of two hundred orders eight have a turned axis, six a wrong power, four a wrong PD; of those that JL reads, more. */
function faultOf(drawn: number, by: string): Fault {
  if (drawn < 8) return 'axis';
  if (drawn < 14) return 'power';
  if (drawn < 18) return 'pd';
  if (drawn < 22) return 'missing';
  if (drawn < 26) return 'unread';
  return by === 'JL' && drawn < 40 ? 'axis' : 'none';
}

const signed = (value: number): string => `${value < -0.004 ? '-' : '+'}${Math.abs(value).toFixed(2)}`;
const three = (axis: number): string => String(axis).padStart(3, '0');

function textOf(job: YearJob, whole: Whole): string {
  const { name, day, fault, sphere, axis, repeats, zero, end } = job;
  // So strong that five millimetres make more than 0.67 Δ, and so weak that the limit is one of prism for all of them.
  const ordered = { R: -whole(6, 7) / 4, L: -whole(6, 7) / 4 };
  const turned = whole(20, 150);
  const read = (eye: 'R' | 'L', off: number, turn: number): string =>
    `${eye}      ${signed(ordered[eye] + off + zero / 100)} -1.00 x ${three(turned + turn)}`;
  const wrote = `${day} 10:00 by ${job.by} with ${job.with}`;
  const first = [
    `    zero   ${signed(zero / 100)}`,
    `    ${read('R', repeats?.[0] ?? sphere.R, axis)}`,
    ...(repeats ? [`    again ${read('R', repeats[1], axis)}`] : []),
    `    ${read('L', sphere.L, 0)}`,
    ...(fault === 'missing' ? [] : [`    pd     ${64 + job.pd}`]),
    '    prism  R 0  L 0',
  ];
  const second = [
    `  reading ${nextDay(day)} 10:00 by ${job.by} with ${job.with}`,
    `    replaced R "${fault === 'axis' ? 'axis off' : 'power off'}"`,
    `    zero   ${signed(zero / 100)}`,
    `    ${read('R', 0, 0)}`,
    '    pd     64',
    '    prism  R 0  L 0',
  ];
  const isDecided = fault !== 'none' && fault !== 'unread' && !isReplaced(job) && end === 'accepted';
  return `${[
    `order ${name}`,
    `  R       ${signed(ordered.R)} -1.00 x ${three(turned)}`,
    `  L       ${signed(ordered.L)} -1.00 x ${three(turned)}`,
    '  pd      64',
    '  design  single-vision',
    '  lens    resin-1.50',
    '  frame   A 51  B 35  DBL 18  ED 53',
    '  supply  glazed',
    ...(fault === 'unread'
      ? [`  due     ${day}`]
      : [`  reading ${wrote}`, ...(fault === 'missing' ? first.slice(0, -1) : first)]),
    ...(isReplaced(job) ? second : []),
    ...(isDecided ? ['    decided accept by MT "agreed with the wearer"'] : []),
  ].join('\n')}\n`;
}

/** Whether the right lens was made anew and read on the next day. */
export const isReplaced = ({ fault, end }: YearJob): boolean =>
  (fault === 'axis' || fault === 'power') && end === 'replaced';

export const nextDay = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + DAY).toISOString().slice(0, 10);
