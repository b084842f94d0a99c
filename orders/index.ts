/** The library’s face: parse, resolve and evaluate order files. No file or network access, no shared mutable state. */
export {
  type Block,
  type BlockKind,
  blockAt,
  type Cuts,
  type Eye,
  isDay,
  LentilDocument,
  Line,
  lineWord,
  meaningsOf,
  nearestWord,
  type Position,
  parseDocument,
  parseLine,
  partOf,
  type Range,
  VOCABULARY,
  type VocabularyEntry,
} from '../grammar';
export { type Power, type PrismVector, prismBeforeEye, prismInFrame } from '../optics';
export {
  type Band,
  type Evidence,
  type Material,
  materials,
  type Provenance,
  type Source,
  sources,
  type ToleranceSet,
  toleranceSetById,
  toleranceSets,
} from '../tables';
export {
  type Analysis,
  type AnalysisOptions,
  analyse,
  analyseBlock,
  analyseDocument,
  type BlockAnalysis,
  rangeIn,
} from './analysis';
export { bandInWords } from './band';
export {
  type Amount,
  type ComputedLens,
  computeLens,
  type Input,
  type Inputs,
  type Origin,
  type Refusal as WorkedRefusal,
  type Worked,
  type WorkedCode,
  type WorkedUnit,
  type WorkedValue,
  workedLens,
  workedPair,
} from './computed';
export {
  type Choices,
  type Context,
  type Contributor,
  carryContributors,
  contextOf,
  type MissingInput,
  standardOf,
} from './context';
export { dayOf, dayOfChecking } from './day';
export type { Evaluation, Verdict } from './evaluate';
export { roundTo, tidy } from './exact';
export type { Edit, Family, Finding, FindingData, Fix, Level, Place } from './finding';
export { type FirstPass, firstPassOf } from './first-pass';
export { type EvaluateOptions, evaluate, format, parse } from './library';
export type { Limit, Unit } from './limits';
export { type Blank, type LineToTake, lineToTakeInText } from './lines-to-take';
export {
  analysesIn,
  contextOfText,
  type LongText,
  longText,
  type PlacedAnalysis,
} from './long-text';
export { againstLimit, arithmetic, deviationInWords, stepInWords, subjectInWords } from './measure-words';
export type { Measure, Outcome, Quantity } from './measures/measure';
export type * from './model';
export { nextSteps, STEPS_CAUTION } from './next-steps';
export {
  type OrderElsewhere,
  type OrderPowers,
  orderPowersIn,
  orderPowersOf,
} from './order-elsewhere';
export { orderNames } from './order-names';
export { type PowerForm, powerInOtherForms, prismInOtherForm } from './other-forms';
export { type JobSheet, jobPicture, jobSheet, SHEET_STYLE, type SheetOf, sheetPage } from './picture';
export { escaped as inMarkup } from './picture/markup';
export { powerInForm } from './power-form';
export { type PowerToMake, powerToMake } from './power-to-make';
export { readingToTake } from './reading-to-take';
export type { Read, ReadValues, Step } from './reduce';
export { percentUsed } from './rules/bench/nearly-used-up';
export { RULES, ruleOf } from './rules/catalogue';
export { canBeConfirmed, quoteOf } from './rules/confirmed';
export type { FixSite, Report as RuleReport, Rule, RulePage } from './rules/rule';
export type { Subject as RuleSubject } from './rules/subject';
export { type FileSettings, type ReadSettings, readSettings, SETTINGS_FILE, type SettingsFault } from './settings-file';
export { standardInBrief } from './standards/in-brief';
export { standardInWords } from './standards/in-words';
export { type StandardSection, standardSections } from './standards/sections';
export { standardSources } from './standards/sources-of';
export { GUARD_BANDS, type GuardBand, uncertaintyOf } from './uncertainty';
export { judgedByInWords } from './verdict-line';
export {
  amountInWords,
  axisFigures,
  decisionRuleInWords,
  figure,
  powerInWords,
  prismInWords,
  quantityInWords,
  signed,
  valueInWords,
} from './words';
export { WORKED_CODES, type WorkedWords, workedInWords } from './worked-words';
