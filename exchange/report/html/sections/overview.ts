import type { ReportJson } from '../../report-json';
import type { Rate } from '../../statistics/rate';
import { intervalOf, shareOf, times, whole } from '../figures';
import { type Markup, markup, type Part } from '../markup';
import { type Section, smallMark } from '../section';
import { firstSteps } from './first-steps';

export function overview(report: ReportJson): Section {
  const { firstPass, open, instruments, remakes } = report;
  const waiting = open.waiting.reduce((sum, { orders }) => sum + orders, 0);
  const overdue = instruments.filter((one) => one.overdue).length;
  return {
    id: 'overview',
    title: 'At a glance',
    body: markup`<div class="cards">
${rateCard('First-pass yield', firstPass.yield, 'accepted when first read')}
${rateCard('Reject rate', firstPass.rejectRate, 'outside a limit when first read')}
${rateCard('Lens replaced', remakes.ordersReplaced, 'of all orders')}
${card('Waiting', whole(waiting), [...open.waiting.map(({ state, orders }) => `${whole(orders)} ${WAITING[state]}`)])}
${card('Instruments past their check', `${overdue} of ${instruments.length}`, [`on ${report.scope.date ?? 'no date'}`])}
</div>
<h3>What to look at first</h3>
${firstSteps(report)}`,
  };
}

const WAITING = { unread: 'not read', incomplete: 'incomplete', reject: 'refused, undecided' } as const;

const rateCard = (title: string, rate: Rate, what: string): Markup =>
  card(title, shareOf(rate), [
    `${whole(rate.count)} of ${times(rate.of, 'order')}, ${what}`,
    rate.low === null ? null : markup`95 % interval ${intervalOf(rate)}${smallMark(rate.small)}`,
  ]);

const card = (title: string, figure: string, lines: readonly Part[]): Markup =>
  markup`<div class="card"><p class="what">${title}</p><p class="figure">${figure}</p>${lines.map((line) => (line === null ? null : markup`<p>${line}</p>`))}</div>`;
