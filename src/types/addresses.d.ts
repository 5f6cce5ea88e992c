/** Where the bundler put a file. */
declare module 'manifold-3d/manifold.wasm?url' {
  const address: string;
  export default address;
}
