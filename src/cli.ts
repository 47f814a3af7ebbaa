#!/usr/bin/env node
import { Command, CommanderError } from "commander";
import { checkFolder } from "./run/checkFolder.js";
import { dueFolder, type DueOptions } from "./run/dueFolder.js";
import { exitCodes } from "./run/exitCodes.js";
import { newFolder } from "./run/newFolder.js";
import { reviewFolder } from "./run/reviewFolder.js";
import { StudyError } from "./study/StudyError.js";
import { version } from "./study/version.js";

const codes = `
Ends with 0 when every row was used, 1 when some rows were set aside, 2 when the folder or the command cannot be used.

It describes records. It is not a diagnosis and not advice to trim, shoe, medicate or change an interval.`;

const program = new Command("underfoot")
  .description("Reads visit records of horses' feet and says what is going wrong where, and how sure that is.")
  .version(version)
  .addHelpText("after", codes)
  .exitOverride();

program
  .command("new")
  .description("make a study folder with study.json and empty CSV files")
  .argument("<folder>", "folder to make")
  .action(async (folder: string) => {
    process.exitCode = await newFolder(folder, process);
  });

program
  .command("check")
  .description("say what was read, what was set aside and why, and what to do")
  .argument("<folder>", "study folder")
  .option("--json", "print the report for machines")
  .action(async (folder: string, options: { json?: boolean }) => {
    process.exitCode = await checkFolder(folder, options, process);
  });

program
  .command("review")
  .description("write the season's review as one page")
  .argument("<folder>", "study folder")
  .requiredOption("--out <folder>", "folder for the page")
  .action(async (folder: string, options: { out: string }) => {
    process.exitCode = await reviewFolder(folder, options, process);
  });

program
  .command("due")
  .description("write who is due and who is over, as a page, a CSV file and a calendar")
  .argument("<folder>", "study folder")
  .requiredOption("--out <folder>", "folder for the files")
  .option("--as-of <date>", "day of the list, YYYY-MM-DD; that of the study when left out")
  .action(async (folder: string, options: DueOptions) => {
    process.exitCode = await dueFolder(folder, options, process);
  });

// A reader such as `head` that has seen enough is no fault.
process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
  if (fault.code !== "EPIPE") throw fault;
  process.exit();
});

try {
  await program.parseAsync();
} catch (fault) {
  if (fault instanceof CommanderError) {
    process.exitCode = fault.exitCode === 0 ? exitCodes.clean : exitCodes.unusable;
  } else if (fault instanceof StudyError) {
    process.stderr.write(`underfoot: ${fault.message}\n${fault.hint}\n`);
    process.exitCode = exitCodes.unusable;
  } else {
    const message = fault instanceof Error ? fault.message : String(fault);
    process.stderr.write(
      `underfoot: a fault of the program itself: ${message}\nNothing was written. Please report it with the command you gave.\n`,
    );
    process.exitCode = exitCodes.unusable;
  }
}
