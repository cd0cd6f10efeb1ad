/**
 * Stands where `electron` would be while tests run. Importing the package outside Electron makes it
 * fetch a hundred megabytes, so a test that forgot to bring its own stand-in fails here instead.
 */
export {}

throw new Error("A test imported 'electron' without vi.mock('electron', ...).")
