/** How long to wait for an editor that does not tell its settings, or a disk that does not answer, milliseconds. */
const PATIENCE = 1_000;

/** The answer, or undefined when there is none or it is too long in coming. */
export function withPatience(answer: Promise<unknown>): Promise<unknown> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(undefined), PATIENCE);
    const settle = (value: unknown): void => {
      clearTimeout(timer);
      resolve(value);
    };
    answer.then(settle, () => settle(undefined));
  });
}
