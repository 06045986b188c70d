/** What some browsers can do and TypeScript's own list of browsers' abilities leaves out, since others cannot. */

/** File System Access, a draft of the Web Incubator Community Group: section 3.4, `showSaveFilePicker`. */
interface Window {
  readonly showSaveFilePicker?: (options: {
    suggestedName: string;
    types: { description: string; accept: Record<string, string[]> }[];
  }) => Promise<FileSystemFileHandle>;
}
