# Fits one CSV of simulated feet by lme4 and glmmTMB with their default settings; one JSON line each.
# Rscript nestedLogistic.R feet.csv
suppressPackageStartupMessages({ library(lme4); library(glmmTMB) })
d <- read.csv(commandArgs(TRUE)[1]); d$yard <- factor(d$yard); d$horse <- factor(d$horse)
f <- thrush ~ wet + hind + (1 | yard) + (1 | yard:horse)
version <- function(p) paste(p, packageVersion(p))
# The median of five fits after the first when that takes less than ten seconds, as on our side.
time <- function(engine, fitOnce) {
  fit <- NULL; once <- function() system.time(fit <<- suppressWarnings(suppressMessages(fitOnce())))
  cpu <- function(run) run[["user.self"]] + run[["sys.self"]]
  first <- once(); run <- first
  if (first[["elapsed"]] < 10) { runs <- lapply(1:5, function(i) once()); run <- runs[[order(sapply(runs, cpu))[3]]] }
  cat(sprintf('{"engine":"%s","seconds":%.3f,"cpuSeconds":%.3f,"firstSeconds":%.3f,"logLik":%.6f}\n',
    engine, run[["elapsed"]], cpu(run), first[["elapsed"]], as.numeric(logLik(fit))))
}
time(version("lme4"), function() glmer(f, d, binomial))
time(version("glmmTMB"), function() glmmTMB(f, d, binomial))
