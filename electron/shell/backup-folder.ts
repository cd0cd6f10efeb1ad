/** The dialog for a folder of backups. The page never learns a path: the lead finds it in the list. */
import { dialog } from 'electron'

/** Asks for a folder and offers it to the desk; nothing happens when the dialog is closed. */
export async function askBackupFolder(offer: (folder: string) => void): Promise<void> {
  const { canceled, filePaths } = await dialog.showOpenDialog({
    title: 'Folder for the backups of Duskline',
    message:
      'Choose a folder on another disk or stick. The lead then confirms it under Safekeeping.',
    properties: ['openDirectory', 'createDirectory'],
  })
  const [folder] = filePaths
  if (!canceled && folder !== undefined) offer(folder)
}
