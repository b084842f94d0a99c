import { nearestWord } from '../../../grammar';
import { materials } from '../../../tables';
import { type Rule, replace } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

const NAMES: readonly string[] = materials.map(({ id }) => id);

export const materialUnknown: Rule = {
  code: 'material-unknown',
  family: 'order',
  level: ({ near }) => (near === null ? 'info' : 'warning'),
  page: {
    checks: 'A material is ordered that is not known here, and its index is not said.',
    levels: 'A warning where the name is near a known one, an info elsewhere.',
    why: 'A mistyped name is made as something else or not at all. Without an index no thickness, no blank and no power in wear can be worked out.',
    example: { wrong: 'lens resn-1.60', right: 'lens resin-1.60' },
    fix: 'Writes the known name it comes near to.',
    source:
      'A lens material left out is among the frame and lens data that laboratories call back for (Pacific University thesis, 1992).',
  },
  message: ({ name, near }) =>
    near === null
      ? `“${name}” is no material known here. With its index the figures that need one can be worked out.`
      : `“${name}” is no material known here. Is it ${near}?`,
  fixes: (site) => {
    const { name, near } = site.finding.data;
    const { line, start } = site.finding;
    const at = (site.lines[line] ?? '').indexOf(String(name), start);
    if (near === null || at < 0) return [];
    const finding = { ...site.finding, start: at, end: at + String(name).length };
    return [replace({ ...site, finding }, `Write ${near}`, String(near), false)];
  },
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      madeLenses(order).flatMap((lens) => {
        if (!lens.material) return [];
        const { name, index, known } = lens.material.value;
        if (name === null || known !== null || index !== null) return [];
        return [{ lens, place: lens.material.place, data: { name, near: nearestWord(name, NAMES) } }];
      }),
    );
  },
};
