/** The dialogs for a folder. The page never learns a path: its person finds the folder in a list. */
import { dialog } from 'electron'

interface Ask {
  readonly title: string
  /** What becomes of the folder, and where it is then confirmed. */
  readonly message: string
}

export const backupFolder: Ask = {
  title: 'Folder for the backups of Duskline',
  message: 'Choose a folder on another disk or stick. The lead then confirms it under Safekeeping.',
}

export const logsFolder: Ask = {
  title: 'Folder of station logs to merge',
  message:
    'Choose the folder that the logs lie in. It is then in the list of places to merge from.',
}

/** Asks for a folder and offers it to the desk; nothing happens when the dialog is closed. */
export async function pickFolder(
  { title, message }: Ask,
  offer: (folder: string) => void,
): Promise<void> {
  const { canceled, filePaths } = await dialog.showOpenDialog({
    title,
    message,
    properties: ['openDirectory', 'createDirectory'],
  })
  const [folder] = filePaths
  if (!canceled && folder !== undefined) offer(folder)
}
