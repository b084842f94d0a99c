/** The figures of an ordered lens, each with the way it is made. */
import { axisFigures, type ComputedLens, type Order, powerInWords, powerToMake, signed } from '../../../orders';

const MAKING = {
  written: '',
  near: 'sphere and add',
  intermediate: 'sphere and intermediate addition',
  vertex: 'converted for the vertex distance of wear',
  verification: 'as the maker states it',
} as const;

/** Forms, meridians, spherical equivalent and, where it is another one, the power to be made. */
export function powerFiguresInWords(order: Order, lens: ComputedLens): string[] {
  const { ordered, minus, plus, meridians, sphericalEquivalent } = lens;
  const written = order.lenses[lens.eye].written;
  const target = powerToMake(order, order.lenses[lens.eye]);
  const made =
    target?.kind === 'known' && target.from !== 'written'
      ? [`to be made \`${powerInWords(lens.made ?? target.power)}\`: ${MAKING[target.from]}`]
      : [];
  if (ordered.cylinder === 0) return [`\`${powerInWords(ordered)}\` in every meridian`, ...made];
  const turned = ordered.axis <= 90 ? `${ordered.axis} + 90` : `${ordered.axis} - 90`;
  const way =
    written?.form === 'meridians'
      ? ''
      : `: sphere ${sum(ordered.sphere, ordered.cylinder)}, sign of the cylinder changed, axis ${turned}`;
  return [
    `minus form \`${powerInWords(minus)}\`${ordered.cylinder > 0 ? way : ''}`,
    `plus form \`${powerInWords(plus)}\`${ordered.cylinder < 0 ? way : ''}`,
    `meridians ${meridians.map(({ meridian, power }) => `\`${signed(power)}\` along ${axisFigures(meridian)}`).join(', ')}`,
    `spherical equivalent \`${signed(sphericalEquivalent)}\`: ${signed(ordered.sphere)} ${added(ordered.cylinder)} / 2`,
    ...made,
  ];
}

export function nearInWords(_: Order, { near, add, ordered }: ComputedLens): string[] {
  return near && add !== null ? [`near \`${powerInWords(near)}\`: sphere ${sum(ordered.sphere, add)}`] : [];
}

/** Decentration, segment and blank, as far as the frame and the distances are given. */
export function layoutInWords(order: Order, lens: ComputedLens): string[] {
  const { frame, pd } = order;
  const { height } = order.lenses[lens.eye];
  const { decentration, segment, blank } = lens;
  const words: string[] = [];
  if (decentration && frame.a && frame.dbl) {
    const half = `(A ${frame.a.value} + DBL ${frame.dbl.value}) / 2`;
    const distance = pd[lens.eye] ? `${pd[lens.eye]?.value}` : `PD ${pd.binocular?.value} / 2`;
    words.push(`decentration \`${millimetres(decentration.in, 'in', 'out')}\`: ${half} - ${distance}`);
    if (decentration.up !== null)
      words.push(
        `raised \`${millimetres(decentration.up, 'up', 'down')}\`: height ${height?.value} - B ${frame.b?.value} / 2`,
      );
  }
  if (segment?.drop != null)
    words.push(
      `segment top \`${millimetres(segment.drop, 'below', 'above')}\` the middle: B ${frame.b?.value} / 2 - height ${height?.value}`,
    );
  if (segment?.inset != null)
    words.push(`segment \`${millimetres(segment.inset, 'in', 'out')}\`: ${insetWay(order, lens)}`);
  if (blank !== null && decentration)
    words.push(
      `smallest blank \`${blank} mm\`: ED ${frame.ed?.value} + 2 x ${Math.abs(decentration.in)}, without a margin for chipping`,
    );
  return words;
}

function insetWay({ lenses, pd, nearPd }: Order, { eye }: ComputedLens): string {
  if (lenses[eye].inset) return 'as ordered';
  const [far, near] = [pd[eye], nearPd[eye]];
  if (far && near) return `${far.value} - near ${near.value}`;
  return `(PD ${pd.binocular?.value} - near ${nearPd.binocular?.value}) / 2`;
}

const added = (value: number): string => (value < 0 ? `+ (${signed(value)})` : `+ ${signed(value).replace('+', '')}`);

const sum = (a: number, b: number): string => `${signed(a)} ${added(b)}`;

const millimetres = (value: number, positive: string, negative: string): string =>
  `${Math.abs(value)} mm${value === 0 ? '' : ` ${value > 0 ? positive : negative}`}`;
