/**
 * The security checklist of Electron's documentation ("Security", section "Checklist: Security
 * recommendations", electronjs.org/docs/latest/tutorial/security), each numbered item with how this
 * program meets it, the check that it still does, and a way to undo it that the check must find.
 */
import type { Said, Syntax } from './syntax.ts'

export interface Item {
  readonly number: number
  readonly title: string
  /** How it is met here. */
  readonly met: string
  /** What is wrong, in sentences; none when the item is met. */
  readonly check: (syntax: Syntax) => string[]
  /** An edit after which the item is no longer met: file, text, and what takes its place. */
  readonly undo: readonly (readonly [file: string, from: string, to: string])[]
}

const options = 'electron/shell/window-options.ts'
const security = 'electron/shell/security.ts'
const main = 'electron/shell/main.ts'
const ipc = 'electron/shell/ipc.ts'
const preload = 'electron/shell/preload.ts'
/** Sent with the file of one worker, and with no other. */
const readerPolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'none'"
const appProtocol = 'electron/shell/app-protocol.ts'
const packaging = 'build/package-config.ts'

const inShell = ({ file }: Said) => file.startsWith('electron/shell/')

/** A property that must be said, and wherever it is said have this value. */
function always(name: string, value: string): Item['check'] {
  return ({ properties }) => {
    const said = properties.filter((each) => each.name === name)
    if (said.length === 0) return [`${name} is left to its default`]
    return said
      .filter(({ text }) => text !== value)
      .map(({ file, text }) => `${file}: ${name} is ${text}`)
  }
}

function never(name: string): Item['check'] {
  return ({ properties, calls }) =>
    [...properties, ...calls]
      .filter((each) => each.name === name || each.name.endsWith(`.${name}`))
      .map(({ file }) => `${file}: ${name} is used`)
}

/** A call that must be made, with arguments that contain something. */
function called(name: string, having: RegExp): Item['check'] {
  return ({ calls }) =>
    calls.some((each) => each.name === name && having.test(each.text))
      ? []
      : [`${name} is not called with ${having}`]
}

function noString(pattern: RegExp): Item['check'] {
  return ({ strings }) =>
    strings
      .filter((each) => inShell(each) && pattern.test(each.text))
      .map(({ file, text }) => `${file}: '${text}'`)
}

function handled(event: string): Item['check'] {
  return called('contents.on', new RegExp(`'${event}'[^]*preventDefault\\(\\)`))
}

const all =
  (...checks: readonly Item['check'][]): Item['check'] =>
  (syntax) =>
    checks.flatMap((check) => check(syntax))

/** Modules of Electron that no file here may take: each is a way out, or a way around the checks. */
const forbidden = [
  'shell',
  'remote',
  'webFrame',
  'net',
  'desktopCapturer',
  'webContents',
  'clipboard',
]

const noForbiddenModule: Item['check'] = ({ electron }) =>
  electron
    .filter(({ name }) => forbidden.includes(name))
    .map(({ file, name }) => `${file} takes ${name} from electron`)

const oneListener: Item['check'] = ({ electron, calls }) => [
  ...electron
    .filter(({ name, file }) => name === 'ipcMain' && file !== ipc)
    .map(({ file }) => `${file} listens to windows past the one wrapper`),
  ...calls
    .filter(({ name }) => name.startsWith('ipcMain.') && name !== 'ipcMain.handle')
    .map(({ file, name }) => `${file}: ${name}`),
]

const senderChecked: Item['check'] = ({ calls }) =>
  calls.some(
    ({ file, name, text }) => file === ipc && name === 'isOwnPage' && text === 'event.senderFrame',
  )
    ? []
    : ['the sender of a message is not checked']

const onlyTheBridge: Item['check'] = ({ calls, properties }) => {
  const exposed = calls.filter(({ name }) => name === 'contextBridge.exposeInMainWorld')
  const members = properties.filter(({ file }) => file === preload).map(({ name }) => name)
  const raw = properties.filter(
    ({ file, text }) => file === preload && /^ipcRenderer(\.\w+)?$/.test(text),
  )
  return [
    ...(exposed.length === 1 && exposed[0]?.text === "'duskline', bridge"
      ? []
      : ['more is exposed than the bridge']),
    ...members
      .filter((name) => !['call', 'watch'].includes(name))
      .map((name) => `the page gets ${name}`),
    ...raw.map(({ name }) => `${name} is a function of Electron itself`),
  ]
}

