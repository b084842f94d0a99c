import { l10n } from 'vscode';

export type Verdict = 'accept' | 'reject' | 'incomplete' | 'unread';

/** What needs somebody first. */
export const VERDICTS: readonly Verdict[] = ['reject', 'incomplete', 'unread', 'accept'];

const ICONS: Readonly<Record<Verdict, string>> = {
  accept: 'pass',
  reject: 'error',
  incomplete: 'question',
  unread: 'circle-outline',
};

export const verdictIcon = (verdict: Verdict): string => ICONS[verdict];

export function verdictTitle(verdict: Verdict): string {
  switch (verdict) {
    case 'accept':
      return l10n.t('Accept');
    case 'reject':
      return l10n.t('Reject');
    case 'incomplete':
      return l10n.t('Incomplete');
    case 'unread':
      return l10n.t('Unread');
  }
}
