import { listSamples, readSample } from '../files/samples';
import type { FileAnswer } from '../../renderer/files/fileService';
import { LIST_SAMPLES, READ_SAMPLE } from './channelNames';
import { WINDOW_ORIGIN } from './windowScheme';

export type Handler = (senderAddress: string | undefined, argument: unknown) => Promise<FileAnswer<unknown>>;

const isOurWindow = (address: string | undefined): boolean => address?.startsWith(`${WINDOW_ORIGIN}/`) ?? false;

const forOurWindow =
  (answer: (argument: unknown) => Promise<FileAnswer<unknown>>): Handler =>
  async (senderAddress, argument) =>
    isOurWindow(senderAddress) ? answer(argument) : { ok: false, failure: { code: 'disconnected', name: null } };

/**
 * What answers each channel. The window is not trusted: a sender that is not our page is told nothing, and an argument
 * may be anything.
 */
export const channelHandlers = (samplesFolder: string): Readonly<Record<string, Handler>> => ({
  [LIST_SAMPLES]: forOurWindow(() => listSamples(samplesFolder)),
  [READ_SAMPLE]: forOurWindow((name) => readSample(samplesFolder, name)),
});
