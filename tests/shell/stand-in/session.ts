/** The session that all windows share: permissions, and what may be requested. */

type Permit = (contents: unknown, permission: string, answer: (granted: boolean) => void) => void
type BeforeRequest = (
  details: { url: string },
  answer: (response: { cancel?: boolean }) => void,
) => void

let permit: Permit = (_contents, _permission, answer) => answer(true)
let check: (contents: unknown, permission: string) => boolean = () => true
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

export function isGranted(permission: string): boolean {
  let granted = false
  permit({}, permission, (answer) => {
    granted = answer
  })
  return granted || check({}, permission) || device()
}

export function mayRequest(url: string): boolean {
  let cancelled = false
  before({ url }, ({ cancel }) => {
    cancelled = cancel === true
  })
  return !cancelled
}
