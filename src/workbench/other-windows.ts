// Windows of one browser share what is kept: one tells the others what it has just written.

export interface OtherWindows {
  /** Tells all other windows that this was written here. */
  tellWritten(key: string): void
}

/** `onWritten` hears of what another window wrote; edits go by the fingerprint of their file, all maps are one. */
export function listenToOtherWindows(what: 'edits' | 'maps', onWritten: (key: string) => void): OtherWindows {
  const channel = new BroadcastChannel(`rimeleaf ${what}`)
  channel.addEventListener('message', ({ data }: MessageEvent<string>) => onWritten(data))
  return { tellWritten: (key) => channel.postMessage(key) }
}
