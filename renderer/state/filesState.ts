import type { CopySummary, FileVersion, KeptCopy, RecentFile } from '../files/fileService';
import type { CarDocument } from '../../geometry/index';
import type { UnfinishedCar } from './begunCar';

/** What a message about the open file offers to do. */
export type NoticeWay = 'openAgain' | 'saveAgain' | 'saveOver' | 'takeTheirs' | 'saveAs' | 'download';

/** A message about the open file: what, where, and the ways on. */
export interface FileNotice {
  readonly title: string;
  readonly text: string;
  readonly ways: readonly NoticeWay[];
  /** the version on the disk that it is about; null: there is none */
  readonly there?: FileVersion | null;
  /** of the file that it is about, where that is not the open one */
  readonly name?: string;
  /** it is only told: nothing is wrong (`good`), or something is to be minded (`mind`) */
  readonly news?: 'good' | 'mind';
}

/** Another car waits to be opened while this one has changes that were not saved. */
export interface ReplaceQuestion {
  /** what would be opened */
  readonly title: string;
  /** it is the open file itself, as somebody else wrote it: to save first would write over it, so it is not offered */
  readonly theirs?: { readonly name: string; readonly savedAt: number | null };
  readonly open: () => void;
}

/** A copy that is held out to the person, with the file that it is a copy of. */
export interface Offer {
  readonly copy: KeptCopy;
  readonly document: CarDocument;
  /** the car as it stands on the disk, or the text that the copy grew from where it has no file */
  readonly saved: CarDocument | null;
  readonly savedText: string | null;
  /** the file's version; null where there is no file any more, or never was one */
  readonly version: FileVersion | null;
  readonly isReadOnly: boolean;
  /** the file was written by somebody else after the copy was made */
  readonly isFileNewer: boolean;
}

/** A copy of a new car whose points were being given: it is in no file, and there is nothing to compare it with. */
export interface UnfinishedOffer {
  readonly copy: KeptCopy;
  readonly unfinished: UnfinishedCar;
}

export interface FilesState {
  /** random id of this window */
  readonly window: string;
  /** id of the recovery copy of what is open */
  readonly copy: string;
  /** id of the recovery copy of a new car whose points are being given */
  readonly unfinishedCopy: string;
  readonly recent: readonly RecentFile[];
  /** names of recent files that the browser keeps a handle on: they open without being chosen again */
  readonly reopenable: readonly string[];
  /** copies that no window is at work on */
  readonly copies: readonly CopySummary[];
  readonly offer: Offer | UnfinishedOffer | null;
  readonly question: ReplaceQuestion | null;
  readonly notice: FileNotice | null;
  /** how many other windows have the file open */
  readonly others: number;
  /** how many have one open that looks like it, where a browser does not tell which file it is */
  readonly alike: number;
  /** whether the program behind the window answers; when it stopped to, ms since 1970 */
  readonly lostAt: number | null;
  /** stamp of a version of somebody else's that the person was told of */
  readonly toldOf: string | null;
  /** id of a copy whose car went to the browser's downloads, which say nothing of keeping it: the copy stays */
  readonly downloaded: string | null;
}

export const startFiles = (): FilesState => ({
  window: crypto.randomUUID(),
  copy: crypto.randomUUID(),
  unfinishedCopy: crypto.randomUUID(),
  recent: [],
  reopenable: [],
  copies: [],
  offer: null,
  question: null,
  notice: null,
  others: 0,
  alike: 0,
  lostAt: null,
  toldOf: null,
  downloaded: null,
});
