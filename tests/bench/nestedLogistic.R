# Fits one CSV of simulated feet by lme4 and glmmTMB with their default settings; one JSON line each.
# Rscript nestedLogistic.R feet.csv
suppressPackageStartupMessages({ library(lme4); library(glmmTMB) })
d <- read.csv(commandArgs(TRUE)[1]); d$yard <- factor(d$yard); d$horse <- factor(d$horse)
f <- thrush ~ wet + hind + (1 | yard) + (1 | yard:horse)
version <- function(p) paste(p, packageVersion(p))
# The median of three fits when one takes less than ten seconds, as on our side.
time <- function(engine, fitOnce) {
  fit <- NULL; once <- function() system.time(fit <<- suppressWarnings(suppressMessages(fitOnce())))[["elapsed"]]
  first <- once(); seconds <- if (first < 10) median(c(first, once(), once())) else first
  cat(sprintf('{"engine":"%s","seconds":%.3f,"firstSeconds":%.3f,"logLik":%.6f}\n', engine, seconds, first, as.numeric(logLik(fit))))
}
time(version("lme4"), function() glmer(f, d, binomial))
time(version("glmmTMB"), function() glmmTMB(f, d, binomial))
