/** Actions of the server that have a command of their own, so that a key can be put on them. */
export interface ActionCommand {
  readonly command: string;
  /** The kind that the server gives the action. */
  readonly kind: string;
  /** Whether the first action is taken where there are several; otherwise the editor asks which. */
  readonly takesFirst: boolean;
}

export const ACTION_COMMANDS: readonly ActionCommand[] = [
  { command: 'lentil.addReading', kind: 'refactor.reading', takesFirst: true },
  { command: 'lentil.writeInOtherForm', kind: 'refactor.rewrite', takesFirst: false },
  { command: 'lentil.mendStyle', kind: 'source.fixAll.lentil', takesFirst: true },
];
