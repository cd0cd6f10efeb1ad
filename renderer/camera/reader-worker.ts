/**
 * Reads codes in pictures of the camera, off the page: WebAssembly needs a policy of its own, which the
 * page does not have and this worker gets with its file. The reader's code lies in the file itself.
 */
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import wasm from 'zxing-wasm/reader/zxing_reader.wasm?url&inline'

const bytes = Uint8Array.from(atob(wasm.slice(wasm.indexOf(',') + 1)), (each) => each.charCodeAt(0))
// Without this the reader would fetch its own code from the network.
prepareZXingModule({ overrides: { wasmBinary: bytes.buffer, locateFile: (name: string) => name } })

/** Answers each picture with the first text found in it, or null. */
globalThis.addEventListener('message', (event: MessageEvent<ImageData>) => {
  void readBarcodes(event.data, { formats: ['DataMatrix', 'Code128'], maxNumberOfSymbols: 1 }).then(
    ([first]) => globalThis.postMessage(first?.text ?? null),
    () => globalThis.postMessage(null),
  )
})
