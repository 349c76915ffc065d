// Windows of one browser share what is kept: one tells the others which file's edit it has just written.

export interface OtherWindows {
  /** Tells all other windows that the edit of this file was written here. */
  tellWritten(fingerprint: string): void
}

/** `onWritten` hears of files whose edit another window wrote. */
export function listenToOtherWindows(onWritten: (fingerprint: string) => void): OtherWindows {
  const channel = new BroadcastChannel('rimeleaf edits')
  channel.addEventListener('message', ({ data }: MessageEvent<string>) => onWritten(data))
  return { tellWritten: (fingerprint) => channel.postMessage(fingerprint) }
}
