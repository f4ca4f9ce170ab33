/// <reference lib="webworker" />
/** A thread that writes one template and is then ended: typeface and PDF are loaded when somebody asks for paper. */
import { writeTemplate, type TemplateFile, type TemplateFileOrder } from './writeTemplate';

declare const self: DedicatedWorkerGlobalScope;

export type FromTemplate = { readonly file: TemplateFile } | { readonly message: string };

const post = (message: FromTemplate): void => self.postMessage(message);

self.onmessage = ({ data }: MessageEvent<TemplateFileOrder>) => {
  writeTemplate(data).then(
    (file) => post({ file }),
    (reason: unknown) => post({ message: reason instanceof Error ? reason.message : String(reason) }),
  );
};
