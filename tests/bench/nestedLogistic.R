# Fits one CSV of simulated feet by lme4 and glmmTMB with their default settings; one JSON line each.
# Rscript nestedLogistic.R feet.csv
suppressPackageStartupMessages({ library(lme4); library(glmmTMB) })
d <- read.csv(commandArgs(TRUE)[1]); d$yard <- factor(d$yard); d$horse <- factor(d$horse)
f <- thrush ~ wet + hind + (1 | yard) + (1 | yard:horse)
say <- function(engine, fit, seconds)
  cat(sprintf('{"engine":"%s","seconds":%.3f,"logLik":%.6f}\n', engine, seconds, as.numeric(logLik(fit))))
version <- function(p) paste(p, packageVersion(p))
fit <- NULL
t <- system.time(fit <- suppressWarnings(suppressMessages(glmer(f, d, binomial))))[["elapsed"]]; say(version("lme4"), fit, t)
t <- system.time(fit <- suppressWarnings(suppressMessages(glmmTMB(f, d, binomial))))[["elapsed"]]; say(version("glmmTMB"), fit, t)
