/** The conversions of the library: orders, findings and verdicts in the forms that other programs and people read. */

export { type Conversion, type Import, type Loss, type LossReason, lossInWords, type Refusal } from './conversion';
export { type FromCsvOptions, fromCsv } from './csv/from-csv';
export { type Mapping, readMapping } from './csv/mapping';
export { type CsvOptions, toCsv } from './csv/to-csv';
export type { DicomDataSet, DicomElement, DicomPersonName, DicomValue } from './dicom/data-set';
export { toDicomFile } from './dicom/file';
export { fromDicomJson } from './dicom/from-dicom';
export type { Equipment } from './dicom/instance';
export { type DicomOptions, toDicomJson } from './dicom/to-dicom';
export { fromFhir } from './fhir/from-fhir';
export { type FhirOptions, toFhir } from './fhir/to-fhir';
export { jsonWriter, toJson } from './findings/json';
export { jsonLinesWriter, toLine } from './findings/jsonl';
export { junitWriter } from './findings/junit';
export { sarifWriter } from './findings/sarif';
export type * from './findings/shape';
export { CAUTION, type Ink, textWriter } from './findings/text';
export { verdictInWords } from './findings/verdict-line';
export type { FindingsWriter } from './findings/writer';
export { type FactsJson, type OrderedJson, type OrdersJson, type ReadLensJson, toOrdersJson } from './orders-json';
export { reportInHtml } from './report/html/page';
export type { ReportJson } from './report/report-json';
export { type ReportOptions, type ReportSummary, reportSummary } from './report/summary';
