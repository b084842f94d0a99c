/** Kinds of our own actions. An editor that is asked for a wider kind, such as `refactor.rewrite`, gets them as well. */
import { CodeActionKind } from 'vscode-languageserver';

export const POWER_FORM: CodeActionKind = `${CodeActionKind.RefactorRewrite}.power`;
export const PRISM_FORM: CodeActionKind = `${CodeActionKind.RefactorRewrite}.prism`;
export const PD_HALVES: CodeActionKind = `${CodeActionKind.RefactorRewrite}.pd`;
export const EYE_LINES: CodeActionKind = `${CodeActionKind.RefactorRewrite}.eyes`;
export const ADD_READING: CodeActionKind = `${CodeActionKind.Refactor}.reading`;
export const FIX_ALL: CodeActionKind = `${CodeActionKind.SourceFixAll}.lentil`;