export const checklist: readonly Item[] = [
  {
    number: 1,
    title: 'Only load secure content',
    met: 'Nothing comes over a network: pages lie at app://, and every other request is cancelled.',
    check: all(
      noString(/^(https?|wss?|ftp):/),
      called('session.webRequest.onBeforeRequest', /cancel: !mayLoad\(url\)/),
    ),
    undo: [
      [security, 'cancel: !mayLoad(url)', 'cancel: false'],
      ['electron/shell/addresses.ts', "'chrome:', 'devtools:'", "'chrome:', 'https:'"],
    ],
  },
  {
    number: 2,
    title: 'Do not enable Node.js integration for remote content',
    met: 'No content is remote, and no page, frame or worker has Node.',
    check: all(
      always('nodeIntegration', 'false'),
      always('nodeIntegrationInSubFrames', 'false'),
      always('nodeIntegrationInWorker', 'false'),
    ),
    undo: [
      [options, 'nodeIntegration: false', 'nodeIntegration: true'],
      [options, 'nodeIntegrationInWorker: false', 'nodeIntegrationInWorker: true'],
    ],
  },
  {
    number: 3,
    title: 'Enable context isolation',
    met: 'Said for every window.',
    check: always('contextIsolation', 'true'),
    undo: [[options, 'contextIsolation: true', 'contextIsolation: false']],
  },
  {
    number: 4,
    title: 'Enable process sandboxing',
    met: 'For the whole program before it is ready, and said again for every window.',
    check: all(
      always('sandbox', 'true'),
      called('app.enableSandbox', /^$/),
      noString(/no-sandbox/),
    ),
    undo: [
      [options, 'sandbox: true', 'sandbox: false'],
      [main, 'app.enableSandbox()', ''],
    ],
  },
  {
    number: 5,
    title: 'Handle session permission requests from remote content',
    met: 'Every permission is denied, asked for or looked up, and every device, but for the picture of a camera in our own page.',
    check: all(
      called('session.setPermissionRequestHandler', /answer\(isOwnCamera\(permission, asked\)\)/),
      called('session.setPermissionCheckHandler', /isOwnCamera\(permission, asked\)/),
      called('session.setDevicePermissionHandler', /=> false$/),
      called('denyPermissions', /session\.defaultSession/),
    ),
    undo: [
      [security, 'answer(isOwnCamera(permission, asked))', 'answer(true)'],
      [
        security,
        '_origin, asked) =>\n    isOwnCamera(permission, asked),',
        '_origin, asked) =>\n    true,',
      ],
      [main, '  denyPermissions(session.defaultSession)\n', ''],
    ],
  },
  {
    number: 6,
    title: 'Do not disable webSecurity',
    met: 'Said to be on for every window.',
    check: always('webSecurity', 'true'),
    undo: [[options, 'webSecurity: true', 'webSecurity: false']],
  },
  {
    number: 7,
    title: 'Define a Content Security Policy',
    met: 'Sent with every answer of the app protocol: nothing by default, scripts and styles of our own files only, and no connection anywhere. One worker, which reads pictures of the camera and connects to nothing, may compile WebAssembly; the page may not.',
    check: ({ strings, properties }) => {
      const said = strings.filter(({ file }) => file === appProtocol).map(({ text }) => text)
      const wanted = [
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "connect-src 'none'",
        "object-src 'none'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
      ]
      const header = properties.some(
        ({ name, text }) => name === "'Content-Security-Policy'" && text === 'contentPolicy',
      )
      const spread = properties.some(
        ({ name, text }) => name === 'headers' && text.includes('...guarding'),
      )
      return [
        ...wanted.filter((rule) => !said.includes(rule)).map((rule) => `${rule} is missing`),
        ...said.filter((rule) => /unsafe|\*/.test(rule) && rule !== readerPolicy),
        ...(header && spread ? [] : ['the policy is not sent with every answer']),
      ]
    },
    undo: [
      [appProtocol, `"script-src 'self'"`, `"script-src 'self' 'unsafe-inline'"`],
      [appProtocol, '{ ...guarding, ', '{ '],
    ],
  },
  {
    number: 8,
    title: 'Do not enable allowRunningInsecureContent',
    met: 'Said to be off.',
    check: always('allowRunningInsecureContent', 'false'),
    undo: [[options, 'allowRunningInsecureContent: false', 'allowRunningInsecureContent: true']],
  },
  {
    number: 9,
    title: 'Do not enable experimental features',
    met: 'Said to be off.',
    check: always('experimentalFeatures', 'false'),
    undo: [[options, 'experimentalFeatures: false', 'experimentalFeatures: true']],
  },
  {
    number: 10,
    title: 'Do not use enableBlinkFeatures',
    met: 'Named nowhere.',
    check: all(never('enableBlinkFeatures'), noString(/enable-(blink-)?features/)),
    undo: [[options, 'webviewTag: false,', "webviewTag: false, enableBlinkFeatures: 'X',"]],
  },
  {
    number: 11,
    title: 'Do not use allowpopups for WebViews',
    met: 'There are no WebViews.',
    check: all(always('webviewTag', 'false'), noString(/allowpopups|<webview/)),
    undo: [[options, 'webviewTag: false', 'webviewTag: true']],
  },
  {
    number: 12,
    title: 'Verify WebView options before creation',
    met: 'None may be attached.',
    check: handled('will-attach-webview'),
    undo: [[security, "contents.on('will-attach-webview', (event) => event.preventDefault())", '']],
  },
  {
    number: 13,
    title: 'Disable or limit navigation',
    met: 'A page stays where it is, and so does each frame; a redirect goes nowhere. Every page made is confined.',
    check: all(
      handled('will-frame-navigate'),
      handled('will-redirect'),
      called('app.on', /'web-contents-created'[^]*confine\(contents/),
    ),
    undo: [
      [security, 'if (!allowed) going.preventDefault()', ''],
      [security, "contents.on('will-redirect', (going) => going.preventDefault())", ''],
      [main, 'confine(contents, windows.open)', ''],
    ],
  },
  {
    number: 14,
    title: 'Disable or limit creation of new windows',
    met: 'A window is opened for a document that our own page holds in memory, and for our own page, by us.',
    check: ({ calls, properties }) => {
      const answers = properties.filter(({ name }) => name === 'action').map(({ text }) => text)
      const handler = calls.some(
        ({ name, text }) =>
          name === 'contents.setWindowOpenHandler' && text.includes('answerOpening(url'),
      )
      const guarded = calls.some(({ name, file }) => name === 'isOwnBlob' && file === security)
      const allows = answers.filter((answer) => answer !== "'deny'").length
      return handler && guarded && allows === 1 && answers.includes("'deny'")
        ? []
        : ['a window can be opened for anyone']
    },
    undo: [
      [security, "return { action: 'deny' }", "return { action: 'allow' }"],
      [security, 'if (isOwnBlob(url)) return', 'return'],
      [security, 'contents.setWindowOpenHandler(({ url }) => answerOpening(url, openWindow))', ''],
    ],
  },
  {
    number: 15,
    title: 'Do not use shell.openExternal with untrusted content',
    met: 'Not used at all: the module is not even imported.',
    check: all(never('openExternal'), noForbiddenModule),
    undo: [[main, 'import { app, dialog, session }', 'import { app, dialog, session, shell }']],
  },
  {
    number: 16,
    title: 'Use a current version of Electron',
    met: 'Pinned to one exact version, the one whose types the shell is written against; raised with each release.',
    check: () => [],
    undo: [],
  },
  {
    number: 17,
    title: 'Validate the sender of all IPC messages',
    met: 'One wrapper answers all messages: a known window, its main frame, exactly our origin, or a refusal.',
    check: all(oneListener, senderChecked),
    undo: [
      [ipc, ' || !isOwnPage(event.senderFrame)', ''],
      [main, 'import { app, dialog, session }', 'import { app, dialog, ipcMain, session }'],
    ],
  },
  {
    number: 18,
    title: 'Avoid usage of the file:// protocol and prefer usage of custom protocols',
    met: 'Pages come by protocol.handle from app://; no file is loaded.',
    check: all(
      never('loadFile'),
      noString(/^file:/),
      called('protocol.handle', /^scheme, /),
      called('protocol.registerSchemesAsPrivileged', /secure: true/),
    ),
    undo: [
      ['electron/shell/windows.ts', 'window.loadURL(url)', 'window.loadFile(url)'],
      [appProtocol, 'secure: true', 'secure: false'],
    ],
  },
  {
    number: 19,
    title: 'Check which fuses you can change',
    met: 'Seven are set at packaging, and read back from the packaged executable by a test.',
    check: ({ properties }) => {
      const wanted: Record<string, string> = {
        runAsNode: 'false',
        enableNodeOptionsEnvironmentVariable: 'false',
        enableNodeCliInspectArguments: 'false',
        enableCookieEncryption: 'true',
        enableEmbeddedAsarIntegrityValidation: 'true',
        onlyLoadAppFromAsar: 'true',
        grantFileProtocolExtraPrivileges: 'false',
        electronFuses: 'fuses',
      }
      const said = new Map(
        properties.filter(({ file }) => file === packaging).map(({ name, text }) => [name, text]),
      )
      return Object.entries(wanted)
        .filter(([name, value]) => said.get(name) !== value)
        .map(([name]) => `${name} is not as it should be`)
    },
    undo: [
      [packaging, 'runAsNode: false', 'runAsNode: true'],
      [packaging, 'electronFuses: fuses,', ''],
    ],
  },
  {
    number: 20,
    title: 'Do not expose Electron APIs to untrusted web content',
    met: 'The page has two functions of ours, call and watch; the event, which holds the sender, stays in the preload.',
    check: onlyTheBridge,
    undo: [
      [preload, 'call: (name, input) =>', 'send: ipcRenderer.send, call: (name, input) =>'],
      [preload, "'duskline', bridge", "'duskline', ipcRenderer"],
    ],
  },
]
