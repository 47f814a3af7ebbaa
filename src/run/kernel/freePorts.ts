import { randomInt } from "node:crypto";
import { createServer, type Server } from "node:net";

/** The server when the port could be taken, else null. */
function listening(port: number): Promise<Server | null> {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", () => {
      resolve(null);
    });
    server.listen(port, "127.0.0.1", () => {
      resolve(server);
    });
  });
}

const closed = (server: Server) => new Promise((resolve) => server.close(resolve));

/**
 * Ports of 127.0.0.1 on which nothing listened a moment ago, all different. They lie below the ranges from which systems
 * take the outgoing end of connections: a client that knocks at such a port before anybody listens can reach itself.
 */
export async function freePorts(count: number): Promise<number[]> {
  const servers = new Map<number, Server>();
  for (let tries = 0; servers.size < count && tries < 50 * count; tries += 1) {
    const port = randomInt(15_000, 32_000);
    const server = servers.has(port) ? null : await listening(port);
    if (server !== null) servers.set(port, server);
  }
  await Promise.all([...servers.values()].map(closed));
  if (servers.size < count) throw new Error(`no ${count} free ports on 127.0.0.1`);
  return [...servers.keys()];
}
