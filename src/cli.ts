#!/usr/bin/env node
import { Command, CommanderError } from "commander";
import { askFolder, type AskOptions } from "./run/askFolder.js";
import { checkFolder } from "./run/checkFolder.js";
import { doctor } from "./run/doctor.js";
import { dueFolder, type DueOptions } from "./run/dueFolder.js";
import { describeFolder } from "./run/describeFolder.js";
import { draftFolder } from "./run/draftFolder.js";
import { exitCodes } from "./run/exitCodes.js";
import { installKernel } from "./run/installKernel.js";
import { horseFolder, type HorseOptions } from "./run/horseFolder.js";
import { newFolder } from "./run/newFolder.js";
import { outFolder } from "./run/outFolder.js";
import { paperFolder, type PaperOptions } from "./run/paperFolder.js";
import { reviewFolder } from "./run/reviewFolder.js";
import { safeTerminal } from "./run/safeTerminal.js";
import { yardFolder, type YardOptions } from "./run/yardFolder.js";
import { StudyError } from "./study/StudyError.js";
import { version } from "./study/version.js";

const codes = `
Ends with 0 when every row was used, 1 when some rows were set aside (doctor:
when something is to be mended), 2 when the folder or command cannot be used.

It describes records. It is not a diagnosis and not advice to trim, shoe,
medicate or change an interval.`;

const terminal = safeTerminal(process);
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
    process.exitCode = await newFolder(folder, terminal);
  });

program
  .command("draft")
  .description("look at the files of a folder and propose a study.json that reads them")
  .argument("<folder>", "folder with CSV files")
  .action(async (folder: string) => {
    process.exitCode = await draftFolder(folder, terminal);
  });

program
  .command("check")
  .description("say what was read, what was set aside and why, and what to do")
  .argument("<folder>", "study folder")
  .option("--json", "print the report for machines")
  .option("--out <folder>", "write a page to read, and the rows that were set aside, into a folder", outFolder)
  .action(async (folder: string, options: { json?: boolean; out?: string }) => {
    process.exitCode = await checkFolder(folder, options, terminal);
  });

program
  .command("describe")
  .description("write datapackage.json, which describes the files for other programs")
  .argument("<folder>", "study folder")
  .action(async (folder: string) => {
    process.exitCode = await describeFolder(folder, terminal);
  });

program
  .command("review")
  .description("write the season's review as one page")
  .argument("<folder>", "study folder")
  .requiredOption("--out <folder>", "folder for the page", outFolder)
  .action(async (folder: string, options: { out: string }) => {
    process.exitCode = await reviewFolder(folder, options, terminal);
  });

program
  .command("ask")
  .description("answer one question, or list which ones the records can answer")
  .argument("<folder>", "study folder")
  .argument("[question]", "short name of a question; all are listed when left out")
  .option("--horse <id>", "only this horse")
  .option("--yard <id>", "only this yard and its horses")
  .option("--as-of <date>", "as things stood on this day, YYYY-MM-DD")
  .option("--json", "print the answer for machines")
  .action(async (folder: string, question: string | undefined, options: AskOptions) => {
    process.exitCode = await askFolder(folder, question, options, terminal);
  });

program
  .command("due")
  .description("write who is due and who is over, as a page, a CSV file and a calendar")
  .argument("<folder>", "study folder")
  .requiredOption("--out <folder>", "folder for the files", outFolder)
  .option("--yard <yard>", "only the horses of this yard; no other yard is named")
  .option("--as-of <date>", "day of the list, YYYY-MM-DD; that of the study when left out")
  .action(async (folder: string, options: DueOptions) => {
    process.exitCode = await dueFolder(folder, options, terminal);
  });

program
  .command("paper")
  .description("run the climate study and write its tables, figures and methods for a paper")
  .argument("<folder>", "study folder")
  .requiredOption("--out <folder>", "folder for the files", outFolder)
  .option("--runs <count>", "simulated studies behind each line of the power table")
  .action(async (folder: string, options: PaperOptions) => {
    process.exitCode = await paperFolder(folder, options, terminal);
  });

program
  .command("doctor")
  .description("say what is missing for the notebooks, and the command that mends it")
  .action(async () => {
    process.exitCode = await doctor(terminal);
  });

program
  .command("kernel")
  .description("the kernel that runs the notebooks")
  .command("install")
  .description("tell Jupyter where the kernel is; needs no Python")
  .option("--jupyter-data <folder>", "data folder of Jupyter; the user's own when left out")
  .action(async (options: { jupyterData?: string }) => {
    process.exitCode = await installKernel(options.jupyterData, terminal);
  });

program
  .command("horse")
  .description("write the history of one horse, all four feet, on one sheet for the vet")
  .argument("<folder>", "study folder")
  .argument("<horse>", "the horse, as the records name it")
  .requiredOption("--out <folder>", "folder for the page", outFolder)
  .option("--yard <yard>", "only what was recorded while it stood at this yard")
  .option("--as-of <date>", "as things stood on this day, YYYY-MM-DD")
  .action(async (folder: string, horse: string, options: HorseOptions) => {
    process.exitCode = await horseFolder(folder, horse, options, terminal);
  });

program
  .command("yard")
  .description("write the page of one yard; no other yard is named on it")
  .argument("<folder>", "study folder")
  .argument("<yard>", "the yard, as the records name it")
  .requiredOption("--out <folder>", "folder for the page", outFolder)
  .option("--as-of <date>", "as things stood on this day, YYYY-MM-DD")
  .action(async (folder: string, yard: string, options: YardOptions) => {
    process.exitCode = await yardFolder(folder, yard, options, terminal);
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
