/** What all charts share: a picture with a name and a description, scales, and ticks. */
import { ticks } from 'd3-array';
import { type Markup, markup, type Part } from '../markup';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Words {
  /** Names the picture for those who do not see it. */
  readonly title: string;
  /** Says in a sentence what it shows. */
  readonly description: string;
}

/** Its numbers stand in a table beside it, so that nothing is said by the picture alone. */
export const picture = ({ width, height }: Size, { title, description }: Words, content: Part): Markup =>
  markup`<svg viewBox="0 0 ${width} ${height}" width="${width}" role="img" aria-label="${title}. ${description}">
${content}</svg>
`;

export type Scale = (value: number) => number;

/** From a range of values to a range of places; places are rounded to a tenth. */
export const scaleFrom =
  ([from, to]: readonly [number, number], [start, end]: readonly [number, number]): Scale =>
  (value) =>
    Math.round((start + ((value - from) / (to - from || 1)) * (end - start)) * 10) / 10;

/** Round figures within a range, for the marks of an axis. */
export const marksWithin = ([from, to]: readonly [number, number], about: number): readonly number[] =>
  ticks(from, to, about);

/** The range, and some room on both sides; never empty. */
export function roomy(values: readonly number[], least: number): readonly [number, number] {
  const low = Math.min(...values, -least);
  const high = Math.max(...values, least);
  const room = (high - low) * 0.08;
  return [low - room, high + room];
}

type At = 'start' | 'middle' | 'end';

export const label = (x: number, y: number, text: Part, at: At = 'start', kind = ''): Markup =>
  markup`<text x="${x}" y="${y}" text-anchor="${at}"${kind ? markup` class="${kind}"` : null}>${text}</text>\n`;

export const rule = (x1: number, y1: number, x2: number, y2: number, kind: string): Markup =>
  markup`<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}" class="${kind}"/>\n`;

export const bar = (x: number, y: number, width: number, height: number, kind: string): Markup =>
  markup`<rect x="${x}" y="${y}" width="${Math.round(width * 10) / 10}" height="${Math.round(height * 10) / 10}" class="${kind}"/>\n`;

export const dot = (x: number, y: number, kind: string): Markup =>
  markup`<circle cx="${x}" cy="${y}" r="3.5" class="${kind}"/>\n`;
