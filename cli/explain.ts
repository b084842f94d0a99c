/** `lentil explain`: the page of a finding, as the hover and the documentation show it. */
import { RULES, type Rule, ruleOf } from '../orders';
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

function pageOf({ code, family, level, page }: Rule): string {
  const { checks, why, example, fix, source } = page;
  const kind = typeof level === 'string' ? `${family}, ${level}` : `${family}, level by where it stands`;
  const parts: readonly (readonly [heading: string, body: string])[] = [
    ['checks', paragraph(checks)],
    ['why', paragraph(why)],
    ['wrong', indented(example.wrong)],
    ['right', indented(example.right)],
    ...(fix ? [['fix', paragraph(fix)] as const] : []),
    ['source', paragraph(source)],
  ];
  return `${code}  (${kind})\n${parts.map(([heading, body]) => `\n${heading}\n${body}\n`).join('')}`;
}

const paragraph = (text: string): string => indented(wrapped(text, columnsOf(process.stdout) - 2));

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
