import { outside } from './outside';

export const addOutside = outside('add-outside', ['add', 'upper-add', 'intermediate', 'degression'], {
  checks:
    'The add read, the intermediate of a trifocal or the degression of an office lens, is further from the ordered one than the tolerance set allows.',
  why: 'Too much add shortens the reading distance, too little tires the wearer. A segment on the front surface is read with that surface on the stop; read from the back, a strong plus lens shows too much. On a progressive the place matters as well. Common practice is to rule these out before the lens is refused.',
  example: { wrong: 'add R +2.25', right: 'add R +2.00' },
  source: 'The add table of the tolerance set that the order names.',
});
