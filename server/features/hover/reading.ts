import {
  arithmetic,
  type Measure,
  type Place,
  powerInWords,
  prismInWords,
  type Read,
  signed,
  stepInWords,
  subjectInWords,
  valueInWords,
} from '../../../orders';
import { covers, listed, type Part, type Spot } from './part';

const OUTCOMES: Readonly<Record<Measure['outcome'], string>> = {
  pass: 'inside',
  fail: 'outside',
  'not-read': 'not read',
  'not-judged': 'not judged',
};

/** On a value of a reading: how each judged figure came about and what it is held against. */
export function aboutReading({ analysis, line, character }: Spot): Part[] {
  const { evaluation } = analysis;
  if (!evaluation) return [];
  const isHere = (place: Place | null): place is Place => place?.line === line && covers(place, character);
  const judged = [
    ...evaluation.measures.map((measure) => ({ measure, since: '' })),
    ...evaluation.earlier.map((measure) => ({ measure, since: ', replaced since' })),
  ];
  const isOutside = ({ measure }: (typeof judged)[number]): boolean => measure.outcome === 'fail';
  const outsideFirst = [...judged].sort((a, b) => Number(isOutside(b)) - Number(isOutside(a)));
  const parts = outsideFirst.flatMap(({ measure, since }) => {
    const { place } = measure;
    if (!isHere(place)) return [];
    const markdown = listed(`${subjectInWords(measure)}: ${OUTCOMES[measure.outcome]}${since}`, arithmetic(measure));
    return [{ start: place.start, end: place.end, markdown }];
  });
  return parts.length > 0 ? parts : reduced(evaluation.values, isHere);
}

/** Without a standard nothing is judged, but what became of the typed figure can still be shown. */
function reduced(values: NonNullable<Spot['analysis']['evaluation']>['values'], isHere: IsHere): Part[] {
  const { power, nearPower, topPower, add, clockAdd, figures } = values;
  const part = ({ place, steps }: Read<unknown>, value: string): Part[] =>
    isHere(place) && steps.length > 0
      ? [{ start: place.start, end: place.end, markdown: listed(`= ${value}`, steps.map(stepInWords)) }]
      : [];
  return [
    ...[power, nearPower, topPower]
      .flatMap((all) => Object.values(all))
      .flatMap((read) => part(read, powerInWords(read.value))),
    ...[add, clockAdd].flatMap((all) => Object.values(all)).flatMap((read) => part(read, signed(read.value))),
    ...EYES.flatMap((eye) =>
      [values.prism[eye], values.prismElsewhere[eye]].flatMap((read) =>
        read ? part(read, prismInWords(read.value, eye)) : [],
      ),
    ),
    ...Object.entries(figures).flatMap(([quantity, all]) =>
      Object.values(all).flatMap((read) => part(read, valueInWords(read.value, UNITS[quantity] ?? 'mm'))),
    ),
  ];
}

type IsHere = (place: Place | null) => place is Place;

const EYES = ['R', 'L'] as const;
/** Of figures that are no lengths. */
const UNITS: Readonly<Record<string, 'D' | 'deg' | 'prism'>> = {
  'base-curve': 'D',
  warp: 'D',
  slab: 'prism',
  intermediate: 'D',
  'segment-tilt': 'deg',
};
