export { jobPicture } from './picture';
export { type JobSheet, jobSheet, type SheetOf, sheetPage } from './sheet';
export { SHEET_STYLE } from './sheet-style';
