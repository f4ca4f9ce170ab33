import path from 'node:path';
import type { FileDesk } from '../files/fileDesk';
import { answered, failed } from '../files/failures';
import { listSamples, readSample } from '../files/samples';
import type { FileAnswer, HandedName } from '../../renderer/files/fileService';
import { HAND_DROPPED, LIST_SAMPLES, QUESTION, READ_SAMPLE } from './channelNames';
import { isOwnPage } from './windowScheme';

/** @param senderAddress - of the page that sent the message; undefined where it is gone already */
export type Handler = (senderAddress: string | undefined, argument: unknown) => Promise<FileAnswer<unknown> | HandedName | null>;

/** A question as the preload script sends it. */
const questionOf = (sent: unknown): { readonly method: string; readonly asked: unknown } | null => {
  if (typeof sent !== 'object' || sent === null) return null;
  const { method, asked } = sent as Record<string, unknown>;
  return typeof method === 'string' ? { method, asked } : null;
};

/** A file that was dropped; the path is what Chromium says of it. */
const handDropped = (desk: FileDesk, place: unknown): HandedName | null =>
  typeof place === 'string' && path.isAbsolute(place) && !place.includes('\0') && place.length < 4096 ? desk.hand(place) : null;

/**
 * What answers each channel. The window is not trusted: a sender that is not our page is told nothing, and an argument
 * may be anything.
 *
 * @param onWindow - called with the id of the window that begins
 */
export const channelHandlers = (
  samplesFolder: string,
  desk: FileDesk,
  onWindow: (id: string) => void = () => undefined,
): Readonly<Record<string, Handler>> => {
  const forOurPage =
    (answer: (argument: unknown) => Promise<FileAnswer<unknown>>): Handler =>
    async (sender, argument) =>
      sender !== undefined && isOwnPage(sender) ? answer(argument) : failed('disconnected', null);
  return {
    [LIST_SAMPLES]: forOurPage(() => listSamples(samplesFolder)),
    [READ_SAMPLE]: forOurPage((name) => readSample(samplesFolder, name)),
    [QUESTION]: forOurPage(async (sent) => {
      const question = questionOf(sent);
      if (!question) return failed('badRequest', null);
      const answer = await desk.answer(question.method, question.asked);
      if (answer.ok && question.method === 'begin') onWindow((question.asked as { window: string }).window);
      return answer;
    }),
    [HAND_DROPPED]: async (sender, place) => {
      const answer = await forOurPage(async () => answered(handDropped(desk, place)))(sender, place);
      return answer !== null && 'ok' in answer && answer.ok ? (answer.value as HandedName | null) : null;
    },
  };
};
