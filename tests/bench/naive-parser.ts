/**
 * What a parser of the same lines looks like when it is written the usual way: every word a token of its own, the ends of
 * lines tokens too, and one grammar for the whole file that makes a concrete syntax tree. It covers the lines of the
 * generated work and makes no values, so the comparison leaves out a part of what Lentil does.
 */
import { CstParser, createToken, Lexer, type TokenType } from 'chevrotain';

const Name = createToken({ name: 'Name', pattern: /[A-Za-z][\w./-]*/ });
const word = (name: string, pattern: RegExp): TokenType => createToken({ name, pattern, longer_alt: Name });

const Newline = createToken({ name: 'Newline', pattern: /\r\n|\n|\r/, line_breaks: true });
const Blank = createToken({ name: 'Blank', pattern: /[ \t]+/, group: Lexer.SKIPPED });
const Comment = createToken({ name: 'Comment', pattern: /#[^\r\n]*/, group: Lexer.SKIPPED });
const Day = createToken({ name: 'Day', pattern: /\d{4}-\d{2}-\d{2}/ });
const Time = createToken({ name: 'Time', pattern: /\d{2}:\d{2}/ });
const Figure = createToken({ name: 'Figure', pattern: /[-+]?\d+(?:\.\d+)?/ });

const Order = word('Order', /order/);
const Reading = word('Reading', /reading/);
const Instrument = word('Instrument', /instrument/);
const Standard = word('Standard', /standard/);
const Right = word('Right', /R/);
const Left = word('Left', /L/);
const Cross = word('Cross', /x/);
const Plano = word('Plano', /plano/);
const Add = word('Add', /add/);
const Pd = word('Pd', /pd/);
const Near = word('Near', /near/);
const Height = word('Height', /height/);
const Prism = word('Prism', /prism/);
const Design = word('Design', /design/);
const Lens = word('Lens', /lens/);
const Frame = word('Frame', /frame/);
const Supply = word('Supply', /supply/);
const Cosmetic = word('Cosmetic', /cosmetic/);
const Kind = word('Kind', /kind/);
const ReadsTo = word('ReadsTo', /reads-to/);
const By = word('By', /by/);
const With = word('With', /with/);

const TOKENS = [
  Newline,
  Blank,
  Comment,
  Day,
  Time,
  Figure,
  Order,
  ReadsTo,
  Reading,
  Instrument,
  Standard,
  Right,
  Left,
  Cross,
  Plano,
  Add,
  Pd,
  Near,
  Height,
  Prism,
  Design,
  Lens,
  Frame,
  Supply,
  Cosmetic,
  Kind,
  By,
  With,
  Name,
];

class NaiveParser extends CstParser {
  constructor() {
    super(TOKENS);
    this.performSelfAnalysis();
  }

  readonly file = this.RULE('file', () => {
    this.MANY(() => {
      this.OR([
        { ALT: () => this.SUBRULE(this.order) },
        { ALT: () => this.SUBRULE(this.instrument) },
        { ALT: () => this.SUBRULE(this.standard) },
        { ALT: () => this.CONSUME(Newline) },
      ]);
    });
  });

  readonly standard = this.RULE('standard', () => {
    this.CONSUME(Standard);
    this.CONSUME(Name);
    this.CONSUME(Newline);
  });

  readonly instrument = this.RULE('instrument', () => {
    this.CONSUME(Instrument);
    this.CONSUME(Name);
    this.CONSUME(Newline);
    this.MANY(() => {
      this.OR([
        {
          ALT: () => {
            this.CONSUME(Kind);
            this.AT_LEAST_ONE(() => this.CONSUME2(Name));
          },
        },
        {
          ALT: () => {
            this.CONSUME(ReadsTo);
            this.CONSUME(Figure);
          },
        },
      ]);
      this.CONSUME2(Newline);
    });
  });

  readonly order = this.RULE('order', () => {
    this.CONSUME(Order);
    this.CONSUME(Name);
    this.CONSUME(Newline);
    this.MANY(() => {
      this.OR([
        { ALT: () => this.SUBRULE(this.line) },
        { ALT: () => this.SUBRULE(this.reading) },
        { ALT: () => this.CONSUME2(Newline) },
      ]);
    });
  });

  readonly reading = this.RULE('reading', () => {
    this.CONSUME(Reading);
    this.CONSUME(Day);
    this.OPTION(() => this.CONSUME(Time));
    this.OPTION2(() => {
      this.CONSUME(By);
      this.CONSUME(Name);
    });
    this.OPTION3(() => {
      this.CONSUME(With);
      this.CONSUME2(Name);
    });
    this.CONSUME(Newline);
  });

  readonly line = this.RULE('line', () => {
    this.OR([
      { ALT: () => this.SUBRULE(this.power) },
      { ALT: () => this.SUBRULE(this.add) },
      { ALT: () => this.SUBRULE(this.pd) },
      { ALT: () => this.SUBRULE(this.height) },
      { ALT: () => this.SUBRULE(this.prism) },
      { ALT: () => this.SUBRULE(this.design) },
      { ALT: () => this.SUBRULE(this.lens) },
      { ALT: () => this.SUBRULE(this.frame) },
      { ALT: () => this.SUBRULE(this.supply) },
      { ALT: () => this.SUBRULE(this.cosmetic) },
    ]);
    this.CONSUME(Newline);
  });

  readonly eye = this.RULE('eye', () => {
    this.OR([{ ALT: () => this.CONSUME(Right) }, { ALT: () => this.CONSUME(Left) }]);
  });

  readonly power = this.RULE('power', () => {
    this.SUBRULE(this.eye);
    this.OR([{ ALT: () => this.CONSUME(Figure) }, { ALT: () => this.CONSUME(Plano) }]);
    this.OPTION(() => {
      this.CONSUME2(Figure);
      this.CONSUME(Cross);
      this.CONSUME3(Figure);
    });
  });

  readonly add = this.RULE('add', () => {
    this.CONSUME(Add);
    this.SUBRULE(this.eyeFigures);
  });

  readonly height = this.RULE('height', () => {
    this.CONSUME(Height);
    this.SUBRULE(this.eyeFigures);
  });

  readonly prism = this.RULE('prism', () => {
    this.CONSUME(Prism);
    this.SUBRULE(this.eyeFigures);
  });

  readonly pd = this.RULE('pd', () => {
    this.CONSUME(Pd);
    this.SUBRULE(this.eyeFigures);
    this.OPTION(() => {
      this.CONSUME(Near);
      this.SUBRULE2(this.eyeFigures);
    });
  });

  readonly eyeFigures = this.RULE('eyeFigures', () => {
    this.OR([
      { ALT: () => this.CONSUME(Figure) },
      {
        ALT: () =>
          this.AT_LEAST_ONE(() => {
            this.SUBRULE(this.eye);
            this.CONSUME2(Figure);
          }),
      },
    ]);
  });

  readonly design = this.RULE('design', () => {
    this.CONSUME(Design);
    this.AT_LEAST_ONE(() => this.OR([{ ALT: () => this.CONSUME(Name) }, { ALT: () => this.CONSUME(Figure) }]));
  });

  readonly lens = this.RULE('lens', () => {
    this.CONSUME(Lens);
    this.CONSUME(Name);
  });

  readonly frame = this.RULE('frame', () => {
    this.CONSUME(Frame);
    this.AT_LEAST_ONE(() => {
      this.CONSUME(Name);
      this.CONSUME(Figure);
    });
  });

  readonly supply = this.RULE('supply', () => {
    this.CONSUME(Supply);
    this.CONSUME(Name);
  });

  readonly cosmetic = this.RULE('cosmetic', () => {
    this.CONSUME(Cosmetic);
    this.CONSUME(Name);
  });
}

const lexer = new Lexer(TOKENS);
const parser = new NaiveParser();

/** The concrete syntax tree of a whole file; throws when there is anything that it cannot read. */
export function parseNaively(text: string): unknown {
  const { tokens, errors } = lexer.tokenize(text);
  parser.input = tokens;
  const tree = parser.file();
  const [error] = [...errors, ...parser.errors];
  if (error) throw new Error(error.message);
  return tree;
}
