/** Identities that follow from content alone, so that the same input gives the same bytes. */
import { v5 } from 'uuid';

/** Namespace of the identities of this project, drawn once. */
const NAMESPACE = '6f0d8f0e-2b64-4c1e-9a53-5c1f6e7a9d21';

/** A name-based UUID (version 5, RFC 9562) of a content. */
export const uuidOf = (content: string): string => v5(content, NAMESPACE);

/** The same as a DICOM UID: the UUID as one whole number below 2.25 (PS3.5, B.2). */
export const uidOf = (content: string): string => `2.25.${BigInt(`0x${uuidOf(content).replaceAll('-', '')}`)}`;
