/** Tells what probably happened, where something fails. */
import { isMostOf } from '../../causes/explanation';
import { likeliest, type Told } from '../../causes/likeliest';
import { sceneOf } from '../../causes/scene';
import type { Finding, Place } from '../../finding';
import { subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import type { Subject } from '../subject';
import type { Cause, CauseData } from './cause';
import { CAUSES } from './index';

/** The likeliest cause of what fails, and those that tie with it; none where nothing fails or nothing explains it. */
export function causeFindings({ order, evaluation, context }: Subject): Finding[] {
  const scene = sceneOf(order, evaluation, context);
  if (!scene) return [];
  const found = CAUSES.flatMap((cause) =>
    cause
      .explain(scene)
      .filter(({ explains }) => isMostOf(scene, explains))
      .map((explanation) => ({ cause, explanation })),
  );
  const failed = evaluation.measures.filter(({ outcome }) => outcome === 'fail');
  return likeliest(found).map((told) => findingOf(told, failed));
}

function findingOf({ cause, explanation, tied }: Told<Cause>, failed: readonly Measure[]): Finding {
  const { eye, data, explains } = explanation;
  const unexplained = failed.filter((one) => !explains.some((other) => other === one));
  const shared: CauseData = {
    rest: [...new Set(unexplained.map(subjectInWords))],
    tied: tied.map(({ code }) => code),
  };
  const [place, ...related] = placesOf(explains);
  return {
    code: cause.code,
    level: 'info',
    data: { ...data, ...shared },
    eye,
    ...(place as Place),
    ...(related.length > 0 ? { related } : {}),
  };
}

/** Where the explained measures stand, each place once and down the page. */
function placesOf(measures: readonly { readonly place: Place }[]): readonly Place[] {
  const places = new Map(measures.map(({ place }) => [`${place.line}.${place.start}`, place]));
  return [...places.values()].sort((a, b) => a.line - b.line || a.start - b.start);
}
