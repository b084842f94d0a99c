// Lists the lenses that have to be made again, one a line, from order files given by name.
import { readFileSync } from 'node:fs';
import { evaluate, subjectInWords } from 'lentil';

for (const path of process.argv.slice(2)) {
  const { blocks } = evaluate(readFileSync(path, 'utf8'), { standard: 'z80.1-2015' });
  for (const { order, evaluation } of blocks) {
    if (!order || evaluation?.verdict !== 'reject') continue;
    const outside = evaluation.measures.filter(({ outcome }) => outcome === 'fail');
    console.log(`${order.name ?? '(no name)'}: ${outside.map(subjectInWords).join(', ')}`);
  }
}
