import { Field } from './field.tsx'

/** A file taken in here: its name and its bytes. */
export interface TakenFile {
  readonly name: string
  readonly bytes: Uint8Array
}

/** Choosing one file. Nothing leaves this laptop: the window reads it and hands it to the desk. */
export function FileEntry(props: {
  label: string
  /** Endings, such as `.csv,.txt`. */
  accept: string
  onFile: (file: TakenFile) => void
  hint?: string
  error?: string
}) {
  async function take(file: File | undefined) {
    if (file) props.onFile({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })
  }
  return (
    <Field label={props.label} hint={props.hint} error={props.error}>
      {(ids) => (
        <input
          {...ids}
          type="file"
          className="entry"
          accept={props.accept}
          onChange={(event) => void take(event.target.files?.[0])}
        />
      )}
    </Field>
  )
}

/** Text in UTF-8, or in the old Western encoding that loggers write their ° in. */
export function textOf({ bytes }: TakenFile): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

/** Bytes as the contract takes them. */
export function base64Of({ bytes }: TakenFile): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += 0x8000)
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000))
  return btoa(text)
}
