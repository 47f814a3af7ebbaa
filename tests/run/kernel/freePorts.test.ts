import { createServer } from "node:net";
import { expect, test } from "vitest";
import { freePorts } from "../../../src/run/kernel/freePorts.js";

test("the ports are different, can be listened on, and lie below those given to outgoing connections", async () => {
  const ports = await freePorts(5);
  expect(new Set(ports).size).toBe(5);
  // Lowest such port: 32768 on Linux (ip_local_port_range), 49152 on macOS and Windows (IANA dynamic range, RFC 6335).
  expect(ports.every((port) => port >= 15_000 && port < 32_000)).toBe(true);
  for (const port of ports) {
    const server = createServer();
    await new Promise<void>((resolve, reject) => {
      server.once("error", reject);
      server.listen(port, "127.0.0.1", resolve);
    });
    await new Promise((resolve) => server.close(resolve));
  }
});
