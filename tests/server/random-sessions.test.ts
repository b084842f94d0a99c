/**
 * Long random sessions of an editor. When the dust has settled, what the editor holds is what a fresh server tells about
 * the same texts: no message may leave anything behind.
 */
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test, vi } from 'vitest';
import { connect, type Wire } from '../support/wire';
import { askEverything } from './support/questions';
import { FOLDER, placeAt, RandomSession, SETTINGS } from './support/random-session';

vi.setConfig({ testTimeout: 240_000 });

const SEED = 20_261_125;
const SESSIONS = 10;
const STEPS = 700;

/** A server with nothing but the files, the folders and the settings that a session has come to. */
const connectTo = (session: RandomSession): Promise<Wire> =>
  connect({
    files: session.files,
    folders: session.hasFolder ? [FOLDER] : [],
    configuration: () => session.settings,
  });

/** What the editor shows of the findings of a text. */
const shownOf = ({ published }: Wire, uri: string): unknown =>
  published.findLast((one) => one.uri === uri)?.diagnostics;

/** A version and the mark of an answer are of one server only. */
const withoutVersions = (answers: unknown): unknown =>
  JSON.parse(JSON.stringify(answers, (key, value) => (key === 'version' || key === 'resultId' ? null : value)));

async function checkAgainstFresh(session: RandomSession): Promise<void> {
  const fresh = await connectTo(session);
  for (const [uri, text] of session.open) await fresh.open(uri, text);
  for (const uri of session.open.keys()) await fresh.findings(uri);
  const shown = (wire: Wire) => [...session.open.keys()].map((uri) => [uri, shownOf(wire, uri)]);
  // On a busy machine either server may still be at a part of its first list.
  const isSettled = (): boolean => JSON.stringify(shown(session.wire)) === JSON.stringify(shown(fresh));
  await vi.waitUntil(isSettled, { timeout: 20_000 }).catch(() => undefined);
  await wait(30);
  expect(shown(session.wire)).toEqual(shown(fresh));
  const closed = session.wire.published.map(({ uri }) => uri).filter((uri) => !session.open.has(uri));
  for (const uri of new Set(closed)) expect(shownOf(session.wire, uri), uri).toEqual([]);
  for (const [uri, text] of session.open) {
    const question = { uri, position: placeAt(text, session.upTo(text.length)) };
    const [old, anew] = [
      await askEverything(session.wire.client, question),
      await askEverything(fresh.client, question),
    ];
    expect(withoutVersions(old), `${uri} ${JSON.stringify(question.position)}`).toEqual(withoutVersions(anew));
  }
  expect([...session.wire.logged, ...fresh.logged]).toEqual([]);
}

test.each(Array.from({ length: SESSIONS }, (_, index) => SEED + index))(
  'a random session leaves nothing behind (seed %d)',
  async (seed) => {
    const session = new RandomSession(seed);
    // Settings and files are those of the moment they are asked for, and may come in another order.
    const late = async <T>(answer: T): Promise<T> => {
      await wait(session.upTo(8));
      return answer;
    };
    session.wire = await connect({
      files: session.files,
      folders: [FOLDER],
      configuration: () => late(session.settings),
      read: (uri) => late(session.files.get(uri) ?? null),
    });
    for (let round = 0; round < 2; round++) {
      for (let step = 0; step < STEPS / 2; step++) await session.step();
      // Which findings are left out beyond a cap depends on the last edit.
      if (session.settings?.diagnostics?.most) await session.changeSettings(SETTINGS[0]);
      await session.settle();
      await checkAgainstFresh(session);
    }
  },
);
