export { verdictInWords } from '../../orders/verdict-line';
