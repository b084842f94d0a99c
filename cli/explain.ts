/** `lentil explain`: the page of a finding, as the hover and the documentation show it. */
import { RULES, type Rule, ruleOf } from '../orders';
import { kindOf, partsOf } from './finding-page';
import { print } from './output';
import { unknownName } from './unknown-name';
import { columnsOf, indented, wrapped } from './wrap';

export async function explain(code: string | undefined): Promise<0> {
  await print(code === undefined ? listOfCodes() : pageOf(ruleCalled(code)));
  return 0;
}

function ruleCalled(code: string): Rule {
  const rule = ruleOf(code.toLowerCase());
  if (rule) return rule;
  const codes = RULES.map((one) => one.code);
  throw unknownName('finding', code, codes, '`lentil explain` lists them all.');
}

function pageOf(rule: Rule): string {
  const columns = columnsOf(process.stdout) - 2;
  const parts = partsOf(rule).map(
    ({ heading, body, isTyped }) => `\n${heading}\n${indented(isTyped ? body : wrapped(body, columns))}\n`,
  );
  return `${rule.code}  (${kindOf(rule)})\n${parts.join('')}`;
}

function listOfCodes(): string {
  const width = Math.max(...RULES.map(({ code }) => code.length));
  const families = [...new Set(RULES.map(({ family }) => family))];
  return families
    .map((family) => {
      const lines = RULES.filter((rule) => rule.family === family).map(
        ({ code, page }) => `  ${code.padEnd(width)}  ${page.checks}\n`,
      );
      return `${family}\n${lines.join('')}`;
    })
    .join('\n');
}
