import { setFlagsFromString } from 'node:v8';

/**
 * Settings of the engine for long work, a tenth to a fifth of the time. An engine that knows one of them no longer says so
 * and goes on.
 *
 * Each thread compiles the same thousand functions for itself, on the cores that are to judge meanwhile: with less of one
 * function copied into another that takes half as long, and the code of an order takes less room in the processor.
 *
 * Blocks are judged in lots, so at any time some orders are alive. From that the engine would conclude that things of an
 * order live long, and put them where they cost most to clear away.
 */
const FOR_LONG_WORK = ['--max-inlined-bytecode-size-cumulative=200', '--no-allocation-site-pretenuring'];

export function expectLongWork(): void {
  for (const setting of FOR_LONG_WORK) setFlagsFromString(setting);
}
