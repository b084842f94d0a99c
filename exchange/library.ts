/** What `import … from 'lentil'` gives: orders and their meaning, and the conversions. `lentil/optics` gives the formulas. */
export * from '../orders';
export * from './index';
