/** The session that all windows share: permissions, and what may be requested. */

/** What Electron tells of a page that asks; of the two kinds of question each has its own words. */
export interface Asked {
  readonly isMainFrame: boolean
  readonly requestingUrl: string
  readonly mediaTypes?: readonly string[]
  readonly mediaType?: string
}
type Permit = (
  contents: unknown,
  permission: string,
  answer: (granted: boolean) => void,
  asked?: Asked,
) => void
type BeforeRequest = (
  details: { url: string },
  answer: (response: { cancel?: boolean }) => void,
) => void

let permit: Permit = (_contents, _permission, answer) => answer(true)
let check: (contents: unknown, permission: string, origin: string, asked?: Asked) => boolean = () =>
  true
let device: () => boolean = () => true
let before: BeforeRequest = (_details, answer) => answer({})

/** Electron's defaults grant everything: what is refused here, the program refused. */
export const defaultSession = {
  setPermissionRequestHandler: (handler: Permit) => {
    permit = handler
  },
  setPermissionCheckHandler: (handler: typeof check) => {
    check = handler
  },
  setDevicePermissionHandler: (handler: typeof device) => {
    device = handler
  },
  webRequest: {
    onBeforeRequest: (handler: BeforeRequest) => {
      before = handler
    },
  },
}

/** Whether anything of it is granted, asked for or looked up. */
export function isGranted(permission: string, asked?: Asked): boolean {
  let granted = false
  permit({}, permission, (answer) => (granted = answer), asked)
  return granted || check({}, permission, '', asked) || device()
}

export function mayRequest(url: string): boolean {
  let cancelled = false
  before({ url }, ({ cancel }) => {
    cancelled = cancel === true
  })
  return !cancelled
}
