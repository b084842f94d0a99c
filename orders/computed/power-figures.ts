/** Figures of the ordered power: its other forms, its meridians, what is added to it, and what it has to become. */

import { minusForm, nearPower, type Power, plusForm, principalMeridians, sphericalEquivalent } from '../../optics';
import { carriedToWear, type PowerByUse, type PowerToMake, powerToMake, usePower } from '../power-to-make';
import type { Case } from './case';
import { type Basis, dioptres, type Inputs, length, mm, ordered, together, type Worked, work, worked } from './figure';
import { SOURCES } from './sources';
import { vertexWay } from './vertex-way';

/** The lens in minus and in plus form; a sphere has no other form. */
export function forms({ lens, eye }: Case): Worked | null {
  if (!lens.written || lens.written.value.cylinder === 0) return null;
  const { value, inputs } = written(lens.written.value);
  const basis = {
    formula: 'sphere + cylinder; sign of the cylinder changed; axis ± 90',
    inputs,
    source: SOURCES.optics,
  };
  return work('forms', eye, basis, () => ({ minus: dioptres(minusForm(value)), plus: dioptres(plusForm(value)) }));
}

export function meridians({ lens, eye }: Case): Worked | null {
  if (!lens.written) return null;
  const { value, inputs } = written(lens.written.value);
  if (value.cylinder === 0) {
    const basis = { formula: 'a sphere is the same in every meridian', inputs, source: SOURCES.optics };
    return work('meridians', eye, basis, () => ({ every: dioptres(minusForm(value)) }));
  }
  const formula = 'sphere along the axis, sphere + cylinder across it';
  return work('meridians', eye, { formula, inputs, source: SOURCES.optics }, () => {
    const [along, across] = principalMeridians(value);
    return { along: dioptres(along), across: dioptres(across) };
  });
}

/** Only where there is a cylinder: of a sphere it is the sphere. */
export function equivalentSphere({ lens, eye }: Case): Worked | null {
  if (!lens.written || lens.written.value.cylinder === 0) return null;
  const { value, inputs } = written(lens.written.value);
  const basis = { formula: 'sphere + cylinder / 2', inputs, source: SOURCES.optics };
  return work('spherical-equivalent', eye, basis, () => ({ sphere: dioptres(sphericalEquivalent(value)) }));
}

export function near({ lens, eye }: Case): Worked | null {
  if (!lens.written || !lens.add) return null;
  const { value, inputs } = written(lens.written.value);
  const add = lens.add.value;
  const basis = {
    formula: 'power + add',
    inputs: together(inputs, { add: ordered(dioptres(add)) }),
    source: SOURCES.practice,
  };
  return work('near-power', eye, basis, () => ({ power: dioptres(nearPower(value, add)) }));
}

export function intermediate({ lens, eye }: Case): Worked | null {
  const addition = lens.design?.value.intermediate ?? lens.intermediate?.value;
  if (!lens.written || addition == null) return null;
  const { value, inputs } = written(lens.written.value);
  const all = together(inputs, { 'intermediate addition': ordered(dioptres(addition)) });
  const basis = { formula: 'power + intermediate addition', inputs: all, source: SOURCES.practice };
  return work('intermediate-power', eye, basis, () => ({ power: dioptres(nearPower(value, addition)) }));
}

/** How far away the add alone is sharp. */
export function workingDistance({ lens, eye }: Case): Worked | null {
  const add = lens.add?.value;
  if (add === undefined || add <= 0) return null;
  const basis = { formula: '1000 / add', inputs: { add: ordered(dioptres(add)) }, source: SOURCES.dioptre };
  return work('working-distance', eye, basis, () => ({ away: mm(1000 / add) }));
}

/** The power that is to be made and verified at the reference point, in minus form. */
export function toMake({ order, lens, eye }: Case): Worked | null {
  const target = powerToMake(order, lens);
  if (target?.kind !== 'known' || !lens.written) return null;
  const basis = wayOf(target, { order, lens, eye });
  return basis && work('power-to-make', eye, basis, () => ({ power: dioptres(minusForm(target.power)) }));
}

/** What the power becomes from the vertex distance of the refraction to that of wear; not where this was done already. */
export function forVertex({ order, lens, eye }: Case): Worked | null {
  const byUse = usePower(lens);
  if (!byUse || order.compensation?.value === 'done') return null;
  const power = carriedToWear(order, lens, byUse);
  if (!power) return null;
  return work('power-for-vertex', eye, vertexBasis({ order, lens }, byUse), () => ({
    power: dioptres(minusForm(power)),
  }));
}

type Target = Extract<PowerToMake, { kind: 'known' }>;

function wayOf({ from, power }: Target, { order, lens }: Pick<Case, 'order' | 'lens' | 'eye'>): Basis | null {
  const inputs = lens.written ? written(lens.written.value).inputs : {};
  const addition = lens.design?.value.intermediate ?? lens.intermediate?.value;
  switch (from) {
    case 'written':
      return { formula: 'as ordered', inputs, source: SOURCES.practice };
    case 'near': {
      const add = ordered(dioptres(lens.add?.value ?? 0));
      return { formula: 'power + add', inputs: together(inputs, { add }), source: SOURCES.practice };
    }
    case 'intermediate': {
      const more = { 'intermediate addition': ordered(dioptres(addition ?? 0)) };
      return { formula: 'power + intermediate addition', inputs: together(inputs, more), source: SOURCES.practice };
    }
    case 'vertex': {
      const before = usePower(lens);
      return before ? vertexBasis({ order, lens }, before) : null;
    }
    case 'verification':
      return {
        formula: 'as the maker states it',
        inputs: { verification: ordered(dioptres(power)) },
        source: SOURCES.maker,
      };
  }
}

function vertexBasis({ order, lens }: Pick<Case, 'order' | 'lens'>, byUse: PowerByUse): Basis {
  const { tested, asWorn } = order;
  const isTyped = byUse.from === 'written';
  const way = vertexWay(lens, byUse);
  const inputs = together(
    { power: isTyped ? ordered(dioptres(byUse.power)) : worked(dioptres(byUse.power)) },
    tested && { tested: length(tested) },
    asWorn.vertex && { worn: length(asWorn.vertex) },
    way.inputs,
  );
  return { formula: `${way.formula} along each meridian`, inputs, source: way.source, assumed: way.assumed };
}

const written = (power: Power): { readonly value: Power; readonly inputs: Inputs } => ({
  value: power,
  inputs: { power: ordered(dioptres(power)) },
});
