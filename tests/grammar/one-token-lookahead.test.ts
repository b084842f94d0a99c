import {
  getLookaheadPaths,
  type IProduction,
  type LookaheadProductionType,
  type Rule,
  type TokenType,
} from 'chevrotain';
import { expect, test } from 'vitest';
import { OneTokenLookahead } from '../../grammar/parser/one-token-lookahead';
import { LineParser } from '../../grammar/parser/readers';
import { TOKENS } from '../../grammar/tokens';

interface Choice {
  readonly rule: Rule;
  readonly prodType: LookaheadProductionType;
  readonly occurrence: number;
}

/** Every place of the grammar at which the next token decides. */
function choicesIn(rule: Rule): readonly Choice[] {
  const found: Choice[] = [];
  const visit = (part: IProduction): void => {
    const { name } = part.constructor;
    if (name === 'NonTerminal' || name === 'Terminal') return;
    const { idx, definition } = part as {
      readonly idx?: number;
      readonly definition: readonly IProduction[];
    } & IProduction;
    if (/^(?:Alternation|Option|Repetition)/.test(name) && idx !== undefined)
      found.push({ rule, prodType: name as LookaheadProductionType, occurrence: idx });
    definition.forEach(visit);
  };
  visit(rule);
  return found;
}

const strategy = new OneTokenLookahead();

/** The way that is taken in front of a token, counted from 0; -1 for none. */
function taken({ rule, prodType, occurrence: prodOccurrence }: Choice, { tokenTypeIdx }: TokenType): number {
  const parser = { LA_FAST: () => ({ tokenTypeIdx }) };
  if (prodType === 'Alternation')
    return strategy.buildLookaheadForAlternation({ prodOccurrence, rule }).call(parser as never) ?? -1;
  return strategy.buildLookaheadForOptional({ prodOccurrence, prodType, rule }).call(parser as never) ? 0 : -1;
}

test('chooses as the strategy of the library does, everywhere and in front of every token', () => {
  const choices = Object.values(new LineParser(true).getGAstProductions()).flatMap(choicesIn);
  expect(choices.length).toBeGreaterThan(100);
  for (const choice of choices) {
    // Sequences of at most one token; an empty one would fit in front of any.
    const ways = getLookaheadPaths({ ...choice, maxLookahead: 1 });
    const entered = choice.prodType === 'Alternation' ? ways : ways.slice(0, 1);
    for (const type of TOKENS) {
      const expected = entered.findIndex((paths) => paths.some(([first]) => first === undefined || first === type));
      expect(`${choice.rule.name} ${type.name} ${taken(choice, type)}`).toBe(
        `${choice.rule.name} ${type.name} ${expected}`,
      );
    }
  }
});
