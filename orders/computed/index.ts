/** What is worked out from an order alone. */
export { type ComputedLens, computeLens } from './lens';
