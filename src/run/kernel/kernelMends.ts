/** What the kernel writes to its standard error, outside the messages, when it drops output. @private */
export const droppedMark = "underfoot: the kernel dropped output";

/**
 * Script that is run in place of the kernel's own first file, which is its first argument; the one place that touches the kernel's insides (tslab
 * 1.0.22).
 *
 * - It sends nothing while a socket is still being bound. The five sockets are bound at once, and when the first request comes in before the
 *   one for output is ready, the kernel would die of an answer that it cannot send.
 * - It makes the kernel say when it drops output. Its messaging library takes some 500 messages without a pause and refuses
 *   the rest, and the console passes over that refusal in silence, so that output is missing.
 * - Its compiler no longer watches folders. When a folder of packages is made or removed near the notebook, it would set a timer that nothing ever
 *   fires, and every later cell would fail with "Unexpected pending rebuildTimer". Files that were read are watched as before.
 *
 * @private
 */
export function kernelMends(): string {
  return `
    const { writeSync } = require("node:fs");
    const { createRequire } = require("node:module");
    process.argv.splice(1, 1);
    const { Publisher, Router } = createRequire(process.argv[1])("zeromq");
    let told = false;
    const tell = () => { if (!told) writeSync(2, ${JSON.stringify(`${droppedMark}\n`)}); told = true; };
    const watched = (sending) => {
      try {
        const sent = sending();
        sent.catch(tell);
        return sent;
      } catch (fault) {
        tell();
        throw fault;
      }
    };
    const binding = new WeakMap();
    for (const { prototype } of [Publisher, Router]) {
      const { bind, send } = prototype;
      Object.defineProperty(prototype, "bind", { value: function (...address) {
        const bound = bind.apply(this, address);
        const over = () => { binding.delete(this); };
        binding.set(this, bound.then(over, over));
        return bound;
      } });
      Object.defineProperty(prototype, "send", { value: function (...parts) {
        const sending = () => send.apply(this, parts);
        const ready = binding.get(this);
        const sent = () => (prototype === Publisher.prototype ? watched(sending) : sending());
        return ready === undefined ? sent() : ready.then(sent);
      } });
    }
    const { sys } = createRequire(process.argv[1])("@tslab/typescript-for-tslab");
    sys.watchDirectory = () => ({ close() {} });
    require(process.argv[1]);
`;
}
