/** Hands the file contract to the window, one method for one question; no logic. Runs in the sandbox. */
import { contextBridge, ipcRenderer, webUtils } from 'electron';
import type { FileAnswer, FileService, HandedName, MenuCommand, Questions } from '../../renderer/files/fileService';
import { ASKED, HAND_DROPPED, HANDED, LIST_SAMPLES, QUESTION, READ_SAMPLE } from './channelNames';

const question =
  <Method extends keyof Questions>(method: Method) =>
  (asked: Questions[Method]['ask']): Promise<FileAnswer<Questions[Method]['answer']>> =>
    ipcRenderer.invoke(QUESTION, { method, asked });

const files: FileService = {
  shell: 'desktop',
  listSamples: () => ipcRenderer.invoke(LIST_SAMPLES),
  readSample: (name) => ipcRenderer.invoke(READ_SAMPLE, name),
  whenHanded: (take) => void ipcRenderer.on(HANDED, (_event, file: HandedName) => take(file)),
  whenAsked: (take) => void ipcRenderer.on(ASKED, (_event, command: MenuCommand) => take(command)),
  // the path is Chromium's own word for a file that a person dropped; a script of the page cannot make one up
  handDropped: (file) => ipcRenderer.invoke(HAND_DROPPED, webUtils.getPathForFile(file)),
  begin: question('begin'),
  openFile: question('openFile'),
  lookAtFile: question('lookAtFile'),
  saveFile: question('saveFile'),
  chooseFile: question('chooseFile'),
  choosePlace: question('choosePlace'),
  releaseFile: question('releaseFile'),
  notePicked: question('notePicked'),
  noteRecent: question('noteRecent'),
  keepCopy: question('keepCopy'),
  keepOrigin: question('keepOrigin'),
  readCopy: question('readCopy'),
  listCopies: question('listCopies'),
  dropCopy: question('dropCopy'),
  keepPreferences: question('keepPreferences'),
};

contextBridge.exposeInMainWorld('jounce', files);
