# Invented times until a shoe is lost, with ties, censoring and horses in yards, and their proportional hazards regressions.
# Run here: Rscript references.R > references.csv (writes shoes.csv beside it). R 4.2.2, survival 3.5-3.
suppressPackageStartupMessages(library(survival))
set.seed(20261126)
yard <- rep(1:12, times = c(9, 4, 11, 6, 8, 3, 10, 7, 5, 9, 8, 6))
n <- length(yard)
wet <- round(rnorm(n), 2)
ground <- sample(c("clay", "sand", "stone"), n, TRUE)
hind <- rbinom(n, 1, .5)
rate <- exp(-3.6 + .5 * wet + .6 * hind - .4 * (ground == "sand") + rnorm(12, 0, .5)[yard])
lost <- ceiling(rexp(n, rate) / 3) * 3
watched <- ceiling(runif(n, 15, 70))
shoes <- data.frame(yard, wet, ground, hind, days = pmin(lost, watched), lost = as.integer(lost <= watched))
write.csv(shoes, "shoes.csv", row.names = FALSE, quote = FALSE)

cat("case,quantity,name,value\n")
put <- function(case, quantity, names, values) cat(sprintf("%s,%s,%s,%.16g\n", case, quantity, names, as.numeric(values)), sep = "")
fine <- coxph.control(eps = 1e-13, iter.max = 100, toler.chol = 1e-14)
describe <- function(case, fit) {
  names <- c("wet", "ground: sand", "ground: stone", "hind")
  put(case, "estimate", names, coef(fit))
  put(case, "se", names, sqrt(diag(if (is.null(fit$naive.var)) fit$var else fit$naive.var)))
  if (!is.null(fit$naive.var)) put(case, "robust se", names, sqrt(diag(fit$var)))
  put(case, "loglik", c("null", "fit"), fit$loglik)
  put(case, "score test", "", fit$score)
}
for (ties in c("efron", "breslow")) {
  describe(ties, coxph(Surv(days, lost) ~ wet + ground + hind, shoes, ties = ties, control = fine))
  describe(paste(ties, "by yard"), coxph(Surv(days, lost) ~ wet + ground + hind + cluster(yard), shoes, ties = ties, control = fine))
}
for (ties in c("efron", "breslow")) {
  fit <- coxph(Surv(time, status) ~ x, aml, ties = ties, control = fine)
  put(paste("aml", ties), "estimate", "x", coef(fit))
  put(paste("aml", ties), "se", "x", sqrt(diag(fit$var)))
}
