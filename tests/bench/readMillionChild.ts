import { readStudy } from "../../src/read/readStudy.js";

// The process that is measured: reads the folder named on the command line and prints how long that took.
const started = performance.now();
const study = await readStudy(process.argv[2] ?? "", { today: "2100-01-01" });
const seconds = Math.round((performance.now() - started) / 10) / 100;
const { user, system } = process.cpuUsage();
const cpuSeconds = Math.round((user + system) / 1e4) / 100;
const peakMb = Math.round((process.resourceUsage().maxRSS * 1024) / 1e6);
console.log(JSON.stringify({ seconds, cpuSeconds, peakMb, read: study.visits.length }));
