/** What to look at first: only what the figures bear out, in plain sentences that lead to their section. */
import type { ReportJson } from '../../report-json';
import { causeName, measureName, percent, shareOf, signedAmount, times } from '../figures';
import { type Markup, markup, type Part } from '../markup';

export function firstSteps(report: ReportJson): Markup {
  const steps = [mostFailing, likeliestCause, leaning, drifting, overdue, waiting, people, tightest].flatMap((step) =>
    step(report),
  );
  if (steps.length === 0) return markup`<p>Nothing stands out. With few orders, that says little.</p>\n`;
  return markup`<ol class="steps">${steps.map((step) => markup`<li>${step}</li>\n`)}</ol>\n`;
}

type Step = (report: ReportJson) => readonly Markup[];

const to = (id: string, text: Part): Markup => markup`<a href="#${id}">${text}</a>`;

const mostFailing: Step = ({ failures }) => {
  const [first] = failures.measures;
  if (!first) return [];
  const { what, orders } = first;
  return [
    markup`${to('failures', measureName(what))} fails most often: in ${times(orders.count, 'order')} of ${times(orders.of, 'reject')} at the first reading.`,
  ];
};

const likeliestCause: Step = ({ failures }) => {
  const [first] = failures.causes;
  if (!first) return [];
  const { what, orders } = first;
  return [
    markup`The cause found most often is ${to('causes', `“${causeName(what).toLowerCase()}”`)}: ${times(orders.count, 'order')} of ${times(orders.of, 'reject')}.`,
  ];
};

/**
 * Only where the whole interval lies to one side of nothing, and enough was read on both sides. One instrument that leans
 * makes all others seem to lean the other way, so only the farthest is named.
 */
const leaning: Step = ({ instruments }) => {
  const [farthest] = instruments
    .flatMap(({ name, bias }) => bias.map((one) => ({ ...one, name })))
    .filter(({ quantity, small }) => quantity === 'power' && !small)
    .filter(({ low, high }) => low !== null && high !== null && (low > 0 || high < 0))
    .sort((a, b) => Math.abs(b.difference) - Math.abs(a.difference));
  if (!farthest) return [];
  const { name, difference, unit, readings } = farthest;
  return [
    markup`${to('instruments', name)} reads powers ${signedAmount(difference, unit)} away from the other instruments (${times(readings, 'first reading')}).`,
  ];
};

/** A drift is told from the weekly means; what it amounts to over the whole time says whether it matters. */
const drifting: Step = ({ instruments }) =>
  instruments.flatMap(({ name, zero }) => {
    const [first, last] = [zero?.weeks[0], zero?.weeks.at(-1)];
    if (!zero || zero.drift === null || zero.small || !first || !last || Math.abs(last.mean - first.mean) < 0.03)
      return [];
    return [
      markup`The zero of ${to('instruments', name)} moved from ${signedAmount(first.mean, 'D')} to ${signedAmount(last.mean, 'D')} between ${first.from} and ${last.from}.`,
    ];
  });

const overdue: Step = ({ instruments }) =>
  instruments
    .filter(({ overdue, readingsOverdue }) => overdue || readingsOverdue > 0)
    .map(
      ({ name, due, readingsOverdue, overdue }) =>
        markup`${to('instruments', name)} ${overdue ? `was due for a check on ${due}` : 'was used past the day of its check'}${
          readingsOverdue > 0 ? `; ${times(readingsOverdue, 'reading')} taken after that day` : ''
        }.`,
    );

const waiting: Step = ({ open }) => {
  const old = open.waiting.flatMap(({ ages }) => ages.filter(({ from }) => (from ?? -1) >= 31));
  const count = old.reduce((sum, one) => sum + one.count, 0);
  return count === 0
    ? []
    : [
        markup`${to('waiting', times(count, 'order'))} ${count === 1 ? 'has' : 'have'} waited for more than thirty days.`,
      ];
};

const people: Step = ({ operators, firstPass }) =>
  operators
    .filter(({ rejectRate: { low, small } }) => !small && low !== null && low > (firstPass.rejectRate.rate ?? 1))
    .map(
      ({ by, rejectRate }) =>
        markup`Work read by ${to('operators', by ?? 'nobody named')} is refused more often than the rest: ${shareOf(rejectRate)} of ${times(rejectRate.of, 'order')}. It may be the work, the instrument or the reading.`,
    );

const tightest: Step = ({ deviations }) => {
  const judged = deviations.flatMap(({ quantity, inLimits }) => {
    const capability = inLimits?.capability;
    return capability && !capability.small ? [{ quantity, ppk: capability.ppk, inLimits }] : [];
  });
  const [first] = judged.sort((a, b) => a.ppk - b.ppk);
  if (!first || first.ppk >= 1) return [];
  const mean = Math.abs(first.inLimits?.mean ?? 0);
  const centred = mean >= 0.2 ? `; the mean is off by ${percent(mean, 0)} of the limit` : '';
  return [
    markup`${to('deviations', measureName(first.quantity))} has the least room between its limits: Ppk ${first.ppk.toFixed(2)}. The spread takes more than the room there is${centred}.`,
  ];
};
