/** A file put into the code as a `data:` address. */
declare module '*.wasm?url&inline' {
  const address: string
  export default address
}
