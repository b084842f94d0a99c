/** Lets one turn of the event loop pass, so that messages which have come in meanwhile are heard. */
export const turn = (): Promise<void> =>
  new Promise((resolve) => {
    // Browsers have no setImmediate.
    if (typeof setImmediate === 'function') setImmediate(resolve);
    else setTimeout(resolve, 0);
  });
