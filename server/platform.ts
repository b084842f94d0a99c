/** What the server needs from the place it runs in. */
export interface Platform {
  /** Text of a file by its address, or null when there is none or it cannot be read. */
  readonly read: (uri: string) => Promise<string | null>;
}
