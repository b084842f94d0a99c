/**
 * Chooses every way on by the next token alone. The library’s own strategy works the same choices out for any number of
 * tokens, by way of everything that may follow; for one token that is most of the time the parser takes to build.
 */
import {
  Alternation,
  type ILookaheadStrategy,
  type IProduction,
  type IToken,
  NonTerminal,
  Option,
  Repetition,
  RepetitionMandatory,
  type Rule,
  Terminal,
  type TokenType,
} from 'chevrotain';

interface Parser {
  LA_FAST(howMuch: number): IToken;
}

/** The tokens that a part of a rule may begin with, and whether it may also be nothing at all. */
interface Beginning {
  readonly types: ReadonlySet<TokenType>;
  readonly mayBeEmpty: boolean;
}

type Kind = abstract new (
  ...args: never[]
) => IProduction & { readonly idx: number; readonly definition: IProduction[] };

const OPTIONAL: Readonly<Record<string, Kind>> = { Option, Repetition, RepetitionMandatory };

export class OneTokenLookahead implements ILookaheadStrategy {
  readonly #beginnings = new Map<Rule, Beginning>();

  /** The rules are checked with the strategy of the library. */
  validate(): [] {
    return [];
  }

  buildLookaheadForAlternation({ prodOccurrence, rule }: { prodOccurrence: number; rule: Rule }) {
    const chosen: number[] = [];
    for (const [at, way] of partOf(rule, Alternation, prodOccurrence).definition.entries())
      for (const type of this.#beginningOf(way).types) chosen[indexOf(type)] ??= at;
    return function (this: Parser): number | undefined {
      return chosen[this.LA_FAST(1).tokenTypeIdx];
    };
  }

  buildLookaheadForOptional(asked: { prodOccurrence: number; prodType: string; rule: Rule }) {
    const part = partOf(asked.rule, OPTIONAL[asked.prodType] as Kind, asked.prodOccurrence);
    const isBeginning: boolean[] = [];
    for (const type of this.#inTurn(part.definition).types) isBeginning[indexOf(type)] = true;
    return function (this: Parser): boolean {
      return isBeginning[this.LA_FAST(1).tokenTypeIdx] === true;
    };
  }

  #beginningOf(part: IProduction): Beginning {
    if (part instanceof Terminal) return { types: new Set([part.terminalType]), mayBeEmpty: false };
    if (part instanceof NonTerminal) return this.#ofRule(part.referencedRule);
    const { definition } = part as Alternation;
    if (part instanceof Alternation) {
      const ways = definition.map((way) => this.#beginningOf(way));
      return {
        types: new Set(ways.flatMap(({ types }) => [...types])),
        mayBeEmpty: ways.some(({ mayBeEmpty }) => mayBeEmpty),
      };
    }
    const { types, mayBeEmpty } = this.#inTurn(definition);
    return { types, mayBeEmpty: mayBeEmpty || part instanceof Option || part instanceof Repetition };
  }

  #ofRule(rule: Rule): Beginning {
    const known = this.#beginnings.get(rule);
    if (known) return known;
    const beginning = this.#inTurn(rule.definition);
    this.#beginnings.set(rule, beginning);
    return beginning;
  }

  /** The beginning of parts that follow one another. */
  #inTurn(parts: readonly IProduction[]): Beginning {
    const types = new Set<TokenType>();
    for (const part of parts) {
      const beginning = this.#beginningOf(part);
      for (const type of beginning.types) types.add(type);
      if (!beginning.mayBeEmpty) return { types, mayBeEmpty: false };
    }
    return { types, mayBeEmpty: true };
  }
}

const indexOf = ({ tokenTypeIdx }: TokenType): number => tokenTypeIdx as number;

/** The part of a rule of one kind and number. */
function partOf<K extends Kind>(within: IProduction, kind: K, number: number): InstanceType<K> {
  const found = findPart(within, kind, number);
  if (!found) throw new Error(`A rule has no ${kind.name} ${number}.`);
  return found;
}

function findPart<K extends Kind>(within: IProduction, kind: K, number: number): InstanceType<K> | undefined {
  if (within instanceof kind && within.idx === number) return within as InstanceType<K>;
  if (within instanceof Terminal || within instanceof NonTerminal) return undefined;
  for (const part of (within as Alternation).definition) {
    const found = findPart(part, kind, number);
    if (found) return found;
  }
  return undefined;
}
